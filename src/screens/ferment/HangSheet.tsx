import { useState } from 'react';
import type { Chamber } from '#record/place.ts';
import type { SubjectId } from '#record/subject.ts';
import type { Fact } from '#store/use-append.ts';
import { Button } from '#ui/Button.tsx';
import { Choice } from '#ui/Choice.tsx';
import { NumberField } from '#ui/NumberField.tsx';
import { SavedMark } from '#ui/SavedMark.tsx';
import { Sheet } from '#ui/Sheet.tsx';
import { TextField } from '#ui/TextField.tsx';
import { useQuantity } from '#ui/use-quantity.ts';
import { WhenField } from '#ui/WhenField.tsx';
import { readWhen } from '#ui/when-input.ts';
import { roomText } from './ferment-view.ts';
import { degreeSign, type SheetProps } from './sheet.ts';

type Body = Extract<Fact, { kind: 'hung' }>['body'];

/** Where the pieces hang to dry, and what the air there was read as. */
export function HangSheet({
  place,
  words,
  nowMs,
  saved,
  chambers,
  onSave,
  onClose,
}: SheetProps<Body> & { chambers: readonly Chamber[] }) {
  const { hang } = words.ferment;
  const { fields } = words;
  const degrees = useQuantity({ unit: place.temperature, decimal: place.decimal, least: -5, most: 40 });
  const humidity = useQuantity({ unit: '%', decimal: place.decimal, least: 0, most: 100 });
  const [chamber, setChamber] = useState<SubjectId | null>(
    chambers.length === 1 ? (chambers[0]?.id ?? null) : null,
  );
  const [note, setNote] = useState('');
  const [when, setWhen] = useState<string | null>(null);
  const [shown, setShown] = useState(false);
  const at = readWhen(when, nowMs);
  const save = () => {
    setShown(true);
    if ((!degrees.empty && !degrees.read.ok) || (!humidity.empty && !humidity.read.ok) || !at.ok) return;
    const air = degrees.read.ok ? degrees.read : null;
    const damp = humidity.read.ok ? humidity.read : null;
    onSave(
      {
        ...(chamber ? { chamber } : {}),
        ...(air ? { airC: air.value } : {}),
        ...(damp ? { rhPct: damp.value } : {}),
        ...(note.trim() ? { note: note.trim() } : {}),
        ...(air || damp
          ? { typed: { ...(air ? { airC: air.typed } : {}), ...(damp ? { rhPct: damp.typed } : {}) } }
          : {}),
      },
      at.atMs,
    );
  };
  return (
    <Sheet
      open
      onClose={onClose}
      title={hang.title}
      closeLabel={words.app.close}
      acts={
        <Button kind="primary" onPress={save} disabled={saved?.state === 'saving'}>
          {hang.save}
        </Button>
      }
    >
      {chambers.length > 0 && (
        <Choice
          label={hang.chamber}
          options={chambers.map(({ id, name }) => ({ value: id, label: name }))}
          value={chamber}
          onValue={setChamber}
        />
      )}
      <NumberField
        label={hang.temperature}
        text={degrees.text}
        onText={degrees.onText}
        unit={degreeSign(place)}
        {...(shown && !degrees.empty && !degrees.read.ok
          ? {
              problem: fields.problem(degrees.read.problem, {
                least: roomText(-5, place),
                most: roomText(40, place),
              }),
            }
          : {})}
      />
      <NumberField
        label={hang.humidity}
        text={humidity.text}
        onText={humidity.onText}
        unit="%"
        {...(shown && !humidity.empty && !humidity.read.ok
          ? { problem: fields.problem(humidity.read.problem, { least: '0 %', most: '100 %' }) }
          : {})}
      />
      <TextField label={hang.note} text={note} onText={setNote} maxLength={2000} long />
      <WhenField
        text={when}
        onText={setWhen}
        nowMs={nowMs}
        words={fields.when}
        {...(shown && !at.ok ? { problem: fields.whenProblem[at.problem] } : {})}
      />
      {saved && <SavedMark state={saved.state} text={saved.text} />}
    </Sheet>
  );
}
