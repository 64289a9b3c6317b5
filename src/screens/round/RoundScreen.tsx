import { useMemo, useState } from 'react';
import { batch as foldBatch } from '#record/batch.ts';
import { pieceFigures } from '#record/piece-figures.ts';
import type { Place } from '#record/place.ts';
import type { SubjectId } from '#record/subject.ts';
import { useNowMs } from '#store/clock.ts';
import { useKit, useTouching } from '#store/live.ts';
import { useAppend } from '#store/use-append.ts';
import { Button } from '#ui/Button.tsx';
import { Page } from '#ui/Page.tsx';
import { useAwake } from '#ui/use-awake.ts';
import { Waiting } from '#ui/Waiting.tsx';
import type { Words } from '#words/en.ts';
import { joined, mass } from '#words/format.ts';
import { FindPiece } from './FindPiece.tsx';
import { type PieceWeighed, PieceWeighing } from './PieceWeighing.tsx';
import { roundState, stageOf } from './round-view.ts';

const MINUTE_MS = 60_000;

/** From piece to piece in hanging order; where it was left is read from the log, so that a killed app goes on there. */
export function RoundScreen({ words, place, id }: { words: Words; place: Place; id: string }) {
  const subject: SubjectId = `batch:${id}`;
  const entries = useTouching(subject);
  const kit = useKit();
  const nowMs = useNowMs(MINUTE_MS);
  const { saving, save } = useAppend(place.initials);
  const [skipped, setSkipped] = useState<readonly SubjectId[]>([]);
  /** The piece that was asked for by its number; while one is being saved, that one. */
  const [asked, setAsked] = useState<SubjectId | null>(null);
  const [finding, setFinding] = useState(false);
  const batch = useMemo(() => (entries ? foldBatch(subject, entries) : null), [entries, subject]);
  useAwake();
  if (entries === undefined || kit === undefined) return <Waiting label={words.app.waiting} />;
  if (batch === null) return <Page title={words.app.notFound.title}>{words.app.notFound.text}</Page>;
  const { round } = words;
  const { todo, weighed, last } = roundState(batch, nowMs);
  const up = batch.pieces.filter(({ status }) => status === 'hanging');
  const ahead = todo.filter((piece) => !skipped.includes(piece.id));
  const piece = up.find((each) => each.id === asked) ?? ahead[0];
  const back = { href: `#/batches/${id}/hanging`, label: words.app.back };

  const undo = async () => {
    if (!last) return;
    const strikes = { id: last.weighing.entry, reason: round.strikeReason };
    await save([{ kind: 'struck', subject: last.piece.id, refs: [subject], body: {}, strikes }]);
  };
  const stepOf = (each: typeof piece) =>
    kit.scales.find(({ id: scale }) => scale === each?.stuffed.body.scale);
  const lastSaved = last && {
    text: round.saved(
      last.piece.number,
      joined(mass(last.weighing.netG + last.piece.tareG, stepOf(last.piece)?.stepG ?? 1, place)),
    ),
    undo: round.strike,
    undoLabel: round.undo(last.piece.number),
    onUndo: undo,
  };
  const find = finding && (
    <FindPiece
      pieces={up}
      weighed={weighed}
      words={words}
      onPiece={(found) => {
        setAsked(found);
        setFinding(false);
      }}
      onClose={() => setFinding(false)}
    />
  );

  if (!piece)
    return (
      <Page
        title={round.done.title}
        back={back}
        sentence={
          up.length === 0
            ? round.none
            : round.done.sentence(
                weighed.length,
                up.length,
                weighed.filter((each) => pieceFigures(each).atTarget).length,
              )
        }
        acts={
          <>
            {todo.length > 0 && <Button onPress={() => setSkipped([])}>{round.done.again}</Button>}
            <Button kind="primary" href={back.href}>
              {round.done.toHanging}
            </Button>
          </>
        }
      >
        {lastSaved && (
          <p>
            {lastSaved.text}{' '}
            <Button kind="quiet" label={lastSaved.undoLabel} onPress={lastSaved.onUndo}>
              {lastSaved.undo}
            </Button>
          </p>
        )}
        {up.length > 0 && <Button onPress={() => setFinding(true)}>{round.find}</Button>}
        {find}
      </Page>
    );

  // The scale on which it was weighed green: two scales would differ by more than a day's loss.
  const scale = stepOf(piece) ?? null;

  const weigh = async ({ grossG, typed, kept }: PieceWeighed) => {
    setAsked(piece.id);
    const result = await save([
      {
        kind: 'weighed',
        subject: piece.id,
        refs: [subject],
        body: {
          grossG,
          stage: stageOf(batch, piece),
          ...(scale ? { scale: scale.id } : {}),
          typed: { grossG: typed },
          ...(kept ? { kept: ['grossG'] } : {}),
        },
      },
    ]);
    if (result.ok) setAsked(null);
  };

  return (
    <>
      <PieceWeighing
        key={piece.id}
        piece={piece}
        next={ahead.find((each) => each.id !== piece.id)?.number ?? null}
        batch={batch}
        stepG={scale?.stepG ?? 1}
        place={place}
        words={words}
        nowMs={nowMs}
        back={back}
        saved={words.app.saving(saving)}
        last={lastSaved}
        onWeighed={weigh}
        onSkip={() => {
          setSkipped([...skipped, piece.id]);
          setAsked(null);
        }}
        onFind={() => setFinding(true)}
      />
      {find}
    </>
  );
}
