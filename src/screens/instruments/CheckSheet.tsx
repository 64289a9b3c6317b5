import { useState } from 'react';
import type { Place } from '#record/place.ts';
import type { Fact } from '#store/use-append.ts';
import { Button } from '#ui/Button.tsx';
import { NumberField } from '#ui/NumberField.tsx';
import { SavedMark, type SavedState } from '#ui/SavedMark.tsx';
import { Sentence } from '#ui/Sentence.tsx';
import { Sheet } from '#ui/Sheet.tsx';
import { useQuantity } from '#ui/use-quantity.ts';
import type { Words } from '#words/en.ts';
import type { What } from './instrument-view.ts';

type Checked = Pick<
  Extract<Fact, { kind: 'thermometer-checked' | 'hygrometer-checked' | 'scale-checked' }>,
  'kind' | 'body'
>;

/** One number where the truth is known: melting ice, wet salt, a check weight. */
export function CheckSheet({
  what,
  stepG,
  place,
  words,
  saved,
  onSave,
  onClose,
}: {
  what: Exclude<What, 'ph-meter'>;
  stepG: number | undefined;
  place: Place;
  words: Words;
  saved: { state: SavedState; text: string } | null;
  onSave: (fact: Checked) => void;
  onClose: () => void;
}) {
  const say = words.instruments.field;
  const { fields } = words;
  const { decimal } = place;
  const ice = useQuantity({ unit: place.temperature, decimal, least: -40, most: 60 });
  const salt = useQuantity({ unit: '%', decimal, least: 0, most: 100 });
  const rested = useQuantity({ unit: 'h', decimal, least: 0, most: 1000 });
  const weight = useQuantity({ unit: 'g', decimal, least: 0.001, most: 1_000_000 });
  const shown = useQuantity({ unit: 'g', decimal, least: 0, most: 1_000_000 });
  const [tried, setTried] = useState(false);
  const sign = place.temperature === 'C' ? '°C' : '°F';
  const inC = place.temperature === 'C';
  const rows = {
    thermometer: [[say.ice, ice, sign, inC ? '−40 °C' : '−40 °F', inC ? '60 °C' : '140 °F']],
    hygrometer: [
      [say.salt, salt, '%', '0 %', '100 %'],
      [say.rested, rested, 'h', '0 h', '1000 h'],
    ],
    scale: [
      [say.weight, weight, 'g', '0.001 g', '1000 kg'],
      [say.shownWeight, shown, 'g', '0 g', '1000 kg'],
    ],
  } as const;
  const save = () => {
    setTried(true);
    if (what === 'thermometer' && ice.read.ok)
      onSave({
        kind: 'thermometer-checked',
        body: { shownC: ice.read.value, typed: { shownC: ice.read.typed } },
      });
    if (what === 'hygrometer' && salt.read.ok && rested.read.ok)
      onSave({
        kind: 'hygrometer-checked',
        body: {
          shownRhPct: salt.read.value,
          restedHours: rested.read.value,
          typed: { shownRhPct: salt.read.typed, restedHours: rested.read.typed },
        },
      });
    if (what === 'scale' && weight.read.ok && shown.read.ok)
      onSave({
        kind: 'scale-checked',
        body: {
          weightG: weight.read.value,
          shownG: shown.read.value,
          ...(stepG === undefined ? {} : { stepG }),
          typed: { weightG: weight.read.typed, shownG: shown.read.typed },
        },
      });
  };
  return (
    <Sheet
      open
      onClose={onClose}
      title={words.instruments.act[what]}
      closeLabel={words.app.close}
      acts={
        <Button kind="primary" disabled={saved?.state === 'saving'} onPress={save}>
          {say.save}
        </Button>
      }
    >
      <Sentence tokens={words.instruments.one.how[what]} />
      {rows[what].map(([label, quantity, unit, least, most]) => (
        <NumberField
          key={label}
          label={label}
          text={quantity.text}
          onText={quantity.onText}
          unit={unit}
          {...(what === 'thermometer' ? { signLabel: fields.keyboard.sign } : {})}
          {...(tried && !quantity.read.ok
            ? { problem: fields.problem(quantity.read.problem, { least, most }) }
            : {})}
        />
      ))}
      {saved && <SavedMark state={saved.state} text={saved.text} />}
    </Sheet>
  );
}
