/** Where a piece's loss is going, from the radial model and what is believed of its unknowns. An estimate, never a single number. */

import { quantiles } from '#core/median.ts';
import type { Normal } from './belief.ts';
import type { LossBand } from './forecast.ts';
import { apply, lowerRoot, plusVector, type Vector } from './matrix.ts';
import { evenNormals, NORMAL_90_SD, normalCdf } from './normal.ts';
import { passes } from './passes.ts';
import { type RadialPiece, radialLosses } from './radial-fit.ts';

/** Days of drying by which the target is reached with a chance of 10, 50 and 90 %. */
export type TargetWindow = {
  /** `null`: the chance that it is reached within the days told is smaller than that. */
  readonly p10Days: number | null;
  readonly p50Days: number | null;
  readonly p90Days: number | null;
  /** Chance that it is not reached within them. */
  readonly neverFraction: number;
};

/** Loss from `days[0]` on, between days on straight lines: as a band, or of pieces drawn from the belief. */
export type RadialFan = { readonly days: readonly number[]; readonly waterPct: number } & (
  | {
      /** Of ln of the hazard -ln(1 - loss / water). */
      readonly middleLnHazard: readonly number[];
      readonly sdLnHazard: readonly number[];
    }
  | {
      /** Percent lost on each day, of each. */
      readonly drawnPct: readonly (readonly number[])[];
    }
);

/** A band so far ahead; where the target is not all but sure by then, drawn pieces further. Nobody plans beyond. */
const NEAR = { spanDays: 90, stepHours: 24 };
const FAR = { spanDays: 400, stepHours: 48 };
const SURE = 0.995;
/** Each drawn with its opposite, so that the middle stays in the middle. */
const DRAWN_PAIRS = 24;
const LEAST_STEP_DAYS = 0.5;
const STEP_SHARE = 0.06;
const LEAST_SHARE = 1e-6;

/**
 * The band from one day on, in the air planned. The wrong tool for the days before it: they were weighed.
 *
 * In u = ln(-ln(1 - loss / water)), ln of a Weibull curve's hazard, in which the curves of quick and slow pieces run side by side, a run at the middle
 * and one to each side along the six axes of the belief: mean = u0 + sum h / 2, variance = sum g² + sum h² / 2, g half
 * the difference of two sides, h what they bend. Where the target is not all but sure, part of the belief may
 * hardly dry, which no band can show: then pieces spread evenly over the belief are run, the same each time, and chances told
 * in steps of two percent.
 * Units: days of drying, % of green weight.
 * Source: second-order propagation of a normal distribution (derived); quasi-random sampling. Losses in steps of a day or two
 * within 0.5 points of those of an hour (computed, 38 to 85 mm, 70 to 94 %).
 * @throws RangeError as `dryRadially`; if the day lies before the start.
 * @example radialFan({ piece: { diameterMm: 55, hungDay: 0, humiditySdPct: 4, mix: { waterFraction: 0.6, proteinFraction: 0.16, saltFraction: 0.027, sugarFraction: 0.005 }, air: [{ fromDay: 0, chamberC: 13, humidityPct: 99 }] }, believed: { mean: [], covariance: [] }, fromDay: 0, targetLossPct: 35 }).days[0] // => 0
 */
export function radialFan({
  piece,
  believed,
  fromDay,
  targetLossPct,
}: {
  piece: RadialPiece;
  believed: Normal;
  fromDay: number;
  targetLossPct: number;
}): RadialFan {
  if (!(fromDay >= 0 && fromDay < Infinity))
    throw new RangeError(`radialFan: fromDay requires 0 or more, got ${fromDay}`);
  const near = bandOver({ piece, believed, fromDay, ...NEAR });
  const lastDay = fromDay + NEAR.spanDays;
  if (fanChance(near, { day: lastDay, lossPct: targetLossPct }) > SURE) return near;
  return drawnOver({ piece, believed, fromDay, ...FAR });
}

/**
 * The chance that a piece has lost at least so much by one day.
 *
 * Units: days of drying, % of green weight.
 * Source: as `radialFan`.
 * @example fanChance({ days: [0, 10], middleLnHazard: [-5, -1], sdLnHazard: [1, 1], waterPct: 60 }, { day: 10, lossPct: 60 * (1 - Math.exp(-Math.exp(-1))) }) // => 0.5
 */
