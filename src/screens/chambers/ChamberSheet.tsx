import { useState } from 'react';
import type { BodyOf } from '#record/kinds.ts';
import { Button } from '#ui/Button.tsx';
import { NumberField } from '#ui/NumberField.tsx';
import { readQuantity } from '#ui/quantity-input.ts';
import { SavedMark, type SavedState } from '#ui/SavedMark.tsx';
import { Sheet } from '#ui/Sheet.tsx';
import { TextField } from '#ui/TextField.tsx';
import type { Words } from '#words/en.ts';

const MOST_RAILS = 40;

/** Name and rails of a chamber, new or changed. */
export function ChamberSheet({
  chamber,
  words,
  saved,
  onSave,
  onClose,
}: {
  chamber: BodyOf<'chamber-added'> | null;
  words: Words;
  saved: { state: SavedState; text: string } | null;
  onSave: (body: BodyOf<'chamber-added'>) => void;
  onClose: () => void;
}) {
  const [name, setName] = useState(chamber?.name ?? '');
  const [rails, setRails] = useState(String(chamber?.rails ?? 1));
  const [shown, setShown] = useState(false);
  const say = words.chambers;
  const read = readQuantity({ text: rails, unit: '', decimal: '.', least: 1, most: MOST_RAILS });
  const whole = read.ok && Number.isInteger(read.value);
  const problem = !read.ok
    ? words.fields.problem(read.problem, { least: '1', most: String(MOST_RAILS) })
    : whole
      ? null
      : say.railsWhole;
  return (
    <Sheet
      open
      onClose={onClose}
      title={chamber ? say.changeTitle : say.addTitle}
      closeLabel={words.app.close}
      acts={
        <Button
          kind="primary"
          disabled={saved?.state === 'saving'}
          onPress={() => {
            setShown(true);
            if (name.trim() && read.ok && whole) onSave({ name: name.trim(), rails: read.value });
          }}
        >
          {say.save}
        </Button>
      }
    >
      <TextField
        label={say.name}
        hint={say.nameHint}
        text={name}
        onText={setName}
        maxLength={80}
        {...(shown && name.trim() === '' ? { problem: words.fields.needed } : {})}
      />
      <NumberField
        label={say.rails}
        hint={say.railsHint}
        text={rails}
        onText={setRails}
        {...(shown && problem ? { problem } : {})}
      />
      {saved && <SavedMark state={saved.state} text={saved.text} />}
    </Sheet>
  );
}
