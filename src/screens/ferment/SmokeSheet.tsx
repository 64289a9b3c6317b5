import { useState } from 'react';
import type { Fact } from '#store/use-append.ts';
import { Button } from '#ui/Button.tsx';
import { NumberField } from '#ui/NumberField.tsx';
import { SavedMark } from '#ui/SavedMark.tsx';
import { Sheet } from '#ui/Sheet.tsx';
import { TextField } from '#ui/TextField.tsx';
import { useQuantity } from '#ui/use-quantity.ts';
import { WhenField } from '#ui/WhenField.tsx';
import { readWhen } from '#ui/when-input.ts';
import { roomText } from './ferment-view.ts';
import { degreeSign, type SheetProps } from './sheet.ts';

type Body = Extract<Fact, { kind: 'smoked' }>['body'];

export function SmokeSheet({ place, words, nowMs, saved, onSave, onClose }: SheetProps<Body>) {
  const { smoke } = words.ferment;
  const { fields } = words;
  const hours = useQuantity({ unit: 'h', decimal: place.decimal, least: 0, most: 500 });
  const degrees = useQuantity({ unit: place.temperature, decimal: place.decimal, least: -20, most: 100 });
  const [note, setNote] = useState('');
  const [when, setWhen] = useState<string | null>(null);
  const [shown, setShown] = useState(false);
  const at = readWhen(when, nowMs);
  const save = () => {
    setShown(true);
    if (!hours.read.ok || (!degrees.empty && !degrees.read.ok) || !at.ok) return;
    const warm = degrees.read.ok ? degrees.read : null;
    onSave(
      {
        hours: hours.read.value,
        ...(warm ? { tempC: warm.value } : {}),
        ...(note.trim() ? { note: note.trim() } : {}),
        typed: { hours: hours.read.typed, ...(warm ? { tempC: warm.typed } : {}) },
      },
      at.atMs,
    );
  };
  return (
    <Sheet
      open
      onClose={onClose}
      title={smoke.title}
      closeLabel={words.app.close}
      acts={
        <Button kind="primary" onPress={save} disabled={saved?.state === 'saving'}>
          {smoke.save}
        </Button>
      }
    >
      <NumberField
        label={smoke.hours}
        text={hours.text}
        onText={hours.onText}
        unit="h"
        {...(shown && !hours.read.ok
          ? { problem: fields.problem(hours.read.problem, { least: '0 h', most: '500 h' }) }
          : {})}
      />
      <NumberField
        label={smoke.temperature}
        text={degrees.text}
        onText={degrees.onText}
        unit={degreeSign(place)}
        signLabel={fields.keyboard.sign}
        {...(shown && !degrees.empty && !degrees.read.ok
          ? {
              problem: fields.problem(degrees.read.problem, {
                least: roomText(-20, place),
                most: roomText(100, place),
              }),
            }
          : {})}
      />
      <TextField label={smoke.note} text={note} onText={setNote} maxLength={2000} long />
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
