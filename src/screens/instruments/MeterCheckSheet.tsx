import { useState } from 'react';
import type { BodyOf } from '#record/kinds.ts';
import type { Place } from '#record/place.ts';
import { Button } from '#ui/Button.tsx';
import { Choice } from '#ui/Choice.tsx';
import { NumberField } from '#ui/NumberField.tsx';
import { SavedMark, type SavedState } from '#ui/SavedMark.tsx';
import { Sentence } from '#ui/Sentence.tsx';
import { Sheet } from '#ui/Sheet.tsx';
import { type Quantity, useQuantity } from '#ui/use-quantity.ts';
import type { Words } from '#words/en.ts';

type Body = BodyOf<'meter-checked'>;

/** What the meter shows in two buffers, and how warm they are: compensation corrects the electrode, not the buffer. */
export function MeterCheckSheet({
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
  const say = words.instruments.field;
  const { fields } = words;
  const [shownIn, setShownIn] = useState<Body['shownIn']>('pH');
  const [seven, setSeven] = useState<NonNullable<Body['sevenBuffer']>>('7.00');
  const [four, setFour] = useState<NonNullable<Body['fourBuffer']>>('4.01');
  const [tried, setTried] = useState(false);
  const unit = shownIn === 'pH' ? 'pH' : '';
  const ends = shownIn === 'pH' ? { least: 0, most: 14 } : { least: -1000, most: 1000 };
  const degrees = { unit: place.temperature, decimal: place.decimal, least: 0, most: 50 } as const;
  const read = { unit, decimal: place.decimal, ...ends } as const;
  const sevenShown = useQuantity(read);
  const fourShown = useQuantity(read);
  const sevenC = useQuantity(degrees);
  const fourC = useQuantity(degrees);
  const sign = place.temperature === 'C' ? '°C' : '°F';
  const edges = place.temperature === 'C' ? ['0 °C', '50 °C'] : ['32 °F', '122 °F'];
  const shown = shownIn === 'pH' ? ['0', '14'] : ['−1000 mV', '1000 mV'];

  const field = (label: string, quantity: Quantity, unitText: string, [least = '', most = '']: string[]) => (
    <NumberField
      label={label}
      text={quantity.text}
      onText={quantity.onText}
      {...(unitText ? { unit: unitText } : {})}
      {...(shownIn === 'mV' && unitText === 'mV' ? { signLabel: fields.keyboard.sign } : {})}
      {...(tried && !quantity.read.ok
        ? { problem: fields.problem(quantity.read.problem, { least, most }) }
        : {})}
    />
  );
  const save = () => {
    setTried(true);
    if (!sevenShown.read.ok || !fourShown.read.ok || !sevenC.read.ok || !fourC.read.ok) return;
    onSave({
      shownIn,
      sevenBuffer: seven,
      sevenC: sevenC.read.value,
      sevenShown: sevenShown.read.value,
      fourBuffer: four,
      fourC: fourC.read.value,
      fourShown: fourShown.read.value,
      typed: {
        sevenC: sevenC.read.typed,
        sevenShown: { ...sevenShown.read.typed, unit: shownIn },
        fourC: fourC.read.typed,
        fourShown: { ...fourShown.read.typed, unit: shownIn },
      },
    });
  };
  const showing = shownIn === 'mV' ? 'mV' : '';
  return (
    <Sheet
      open
      onClose={onClose}
      title={words.instruments.act['ph-meter']}
      closeLabel={words.app.close}
      acts={
        <Button kind="primary" disabled={saved?.state === 'saving'} onPress={save}>
          {say.save}
        </Button>
      }
    >
      <Sentence tokens={words.instruments.one.how['ph-meter']} />
      <Choice
        label={say.shownIn}
        options={(['pH', 'mV'] as const).map((value) => ({ value, label: value }))}
        value={shownIn}
        onValue={setShownIn}
      />
      <Choice
        label={say.seven}
        options={(['7.00', '6.86'] as const).map((value) => ({ value, label: value }))}
        value={seven}
        onValue={setSeven}
      />
      {field(say.shown(seven), sevenShown, showing, shown)}
      {field(say.warmth(seven), sevenC, sign, edges)}
      <Choice
        label={say.four}
        options={(['4.01', '4.00'] as const).map((value) => ({ value, label: value }))}
        value={four}
        onValue={setFour}
      />
      {field(say.shown(four), fourShown, showing, shown)}
      {field(say.warmth(four), fourC, sign, edges)}
      {saved && <SavedMark state={saved.state} text={saved.text} />}
    </Sheet>
  );
}
