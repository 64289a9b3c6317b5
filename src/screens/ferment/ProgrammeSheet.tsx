import { useState } from 'react';
import type { BodyOf } from '#record/kinds.ts';
import { Button } from '#ui/Button.tsx';
import { Choice } from '#ui/Choice.tsx';
import { NumberField } from '#ui/NumberField.tsx';
import { SavedMark } from '#ui/SavedMark.tsx';
import { Sheet } from '#ui/Sheet.tsx';
import { useQuantity } from '#ui/use-quantity.ts';
import { roomText } from './ferment-view.ts';
import { degreeSign, type SheetProps } from './sheet.ts';

type Body = BodyOf<'ferment-set'>;

/** What the room is set to, and how fast the culture is: the pH window rests on it. */
export function ProgrammeSheet({
  place,
  words,
  saved,
  set,
  onSave,
  onClose,
}: SheetProps<Body> & { set: Body | null }) {
  const say = words.fermentAhead.programme;
  const { fields } = words;
  const degrees = useQuantity({ unit: place.temperature, decimal: place.decimal, least: 0, most: 50 });
  const humidity = useQuantity({ unit: '%', decimal: place.decimal, least: 0, most: 100 });
  const [pace, setPace] = useState<NonNullable<Body['pace']> | 'unsaid'>(set?.pace ?? 'unsaid');
  const [shown, setShown] = useState(false);
  const save = () => {
    setShown(true);
    if (!degrees.read.ok || (!humidity.empty && !humidity.read.ok)) return;
    const damp = humidity.read.ok ? humidity.read : null;
    onSave(
      {
        roomC: degrees.read.value,
        ...(damp ? { rhPct: damp.value } : {}),
        ...(pace === 'unsaid' ? {} : { pace }),
        typed: { roomC: degrees.read.typed, ...(damp ? { rhPct: damp.typed } : {}) },
      },
      null,
    );
  };
  return (
    <Sheet
      open
      onClose={onClose}
      title={say.title}
      closeLabel={words.app.close}
      acts={
        <Button kind="primary" disabled={saved?.state === 'saving'} onPress={save}>
          {say.save}
        </Button>
      }
    >
      <NumberField
        label={say.room}
        hint={say.roomHint(roomText(24, place), roomText(29, place))}
        text={degrees.text}
        onText={degrees.onText}
        unit={degreeSign(place)}
        {...(shown && !degrees.read.ok
          ? {
              problem: fields.problem(degrees.read.problem, {
                least: roomText(0, place),
                most: roomText(50, place),
              }),
            }
          : {})}
      />
      <NumberField
        label={say.humidity}
        hint={say.humidityHint}
        text={humidity.text}
        onText={humidity.onText}
        unit="%"
        {...(shown && !humidity.empty && !humidity.read.ok
          ? { problem: fields.problem(humidity.read.problem, { least: '0 %', most: '100 %' }) }
          : {})}
      />
      <Choice
        label={say.pace}
        hint={say.paceHint}
        options={(['fast', 'medium', 'slow', 'none', 'unsaid'] as const).map((value) => ({
          value,
          label: say.paces[value],
        }))}
        value={pace}
        onValue={setPace}
      />
      {saved && <SavedMark state={saved.state} text={saved.text} />}
    </Sheet>
  );
}
