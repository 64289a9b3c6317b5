import { useState } from 'react';
import type { Place } from '#record/place.ts';
import { Button } from '#ui/Button.tsx';
import { DateTimeField } from '#ui/DateTimeField.tsx';
import { NumberField } from '#ui/NumberField.tsx';
import { SavedMark, type SavedState } from '#ui/SavedMark.tsx';
import { Sheet } from '#ui/Sheet.tsx';
import { TextField } from '#ui/TextField.tsx';
import { useQuantity } from '#ui/use-quantity.ts';
import { localText } from '#ui/when-input.ts';
import type { Words } from '#words/en.ts';

type Shared = {
  words: Words;
  place: Place;
  nowMs: number;
  saved: { state: SavedState; text: string } | null;
  onClose: () => void;
};

const SIX_HOURS_MS = 6 * 3_600_000;

/** When stuffing is to begin: a time ahead, unlike all others in the book. */
export function PlanSheet({
  words,
  nowMs,
  saved,
  onSave,
  onClose,
}: Shared & { onSave: (atMs: number) => void }) {
  const say = words.timers;
  const [text, setText] = useState(() => localText(nowMs + SIX_HOURS_MS));
  const [shown, setShown] = useState(false);
  const atMs = new Date(text).getTime();
  const isAhead = Number.isFinite(atMs) && atMs > nowMs;
  return (
    <Sheet
      open
      onClose={onClose}
      title={say.plan}
      closeLabel={words.app.close}
      acts={
        <Button
          kind="primary"
          disabled={saved?.state === 'saving'}
          onPress={() => {
            setShown(true);
            if (isAhead) onSave(atMs);
          }}
        >
          {say.save}
        </Button>
      }
    >
      <DateTimeField
        label={say.planField}
        text={text}
        onText={setText}
        {...(shown && !isAhead ? { problem: say.ahead } : {})}
      />
      {saved && <SavedMark state={saved.state} text={saved.text} />}
    </Sheet>
  );
}

export function TimerSheet({
  words,
  place,
  saved,
  onSave,
  onClose,
}: Shared & { onSave: (name: string, minutes: number) => void }) {
  const say = words.timers;
  const [name, setName] = useState('');
  const minutes = useQuantity({ unit: 'min', decimal: place.decimal, least: 1, most: 10_000 });
  const [shown, setShown] = useState(false);
  return (
    <Sheet
      open
      onClose={onClose}
      title={say.set}
      closeLabel={words.app.close}
      acts={
        <Button
          kind="primary"
          disabled={saved?.state === 'saving'}
          onPress={() => {
            setShown(true);
            if (name.trim() && minutes.read.ok) onSave(name.trim(), minutes.read.value);
          }}
        >
          {say.save}
        </Button>
      }
    >
      <TextField
        label={say.name}
        text={name}
        onText={setName}
        maxLength={60}
        {...(shown && !name.trim() ? { problem: say.needed } : {})}
      />
      <NumberField
        label={say.minutes}
        text={minutes.text}
        onText={minutes.onText}
        unit="min"
        {...(shown && !minutes.read.ok
          ? { problem: words.fields.problem(minutes.read.problem, { least: '1 min', most: '10 000 min' }) }
          : {})}
      />
      {saved && <SavedMark state={saved.state} text={saved.text} />}
    </Sheet>
  );
}
