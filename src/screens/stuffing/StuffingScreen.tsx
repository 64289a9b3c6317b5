import { useState } from 'react';
import { batch as foldBatch } from '#record/batch.ts';
import type { Place } from '#record/place.ts';
import type { SubjectId } from '#record/subject.ts';
import { newSubject } from '#store/append.ts';
import { useKit, useTouching } from '#store/live.ts';
import { useAppend } from '#store/use-append.ts';
import { Ask } from '#ui/Ask.tsx';
import { Button } from '#ui/Button.tsx';
import { KeyedValue } from '#ui/KeyedValue.tsx';
import { List, Row } from '#ui/List.tsx';
import { Page } from '#ui/Page.tsx';
import { readQuantity } from '#ui/quantity-input.ts';
import { SavedMark } from '#ui/SavedMark.tsx';
import { useAwake } from '#ui/use-awake.ts';
import { Waiting } from '#ui/Waiting.tsx';
import type { Words } from '#words/en.ts';
import { joined, mass } from '#words/format.ts';
import { CasingUsed } from './CasingUsed.tsx';
import { SharedForm } from './SharedForm.tsx';
import { MOST_PIECE_G, pieceQuestion, type Shared, sharedSoFar, stuffingView } from './stuffing-view.ts';

/** Each piece as it is stuffed: its green weight by the app's own keys, one after the other, in hanging order. */
export function StuffingScreen({ words, place, id }: { words: Words; place: Place; id: string }) {
  const subject: SubjectId = `batch:${id}`;
  const entries = useTouching(subject);
  const kit = useKit();
  const { saving, save } = useAppend(place.initials);
  const [shared, setShared] = useState<Shared | null>(null);
  const [changing, setChanging] = useState(false);
  const [typed, setTyped] = useState({ number: 0, text: '' });
  const [problem, setProblem] = useState<string | null>(null);
  const [question, setQuestion] = useState<string | null>(null);
  useAwake();
  if (entries === undefined || kit === undefined) return <Waiting label={words.app.waiting} />;
  const batch = foldBatch(subject, entries);
  if (batch === null) return <Page title={words.app.notFound.title}>{words.app.notFound.text}</Page>;
  const { stuffing } = words;
  const back = { href: `#/batches/${id}`, label: words.app.back };
  const known = shared ?? (batch.pieces.length > 0 ? sharedSoFar(batch) : null);
  const view = stuffingView({ batch, scales: kit.scales, place, words });
  // The page is at the next piece before the last one is on both copies: a key pressed by then is the next one's.
  const number = view.next;
  const text = typed.number === number ? typed.text : '';

  if (known === null || changing)
    return (
      <Page title={stuffing.title} line={view.line} back={back} sentence={stuffing.setUp}>
        <SharedForm
          shared={known ?? sharedSoFar(batch)}
          place={place}
          words={words}
          onShared={(next) => {
            setShared(next);
            setChanging(false);
          }}
        />
      </Page>
    );

  const weigh = async (kept: boolean) => {
    setQuestion(null);
    const read = readQuantity({
      text,
      unit: view.unit,
      decimal: place.decimal,
      least: 0,
      most: MOST_PIECE_G,
    });
    if (!read.ok) {
      setProblem(words.fields.problem(read.problem, { least: '0', most: view.most }));
      return;
    }
    const greenG = read.value - known.tareG;
    if (!(greenG > 0)) {
      setProblem(stuffing.notAbove(joined(mass(known.tareG, 1, place))));
      return;
    }
    const { diameterMm } = known;
    const odd = pieceQuestion(greenG, `${text} ${view.unit}`, { batch, diameterMm, place, words });
    if (odd && !kept) {
      setQuestion(odd);
      return;
    }
    const result = await save([
      {
        kind: 'piece-stuffed',
        subject: newSubject('piece'),
        refs: [subject],
        body: {
          number,
          grossG: read.value,
          ...known,
          ...(view.scale ? { scale: view.scale.id } : {}),
          typed: { grossG: read.typed },
          ...(kept ? { kept: ['grossG'] } : {}),
        },
      },
    ]);
    if (result.ok) setTyped((now) => (now.number === number ? { number, text: '' } : now));
  };

  const undo = async () => {
    const last = batch.pieces.at(-1);
    if (last)
      await save([
        {
          kind: 'struck',
          subject: last.id,
          refs: [subject],
          body: {},
          strikes: { id: last.stuffed.id, reason: stuffing.strikeReason },
        },
      ]);
  };

  const saved = words.app.saving(saving);
  return (
    <Page
      title={stuffing.piece(view.next)}
      line={view.line}
      back={back}
      sentence={view.sentence}
      acts={
        <>
          {batch.pieces.length > 0 && <Button href={`#/batches/${id}/ferment`}>{stuffing.done}</Button>}
          <Button kind="primary" onPress={() => weigh(false)} disabled={saving.state === 'saving'}>
            {stuffing.save(view.next + 1)}
          </Button>
        </>
      }
    >
      <KeyedValue
        text={text}
        onText={(next) => {
          setTyped({ number, text: next });
          setProblem(null);
        }}
        unit={view.unit}
        decimal={place.decimal}
        label={stuffing.green}
        {...(view.previous ? { previous: view.previous } : {})}
        {...(problem ? { problem } : {})}
        words={words.fields.keyboard}
      />
      {saved && (
        <SavedMark
          state={saved.state}
          text={saved.text}
          act={
            saved.state === 'saved' && (
              <Button kind="quiet" onPress={undo}>
                {stuffing.undo}
              </Button>
            )
          }
        />
      )}
      <List label={stuffing.title}>
        {view.rows.map(({ key, ...row }) => (
          <Row key={key} {...row} href={`#/pieces/${key.slice('piece:'.length)}`} />
        ))}
      </List>
      <Button kind="quiet" onPress={() => setChanging(true)}>
        {stuffing.change}
      </Button>
      {batch.pieces.length > 0 && <CasingUsed {...{ batch, place, words }} />}
      {question && (
        <Ask
          question={question}
          changeLabel={words.app.change}
          keepLabel={words.app.keep}
          onChange={() => setQuestion(null)}
          onKeep={() => weigh(true)}
        />
      )}
    </Page>
  );
}
