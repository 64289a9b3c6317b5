/** The radial model fitted to what one piece weighed: how it dries, by what nobody measured. */
import { afterEvidence, type Evidence, type Normal, type Spread } from './belief.ts';
import {
  apply,
  diagonal,
  dot,
  inverse,
  type Matrix,
  outer,
  plus,
  plusVector,
  type Vector,
} from './matrix.ts';
import { weighingPrecision } from './posterior.ts';
import { type AirStep, dryRadially } from './radial.ts';
import type { MixFractions } from './water-activity.ts';

/** A piece as its maker knows it. */
export type RadialPiece = {
  readonly diameterMm: number;
  readonly mix: MixFractions;
  /** Read, then as planned, in days of drying: days at rest are not among them. */
  readonly air: readonly AirStep[];
  /** From this day on it hangs in the chamber, whose humidity is believed only so far. */
  readonly hungDay: number;
  /** How far that humidity may be from the one there was, in points. */
  readonly humiditySdPct: number;
};

/** `scaleSdPct`: what a coarse scale adds to its error. */
export type RadialWeighIn = { readonly day: number; readonly lossPct: number; readonly scaleSdPct?: number };

/** What is believed of a piece's unknowns after its weighings, and what they say by themselves. */
export type RadialFit = Normal & { readonly evidence: Evidence };

/**
 * The unknowns, as offsets from what was told or is usual: ln of the diffusivity, its power of dryness, ln of the air's
 * speed, points of humidity, ln of the diameter, fat as a part of green mass.
 */
const USUAL = { d13M2PerS: 4e-11, power: 1, airMPerS: 0.2 };
const LEAST_AIR_M_PER_S = 0.02;
const MOST_AIR_M_PER_S = 2;
/**
 * Error of one weighing in points of loss: scale and skin, and what the air did from day to day. A dial, in doubt by 5 points,
 * leaves that unread: 1 point; a logger, in doubt by 1.5, does not. So it goes by the square of the doubt.
 */
const WEIGHED_SD_PCT = 0.25;
const UNREAD_PER_SQUARED_PCT = 0.04;
const REPEAT_SHARE = 0.1;
/** Within a point of loss of a fine run; the fit takes up most of that. */
const COARSE = { rings: 12, stepHours: 12 };
/** What a mix without fat is at most made of: its minerals are left. */
const LEANEST = 0.985;
/** So far from what was believed nothing is looked for: a piece that cannot be explained stays badly explained. */
const FURTHEST_SD = 4;
/** Slopes are taken so far aside. */
const SLOPE_SD = 0.1;
const ROUNDS = 4;
const STEPS = 4;
/** A step as long as it comes, then shorter ones. */
const DAMPINGS = [0, 0.05, 0.5, 5];
/** A step that gains less than this in twice ln of the belief is the last. */
const GAINED = 0.05;

/** What is a piece's own of their doubt. */
export const RADIAL_PIECE_COVARIANCE: Matrix = variances([0.1, 0, 0.2, 0, 0.035, 0]);

/**
 * How far the unknowns stray, and by whose doing: the chamber and its maker, the batch, the piece.
 *
 * Units: `humiditySdPct` in points: how far the air told may be from the air there is.
 * Source: set on simulated makers, by seeds that nothing is tested on (computed), within what is known: diffusivity 1e-11 to
 * 2.5e-10 m²/s (published values, read), air 0.1 to 0.3 m/s without a fan, casings within some percent (common practice).
 * @throws RangeError unless the doubt lies above 0, up to 100.
 * @example radialSpread({ humiditySdPct: 5 }).chamber[3][3] // => 16
 */
export function radialSpread({ humiditySdPct }: { humiditySdPct: number }): Spread {
  if (!(humiditySdPct > 0 && humiditySdPct <= 100))
    throw new RangeError(`radialSpread: humiditySdPct requires 0 < sd <= 100, got ${humiditySdPct}`);
  return {
    chamber: variances([0.6, 0.45, 0.5, 0.8 * humiditySdPct, 0, 0]),
    batch: variances([0.3, 0.15, 0, 0.95 * humiditySdPct, 0, 0.03]),
    piece: RADIAL_PIECE_COVARIANCE,
  };
}