export function fanChance(fan: RadialFan, { day, lossPct }: { day: number; lossPct: number }): number {
  if ('drawnPct' in fan) {
    const there = drawnOn(fan, day).filter((one) => one >= lossPct);
    return there.length / fan.drawnPct.length;
  }
  const { middleLnHazard, sdLnHazard } = onDay(fan, day);
  const gap = middleLnHazard - lnHazardOf(lossPct, fan.waterPct);
  return sdLnHazard > 0 ? normalCdf(gap / sdLnHazard) : gap >= 0 ? 1 : 0;
}

/**
 * Loss that a piece is below on one day with a chance of 10, 50 and 90 %.
 *
 * Units: days of drying; result % of green weight.
 * Source: as `radialFan`.
 * @example fanBand({ days: [0, 10], middleLnHazard: [-40, -40], sdLnHazard: [0, 0], waterPct: 60 }, { day: 5 }).p50Pct < 1e-9 // => true
 */
export function fanBand(fan: RadialFan, { day }: { day: number }): LossBand {
  if ('drawnPct' in fan) {
    const drawn = quantiles(drawnOn(fan, day));
    // A piece may take up water; a band does not say so.
    const at = (level: number) => Math.max(0, drawn(level));
    return { p10Pct: at(0.1), p50Pct: at(0.5), p90Pct: at(0.9) };
  }
  const { middleLnHazard: middle, sdLnHazard: sd } = onDay(fan, day);
  const loss = (lnHazard: number) => fan.waterPct * (1 - Math.exp(-Math.exp(lnHazard)));
  return {
    p10Pct: loss(middle - NORMAL_90_SD * sd),
    p50Pct: loss(middle),
    p90Pct: loss(middle + NORMAL_90_SD * sd),
  };
}

/**
 * Days by which the target is reached with a chance of 10, 50 and 90 %: where the band crosses it. `null`: not within
 * the days told.
 *
 * Units: % of green weight; result days of drying.
 * Source: as `radialFan`.
 * @throws RangeError unless the target lies between 0 and 100.
 * @example fanWindow({ days: [0, 10], middleLnHazard: [-5, 5], sdLnHazard: [0, 0], waterPct: 60 }, { targetLossPct: 60 * (1 - Math.exp(-1)) }).neverFraction // => 0
 */
export function fanWindow(fan: RadialFan, { targetLossPct }: { targetLossPct: number }): TargetWindow {
  if (!(targetLossPct > 0 && targetLossPct < 100))
    throw new RangeError(`fanWindow: targetLossPct requires 0 < target < 100, got ${targetLossPct}`);
  if ('drawnPct' in fan) {
    const reached = fan.drawnPct.map(
      (values) => passes({ x: fan.days, values, level: targetLossPct }) ?? Infinity,
    );
    const at = quantiles(reached);
    const by = (level: number) => (at(level) < Infinity ? at(level) : null);
    const never = reached.filter((day) => day === Infinity).length;
    return {
      p10Days: by(0.1),
      p50Days: by(0.5),
      p90Days: by(0.9),
      neverFraction: never / reached.length,
    };
  }
  const chances = fan.days.map((day) => fanChance(fan, { day, lossPct: targetLossPct }));
  const by = (level: number) => passes({ x: fan.days, values: chances, level });
  return { p10Days: by(0.1), p50Days: by(0.5), p90Days: by(0.9), neverFraction: 1 - Math.max(...chances) };
}

