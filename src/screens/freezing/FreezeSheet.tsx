import { useState } from 'react';
import type { BodyOf } from '#record/kinds.ts';
import type { Place } from '#record/place.ts';
import { Button } from '#ui/Button.tsx';
import { Choice } from '#ui/Choice.tsx';
import { NumberField } from '#ui/NumberField.tsx';
import { SavedMark, type SavedState } from '#ui/SavedMark.tsx';
import { Sheet } from '#ui/Sheet.tsx';
import { useQuantity } from '#ui/use-quantity.ts';
import { WhenField } from '#ui/WhenField.tsx';
import { readWhen } from '#ui/when-input.ts';
import type { Words } from '#words/en.ts';

export type FreezerSheetProps<Body> = {
  place: Place;
  words: Words;
  nowMs: number;
  saved: { state: SavedState; text: string } | null;
  onSave: (body: Body, atMs: number | null) => void;
  onClose: () => void;
};

/** Into the freezer: how thick, and by which temperature the table is read. */
export function FreezeSheet({
  place,
  words,
  nowMs,
  saved,
  onSave,
  onClose,
}: FreezerSheetProps<BodyOf<'frozen'>>) {
  const say = words.freezing.freezeSheet;
  const { fields } = words;
  const unit = place.mass === 'pounds' ? 'in' : 'mm';
  const thick = useQuantity({ unit, decimal: place.decimal, least: 1, most: 1000 });
  const [method, setMethod] = useState<'room' | 'core' | null>(null);
  const [when, setWhen] = useState<string | null>(null);
  const [shown, setShown] = useState(false);
  const at = readWhen(when, nowMs);
  const save = () => {
    setShown(true);
    if (!thick.read.ok || method === null || !at.ok) return;
    onSave({ thicknessMm: thick.read.value, method, typed: { thicknessMm: thick.read.typed } }, at.atMs);
  };
  return (
    <Sheet
      open
      onClose={onClose}
      title={words.freezing.act.freeze}
      closeLabel={words.app.close}
      acts={
        <Button kind="primary" disabled={saved?.state === 'saving'} onPress={save}>
          {say.save}
        </Button>
      }
    >
      <NumberField
        label={say.thickness}
        text={thick.text}
        onText={thick.onText}
        unit={unit}
        {...(shown && !thick.read.ok
          ? { problem: fields.problem(thick.read.problem, { least: '1 mm', most: '1000 mm' }) }
          : {})}
      />
      <Choice
        label={say.method}
        hint={say.hint}
        options={[
          { value: 'room' as const, label: say.room },
          { value: 'core' as const, label: say.core },
        ]}
        value={method}
        onValue={setMethod}
        {...(shown && method === null ? { problem: fields.choose } : {})}
      />
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
