import type { Composition } from './composition.ts';

/** What a green mix becomes when it loses weight: all that leaves is taken as water. */

export type Slice = {
  readonly moisturePct: number;
  readonly proteinPct: number;
  readonly fatPct: number;
  readonly saltPct: number;
  /** Moisture to protein, by weight. */
  readonly mpr: number;
  /** Salt in salt and water together. */
  readonly waterPhaseSaltPct: number;
};

/**
 * The slice after so much loss of green weight.
 *
 * Wrong tool: for water activity, and as an analysis: it is only as good as the composition it starts from.
 *
 * Formula: y = 1 - loss; moisture = (w0 - loss) / y; protein, fat and salt = p0, f0, s0 / y; MPR = (w0 - loss) / p0.
 * Units: percent of the slice; MPR g/g.
 * Source: mass balance (derived).
 * @throws RangeError if the loss is more than the water there is.
 * @example sliceAfterLoss({ composition: { waterFraction: 0.6, proteinFraction: 0.16, fatFraction: 0.2, saltFraction: 0.03, sugarFraction: 0, otherFraction: 0.01 }, lossPct: 40 }).saltPct // => 5
 */
export function sliceAfterLoss({
  composition,
  lossPct,
}: {
  composition: Composition;
  lossPct: number;
}): Slice {
  const { waterFraction, proteinFraction, fatFraction, saltFraction } = composition;
  const loss = lossPct / 100;
  const waterLeft = waterFraction - loss;
  if (!(waterLeft > 0))
    throw new RangeError(`sliceAfterLoss: lossPct requires less than the water of the mix, got ${lossPct}`);
  const yieldPct = 100 - lossPct;
  const ofSlice = (share: number) => (1e4 * share) / yieldPct;
  return {
    moisturePct: ofSlice(waterLeft),
    proteinPct: ofSlice(proteinFraction),
    fatPct: ofSlice(fatFraction),
    saltPct: ofSlice(saltFraction),
    mpr: waterLeft / proteinFraction,
    waterPhaseSaltPct: (100 * saltFraction) / (saltFraction + waterLeft),
  };
}

/**
 * The loss at which a ratio of moisture to protein is reached. Below zero: the green mix is already drier.
 *
 * Formula: L = w0 - MPR x p0.
 * Units: percent of green weight.
 * Source: mass balance (derived).
 * @example lossPctForMpr({ waterFraction: 0.6, proteinFraction: 0.16, mpr: 1.9 }) // => 29.6
 */
export function lossPctForMpr({
  waterFraction,
  proteinFraction,
  mpr,
}: {
  waterFraction: number;
  proteinFraction: number;
  mpr: number;
}): number {
  return 100 * (waterFraction - mpr * proteinFraction);
}

/**
 * Salt in the slice from salt in the mix alone: nothing but water leaves.
 *
 * Formula: salt of mix / (1 - loss). Units: percent.
 * Source: mass balance (derived).
 * @throws RangeError if the loss is not below 100 %.
 * @example saltPctOfSlice({ saltPctOfMix: 2.7106, lossPct: 38 }) // => 4.371935483870968
 */
export function saltPctOfSlice({ saltPctOfMix, lossPct }: { saltPctOfMix: number; lossPct: number }): number {
  if (!(lossPct >= 0 && lossPct < 100))
    throw new RangeError(`saltPctOfSlice: lossPct requires 0 to below 100 %, got ${lossPct}`);
  return saltPctOfMix / (1 - lossPct / 100);
}
