import { equilibriumLossPct } from './equilibrium.ts';
import { diagonal, type Matrix } from './matrix.ts';
import type { MixFractions } from './water-activity.ts';

/**
 * What is believed about a piece before it was ever weighed: loss = final · (1 - exp(-(theta / tau)^shape)), theta in
 * days on the reference clock of `clock.ts`; a normal distribution of (ln tau, shape, final), cut to what can be.
 */
export type DryingPrior = {
  /** Median of tau. */
  readonly tauDays: number;
  readonly shape: number;
  /** Loss at rest with the planned air. */
  readonly finalLossPct: number;
  /** Of (ln tau, shape, final loss). */
  readonly covariance: Matrix;
  /** All the water there is, in % of green weight: no loss passes it. */
  readonly waterPct: number;
};

const TAU_SHAPE_CORRELATION = -0.6;
/** Within the weeks that matter, a drying skin keeps the piece this much short of rest. */
const SHORT_OF_REST_PCT = 2;

/**
 * Where the doubt comes from, of (ln tau, shape, final loss): what stays with a maker and a chamber from batch to
 * batch, and what is a piece's own. The rest of a prior's doubt belongs to the batch.
 */
export const CHAMBER_COVARIANCE: Matrix = covariance([0.37, 0.13, 2.2]);
export const PIECE_COVARIANCE: Matrix = diagonal([0.1 ** 2, 0.03 ** 2, 0.8 ** 2]);

/**
 * What to expect of a piece of this diameter and mix in this air, on the reference clock.
 *
 * ln tau ~ N(ln 18.5 + 1.65 ln(d / 50), 0.50), shape ~ N(0.88, 0.20) within 0.4..1.4, correlated by -0.6 (slow pieces
 * are held up inside and start fast, quick ones at the skin), final ~ N(w0 - We(RH) - 2, 4 + 0.5 sd(RH)) within 0..w0.
 * Units: mm, parts of green mass 0..1, %; result days, %.
 * Valid: 30 to 110 mm; whole muscle and flat pieces are outside it.
 * Source: 13 records of 12 pieces of known diameter, makers' and published (computed from values read; humidity and
 * fat of several assumed): sd(ln tau) 0.45, widened; exponent of the diameter, shape and its correlation, and the 2
 * points short of rest, from runs of the radial model as wide as those records (computed).
 * @throws RangeError if an argument cannot be.
 * @example dryingPrior({ diameterMm: 50, mix: { waterFraction: 0.6, proteinFraction: 0.16, saltFraction: 0.027, sugarFraction: 0.005 }, humidityPct: 80 }).tauDays // => 18.5
 */
export function dryingPrior({
  diameterMm,
  mix,
  humidityPct,
  humiditySdPct = 0,
}: {
  diameterMm: number;
  mix: MixFractions;
  humidityPct: number;
  humiditySdPct?: number;
}): DryingPrior {
  if (!(diameterMm > 0 && diameterMm < Infinity))
    throw new RangeError(`dryingPrior: diameterMm requires a length above 0, got ${diameterMm}`);
  if (!(humiditySdPct >= 0 && humiditySdPct <= 100))
    throw new RangeError(`dryingPrior: humiditySdPct requires 0..100, got ${humiditySdPct}`);
  return {
    tauDays: 18.5 * (diameterMm / 50) ** 1.65,
    shape: 0.88,
    finalLossPct: Math.max(0, equilibriumLossPct({ mix, humidityPct }) - SHORT_OF_REST_PCT),
    covariance: covariance([0.5, 0.2, 4 + 0.5 * humiditySdPct]),
    waterPct: 100 * mix.waterFraction,
  };
}

/** Of these sd of (ln tau, shape, final loss): the first two go together. */
function covariance([tau, shape, final]: readonly [number, number, number]): Matrix {
  const joint = TAU_SHAPE_CORRELATION * tau * shape;
  return [
    [tau ** 2, joint, 0],
    [joint, shape ** 2, 0],
    [0, 0, final ** 2],
  ];
}
