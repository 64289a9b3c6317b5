import { useState } from 'react';
import type { BodyOf } from '#record/kinds.ts';
import { Ask } from '#ui/Ask.tsx';
import { Button } from '#ui/Button.tsx';
import { Choice } from '#ui/Choice.tsx';
import { NumberField } from '#ui/NumberField.tsx';
import { SavedMark } from '#ui/SavedMark.tsx';
import { Sheet } from '#ui/Sheet.tsx';
import { useQuantity } from '#ui/use-quantity.ts';
import { WhenField } from '#ui/WhenField.tsx';
import { readWhen } from '#ui/when-input.ts';
import { joined, temperature } from '#words/format.ts';
import type { FreezerSheetProps } from './FreezeSheet.tsx';

/** Warmer than this is no freezer: asked about once. */
const NOT_FROZEN_C = 5;

export function ReadSheet({
  place,
  words,
  nowMs,
  saved,
  onSave,
  onClose,
}: FreezerSheetProps<BodyOf<'freezer-read'>>) {
  const say = words.freezing.readSheet;
  const { fields } = words;
  const degrees = useQuantity({ unit: place.temperature, decimal: place.decimal, least: -60, most: 40 });
  const [where, setWhere] = useState<'core' | 'room' | null>(null);
  const [when, setWhen] = useState<string | null>(null);
  const [shown, setShown] = useState(false);
  const [question, setQuestion] = useState<string | null>(null);
  const at = readWhen(when, nowMs);
  const edge = (tempC: number) => joined(temperature(tempC, place, 0));
  const save = (kept: boolean) => {
    setShown(true);
    if (!degrees.read.ok || where === null || !at.ok) return;
    const { value, typed } = degrees.read;
    const unlikely = value > NOT_FROZEN_C;
    if (unlikely && !kept) {
      setQuestion(say.unlikely(joined(temperature(value, place))));
      return;
    }
    setQuestion(null);
    onSave(
      { tempC: value, where, typed: { tempC: typed }, ...(unlikely ? { kept: ['tempC'] } : {}) },
      at.atMs,
    );
  };
  return (
    <Sheet
      open
      onClose={onClose}
      title={words.freezing.act.read}
      closeLabel={words.app.close}
      acts={
        <Button kind="primary" disabled={saved?.state === 'saving'} onPress={() => save(false)}>
          {say.save}
        </Button>
      }
    >
      <NumberField
        label={say.temperature}
        text={degrees.text}
        onText={degrees.onText}
        unit={place.temperature === 'C' ? '°C' : '°F'}
        signLabel={fields.keyboard.sign}
        {...(shown && !degrees.read.ok
          ? { problem: fields.problem(degrees.read.problem, { least: edge(-60), most: edge(40) }) }
          : {})}
      />
      <Choice
        label={say.where}
        options={[
          { value: 'core' as const, label: say.core },
          { value: 'room' as const, label: say.room },
        ]}
        value={where}
        onValue={setWhere}
        {...(shown && where === null ? { problem: fields.choose } : {})}
      />
      <WhenField
        text={when}
        onText={setWhen}
        nowMs={nowMs}
        words={fields.when}
        {...(shown && !at.ok ? { problem: fields.whenProblem[at.problem] } : {})}
      />
      {saved && <SavedMark state={saved.state} text={saved.text} />}
      {question && (
        <Ask
          question={question}
          changeLabel={words.app.change}
          keepLabel={words.app.keep}
          onChange={() => setQuestion(null)}
          onKeep={() => save(true)}
        />
      )}
    </Sheet>
  );
}
