import { useState } from 'react';
import type { BodyOf } from '#record/kinds.ts';
import type { Place } from '#record/place.ts';
import { Button } from '#ui/Button.tsx';
import { Choice } from '#ui/Choice.tsx';
import { NumberField } from '#ui/NumberField.tsx';
import { readQuantity } from '#ui/quantity-input.ts';
import { SavedMark, type SavedState } from '#ui/SavedMark.tsx';
import { Sheet } from '#ui/Sheet.tsx';
import { TextField } from '#ui/TextField.tsx';
import type { Words } from '#words/en.ts';

type Body = BodyOf<'product-measured'>;
type Measure = Body['measure'];

const BOUNDS: Readonly<Record<Measure, { least: number; most: number }>> = {
  aw: { least: 0.3, most: 1 },
  mpr: { least: 0.1, most: 10 },
};

/** A water activity or a ratio that a meter or a laboratory gave: it counts before anything computed. */
export function MeasuredSheet({
  place,
  words,
  saved,
  onSave,
  onClose,
}: {
  place: Place;
  words: Words;
  saved: { state: SavedState; text: string } | null;
  onSave: (body: Body) => void;
  onClose: () => void;
}) {
  const say = words.dryness.sheet;
  const [measure, setMeasure] = useState<Measure | null>(null);
  const [text, setText] = useState('');
  const [by, setBy] = useState('');
  const [note, setNote] = useState('');
  const [shown, setShown] = useState(false);
  const bounds = BOUNDS[measure ?? 'aw'];
  const read = readQuantity({ text, unit: '', decimal: place.decimal, ...bounds });
  const submit = () => {
    setShown(true);
    if (measure === null || !read.ok || !by.trim()) return;
    onSave({
      measure,
      value: read.value,
      by: by.trim(),
      typed: { value: read.typed },
      ...(note.trim() ? { note: note.trim() } : {}),
    });
  };
  const problem =
    shown && !read.ok
      ? {
          problem: words.fields.problem(read.problem, {
            least: words.workings.exactly(bounds.least, place),
            most: words.workings.exactly(bounds.most, place),
          }),
        }
      : {};
  return (
    <Sheet
      open
      onClose={onClose}
      title={say.title}
      closeLabel={words.app.close}
      acts={
        <Button kind="primary" disabled={saved?.state === 'saving'} onPress={submit}>
          {say.save}
        </Button>
      }
    >
      <Choice
        label={say.measure}
        options={[
          { value: 'aw', label: say.measures.aw },
          { value: 'mpr', label: say.measures.mpr },
        ]}
        value={measure}
        onValue={setMeasure}
        {...(shown && measure === null ? { problem: say.choose } : {})}
      />
      <NumberField
        label={say.value}
        hint={say.valueHint[measure ?? 'aw']}
        text={text}
        onText={setText}
        {...problem}
      />
      <TextField
        label={say.by}
        hint={say.byHint}
        text={by}
        onText={setBy}
        maxLength={200}
        {...(shown && !by.trim() ? { problem: say.needed } : {})}
      />
      <TextField label={say.note} text={note} onText={setNote} maxLength={2000} long />
      {saved && <SavedMark state={saved.state} text={saved.text} />}
    </Sheet>
  );
}
