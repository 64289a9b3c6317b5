/** One series of room temperatures out of readings by hand and the packed columns of data loggers. */
import { type TemperatureUnit, temperatureToC } from '#core/units.ts';
import type { RoomReading } from './degree-hours.ts';

/** A logger's columns as it wrote them. `offsetC` is what its last check says to add. */
export type PackedRoom = {
  readonly startMs: number;
  readonly sinceStartS: readonly number[];
  readonly valuesDeg: readonly number[];
  readonly unit: TemperatureUnit;
  readonly offsetC?: number | undefined;
};

/** A hand reading and the logger beside it that tell different temperatures: one of the two is wrong. */
export type RoomDisagreement = { readonly atMs: number; readonly handC: number; readonly loggerC: number };

/** Two instruments of the trade may differ this much: common practice. */
const DISAGREEMENT_C = 2;
const BESIDE_MS = 15 * 60_000;

/**
 * Hand readings and loggers as one series in order of time, both kept where they meet: the warmer of the two then sets the class.
 * A row that is in twice, as when two files overlap, counts once.
 *
 * Formula: a logger's reading is its value plus its offset. Units: s since the start; values in `unit`; °C and epoch ms out.
 * Valid: columns of equal length. Disagreements: more than 2 °C within 15 minutes (common practice).
 * Source: derived.
 * @throws RangeError for columns of different length or a value that is not finite.
 * @example mergeRoomReadings({ hand: [], logged: [{ startMs: 0, sinceStartS: [60], valuesDeg: [24], unit: 'C' }] }).readings // => [{ atMs: 60000, roomC: 24, typed: { value: 24, unit: 'C' }, source: 'logger' }]
 */
export function mergeRoomReadings({
  hand,
  logged,
}: {
  hand: readonly RoomReading[];
  logged: readonly PackedRoom[];
}): { readings: readonly RoomReading[]; disagreements: readonly RoomDisagreement[] } {
  const inOrder = [...hand, ...logged.flatMap(unpack)].sort((a, b) => a.atMs - b.atMs);
  const readings = inOrder.filter(({ atMs, roomC, source }, index) => {
    if (source === 'hand') return true;
    for (let at = index - 1; inOrder[at]?.atMs === atMs; at -= 1)
      if (inOrder[at]?.source === 'logger' && inOrder[at]?.roomC === roomC) return false;
    return true;
  });
  return { readings, disagreements: disagreementsOf(readings) };
}

function unpack({ startMs, sinceStartS, valuesDeg, unit, offsetC = 0 }: PackedRoom): RoomReading[] {
  if (sinceStartS.length !== valuesDeg.length)
    throw new RangeError(
      `mergeRoomReadings: columns requires equal length, got ${sinceStartS.length} and ${valuesDeg.length}`,
    );
  return valuesDeg.map((value, index) => {
    const atMs = startMs + (sinceStartS[index] ?? Number.NaN) * 1000;
    if (!Number.isFinite(value) || !Number.isFinite(atMs))
      throw new RangeError(
        `mergeRoomReadings: row ${index} requires finite numbers, got ${value} at ${atMs}`,
      );
    return {
      atMs,
      roomC: temperatureToC({ value, unit }) + offsetC,
      typed: { value, unit },
      source: 'logger',
    };
  });
}

function disagreementsOf(readings: readonly RoomReading[]): RoomDisagreement[] {
  const found: RoomDisagreement[] = [];
  for (const [index, { atMs, roomC, source }] of readings.entries()) {
    if (source !== 'hand') continue;
    // The logger's reading before it and the one after it, found from here outwards: a month has many.
    const beside = [-1, 1]
      .flatMap((step) => {
        for (let at = index + step; ; at += step) {
          const other = readings[at];
          if (other === undefined || !(Math.abs(other.atMs - atMs) <= BESIDE_MS)) return [];
          if (other.source === 'logger') return [other];
        }
      })
      .sort((a, b) => Math.abs(a.roomC - roomC) - Math.abs(b.roomC - roomC))[0];
    if (beside && Math.abs(beside.roomC - roomC) > DISAGREEMENT_C)
      found.push({ atMs, handC: roomC, loggerC: beside.roomC });
  }
  return found;
}
