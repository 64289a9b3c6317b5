/** When to read the pH next: often where it falls towards its target, seldom where it stands still. Common practice. */
import type { PhWindow } from './ph-forecast.ts';
import { COUNTED_UNTIL_PH, disbeliefOf, type PhReading } from './ph-reading.ts';

const MS_PER_HOUR = 3_600_000;
const FIRST_HOURS = { usual: 18, fast: 12 } as const;
const FLAT_PH = 0.05;
const FLAT_HOURS = 12;
const NEAR_PH = 0.25;
const NEAR_HOURS = [4, 6] as const;
const USUAL_HOURS = [6, 12] as const;

export type NextReading = {
  readonly dueAtMs: number;
  readonly why: 'confirm' | 'first' | 'flat' | 'near' | 'usual' | 'before-limit';
};

/**
 * When the next pH reading is due; null once a believed reading lies at or below the target.
 *
 * Formula: a reading at the target that nobody believes yet: now. The first: 18 h after stuffing (12 h with a fast culture). Two readings
 * within 0.05: 12 h after the last. Within 0.25 of the target, or with its window opening within 6 h: 4 to 6 h after the last. Otherwise
 * 6 to 12 h. Never later than half of the hours that the degree-hours leave.
 * Units: pH, h, epoch ms. Valid: readings in order of time, from stuffing on.
 * Source: common practice (at 0 h, at 12 to 18 h, then every 6 to 12 h).
 * @throws RangeError unless nowMs is a finite number.
 * @example nextPhReading({ phReadings: [], stuffedAtMs: 0, nowMs: 0, targetPh: 5.3, window: null, leftHours: null }) // => { dueAtMs: 64800000, why: 'first' }
 */
export function nextPhReading({
  phReadings,
  stuffedAtMs,
  nowMs,
  targetPh = COUNTED_UNTIL_PH.value,
  window,
  leftHours,
  isFast = false,
}: {
  phReadings: readonly PhReading[];
  stuffedAtMs: number;
  nowMs: number;
  targetPh?: number | undefined;
  window: PhWindow | null;
  leftHours: number | null;
  isFast?: boolean | undefined;
}): NextReading | null {
  if (!Number.isFinite(nowMs))
    throw new RangeError(`nextPhReading: nowMs requires a finite number, got ${nowMs}`);
  const since = phReadings.filter((reading) => reading.atMs >= stuffedAtMs && reading.atMs <= nowMs);
  const believed = since.filter((reading) => disbeliefOf(reading) === null);
  if (believed.some((reading) => reading.ph <= targetPh)) return null;
  if (since.some((reading) => reading.ph <= targetPh)) return { dueAtMs: nowMs, why: 'confirm' };
  const planned = plan({ believed, stuffedAtMs, targetPh, window, isFast });
  const limitMs = leftHours === null ? Number.POSITIVE_INFINITY : nowMs + (leftHours / 2) * MS_PER_HOUR;
  return planned.dueAtMs > limitMs ? { dueAtMs: limitMs, why: 'before-limit' } : planned;
}

function plan({
  believed,
  stuffedAtMs,
  targetPh,
  window,
  isFast,
}: {
  believed: readonly PhReading[];
  stuffedAtMs: number;
  targetPh: number;
  window: PhWindow | null;
  isFast: boolean;
}): NextReading {
  const firstMs = stuffedAtMs + (isFast ? FIRST_HOURS.fast : FIRST_HOURS.usual) * MS_PER_HOUR;
  const [before, last] = believed.length > 1 ? believed.slice(-2) : [undefined, believed[0]];
  // A reading of the fresh mix alone, or one taken early, does not replace the first test.
  const isFirst = last === undefined || (before === undefined && last.atMs < stuffedAtMs + 6 * MS_PER_HOUR);
  if (isFirst) return { dueAtMs: firstMs, why: 'first' };
  const after = (hours: number): number => last.atMs + hours * MS_PER_HOUR;
  if (before && Math.abs(before.ph - last.ph) <= FLAT_PH + 1e-9)
    return { dueAtMs: after(FLAT_HOURS), why: 'flat' };
  const opensHours = window?.earliestAtMs != null ? (window.earliestAtMs - last.atMs) / MS_PER_HOUR : null;
  const within = ([least, most]: readonly [number, number]): number =>
    Math.min(most, Math.max(least, opensHours ?? most));
  const isNear = last.ph - targetPh <= NEAR_PH + 1e-9 || (opensHours !== null && opensHours <= NEAR_HOURS[1]);
  if (isNear) return { dueAtMs: after(within(NEAR_HOURS)), why: 'near' };
  return { dueAtMs: after(within(USUAL_HOURS)), why: 'usual' };
}