/**
 * Loss on each day, if the unknowns were these.
 *
 * Units: mm, days; result % of green weight.
 * Source: as `dryRadially`, with 12 rings.
 * @throws RangeError as `dryRadially`.
 * @example radialLosses({ diameterMm: 55, hungDay: 0, humiditySdPct: 4, mix: { waterFraction: 0.6, proteinFraction: 0.16, saltFraction: 0.027, sugarFraction: 0.005 }, air: [{ fromDay: 0, chamberC: 13, humidityPct: 80 }] }, { unknowns: [0, 0, 0, 0, 0, 0], days: [0] }) // => [0]
 */
export function radialLosses(
  { diameterMm, mix, air, hungDay }: RadialPiece,
  {
    unknowns,
    days,
    stepHours = COARSE.stepHours,
  }: { unknowns: Vector; days: readonly number[]; stepHours?: number },
): number[] {
  const [diffusivity = 0, power = 0, airSpeed = 0, humidity = 0, diameter = 0, fat = 0] = unknowns;
  const drynessPower = Math.max(0, USUAL.power + power);
  const airMPerS = Math.max(LEAST_AIR_M_PER_S, USUAL.airMPerS * Math.exp(airSpeed));
  return dryRadially({
    diameterMm: diameterMm * Math.exp(diameter),
    mix: withMoreFat(mix, fat),
    air: air.map((step) =>
      step.fromDay < hungDay
        ? step
        : { ...step, humidityPct: Math.min(98, Math.max(0, step.humidityPct + humidity)) },
    ),
    airMPerS: Math.min(MOST_AIR_M_PER_S, airMPerS),
    diffusivity13M2PerS: USUAL.d13M2PerS * 2 ** drynessPower * Math.exp(diffusivity),
    drynessPower,
    days,
    rings: COARSE.rings,
    stepHours,
  }).map(({ lossPct }) => lossPct);
}

/**
 * The unknowns of one piece, from what was believed of them and from its weighings: a normal distribution around the
 * likeliest. Works from no weighing at all: then it is what was believed.
 *
 * Gauss and Newton's steps on |loss - model|² / sd² + offset · covariance⁻¹ · offset, shortened where one does not
 * gain (Levenberg and Marquardt); slopes by a second run for each unknown.
 * Units: days, %.
 * Source: Bayes' rule, Laplace's approximation; error of a weighing as set on simulated makers, by seeds that
 * nothing is tested on.
 * @throws RangeError if a weighing is not a number or lies before the start; as `dryRadially`.
 * @example radialFit({ piece: { diameterMm: 55, hungDay: 0, humiditySdPct: 4, mix: { waterFraction: 0.6, proteinFraction: 0.16, saltFraction: 0.027, sugarFraction: 0.005 }, air: [] }, believed: { mean: [0], covariance: [[1]] }, weighIns: [] }).evidence.pull // => [0]
 */
