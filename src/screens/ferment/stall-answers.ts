import { useState } from 'react';
import type { StallFacts } from '#core/ferment/stall.ts';
import type { Place } from '#record/place.ts';
import { type Quantity, useQuantity } from '#ui/use-quantity.ts';
import type { StallField } from './stall-view.ts';

type Asked = { quantity: Quantity; unit: string; least: string; most: string };

/** What the maker says where the log says nothing; an empty field says nothing either. */
export function useStallAnswers({ decimal }: Place): {
  quantities: Readonly<Record<Exclude<StallField, 'meter'>, Asked>>;
  meter: 'good' | 'failed' | 'unsaid';
  setMeter: (meter: 'good' | 'failed' | 'unsaid') => void;
  answers: Partial<StallFacts>;
} {
  const [meter, setMeter] = useState<'good' | 'failed' | 'unsaid'>('unsaid');
  const start = useQuantity({ unit: 'pH', decimal, least: 4, most: 8 });
  const culture = useQuantity({ unit: '', decimal, least: 0, most: 50 });
  const dose = useQuantity({ unit: '', decimal, least: 0, most: 50 });
  const opened = useQuantity({ unit: 'd', decimal, least: 0, most: 5000 });
  const sugar = useQuantity({ unit: '%', decimal, least: 0, most: 20 });
  const salt = useQuantity({ unit: '%', decimal, least: 0, most: 20 });
  const value = ({ read }: Quantity) => (read.ok ? read.value : undefined);
  const said = {
    startPh: value(start),
    cultureGPerKg: value(culture),
    cultureDoseGPerKg: value(dose),
    cultureOpenedDays: value(opened),
    dextrosePct: value(sugar),
    saltPct: value(salt),
    meterCheckedOk: meter === 'unsaid' ? undefined : meter === 'good',
  };
  return {
    meter,
    setMeter,
    quantities: {
      start: { quantity: start, unit: '', least: '4', most: '8' },
      culture: { quantity: culture, unit: 'g/kg', least: '0 g/kg', most: '50 g/kg' },
      dose: { quantity: dose, unit: 'g/kg', least: '0 g/kg', most: '50 g/kg' },
      opened: { quantity: opened, unit: 'd', least: '0', most: '5000' },
      sugar: { quantity: sugar, unit: '%', least: '0 %', most: '20 %' },
      salt: { quantity: salt, unit: '%', least: '0 %', most: '20 %' },
    },
    answers: Object.fromEntries(Object.entries(said).filter(([, each]) => each !== undefined)),
  };
}
