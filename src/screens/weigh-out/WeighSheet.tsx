import { useState } from 'react';
import type { Place } from '#record/place.ts';
import { Ask } from '#ui/Ask.tsx';
import { Button } from '#ui/Button.tsx';
import { Choice } from '#ui/Choice.tsx';
import { KeyedValue } from '#ui/KeyedValue.tsx';
import { readQuantity } from '#ui/quantity-input.ts';
import { SavedMark, type SavedState } from '#ui/SavedMark.tsx';
import { Sheet } from '#ui/Sheet.tsx';
import type { Words } from '#words/en.ts';
import styles from './WeighOutScreen.module.css';
import { MOST_G, mostText, type ToWeigh, unitOf, weighQuestion } from './weigh-sheet-view.ts';

export type Weighed = {
  massG: number;
  lot: string | null;
  typed: { text: string; unit: string };
  kept: boolean;
};

/** One weighing by the app's own keys. Stays open, with what was typed, until the weight is on disk. */
export function WeighSheet({
  what,
  place,
  words,
  saved,
  onWeighed,
  onClose,
}: {
  what: ToWeigh;
  place: Place;
  words: Words;
  saved: { state: SavedState; text: string } | null;
  onWeighed: (weighed: Weighed) => Promise<boolean>;
  onClose: () => void;
}) {
  const [text, setText] = useState('');
  const [lot, setLot] = useState<string | null>(
    what.lots.length === 1 ? (what.lots[0]?.value ?? null) : null,
  );
  const [problem, setProblem] = useState<string | null>(null);
  const [question, setQuestion] = useState<string | null>(null);
  const { sheet } = words.weighOut;
  const unit = unitOf(what, place);

  const save = async (typed: string, kept: boolean) => {
    const read = readQuantity({ text: typed, unit, decimal: place.decimal, least: 0, most: MOST_G });
    if (!read.ok) {
      setProblem(words.fields.problem(read.problem, { least: '0', most: mostText(unit, place) }));
      return;
    }
    const unlikely = kept ? null : weighQuestion(read.value, `${typed} ${unit}`, what, place, words);
    setQuestion(unlikely);
    if (unlikely) return;
    const done = await onWeighed({ massG: read.value, lot, typed: read.typed, kept });
    if (done) setText('');
  };

  return (
    <Sheet
      open
      onClose={onClose}
      title={sheet.weigh(what.name)}
      closeLabel={words.app.close}
      acts={
        <>
          {what.target && (
            <Button onPress={() => save(what.target?.value ?? '', false)}>
              {sheet.asTarget(what.target.text)}
            </Button>
          )}
          <Button kind="primary" onPress={() => save(text, false)} disabled={saved?.state === 'saving'}>
            {what.target ? sheet.save : sheet.add}
          </Button>
        </>
      }
    >
      {what.target && <p className={styles.target}>{what.target.text}</p>}
      <p>{what.note}</p>
      {what.lots.length > 0 && <Choice label={sheet.lot} options={what.lots} value={lot} onValue={setLot} />}
      <KeyedValue
        text={text}
        onText={(next) => {
          setText(next);
          setProblem(null);
        }}
        unit={unit}
        decimal={place.decimal}
        label={sheet.typed}
        {...(what.before ? { previous: sheet.was(what.before) } : {})}
        {...(problem ? { problem } : {})}
        words={words.fields.keyboard}
      />
      {saved && <SavedMark state={saved.state} text={saved.text} />}
      {question && (
        <Ask
          question={question}
          changeLabel={words.app.change}
          keepLabel={words.app.keep}
          onChange={() => setQuestion(null)}
          onKeep={() => save(text, true)}
        />
      )}
    </Sheet>
  );
}
