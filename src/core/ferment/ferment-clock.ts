/** The ferment clock: from room temperatures and pH readings to a degree-hour finding, its working and the hours left. */

import { DEGREE_HOUR_RULES, degreeHourLimit, keepsDegreeHours } from '#core/rules/degree-hours.ts';
import type { Finding, Limit, RuleSetId } from '#core/rules/rule.ts';
import type { TemperatureUnit } from '#core/units.ts';
import { type DegreeHourSum, degreeHourSum, type RoomReading } from './degree-hours.ts';
import {
  degreeHoursBy,
  type FermentAhead,
  type FermentWorstCase,
  fermentAhead,
  fermentWorstCase,
  type RoomGap,
  roomGaps,
} from './ferment-ahead.ts';
import {
  COUNTED_UNTIL_PH,
  crossingEstimateMs,
  disbeliefOf,
  type PhReading,
  stopOfCounting,
  type UnconfirmedPh,
} from './ph-reading.ts';

export type FermentInput = {
  readonly roomReadings: readonly RoomReading[];
  readonly phReadings: readonly PhReading[];
  readonly stuffedAtMs: number;
  readonly ruleSet: RuleSetId;
  readonly nowMs: number;
  /** The highest temperature the room could have reached while nothing was read; without it the highest one read. */
  readonly worstRoomC?: number | undefined;
};

/** What to measure: the codes of `finding.missing`. */
export type FermentMissing =
  | 'room-temperature'
  | 'room-temperature-gap'
  | 'room-temperature-doubted'
  | 'room-temperature-now'
  | 'room-temperature-at-end'
  | 'ph-at-or-below-5-30'
  | 'ph-confirm-strip'
  | 'ph-confirm-doubted'
  | 'ph-confirm-meter-failed';

export type FermentClock = {
  readonly finding: Finding;
  /** The rule set whose base and classes were used; EU shows the Canadian numbers for reference. */
  readonly numbersOf: 'US' | 'CA';
  readonly unit: TemperatureUnit;
  readonly base: Limit;
  readonly sum: DegreeHourSum | null;
  readonly limit: Limit | null;
  /** Limit minus sum, below 0 once passed. */
  readonly leftDegreeHours: number | null;
  /** The sum is the limit itself: a deviation, said apart. */
  readonly isAtLimit: boolean;
  readonly gaps: readonly RoomGap[];
  readonly stop: { readonly atMs: number; readonly ph: number } | null;
  readonly unconfirmed: UnconfirmedPh | null;
  /** A believed reading above 5.30 after counting had stopped: no longer counts, but says that one of the two may be wrong. */
  readonly hasRisenAfterStop: boolean;
  /** Estimate, never used for the verdict: where the line between pH readings crossed 5.30, and the sum there. */
  readonly crossing: { readonly atMs: number; readonly totalDegreeHours: number } | null;
  /** Estimates from the last reading on, null once counting has stopped. */
  readonly ahead: FermentAhead | null;
  /** What the hours come to if the room stood at `roomDeg` wherever it was not read. */
  readonly worstCase: FermentWorstCase | null;
};

/**
 * The degree-hour clock of one batch. Counting starts at the first room temperature at or after stuffing and stops at the first
 * believed pH reading at or below 5.30. Speaks of *Staphylococcus aureus* only, and only of the room; not for a product that is
 * never warmed above the base, where it says 0.
 *
 * Formula: sum of areas of max(0, T - base) under straight lines between room readings; limit by the highest temperature.
 * Finding: deviation where the sum is at or above the limit; no-reading where the room was not read for over 6 h (3 periods of a
 * logger), or where a doubted temperature, if true, would pass the limit; pending until a believed pH and a room temperature at
 * or after it; then within-limit. EU: does-not-apply, with the Canadian numbers for reference.
 * Units: times epoch ms; degrees and degree-hours in `unit` (US °F, CA and EU °C).
 * Valid: readings in order of time; those after `nowMs` are left out.
 * Source: DEGREE_HOUR_RULES and COUNTED_UNTIL_PH carry theirs.
 * @throws RangeError unless readings are in order of time and every number is finite.
 * @example fermentClock({ roomReadings: [], phReadings: [], stuffedAtMs: 0, ruleSet: 'US', nowMs: 1 }).finding.missing // => ['room-temperature']
 */
