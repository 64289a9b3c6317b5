import type { RoomReading } from '#core/ferment/degree-hours.ts';
import type { PhReading } from '#core/ferment/ph-reading.ts';

export const HOUR_MS = 3_600_000;

/** Room readings by hand in °C, as `[hours since stuffing, temperature]`. */
export function roomC(...pairs: readonly (readonly [number, number])[]): RoomReading[] {
  return pairs.map(([hours, value]) => ({ atMs: hours * HOUR_MS, roomC: value, source: 'hand' }));
}

/** Room readings by hand as typed in °F. */
export function roomF(...pairs: readonly (readonly [number, number])[]): RoomReading[] {
  return pairs.map(([hours, value]) => ({
    atMs: hours * HOUR_MS,
    roomC: (value - 32) / 1.8,
    typed: { value, unit: 'F' },
    source: 'hand',
  }));
}

/** One believed meter reading. */
export function meterPh(hours: number, ph: number): PhReading {
  return { atMs: hours * HOUR_MS, ph, method: 'meter', doubted: false };
}
