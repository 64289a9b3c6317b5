/** Degree-hours from whatever room temperatures exist: exact areas above a base, steps for the working, and where nothing was read. */
import { type TemperatureUnit, temperatureFromC, temperatureToC } from '#core/units.ts';

/**
 * A temperature of the fermentation room, not of the product. `typed` is the number as the maker typed it; a reading that was
 * corrected by its thermometer's offset carries the corrected `roomC`, which then counts instead of `typed`.
 */
export type RoomReading = {
  readonly atMs: number;
  readonly roomC: number;
  readonly typed?: { readonly value: number; readonly unit: TemperatureUnit } | undefined;
  readonly source: 'hand' | 'logger';
  readonly doubted?: boolean | undefined;
};

/** One stretch between two readings, in the unit of the rule set; `isGap` when it is longer than readings may be apart. */
export type DegreeHourStep = {
  readonly fromMs: number;
  readonly toMs: number;
  readonly fromDeg: number;
  readonly toDeg: number;
  readonly durationHours: number;
  readonly degreeHours: number;
  readonly isGap: boolean;
};

export type DegreeHourSum = {
  readonly steps: readonly DegreeHourStep[];
  readonly totalDegreeHours: number;
  readonly highestDeg: number;
  readonly lastDeg: number;
  /** The span the sum rests on: first reading to last reading, or to `toMs` where a later reading lets the line be cut there. */
  readonly fromMs: number;
  readonly toMs: number;
};

const MS_PER_HOUR = 3_600_000;
/** Two readings by hand may lie this far apart: common practice (a sample every 6 to 12 h; the shorter is taken). */
export const HAND_GAP_HOURS = 6;
/** A logger may miss this many of its own periods, and never more time than a hand may: common practice. */
export const LOGGER_GAP_PERIODS = 3;
/** Noise of a conversion there and back is far below this; no thermometer reads as fine. */
const SAME_TEMPERATURE_C = 1e-3;

/**
 * Degree-hours of one straight ramp: the exact area of max(0, T - base) under the line, never negative.
 *
 * Formula: both ends above the base: (mean - base) x hours; one end above: (T above - base)^2 / (2 |T1 - T0|) x hours.
 * Units: temperatures and base in one unit, either °C or °F; result degree-hours of that unit.
 * Valid: any temperatures; durationHours >= 0.
 * Source: derived: integral of a linear ramp. That steps at or below the base count 0 is a convention (derived; the sources
 * speak only of degrees above).
 * @throws RangeError unless every number is finite and durationHours >= 0.
 * @example degreeHoursOfRamp({ fromDeg: 24, toDeg: 24, baseDeg: 16, durationHours: 10 }) // => 80
 * @example degreeHoursOfRamp({ fromDeg: 4, toDeg: 24, baseDeg: 15.6, durationHours: 6 }) // => 10.584
 */
export function degreeHoursOfRamp({
  fromDeg,
  toDeg,
  baseDeg,
  durationHours,
}: {
  fromDeg: number;
  toDeg: number;
  baseDeg: number;
  durationHours: number;
}): number {
  if (!Number.isFinite(fromDeg) || !Number.isFinite(toDeg) || !Number.isFinite(baseDeg))
    throw new RangeError(
      `degreeHoursOfRamp: temperatures requires finite numbers, got ${fromDeg}, ${toDeg}, ${baseDeg}`,
    );
  if (!(durationHours >= 0 && Number.isFinite(durationHours)))
    throw new RangeError(`degreeHoursOfRamp: durationHours requires a number >= 0, got ${durationHours}`);
  const lowDeg = Math.min(fromDeg, toDeg) - baseDeg;
  const highDeg = Math.max(fromDeg, toDeg) - baseDeg;
  if (highDeg <= 0) return 0;
  if (lowDeg >= 0) return ((lowDeg + highDeg) / 2) * durationHours;
  return ((highDeg * highDeg) / (2 * (highDeg - lowDeg))) * durationHours;
}

/**
 * A reading in the rule set's unit, as typed where it was typed in that unit, so that 90 °F stays exactly 90.
 *
 * Units: result in `unit`. Conversions are freed of their last bits (1e-9), since a class edge may hang on them.
 * Valid: any reading.
 * Source: derived: °F = °C x 1.8 + 32.
 * @throws RangeError unless the temperature is a finite number.
 * @example readingInUnit({ atMs: 0, roomC: 32.22222222222222, typed: { value: 90, unit: 'F' }, source: 'hand' }, 'F') // => 90
 */
export function readingInUnit(reading: RoomReading, unit: TemperatureUnit): number {
  const { roomC, typed } = reading;
  if (!Number.isFinite(roomC))
    throw new RangeError(`readingInUnit: roomC requires a finite number, got ${roomC}`);
  const tidy = (value: number): number => Math.round(value * 1e9) / 1e9;
  const asTyped = typed !== undefined && Math.abs(temperatureToC(typed) - roomC) < SAME_TEMPERATURE_C;
  if (!asTyped) return unit === 'C' ? roomC : tidy(temperatureFromC({ tempC: roomC, unit }));
  if (typed.unit === unit) return typed.value;
  return tidy(temperatureFromC({ tempC: temperatureToC(typed), unit }));
}

