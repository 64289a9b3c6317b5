import { useState } from 'react';
import type { BodyOf } from '#record/kinds.ts';
import type { Place } from '#record/place.ts';
import { Button } from '#ui/Button.tsx';
import { Notice } from '#ui/Notice.tsx';
import { NumberField } from '#ui/NumberField.tsx';
import { SavedMark, type SavedState } from '#ui/SavedMark.tsx';
import { Sheet } from '#ui/Sheet.tsx';
import { TextField } from '#ui/TextField.tsx';
import { useQuantity } from '#ui/use-quantity.ts';
import type { Words } from '#words/en.ts';
import { massUnit } from '#words/format.ts';

const MOST_G = 100_000;

/** A piece cut to look inside and hung on: weighed before and after, so that its loss goes on as it was. */
export function CutSheet({
  tareG,
  greenG,
  place,
  words,
  saved,
  onSave,
  onClose,
}: {
  tareG: number;
  greenG: number;
  place: Place;
  words: Words;
  saved: { state: SavedState; text: string } | null;
  onSave: (body: BodyOf<'cut'>) => void;
  onClose: () => void;
}) {
  const say = words.piece.cut;
  const unit = massUnit(greenG, place);
  const given = { unit, decimal: place.decimal, least: 0, most: MOST_G };
  const before = useQuantity(given);
  const after = useQuantity(given);
  const [note, setNote] = useState('');
  const [shown, setShown] = useState(false);
  const less = before.read.ok && after.read.ok && after.read.value < before.read.value;
  const above = after.read.ok && after.read.value > tareG;
  const problemOf = ({ read }: typeof before) =>
    shown && !read.ok ? { problem: words.fields.problem(read.problem, { least: '0', most: say.most }) } : {};
  const submit = () => {
    setShown(true);
    if (!before.read.ok || !after.read.ok || !less || !above) return;
    onSave({
      beforeG: before.read.value,
      afterG: after.read.value,
      typed: { beforeG: before.read.typed, afterG: after.read.typed },
      ...(note.trim() ? { note: note.trim() } : {}),
    });
  };
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
      <NumberField
        label={say.before}
        hint={say.hint}
        text={before.text}
        onText={before.onText}
        unit={unit}
        {...problemOf(before)}
      />
      <NumberField
        label={say.after}
        text={after.text}
        onText={after.onText}
        unit={unit}
        {...(shown && before.read.ok && after.read.ok && !(less && above)
          ? { problem: less ? say.onlyTare : say.notLess }
          : problemOf(after))}
      />
      <TextField label={say.note} hint={say.noteHint} text={note} onText={setNote} maxLength={2000} long />
      <Notice kind="caution">{say.caution}</Notice>
      {saved && <SavedMark state={saved.state} text={saved.text} />}
    </Sheet>
  );
}
