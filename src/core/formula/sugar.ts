import type { Formula, MassesG, SugarKind } from './formula.ts';

/** Sugar and the pH it ends at. Two trade rules differ threefold, so all that is said is a band, until own batches narrow it. */

/** Grams of dextrose per kg that take the pH down by a tenth, at the least and at the most. */
export type SugarFactor = {
  readonly lowGPerKg: number;
  readonly highGPerKg: number;
  readonly from: 'practice' | 'own-batches';
  readonly batches: number;
};

/** Two rules of practitioners, 0.3 and 1 g/kg a tenth of a pH, both seen in forum threads (read). Neither is a limit. */
export const PRACTICE_FACTOR: SugarFactor = {
  lowGPerKg: 0.3,
  highGPerKg: 1,
  from: 'practice',
  batches: 0,
};

/** What one gram does against one gram of dextrose, least and most (from memory, medium: molar mass, water, slow strains). */
const AS_DEXTROSE: Readonly<Record<SugarKind, readonly [number, number]>> = {
  dextrose: [0.91, 1],
  sucrose: [0.9, 1.05],
  fructose: [0.9, 1],
  lactose: [0.5, 1.05],
  maltodextrin: [0.2, 0.9],
  honey: [0.7, 0.8],
  other: [0, 1],
};

export type SugarInMix = {
  /** As dextrose, g per kg of meat: what was weighed as sugar, and what hides in wine, must, paprika. */
  readonly addedLowGPerKg: number;
  readonly addedHighGPerKg: number;
  readonly hiddenGPerKg: number;
};

/**
 * The sugar in a formula as dextrose, the hidden sugar with it.
 *
 * Wrong tool: for meat's own glucose, about 1 g/kg; every rule here was found with it in the meat.
 *
 * Units: g per kg of meat.
 * Source: shares of dextrose by molar mass and fermentability (memory-medium); hidden sugar as the maker states it.
 * @throws RangeError if there is no meat or the grams do not match the lines.
 * @example sugarInMix({ formula: { name: '', kind: 'comminuted', species: [], fatPctOfMeat: 25, lines: [{ id: 'w', name: '', role: 'liquid', amount: { basis: 'fixed', amountG: 25 }, hiddenSugarPct: 4 }] }, meatG: 1000, gramsByLine: [25] }) // => { addedLowGPerKg: 0, addedHighGPerKg: 0, hiddenGPerKg: 1 }
 */
export function sugarInMix({
  formula,
  meatG,
  gramsByLine,
}: {
  formula: Formula;
  meatG: number;
  gramsByLine: MassesG;
}): SugarInMix {
  if (!(meatG > 0) || gramsByLine.length !== formula.lines.length)
    throw new RangeError(`sugarInMix: gramsByLine requires meat and one mass a line, got ${meatG} g of meat`);
  const perKg = (of: (line: Formula['lines'][number]) => number) =>
    formula.lines.reduce(
      (sum, line, at) =>
        line.role === 'mould' ? sum : sum + ((gramsByLine[at] ?? 0) * of(line) * 1000) / meatG,
      0,
    );
  const share = (end: 0 | 1) => (line: Formula['lines'][number]) =>
    line.role === 'sugar' ? AS_DEXTROSE[line.sugarKind ?? 'other'][end] : 0;
  return {
    addedLowGPerKg: perKg(share(0)),
    addedHighGPerKg: perKg(share(1)),
    hiddenGPerKg: perKg(({ role, hiddenSugarPct = 0 }) => (role === 'sugar' ? 0 : hiddenSugarPct / 100)),
  };
}

export type SugarToAdd = {
  readonly needLowGPerKg: number;
  readonly needHighGPerKg: number;
  /** After the hidden sugar; 0 where that is already enough. */
  readonly addLowGPerKg: number;
  readonly addHighGPerKg: number;
  readonly from: SugarFactor['from'];
};

/**
 * Dextrose to add for a wanted final pH, as a band.
 *
 * Wrong tool: to steer a batch that is stuffed, or to promise a pH. The pH is measured, and degree-hours count until it is.
 *
 * Formula: (start - target) x 10 x factor, less hidden sugar.
 * Units: g per kg of meat.
 * Source: two practitioners' rules from forum threads (read), or own past batches.
 * @throws RangeError if the target is not below the start.
 * @example sugarForPh({ startPh: 5.8, targetPh: 5.1, factor: { lowGPerKg: 0.5, highGPerKg: 1, from: 'practice', batches: 0 }, hiddenGPerKg: 1 }) // => { needLowGPerKg: 3.5, needHighGPerKg: 7, addLowGPerKg: 2.5, addHighGPerKg: 6, from: 'practice' }
 */
export function sugarForPh({
  startPh,
  targetPh,
  factor,
  hiddenGPerKg,
}: {
  startPh: number;
  targetPh: number;
  factor: SugarFactor;
  hiddenGPerKg: number;
}): SugarToAdd {
  if (!(targetPh < startPh))
    throw new RangeError(
      `sugarForPh: targetPh requires less than the start, got ${targetPh} from ${startPh}`,
    );
  const tenths = 10 * (startPh - targetPh);
  const needLowGPerKg = tenths * factor.lowGPerKg;
  const needHighGPerKg = tenths * factor.highGPerKg;
  return {
    needLowGPerKg,
    needHighGPerKg,
    addLowGPerKg: Math.max(0, needLowGPerKg - hiddenGPerKg),
    addHighGPerKg: Math.max(0, needHighGPerKg - hiddenGPerKg),
    from: factor.from,
  };
}

export type FinishedFerment = {
  readonly startPh: number;
  readonly endPh: number;
  /** All of it as dextrose, the hidden with it. */
  readonly sugarGPerKg: number;
};

/** Student's t, 80 % two-sided, by degrees of freedom 2 to 9; beyond, the value at 10 (memory-high). */
const T80 = [1.886, 1.638, 1.533, 1.476, 1.44, 1.415, 1.397, 1.383] as const;
const T80_BEYOND = 1.372;
export const FEWEST_BATCHES = 3;

/**
 * The maker's own factor: where the next batch falls in 8 of 10 cases, from at least three batches. Null with fewer.
 *
 * Wrong tool: across cultures, meats or ferment temperatures; give it batches of one kind.
 *
 * Formula: k = sugar / (10 x fall of pH); ln k taken as normal; mean ± t x sd x sqrt(1 + 1/n).
 * Units: g of dextrose per kg and tenth of a pH.
 * Source: prediction interval of a normal sample (memory-high).
 * @example ownFactor([{ startPh: 5.8, endPh: 5.0, sugarGPerKg: 4 }]) // => null
 */
export function ownFactor(ferments: readonly FinishedFerment[]): SugarFactor | null {
  const logs = ferments
    .filter(({ startPh, endPh, sugarGPerKg }) => startPh > endPh && sugarGPerKg > 0)
    .map(({ startPh, endPh, sugarGPerKg }) => Math.log(sugarGPerKg / (10 * (startPh - endPh))));
  const batches = logs.length;
  if (batches < FEWEST_BATCHES) return null;
  const mean = logs.reduce((sum, log) => sum + log, 0) / batches;
  const variance = logs.reduce((sum, log) => sum + (log - mean) ** 2, 0) / (batches - 1);
  const reach = (T80[batches - FEWEST_BATCHES] ?? T80_BEYOND) * Math.sqrt(variance * (1 + 1 / batches));
  return {
    lowGPerKg: Math.exp(mean - reach),
    highGPerKg: Math.exp(mean + reach),
    from: 'own-batches',
    batches,
  };
}