/**
 * The hours two neighbouring logger readings may lie apart before the stretch between them counts as not read. Where a reading
 * by hand takes part, HAND_GAP_HOURS holds instead.
 *
 * Formula: 3 x the logger's own period (the lower median of its spacings), at most HAND_GAP_HOURS.
 * Units: h.
 * Valid: readings in order of time; fewer than two of a logger give HAND_GAP_HOURS.
 * Source: common practice.
 * @example loggerGapHours([{ atMs: 0, roomC: 24, source: 'logger' }, { atMs: 600000, roomC: 24, source: 'logger' }]) // => 0.5
 */
export function loggerGapHours(readings: readonly RoomReading[]): number {
  const spacingsMs: number[] = [];
  let lastMs = Number.NaN;
  for (const { atMs, source } of readings) {
    if (source !== 'logger') continue;
    if (atMs > lastMs) spacingsMs.push(atMs - lastMs);
    lastMs = atMs;
  }
  spacingsMs.sort((a, b) => a - b);
  const periodMs = spacingsMs[(spacingsMs.length - 1) >> 1];
  if (periodMs === undefined) return HAND_GAP_HOURS;
  return Math.min(HAND_GAP_HOURS, (LOGGER_GAP_PERIODS * periodMs) / MS_PER_HOUR);
}

/**
 * Degree-hours over the readings from `fromMs` on, up to `toMs`: straight lines between readings, cut at `toMs`.
 * Two readings at one instant are a step. Readings before `fromMs` are left out, and nothing is drawn ahead of the last one.
 * Not for a product's core temperature: both rule sets count the room's.
 *
 * Formula: sum over neighbouring readings of the area of max(0, T - base).
 * Units: `baseDeg` and all Deg in `unit`; result degree-hours of that unit; times epoch ms.
 * Valid: readings in order of time; null when none lies between fromMs and toMs. The highest temperature includes one read
 * exactly at `toMs`: a tie counts against the maker.
 * Source: CFIA, Meat Hygiene Manual of Procedures, ch. 4, 4.16.2.1: each temperature step is analysed for what it
 * contributes (read second-hand).
 * @throws RangeError unless the readings are in order of time and every number is finite.
 * @example degreeHourSum({ readings: [{ atMs: 0, roomC: 24, source: 'hand' }, { atMs: 3600000, roomC: 24, source: 'hand' }], unit: 'C', baseDeg: 16, fromMs: 0, toMs: 3600000 })?.totalDegreeHours // => 8
 */
export function degreeHourSum({
  readings,
  unit,
  baseDeg,
  fromMs,
  toMs,
}: {
  readings: readonly RoomReading[];
  unit: TemperatureUnit;
  baseDeg: number;
  fromMs: number;
  toMs: number;
}): DegreeHourSum | null {
  let lastMs = Number.NEGATIVE_INFINITY;
  for (const [index, { atMs, roomC }] of readings.entries()) {
    if (!(atMs >= lastMs) || !Number.isFinite(roomC))
      throw new RangeError(
        `degreeHourSum: readings requires order of time and finite numbers, got ${roomC} at ${atMs}, index ${index}`,
      );
    lastMs = atMs;
  }
  const counted = readings.filter((reading) => reading.atMs >= fromMs);
  const first = counted[0];
  if (first === undefined || first.atMs > toMs) return null;
  const betweenLoggedHours = loggerGapHours(counted);
  const steps: DegreeHourStep[] = [];
  let before = first;
  let beforeDeg = readingInUnit(first, unit);
  let highestDeg = beforeDeg;
  let lastDeg = beforeDeg;
  for (const after of counted.slice(1)) {
    if (before.atMs > toMs) break;
    const spanMs = after.atMs - before.atMs;
    const endMs = Math.min(after.atMs, toMs);
    const share = spanMs > 0 ? (endMs - before.atMs) / spanMs : 1;
    const afterDeg = readingInUnit(after, unit);
    const toDeg = share === 1 ? afterDeg : beforeDeg + (afterDeg - beforeDeg) * share;
    const durationHours = (endMs - before.atMs) / MS_PER_HOUR;
    highestDeg = Math.max(highestDeg, toDeg);
    lastDeg = toDeg;
    if (durationHours > 0)
      steps.push({
        fromMs: before.atMs,
        toMs: endMs,
        fromDeg: beforeDeg,
        toDeg,
        durationHours,
        degreeHours: degreeHoursOfRamp({ fromDeg: beforeDeg, toDeg, baseDeg, durationHours }),
        isGap:
          spanMs / MS_PER_HOUR >
          (before.source === 'logger' && after.source === 'logger' ? betweenLoggedHours : HAND_GAP_HOURS),
      });
    before = after;
    beforeDeg = afterDeg;
  }
  return {
    steps,
    totalDegreeHours: steps.reduce((sum, step) => sum + step.degreeHours, 0),
    highestDeg,
    lastDeg,
    fromMs: first.atMs,
    toMs: steps.at(-1)?.toMs ?? first.atMs,
  };
}
