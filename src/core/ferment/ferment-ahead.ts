/** What lies beyond the readings of a ferment: gaps, the worst case over them, and the hours ahead. Estimates, never a verdict. */

import {
  DEGREE_HOUR_RULES,
  degreeHourLimit,
  type HoursLeft,
  hoursLeftAt,
  keepsDegreeHours,
} from '#core/rules/degree-hours.ts';
import type { Limit, RuleSetId } from '#core/rules/rule.ts';
import { temperatureFromC } from '#core/units.ts';
import { type DegreeHourSum, degreeHoursOfRamp, HAND_GAP_HOURS } from './degree-hours.ts';

const MS_PER_HOUR = 3_600_000;

/** A stretch in which the room was not read often enough. */
export type RoomGap = {
  readonly where: 'before-first' | 'between' | 'after-last';
  readonly fromMs: number;
  readonly toMs: number;
  readonly durationHours: number;
};

export type FermentAhead = {
  readonly lastReadAtMs: number;
  readonly lastReadHoursAgo: number;
  readonly roomDeg: number;
  /** The sum as it would be now had the room stayed at its last reading. */
  readonly nowDegreeHours: number;
  /** From now, at that temperature. */
  readonly hoursLeft: HoursLeft;
  /** When the limit is reached at that temperature; null: never. */
  readonly runsOutAtMs: number | null;
  /** Until when the finding stands without a new reading: the earlier of `runsOutAtMs` and the longest time between readings. */
  readonly standsUntilMs: number;
  readonly isStale: boolean;
};

export type FermentWorstCase = {
  readonly roomDeg: number;
  readonly assumes: 'highest-read' | 'given';
  readonly unreadHours: number;
  readonly totalDegreeHours: number;
  readonly limit: Limit;
  readonly keepsLimit: boolean;
};

/**
 * The stretches in which the room was not read often enough, from stuffing to the end of counting.
 *
 * Units: epoch ms and h.
 * Valid: a sum that starts at or after stuffing.
 * Source: common practice: HAND_GAP_HOURS, loggerGapHours.
 * @example roomGaps({ sum: { steps: [], totalDegreeHours: 0, highestDeg: 20, lastDeg: 20, fromMs: 25200000, toMs: 25200000 }, stuffedAtMs: 0, toMs: 25200000 }) // => [{ where: 'before-first', fromMs: 0, toMs: 25200000, durationHours: 7 }]
 */
export function roomGaps({
  sum,
  stuffedAtMs,
  toMs,
}: {
  sum: DegreeHourSum;
  stuffedAtMs: number;
  toMs: number;
}): RoomGap[] {
  const gap = (where: RoomGap['where'], fromMs: number, untilMs: number): RoomGap => ({
    where,
    fromMs,
    toMs: untilMs,
    durationHours: (untilMs - fromMs) / MS_PER_HOUR,
  });
  const between = sum.steps
    .filter((step) => step.isGap)
    .map((step) => gap('between', step.fromMs, step.toMs));
  const ends = [gap('before-first', stuffedAtMs, sum.fromMs), gap('after-last', sum.toMs, toMs)];
  return [...between, ...ends.filter((end) => end.durationHours > HAND_GAP_HOURS)].sort(
    (a, b) => a.fromMs - b.fromMs,
  );
}

/**
 * How the sum goes on from the last reading if the room stays at it. An estimate: no verdict rests on it.
 *
 * Formula: now = sum + max(0, T - base) x hours since the last reading; runs out at (limit - sum) / (T - base) after it.
 * Units: `roomDeg` in the rule set's unit; times epoch ms.
 * Valid: nowMs at or after the last reading.
 * Source: derived; hours left: hoursLeftAt.
 * @throws RangeError unless the numbers are finite and nowMs is at or after the last reading.
 * @example fermentAhead({ ruleSet: 'US', sum: { steps: [], totalDegreeHours: 1100, highestDeg: 80, lastDeg: 80, fromMs: 0, toMs: 0 }, nowMs: 3600000 }).hoursLeft.hours // => 4
 */
