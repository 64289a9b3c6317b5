import { useState } from 'react';
import { batch as foldBatch } from '#record/batch.ts';
import type { EntryId } from '#record/entry.ts';
import { pieceFigures } from '#record/piece-figures.ts';
import type { Place } from '#record/place.ts';
import type { SubjectId } from '#record/subject.ts';
import { useNowMs } from '#store/clock.ts';
import { useKit, useTouching } from '#store/live.ts';
import { useAppend } from '#store/use-append.ts';
import { Button } from '#ui/Button.tsx';
import { Page } from '#ui/Page.tsx';
import { Waiting } from '#ui/Waiting.tsx';
import type { Words } from '#words/en.ts';
import { type PieceWeighed, PieceWeighing } from './PieceWeighing.tsx';
import { roundState, stageOf } from './round-view.ts';

const MINUTE_MS = 60_000;

type Last = { piece: SubjectId; entry: EntryId; number: number; weight: string };

/** From piece to piece in hanging order; where it was left is read from the log, so that a killed app goes on there. */
export function RoundScreen({ words, place, id }: { words: Words; place: Place; id: string }) {
  const subject: SubjectId = `batch:${id}`;
  const entries = useTouching(subject);
  const kit = useKit();
  const nowMs = useNowMs(MINUTE_MS);
  const { saving, save } = useAppend(place.initials);
  const [skipped, setSkipped] = useState<readonly SubjectId[]>([]);
  const [last, setLast] = useState<Last | null>(null);
  if (entries === undefined || kit === undefined) return <Waiting label={words.app.waiting} />;
  const batch = foldBatch(subject, entries);
  if (batch === null) return <Page title={words.app.notFound.title}>{words.app.notFound.text}</Page>;
  const { round } = words;
  const { todo, weighed } = roundState(batch, nowMs);
  const ahead = todo.filter((piece) => !skipped.includes(piece.id));
  const piece = ahead[0];
  const back = { href: `#/batches/${id}/hanging`, label: words.app.back };

  if (!piece) {
    const atTarget = weighed.filter((each) => pieceFigures(each).atTarget).length;
    return (
      <Page
        title={round.done.title}
        back={back}
        sentence={
          todo.length + weighed.length === 0
            ? round.none
            : round.done.sentence(weighed.length, todo.length + weighed.length, atTarget)
        }
        acts={
          <>
            {skipped.length > 0 && <Button onPress={() => setSkipped([])}>{round.done.again}</Button>}
            <Button kind="primary" href={back.href}>
              {round.done.toHanging}
            </Button>
          </>
        }
      />
    );
  }

  // The scale on which it was weighed green: two scales would differ by more than a day's loss.
  const scale = kit.scales.find((each) => each.id === piece.stuffed.body.scale) ?? null;

  const weigh = async ({ grossG, typed, kept, weight }: PieceWeighed) => {
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
    const entry = result.ok ? result.entries[0] : undefined;
    if (entry) setLast({ piece: piece.id, entry: entry.id, number: piece.number, weight });
    return result.ok;
  };

  const undo = async () => {
    if (!last) return;
    const strikes = { id: last.entry, reason: round.strikeReason };
    const result = await save([{ kind: 'struck', subject: last.piece, refs: [subject], body: {}, strikes }]);
    if (result.ok) setLast(null);
  };

  return (
    <PieceWeighing
      key={piece.id}
      piece={piece}
      next={ahead[1]?.number ?? null}
      batch={batch}
      stepG={scale?.stepG ?? 1}
      place={place}
      words={words}
      nowMs={nowMs}
      back={back}
      saved={words.app.saving(saving)}
      last={
        last && { text: round.saved(last.number, last.weight), undo: round.undo(last.number), onUndo: undo }
      }
      onWeighed={weigh}
      onSkip={() => setSkipped([...skipped, piece.id])}
    />
  );
}