export function radialFit({
  piece,
  believed,
  weighIns,
}: {
  piece: RadialPiece;
  believed: Normal;
  weighIns: readonly RadialWeighIn[];
}): RadialFit {
  for (const { day, lossPct, scaleSdPct = 0 } of weighIns)
    if (!(day >= 0 && day < Infinity && Number.isFinite(lossPct) && scaleSdPct >= 0))
      throw new RangeError(
        `radialFit: weighIns require day >= 0 and a finite lossPct, got ${day}, ${lossPct}`,
      );
  const weighed = weighIns.toSorted((a, b) => a.day - b.day);
  const days = weighed.map(({ day }) => day);
  const weighingSdPct = Math.hypot(WEIGHED_SD_PCT, UNREAD_PER_SQUARED_PCT * piece.humiditySdPct ** 2);
  const model = { weighingSdPct, repeatShare: REPEAT_SHARE };
  const precisions = weighed.map(({ scaleSdPct = 0 }) =>
    weighingPrecision({ count: weighed.length, model, scaleSdPct }),
  );
  const none = believed.mean.map(() => 0);
  const sds = believed.covariance.map((row, at) => Math.sqrt(row[at] ?? 0));
  const prior = inverse(believed.covariance);
  const within = (unknowns: Vector) =>
    unknowns.map((one, i) => {
      const [mean = 0, reach = 0] = [believed.mean[i], FURTHEST_SD * (sds[i] ?? 0)];
      return Math.min(mean + reach, Math.max(mean - reach, one));
    });
  const at = (unknowns: Vector) => {
    const losses = days.length > 0 ? radialLosses(piece, { unknowns, days }) : [];
    const gaps = weighed.map(({ lossPct }, i) => lossPct - (losses[i] ?? 0));
    const offset = plusVector(unknowns, believed.mean, -1);
    const fit = gaps.reduce((sum, gap, i) => sum + (precisions[i] ?? 0) * gap * gap, 0);
    return { unknowns, losses, gaps, offset, cost: fit + dot(offset, apply(prior, offset)) };
  };
  type Point = ReturnType<typeof at>;
  /** One row a weighing: what it loses for each unknown. */
  const slopesAt = ({ unknowns, losses }: Point): Matrix => {
    const columns = sds.map((sd, unknown) => {
      const aside = unknowns.map((one, i) => (i === unknown ? one + SLOPE_SD * sd : one));
      return at(aside).losses.map((loss, i) => (loss - (losses[i] ?? 0)) / (SLOPE_SD * sd));
    });
    return days.map((_, i) => columns.map((column) => column[i] ?? 0));
  };
  /** What the weighings say, in a straight line around one point. */
  const evidenceAt = ({ unknowns, gaps }: Point, slopes: Matrix): Evidence => {
    let precision = diagonal(none);
    let pull: Vector = none;
    for (const [i, slope] of slopes.entries()) {
      const weight = precisions[i] ?? 0;
      precision = plus(precision, outer(slope, slope), weight);
      pull = plusVector(pull, slope, weight * (gaps[i] ?? 0));
    }
    return { precision, pull: plusVector(pull, apply(precision, unknowns)) };
  };
  /** The next point uphill, by these slopes; null where even a short step gains nothing. */
  const stepFrom = (point: Point, slopes: Matrix): Point | null => {
    const { precision, pull } = evidenceAt(point, slopes);
    const said = plusVector(pull, apply(precision, point.unknowns), -1);
    const uphill = plusVector(said, apply(prior, point.offset), -1);
    const curvature = plus(prior, precision);
    for (const damping of DAMPINGS) {
      const damped = plus(curvature, diagonal(curvature.map((row, i) => damping * (row[i] ?? 0))));
      const next = at(within(plusVector(point.unknowns, apply(inverse(damped), uphill))));
      if (next.cost < point.cost) return next;
    }
    return null;
  };
  let point = at(believed.mean);
  let evidence: Evidence = { precision: diagonal(none), pull: none };
  for (let round = 0; days.length > 0 && round < ROUNDS; round++) {
    const startCost = point.cost;
    // Slopes cost a run for each unknown, a step only one: old slopes do for some steps more.
    const slopes = slopesAt(point);
    for (let step = 0; step < STEPS; step++) {
      const next = stepFrom(point, slopes);
      const gained = next === null ? 0 : point.cost - next.cost;
      point = next ?? point;
      if (gained < GAINED) break;
    }
    evidence = evidenceAt(point, slopes);
    if (startCost - point.cost < GAINED) break;
  }
  return { mean: point.unknowns, covariance: afterEvidence(believed, evidence).covariance, evidence };
}

/** More fat is less lean: its water and protein shrink together. There is no less fat than none. */
function withMoreFat(mix: MixFractions, fatFraction: number): MixFractions {
  const { waterFraction, proteinFraction, saltFraction, sugarFraction } = mix;
  const told = waterFraction + proteinFraction;
  const most = (LEANEST - saltFraction - sugarFraction) / told;
  const lean = Math.min(most, Math.max(0.1, 1 - fatFraction / told));
  return { ...mix, waterFraction: lean * waterFraction, proteinFraction: lean * proteinFraction };
}

function variances(sds: Vector): Matrix {
  return diagonal(sds.map((sd) => sd ** 2));
}