export function fermentAhead({
  ruleSet,
  sum,
  nowMs,
}: {
  ruleSet: RuleSetId;
  sum: DegreeHourSum;
  nowMs: number;
}): FermentAhead {
  const roomDeg = sum.lastDeg;
  const lastReadHoursAgo = (nowMs - sum.toMs) / MS_PER_HOUR;
  const aboveDeg = Math.max(0, roomDeg - DEGREE_HOUR_RULES[ruleSet].base.value);
  const nowDegreeHours = sum.totalDegreeHours + aboveDeg * lastReadHoursAgo;
  const { highestDeg } = sum;
  const sinceRead = hoursLeftAt({ ruleSet, totalDegreeHours: sum.totalDegreeHours, highestDeg, roomDeg });
  const runsOutAtMs = sinceRead.hours === null ? null : sum.toMs + sinceRead.hours * MS_PER_HOUR;
  const nextDueMs = sum.toMs + HAND_GAP_HOURS * MS_PER_HOUR;
  const standsUntilMs = Math.min(nextDueMs, runsOutAtMs ?? nextDueMs);
  return {
    lastReadAtMs: sum.toMs,
    lastReadHoursAgo,
    roomDeg,
    nowDegreeHours,
    hoursLeft: hoursLeftAt({ ruleSet, totalDegreeHours: nowDegreeHours, highestDeg, roomDeg }),
    runsOutAtMs,
    standsUntilMs,
    isStale: nowMs > standsUntilMs,
  };
}

/**
 * The sum as it was, or would be, at an instant: along the lines that were read, and from the last reading on at its temperature. An
 * estimate, as for the time at which the pH should reach 5.3; no verdict rests on it.
 *
 * Formula: whole steps before the instant, the cut step, and max(0, T - base) x hours beyond the last reading.
 * Units: epoch ms; result in the rule set's unit. Valid: 0 before the first reading.
 * Source: derived.
 * @throws RangeError unless atMs is a finite number.
 * @example degreeHoursBy({ ruleSet: 'US', sum: { steps: [], totalDegreeHours: 100, highestDeg: 80, lastDeg: 80, fromMs: 0, toMs: 0 }, atMs: 7200000 }) // => 140
 */
export function degreeHoursBy({
  ruleSet,
  sum,
  atMs,
}: {
  ruleSet: RuleSetId;
  sum: DegreeHourSum;
  atMs: number;
}): number {
  if (!Number.isFinite(atMs))
    throw new RangeError(`degreeHoursBy: atMs requires a finite number, got ${atMs}`);
  const baseDeg = DEGREE_HOUR_RULES[ruleSet].base.value;
  if (atMs >= sum.toMs)
    return sum.totalDegreeHours + (Math.max(0, sum.lastDeg - baseDeg) * (atMs - sum.toMs)) / MS_PER_HOUR;
  return sum.steps
    .filter((step) => step.fromMs < atMs)
    .reduce((total, step) => {
      if (step.toMs <= atMs) return total + step.degreeHours;
      const share = (atMs - step.fromMs) / (step.toMs - step.fromMs);
      return (
        total +
        degreeHoursOfRamp({
          fromDeg: step.fromDeg,
          toDeg: step.fromDeg + (step.toDeg - step.fromDeg) * share,
          baseDeg,
          durationHours: step.durationHours * share,
        })
      );
    }, 0);
}

/**
 * What the sum would come to had the room stood at its worst wherever it was not read; null without a gap. An estimate.
 *
 * Formula: sum of the steps that were read + unread hours x max(0, worst - base); the limit is the worst temperature's class.
 * Units: `worstRoomC` °C; result in the rule set's unit.
 * Valid: the worst is taken as at least the highest temperature read.
 * Source: derived: an upper bound, as good as the assumption about the room.
 * @throws RangeError unless the temperatures are finite.
 * @example fermentWorstCase({ ruleSet: 'US', sum: { steps: [], totalDegreeHours: 0, highestDeg: 80, lastDeg: 80, fromMs: 0, toMs: 0 }, gaps: [{ where: 'after-last', fromMs: 0, toMs: 36000000, durationHours: 10 }], worstRoomC: undefined })?.totalDegreeHours // => 200
 */
export function fermentWorstCase({
  ruleSet,
  sum,
  gaps,
  worstRoomC,
}: {
  ruleSet: RuleSetId;
  sum: DegreeHourSum;
  gaps: readonly RoomGap[];
  worstRoomC: number | undefined;
}): FermentWorstCase | null {
  if (gaps.length === 0) return null;
  const { unit, base } = DEGREE_HOUR_RULES[ruleSet];
  const givenDeg = worstRoomC === undefined ? sum.highestDeg : temperatureFromC({ tempC: worstRoomC, unit });
  const roomDeg = Math.max(sum.highestDeg, givenDeg);
  const unreadHours = gaps.reduce((hours, gap) => hours + gap.durationHours, 0);
  const readDegreeHours = sum.steps
    .filter((step) => !step.isGap)
    .reduce((total, step) => total + step.degreeHours, 0);
  const totalDegreeHours = readDegreeHours + unreadHours * Math.max(0, roomDeg - base.value);
  const limit = degreeHourLimit({ ruleSet, highestDeg: roomDeg });
  return {
    roomDeg,
    assumes: worstRoomC === undefined ? 'highest-read' : 'given',
    unreadHours,
    totalDegreeHours,
    limit,
    keepsLimit: keepsDegreeHours(totalDegreeHours, limit),
  };
}
