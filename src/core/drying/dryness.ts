import { NORMAL_90_SD } from './normal.ts';
import { type MixFractions, mixAw, requireMix } from './water-activity.ts';

/** What a loss makes of the mix. All of it is computed from what went in: estimates, for no verdict. */
export type Dryness = {
  readonly moisturePct: number;
  readonly proteinPct: number;
  readonly saltPct: number;
  /** Moisture to protein. */
  readonly mpr: number;
  /** Salt in salt and water together. */
  readonly waterPhaseSaltPct: number;
  /** Between `lowAw` and `highAw` with a chance of 80 %. */
  readonly aw: number;
  readonly lowAw: number;
  readonly highAw: number;
};

/** One sd of the water activity estimate against meters (computed: 20 readings of other products, 0.02 to 0.03). */
const AW_SD = 0.02;

/**
 * What a target loss means in the slice. The wrong tool for a verdict: moisture and protein are taken from tables and
 * water activity from a model; a meter or a laboratory comes before them.
 *
 * All that leaves is water: moisture = (w - L) / (1 - L), protein = p / (1 - L), MPR = (w - L) / p,
 * water phase salt = s / (s + w - L); water activity as `mixAw`, ± 1.28 · 0.02.
 * Units: parts of green mass 0..1, loss in % of green weight; result % of the piece as it then is, aw 0..1.
 * Source: mass balance (derived).
 * @throws RangeError if the mix is not one, or the loss leaves no water.
 * @example drynessAt({ mix: { waterFraction: 0.6, proteinFraction: 0.16, saltFraction: 0.03, sugarFraction: 0 }, lossPct: 36 }).mpr // => 1.5
 */
export function drynessAt({ mix, lossPct }: { mix: MixFractions; lossPct: number }): Dryness {
  const aw = mixAw({ mix, lossPct });
  const leftFraction = 1 - lossPct / 100;
  const waterFraction = mix.waterFraction - lossPct / 100;
  return {
    moisturePct: (100 * waterFraction) / leftFraction,
    proteinPct: (100 * mix.proteinFraction) / leftFraction,
    saltPct: (100 * mix.saltFraction) / leftFraction,
    mpr: waterFraction / mix.proteinFraction,
    waterPhaseSaltPct: (100 * mix.saltFraction) / (mix.saltFraction + waterFraction),
    aw,
    lowAw: Math.max(0, aw - NORMAL_90_SD * AW_SD),
    highAw: Math.min(1, aw + NORMAL_90_SD * AW_SD),
  };
}

/**
 * The loss at which the mix comes to a ratio of moisture to protein; below zero if it is there already.
 *
 * L = w - MPR · p.
 * Units: parts of green mass 0..1; result % of green weight.
 * Source: mass balance (derived).
 * @throws RangeError if the mix is not one or the ratio not above zero.
 * @example lossForMprPct({ mix: { waterFraction: 0.6, proteinFraction: 0.16, saltFraction: 0.03, sugarFraction: 0 }, mpr: 1.9 }) // => 29.6
 */
export function lossForMprPct({ mix, mpr }: { mix: MixFractions; mpr: number }): number {
  requireMix('lossForMprPct', mix);
  if (!(mpr > 0 && mpr < Infinity))
    throw new RangeError(`lossForMprPct: mpr requires a ratio above 0, got ${mpr}`);
  return 100 * (mix.waterFraction - mpr * mix.proteinFraction);
}