function bandOver({
  piece,
  believed: { mean, covariance },
  fromDay,
  spanDays,
  stepHours,
}: {
  piece: RadialPiece;
  believed: Normal;
  fromDay: number;
  spanDays: number;
  stepHours: number;
}): RadialFan {
  const days = daysFrom(fromDay, spanDays);
  const waterPct = 100 * piece.mix.waterFraction;
  const run = (unknowns: Vector) =>
    lossesFrom(piece, { unknowns, days, stepHours }).map((lossPct) => lnHazardOf(lossPct, waterPct));
  const centre = run(mean);
  const root = lowerRoot(covariance);
  // Its columns are the axes of the belief: together they are worth as much as it.
  const sides = covariance.map((_, column) => {
    const axis = root.map((row) => row[column] ?? 0);
    return [run(plusVector(mean, axis)), run(plusVector(mean, axis, -1))];
  });
  const told = centre.map((lnHazard, at) => {
    let bent = 0;
    let variance = 0;
    for (const [up, down] of sides) {
      const half = ((up?.[at] ?? lnHazard) - (down?.[at] ?? lnHazard)) / 2;
      const bend = (up?.[at] ?? lnHazard) + (down?.[at] ?? lnHazard) - 2 * lnHazard;
      bent += bend / 2;
      variance += half * half + (bend * bend) / 2;
    }
    return { middleLnHazard: lnHazard + bent, sdLnHazard: Math.sqrt(variance) };
  });
  return {
    days,
    middleLnHazard: told.map((one) => one.middleLnHazard),
    sdLnHazard: told.map((one) => one.sdLnHazard),
    waterPct,
  };
}

/** What lies behind is run day by day, as its air was. */
function lossesFrom(
  piece: RadialPiece,
  { days, ...run }: { unknowns: Vector; days: readonly number[]; stepHours: number },
): number[] {
  const behind = Array.from({ length: Math.ceil(days[0] ?? 0) }, (_, day) => day);
  return radialLosses(piece, { ...run, days: [...behind, ...days] }).slice(behind.length);
}

function daysFrom(fromDay: number, spanDays: number): number[] {
  const days = [fromDay];
  for (let ahead = LEAST_STEP_DAYS; ahead < spanDays; ahead += Math.max(LEAST_STEP_DAYS, STEP_SHARE * ahead))
    days.push(fromDay + ahead);
  return [...days, fromDay + spanDays];
}

type Banded = Extract<RadialFan, { middleLnHazard: readonly number[] }>;
type Drawn = Extract<RadialFan, { drawnPct: readonly (readonly number[])[] }>;

function drawnOver({
  piece,
  believed: { mean, covariance },
  fromDay,
  spanDays,
  stepHours,
}: Parameters<typeof bandOver>[0]): RadialFan {
  const days = daysFrom(fromDay, spanDays);
  const root = lowerRoot(covariance);
  const run = (offset: Vector, side: 1 | -1) =>
    lossesFrom(piece, { unknowns: plusVector(mean, offset, side), days, stepHours });
  const drawnPct = evenNormals(DRAWN_PAIRS, mean.length)
    .map((normals) => apply(root, normals))
    .flatMap((offset) => [run(offset, 1), run(offset, -1)]);
  return { days, drawnPct, waterPct: 100 * piece.mix.waterFraction };
}

function drawnOn({ days, drawnPct }: Drawn, day: number): number[] {
  const between = onDays(days, day);
  return drawnPct.map(between);
}

function onDay(
  { days, middleLnHazard, sdLnHazard }: Banded,
  day: number,
): { middleLnHazard: number; sdLnHazard: number } {
  const between = onDays(days, day);
  return { middleLnHazard: between(middleLnHazard), sdLnHazard: between(sdLnHazard) };
}

/** A value on one day, from those on some days. */
function onDays(days: readonly number[], day: number): (values: readonly number[]) => number {
  const last = days.length - 1;
  const found = days.findIndex((one) => one >= day);
  const after = found < 0 ? last : Math.max(found, Math.min(1, last));
  const [from = 0, to = 0] = [days[after - 1], days[after]];
  const share = to > from ? Math.min(1, Math.max(0, (day - from) / (to - from))) : 1;
  return (values) => {
    const [left, right = 0] = [values[after - 1], values[after]];
    return left === undefined ? right : left + share * (right - left);
  };
}

/** No loss has no u: what is lost at the very start, and all the water there is, are cut off just short. */
function lnHazardOf(lossPct: number, waterPct: number): number {
  const share = Math.min(1 - LEAST_SHARE, Math.max(LEAST_SHARE, lossPct / waterPct));
  return Math.log(-Math.log(1 - share));
}
