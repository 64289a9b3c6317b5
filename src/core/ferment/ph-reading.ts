/** A pH reading, and the one at which degree-hours stop being counted. */
import type { Limit } from '#core/rules/rule.ts';

export type PhReading = {
  readonly atMs: number;
  readonly ph: number;
  readonly method: 'meter' | 'strip';
  readonly doubted: boolean;
  /** The meter failed its last buffer check before this reading, or the next one after it. */
  readonly meterFailed?: boolean | undefined;
};

/** Why a reading is not believed on its own. */
export type Disbelief = 'strip' | 'doubted' | 'meter-failed';

export type UnconfirmedPh = { readonly atMs: number; readonly ph: number; readonly why: Disbelief };

/** Degree-hours are counted until this pH is read, and no further. */
export const COUNTED_UNTIL_PH: Limit = {
  value: 5.3,
  unit: 'pH',
  relation: '<=',
  basis: 'sausage',
  source: {
    body: 'Canadian Food Inspection Agency',
    title: 'Meat Hygiene Manual of Procedures, chapter 4 (archived)',
    section: '4.16.2.1: degree-hours until a pH of 5.3 or less is attained',
    standing: 'read-second-hand',
  },
};

/**
 * What stands against believing a pH reading on its own: null where nothing does.
 *
 * Units: none. Valid: any reading.
 * Source: common practice: a strip resolves too little near 5.3, and a meter that failed its buffers tells nothing.
 * @example disbeliefOf({ atMs: 0, ph: 5.2, method: 'strip', doubted: false }) // => 'strip'
 */
export function disbeliefOf(reading: PhReading): Disbelief | null {
  if (reading.meterFailed === true) return 'meter-failed';
  if (reading.doubted) return 'doubted';
  return reading.method === 'strip' ? 'strip' : null;
}

/**
 * The first believed reading at or below pH 5.30 from stuffing on, at which counting stops, and the first one at or below 5.30
 * that still waits for such a reading to confirm it. Counting stops at the believed reading, never back at the one it confirms.
 *
 * Units: times epoch ms.
 * Valid: readings in order of time; those before `stuffedAtMs` or after `nowMs` do not count.
 * Source: COUNTED_UNTIL_PH; which readings are believed: disbeliefOf.
 * @throws RangeError unless every pH is a finite number and the readings are in order of time.
 * @example stopOfCounting({ readings: [{ atMs: 9, ph: 5.3, method: 'meter', doubted: false }], stuffedAtMs: 0, nowMs: 10 }) // => { stop: { atMs: 9, ph: 5.3 }, unconfirmed: null }
 */
export function stopOfCounting({
  readings,
  stuffedAtMs,
  nowMs,
}: {
  readings: readonly PhReading[];
  stuffedAtMs: number;
  nowMs: number;
}): { stop: { atMs: number; ph: number } | null; unconfirmed: UnconfirmedPh | null } {
  checkPhReadings('stopOfCounting', readings);
  let unconfirmed: UnconfirmedPh | null = null;
  for (const reading of readings) {
    if (reading.atMs < stuffedAtMs || reading.atMs > nowMs) continue;
    if (reading.ph > COUNTED_UNTIL_PH.value) continue;
    const why = disbeliefOf(reading);
    if (why === null) return { stop: { atMs: reading.atMs, ph: reading.ph }, unconfirmed: null };
    unconfirmed ??= { atMs: reading.atMs, ph: reading.ph, why };
  }
  return { stop: null, unconfirmed };
}

/**
 * Where the straight line between believed readings crosses pH 5.30: an estimate that no verdict rests on. Null until a believed
 * reading lies at or below 5.30, or where none lies above it before.
 *
 * Formula: t0 + (t1 - t0) (pH0 - 5.30) / (pH0 - pH1).
 * Units: epoch ms. Valid: readings in order of time.
 * Source: derived: linear interpolation.
 * @throws RangeError unless every pH is a finite number and the readings are in order of time.
 * @example crossingEstimateMs([{ atMs: 0, ph: 5.5, method: 'meter', doubted: false }, { atMs: 4, ph: 5.1, method: 'meter', doubted: false }]) // => 2
 */
export function crossingEstimateMs(readings: readonly PhReading[]): number | null {
  checkPhReadings('crossingEstimateMs', readings);
  const believed = readings.filter((reading) => disbeliefOf(reading) === null);
  const below = believed.findIndex((reading) => reading.ph <= COUNTED_UNTIL_PH.value);
  const after = believed[below];
  const before = believed[below - 1];
  if (after === undefined || before === undefined) return null;
  const share = (before.ph - COUNTED_UNTIL_PH.value) / (before.ph - after.ph);
  return before.atMs + (after.atMs - before.atMs) * share;
}

/**
 * Readings of one meter marked as failed where its last check before, or its next check after, failed: since the last good check
 * nobody knows from when on it was wrong.
 *
 * Units: epoch ms. Valid: checks and readings of the same meter, checks in order of time; a strip stays as it is.
 * Source: common practice.
 * @example withMeterFailed([{ atMs: 5, ph: 5.2, method: 'meter', doubted: false }], [{ atMs: 9, hasFailed: true }])[0]?.meterFailed // => true
 */
export function withMeterFailed(
  readings: readonly PhReading[],
  checks: readonly { readonly atMs: number; readonly hasFailed: boolean }[],
): PhReading[] {
  return readings.map((reading) => {
    if (reading.method === 'strip') return reading;
    const before = checks.findLast((check) => check.atMs <= reading.atMs);
    const after = checks.find((check) => check.atMs > reading.atMs);
    return before?.hasFailed === true || after?.hasFailed === true
      ? { ...reading, meterFailed: true }
      : reading;
  });
}

function checkPhReadings(caller: string, readings: readonly PhReading[]): void {
  for (const [index, reading] of readings.entries()) {
    if (!Number.isFinite(reading.ph))
      throw new RangeError(`${caller}: ph requires a finite number, got ${reading.ph}`);
    if (!(reading.atMs >= (readings[index - 1]?.atMs ?? reading.atMs)))
      throw new RangeError(
        `${caller}: readings requires order of time, got ${reading.atMs} at index ${index}`,
      );
  }
}