export function fermentClock(input: FermentInput): FermentClock {
  const { ruleSet, stuffedAtMs, nowMs } = input;
  if (!Number.isFinite(stuffedAtMs) || !Number.isFinite(nowMs))
    throw new RangeError(
      `fermentClock: stuffedAtMs and nowMs requires finite numbers, got ${stuffedAtMs}, ${nowMs}`,
    );
  const rules = DEGREE_HOUR_RULES[ruleSet];
  const { unit } = rules;
  const scale = { unit, baseDeg: rules.base.value, fromMs: stuffedAtMs };
  const roomReadings = input.roomReadings.filter((reading) => !(reading.atMs > nowMs));
  const phReadings = input.phReadings.filter((reading) => !(reading.atMs > nowMs));
  const believed = roomReadings.filter((reading) => reading.doubted !== true);
  const { stop, unconfirmed } = stopOfCounting({ readings: phReadings, stuffedAtMs, nowMs });
  const toMs = stop?.atMs ?? nowMs;

  const sum = degreeHourSum({ readings: believed, ...scale, toMs });
  const withDoubted =
    believed.length === roomReadings.length ? sum : degreeHourSum({ readings: roomReadings, ...scale, toMs });
  const limit = sum && degreeHourLimit({ ruleSet, highestDeg: sum.highestDeg });
  const gaps = sum ? roomGaps({ sum, stuffedAtMs, toMs }) : [];
  const finding = findingOf({ ruleSet, sum, withDoubted, limit, gaps, stop, unconfirmed });
  const crossedAtMs = crossingEstimateMs(phReadings.filter((reading) => reading.atMs >= stuffedAtMs));
  return {
    finding,
    numbersOf: rules.numbersOf,
    unit,
    base: rules.base,
    sum,
    limit,
    leftDegreeHours: sum && limit && limit.value - sum.totalDegreeHours,
    isAtLimit: sum !== null && limit !== null && Math.abs(limit.value - sum.totalDegreeHours) < 1e-6,
    gaps,
    stop,
    unconfirmed,
    hasRisenAfterStop:
      stop !== null &&
      phReadings.some(
        (reading) =>
          reading.atMs > stop.atMs && reading.ph > COUNTED_UNTIL_PH.value && disbeliefOf(reading) === null,
      ),
    crossing:
      crossedAtMs !== null && sum !== null && crossedAtMs >= sum.fromMs
        ? {
            atMs: crossedAtMs,
            totalDegreeHours: degreeHoursBy({ ruleSet, sum, atMs: Math.min(crossedAtMs, sum.toMs) }),
          }
        : null,
    ahead: stop === null && sum ? fermentAhead({ ruleSet, sum, nowMs }) : null,
    worstCase: sum && fermentWorstCase({ ruleSet, sum, gaps, worstRoomC: input.worstRoomC }),
  };
}

function findingOf({
  ruleSet,
  sum,
  withDoubted,
  limit,
  gaps,
  stop,
  unconfirmed,
}: {
  ruleSet: RuleSetId;
  sum: DegreeHourSum | null;
  withDoubted: DegreeHourSum | null;
  limit: Limit | null;
  gaps: readonly RoomGap[];
  stop: FermentClock['stop'];
  unconfirmed: UnconfirmedPh | null;
}): Finding {
  const answer = (verdict: Finding['verdict'], missing: readonly FermentMissing[]): Finding => ({
    rule: 'degree-hours',
    verdict,
    value: sum?.totalDegreeHours ?? null,
    limit,
    missing,
  });
  if (!DEGREE_HOUR_RULES[ruleSet].binds) return answer('does-not-apply', []);
  if (sum === null || limit === null) return answer('no-reading', ['room-temperature']);
  if (!keepsDegreeHours(sum.totalDegreeHours, limit)) return answer('deviation', []);

  const unread: FermentMissing[] = [];
  if (gaps.some((gap) => gap.where !== 'after-last')) unread.push('room-temperature-gap');
  if (gaps.some((gap) => gap.where === 'after-last'))
    unread.push(stop === null ? 'room-temperature-now' : 'room-temperature-at-end');
  if (
    withDoubted !== null &&
    !keepsDegreeHours(
      withDoubted.totalDegreeHours,
      degreeHourLimit({ ruleSet, highestDeg: withDoubted.highestDeg }),
    )
  )
    unread.push('room-temperature-doubted');

  const awaited: FermentMissing[] = [];
  if (stop === null) awaited.push(unconfirmed ? `ph-confirm-${unconfirmed.why}` : 'ph-at-or-below-5-30');
  else if (sum.toMs < stop.atMs) awaited.push('room-temperature-at-end');

  if (unread.length > 0) return answer('no-reading', [...new Set([...unread, ...awaited])]);
  return awaited.length > 0 ? answer('pending', awaited) : answer('within-limit', []);
}
