import { useState } from 'react';
import type { BenchStep } from '#record/kinds.ts';
import type { Place } from '#record/place.ts';
import type { Fact } from '#store/use-append.ts';
import { Ask } from '#ui/Ask.tsx';
import { Button } from '#ui/Button.tsx';
import { NumberField } from '#ui/NumberField.tsx';
import { readQuantity } from '#ui/quantity-input.ts';
import { SavedMark, type SavedState } from '#ui/SavedMark.tsx';
import { Sheet } from '#ui/Sheet.tsx';
import { TextField } from '#ui/TextField.tsx';
import { WhenField } from '#ui/WhenField.tsx';
import { readWhen } from '#ui/when-input.ts';
import type { Words } from '#words/en.ts';
import { warmQuestion } from './bench-view.ts';

type Body = Extract<Fact, { kind: BenchStep }>['body'];

/** One bench step: what was measured, how long it took, when. Temperature and minutes may stay empty. */
export function StepSheet({
  step,
  place,
  words,
  nowMs,
  saved,
  onSave,
  onClose,
}: {
  step: BenchStep;
  place: Place;
  words: Words;
  nowMs: number;
  saved: { state: SavedState; text: string } | null;
  onSave: (body: Body, atMs: number | null) => void;
  onClose: () => void;
}) {
  const [temp, setTemp] = useState('');
  const [minutes, setMinutes] = useState('');
  const [note, setNote] = useState('');
  const [when, setWhen] = useState<string | null>(null);
  const [shown, setShown] = useState(false);
  const [question, setQuestion] = useState<string | null>(null);
  const { bench, fields } = words;

  const degrees = readQuantity({
    text: temp,
    unit: place.temperature,
    decimal: place.decimal,
    least: -30,
    most: 60,
  });
  const took = readQuantity({ text: minutes, unit: 'min', decimal: place.decimal, least: 0, most: 6000 });
  const at = readWhen(when, nowMs);
  const problemOf = (read: typeof degrees, text: string, least: string, most: string) =>
    shown && text !== '' && !read.ok ? { problem: fields.problem(read.problem, { least, most }) } : {};
  const degree = place.temperature === 'C' ? '°C' : '°F';

  const save = (kept: boolean) => {
    setShown(true);
    if ((temp !== '' && !degrees.ok) || (minutes !== '' && !took.ok) || !at.ok) return;
    const warm = temp !== '' && degrees.ok ? warmQuestion(degrees.value, place, words) : null;
    if (warm && !kept) {
      setQuestion(warm);
      return;
    }
    setQuestion(null);
    const typed = {
      ...(temp !== '' && degrees.ok ? { tempC: degrees.typed } : {}),
      ...(minutes !== '' && took.ok ? { minutes: took.typed } : {}),
    };
    onSave(
      {
        ...(temp !== '' && degrees.ok ? { tempC: degrees.value } : {}),
        ...(minutes !== '' && took.ok ? { minutes: took.value } : {}),
        ...(note.trim() ? { note: note.trim() } : {}),
        ...(Object.keys(typed).length > 0 ? { typed } : {}),
        ...(warm ? { kept: ['tempC'] } : {}),
      },
      at.atMs,
    );
  };

  return (
    <Sheet
      open
      onClose={onClose}
      title={bench.step[step]}
      closeLabel={words.app.close}
      acts={
        <Button kind="primary" onPress={() => save(false)} disabled={saved?.state === 'saving'}>
          {bench.save}
        </Button>
      }
    >
      {step !== 'cleaned' && (
        <>
          <NumberField
            label={bench.temperature[step]}
            hint={bench.temperatureHint}
            text={temp}
            onText={setTemp}
            unit={degree}
            signLabel={fields.keyboard.sign}
            {...problemOf(degrees, temp, `−30 ${degree}`, `60 ${degree}`)}
          />
          <NumberField
            label={bench.minutes}
            hint={bench.optional}
            text={minutes}
            onText={setMinutes}
            unit="min"
            {...problemOf(took, minutes, '0', '6000 min')}
          />
        </>
      )}
      <TextField
        label={bench.note}
        hint={bench.optional}
        text={note}
        onText={setNote}
        maxLength={2000}
        long
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
