import type { CourseStep } from './course.ts';
import { equilibriumLossPct } from './equilibrium.ts';
import { type MixFractions, mixAw } from './water-activity.ts';

/** Air as read or set, from this instant until the next. */
export type AirReading = { readonly fromMs: number; readonly chamberC: number; readonly humidityPct: number };
/** Bagged, frozen, or out of the air in any other way: nothing dries. Open-ended where `toMs` is null. */
export type DryingRest = { readonly fromMs: number; readonly toMs: number | null };

/** A piece's own time: reference days used up so far, step by step, and the pace from there on. */
export type DryingClock = {
  readonly hungMs: number;
  readonly steps: readonly (CourseStep & { readonly untilMs: number })[];
  /** Reference days per day in the planned air; 0: that air never dries the piece. */
  readonly plannedPace: number;
  /** True while a rest is open: nothing dries until it ends. */
  readonly resting: boolean;
  /** The humidity whose final loss counts as 1: the planned, or what the piece had where the planned dries nothing. */
  readonly referenceHumidityPct: number;
};

const DAY_MS = 86_400_000;
/** Air at which one day counts as one day on the reference clock. */
const REFERENCE_C = 13;
const REFERENCE_DRIVE = 0.162;

/**
 * How many reference days one day in this air is worth; 0 where the air is as wet as the piece or wetter.
 *
 * (max(0, aw0 - RH) / 0.162)^0.74 · exp(0.041 (T - 13)).
 * Units: aw 0..1, %, °C; result reference days per day.
 * Valid: air between 8 and 20 °C and 70 to 90 %; outside it is carried on by the same law.
 * Source: fitted to 23 runs of the radial model (computed).
 * @throws RangeError if an argument is outside 0..1, 0..100 or not a temperature.
 * @example dryingPace({ startAw: 0.962, humidityPct: 80, chamberC: 13 }) // => 1
 * @example dryingPace({ startAw: 0.962, humidityPct: 97, chamberC: 13 }) // => 0
 */
export function dryingPace({
  startAw,
  humidityPct,
  chamberC,
}: {
  startAw: number;
  humidityPct: number;
  chamberC: number;
}): number {
  if (!(startAw > 0 && startAw <= 1))
    throw new RangeError(`dryingPace: startAw requires 0 < aw <= 1, got ${startAw}`);
  if (!(humidityPct >= 0 && humidityPct <= 100))
    throw new RangeError(`dryingPace: humidityPct requires 0..100, got ${humidityPct}`);
  if (!(chamberC > -50 && chamberC < 100))
    throw new RangeError(`dryingPace: chamberC requires -50..100, got ${chamberC}`);
  const drive = Math.max(0, startAw - humidityPct / 100);
  return (drive / REFERENCE_DRIVE) ** 0.74 * Math.exp(0.041 * (chamberC - REFERENCE_C));
}

/**
 * The clock of one piece: logged air, and the planned air where none was logged, without the rests.
 *
 * theta = integral of `dryingPace`, summed into steps of at most a day, ending where a rest does, so that an hourly
 * log costs no more than a daily one; each step's final loss is that of its pace-weighted humidity, over that of the planned air.
 * Units: epoch ms, °C, %.
 * Source: equivalent time, fitted to the radial model (computed).
 * @throws RangeError if the piece was hung after now, or the air cannot be.
 * @example dryingClock({ hungMs: 0, nowMs: 0, mix: { waterFraction: 0.6, proteinFraction: 0.16, saltFraction: 0.027, sugarFraction: 0.005 }, air: [], rests: [], planned: { chamberC: 13, humidityPct: 99 } }) // => { hungMs: 0, steps: [], plannedPace: 0, resting: false, referenceHumidityPct: 99 }
 */
