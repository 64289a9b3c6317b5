import { finalPhBand } from '#core/formula/final-ph.ts';
import type { Formula } from '#core/formula/formula.ts';
import {
  FEWEST_BATCHES,
  type FinishedFerment,
  ownFactor,
  PRACTICE_FACTOR,
  sugarForPh,
  sugarInMix,
} from '#core/formula/sugar.ts';
import type { Place } from '#record/place.ts';
import type { Words } from '#words/en.ts';
import { decimal } from '#words/format.ts';
import { type CalcView, readFields, type Texts } from './calc-view.ts';
import type { FormulaPlan } from './formula-plan.ts';

/** The start at which the estimate of the end was read to hold. */
const HOLDS = { low: 5.4, high: 6.2, mostGPerKg: 10 };

export function sugarView({
  texts,
  formula,
  plan,
  ferments,
  place,
  words,
}: {
  texts: Texts;
  formula: Formula;
  plan: FormulaPlan | null;
  /** Finished ferments of this very formula. */
  ferments: readonly FinishedFerment[];
  place: Place;
  words: Words;
}): CalcView {
  const say = words.formulaSheets.sugar;
  const ph = (key: 'startPh' | 'targetPh', first: string) =>
    ({ key, label: say.field[key], unit: 'pH', least: 4, most: 7, first }) as const;
  const { views, values } = readFields([ph('startPh', ''), ph('targetPh', '')], texts, place, words);
  const sugar = plan
    ? sugarInMix({
        formula,
        meatG: plan.out.leanG + plan.out.fatG,
        gramsByLine: plan.out.lines.map(({ exactG }) => exactG),
      })
    : null;
  const one = (value: number) => decimal(value, 1, place);
  const band = (low: number, high: number, unit = '') => `${say.band(one(low), one(high))}${unit}`;
  const inIt = sugar
    ? [
        { label: say.inIt, value: band(sugar.addedLowGPerKg, sugar.addedHighGPerKg, '\u00a0g/kg') },
        ...(sugar.hiddenGPerKg > 0
          ? [{ label: say.hidden, value: `~${one(sugar.hiddenGPerKg)}\u00a0g/kg` }]
          : []),
      ]
    : [];
  const own = ownFactor(ferments);
  const notes = own
    ? [say.own(own.batches, decimal(own.lowGPerKg, 2, place), decimal(own.highGPerKg, 2, place))]
    : [say.note, ...(ferments.length > 0 ? [say.ownLater(ferments.length, FEWEST_BATCHES)] : [])];
  if (values === null) {
    // Where it ends needs no target.
    const started = readFields([ph('startPh', '')], texts, place, words).values;
    const ends = started ? endsAt(started.startPh, sugar, band, words) : [];
    return { fields: views, results: [...inIt, ...ends], notes };
  }
  const { startPh, targetPh } = values;
  if (!(targetPh < startPh)) return { fields: views, results: inIt, notes: [say.order, ...notes] };
  const need = sugarForPh({
    startPh,
    targetPh,
    factor: own ?? PRACTICE_FACTOR,
    hiddenGPerKg: sugar?.hiddenGPerKg ?? 0,
  });
  return {
    fields: views,
    results: [
      { label: say.need, value: band(need.addLowGPerKg, need.addHighGPerKg, '\u00a0g/kg') },
      ...inIt,
      ...endsAt(startPh, sugar, band, words),
    ],
    notes,
  };
}

function endsAt(
  startPh: number,
  sugar: ReturnType<typeof sugarInMix> | null,
  band: (low: number, high: number) => string,
  words: Words,
) {
  if (sugar === null || !(startPh > HOLDS.low && startPh < HOLDS.high)) return [];
  const least = sugar.addedLowGPerKg + sugar.hiddenGPerKg;
  const most = sugar.addedHighGPerKg + sugar.hiddenGPerKg;
  if (!(most > 0 && most <= HOLDS.mostGPerKg)) return [];
  const { lowPh } = finalPhBand({ startPh, dextroseGPerKg: most });
  const { highPh } = finalPhBand({ startPh, dextroseGPerKg: least });
  return [{ label: words.formulaSheets.sugar.ends, value: band(lowPh, highPh) }];
}
