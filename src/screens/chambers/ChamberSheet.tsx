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
const MOST_PLACES = 200;

/** Name and rails of a chamber, new or changed; how many pieces hang from a rail may stay unsaid. */
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
  const [places, setPlaces] = useState(String(chamber?.places ?? ''));
  const [shown, setShown] = useState(false);
  const say = words.chambers;
  const whole = (text: string, most: number) => {
    const read = readQuantity({ text, unit: '', decimal: '.', least: 1, most });
    if (!read.ok) return { problem: words.fields.problem(read.problem, { least: '1', most: String(most) }) };
    return Number.isInteger(read.value) ? { value: read.value } : { problem: say.railsWhole };
  };
  const railCount = whole(rails, MOST_RAILS);
  const placeCount = places.trim() === '' ? null : whole(places, MOST_PLACES);
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
            if (name.trim() === '' || !('value' in railCount)) return;
            if (placeCount !== null && !('value' in placeCount)) return;
            onSave({
              name: name.trim(),
              rails: railCount.value,
              ...(placeCount ? { places: placeCount.value } : {}),
            });
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
        {...(shown && 'problem' in railCount ? { problem: railCount.problem } : {})}
      />
      <NumberField
        label={say.places}
        hint={say.placesHint}
        text={places}
        onText={setPlaces}
        {...(shown && placeCount && 'problem' in placeCount ? { problem: placeCount.problem } : {})}
      />
      {saved && <SavedMark state={saved.state} text={saved.text} />}
    </Sheet>
  );
}