export function dryingClock({
  hungMs,
  nowMs,
  mix,
  air,
  rests,
  planned,
}: {
  hungMs: number;
  nowMs: number;
  mix: MixFractions;
  air: readonly AirReading[];
  rests: readonly DryingRest[];
  planned: { readonly chamberC: number; readonly humidityPct: number };
}): DryingClock {
  if (!(hungMs <= nowMs))
    throw new RangeError(`dryingClock: hungMs requires a time up to now, got ${hungMs}`);
  const startAw = mixAw({ mix, lossPct: 0 });
  const readings = air.toSorted((a, b) => a.fromMs - b.fromMs);
  const resting = (ms: number) => rests.some(({ fromMs, toMs }) => fromMs <= ms && ms < (toMs ?? Infinity));
  // A step ends where a rest does: half dried and half rested, it would have no one pace.
  const edges = new Set(rests.flatMap(({ fromMs, toMs }) => (toMs === null ? [fromMs] : [fromMs, toMs])));
  const marks = [
    ...readings.map(({ fromMs }) => fromMs),
    ...edges,
    ...Array.from({ length: Math.floor((nowMs - hungMs) / DAY_MS) }, (_, day) => hungMs + (day + 1) * DAY_MS),
    nowMs,
  ]
    .filter((ms) => ms > hungMs && ms <= nowMs)
    .sort((a, b) => a - b);
  const stretches: { untilMs: number; untilThetaDays: number; days: number; humidityDays: number }[] = [];
  let stretch = { untilMs: hungMs, untilThetaDays: 0, days: 0, humidityDays: 0 };
  let next = 0;
  for (const untilMs of marks) {
    const fromMs = stretch.untilMs;
    while ((readings[next]?.fromMs ?? Infinity) <= fromMs) next++;
    const { chamberC, humidityPct } = readings[next - 1] ?? planned;
    const pace = resting(fromMs) ? 0 : dryingPace({ startAw, humidityPct, chamberC });
    const days = (pace * (untilMs - fromMs)) / DAY_MS;
    stretch = {
      untilMs,
      untilThetaDays: stretch.untilThetaDays + days,
      days: stretch.days + days,
      humidityDays: stretch.humidityDays + days * humidityPct,
    };
    if ((untilMs - hungMs) % DAY_MS === 0 || untilMs === nowMs || edges.has(untilMs)) {
      if (untilMs > fromMs) stretches.push(stretch);
      stretch = { ...stretch, days: 0, humidityDays: 0 };
    }
  }
  const plannedPace = dryingPace({ startAw, ...planned });
  const driedDays = stretches.reduce((sum, { days }) => sum + days, 0);
  const driedAtPct = stretches.reduce((sum, { humidityDays }) => sum + humidityDays, 0) / driedDays;
  const referenceHumidityPct = plannedPace > 0 || driedDays === 0 ? planned.humidityPct : driedAtPct;
  const referencePct = equilibriumLossPct({ mix, humidityPct: referenceHumidityPct });
  const ratio = (humidityPct: number) => equilibriumLossPct({ mix, humidityPct }) / referencePct;
  return {
    hungMs,
    steps: stretches.map(({ untilMs, untilThetaDays, days, humidityDays }) => ({
      untilMs,
      untilThetaDays,
      finalRatio: days > 0 ? ratio(humidityDays / days) : 1,
    })),
    plannedPace,
    resting: resting(nowMs),
    referenceHumidityPct,
  };
}

/**
 * Reference days that a piece had used up at an instant, or will have in the planned air.
 *
 * Units: epoch ms; result reference days.
 * Source: as `dryingClock`; straight lines between the ends of steps.
 * @throws RangeError before the piece was hung.
 * @example thetaAt({ hungMs: 0, steps: [], plannedPace: 0.5, resting: false, referenceHumidityPct: 80 }, 172800000) // => 1
 */
export function thetaAt(clock: DryingClock, atMs: number): number {
  if (!(atMs >= clock.hungMs))
    throw new RangeError(`thetaAt: atMs requires a time from hanging on, got ${atMs}`);
  let fromMs = clock.hungMs;
  let fromDays = 0;
  for (const { untilMs, untilThetaDays } of clock.steps) {
    if (atMs <= untilMs)
      return fromDays + ((untilThetaDays - fromDays) * (atMs - fromMs)) / (untilMs - fromMs);
    fromMs = untilMs;
    fromDays = untilThetaDays;
  }
  return fromDays + (clock.plannedPace * (atMs - fromMs)) / DAY_MS;
}

/**
 * The instant at which a piece has used up so many reference days; `null` where the planned air never gets it there.
 * An open rest counts as ended now: the caller says that the clock stands.
 *
 * Units: reference days; result epoch ms.
 * Source: as `dryingClock`.
 * @throws RangeError for days before the start.
 * @example instantOf({ hungMs: 0, steps: [], plannedPace: 0.5, resting: false, referenceHumidityPct: 80 }, 1) // => 172800000
 */
export function instantOf(clock: DryingClock, thetaDays: number): number | null {
  if (!(thetaDays >= 0)) throw new RangeError(`instantOf: thetaDays requires 0 or more, got ${thetaDays}`);
  let fromMs = clock.hungMs;
  let fromDays = 0;
  for (const { untilMs, untilThetaDays } of clock.steps) {
    if (thetaDays <= untilThetaDays && untilThetaDays > fromDays)
      return fromMs + ((untilMs - fromMs) * (thetaDays - fromDays)) / (untilThetaDays - fromDays);
    fromMs = untilMs;
    fromDays = untilThetaDays;
  }
  if (clock.plannedPace === 0) return null;
  return fromMs + ((thetaDays - fromDays) / clock.plannedPace) * DAY_MS;
}
