/** From a batch as it stands to its ferment clock: readings with the numbers as they were typed. */
import type { RoomReading } from '#core/ferment/degree-hours.ts';
import { type FermentClock, fermentClock } from '#core/ferment/ferment-clock.ts';
import type { PhReading } from '#core/ferment/ph-reading.ts';
import type { Batch } from './batch.ts';
import type { EntryOf } from './entry.ts';

export function roomReadings(room: readonly EntryOf<'room-read'>[]): RoomReading[] {
  return room.map(({ atMs, body }) => {
    const typed = body.typed?.roomC;
    const value = Number(typed?.text.replace(',', '.'));
    const unit = typed?.unit;
    return {
      atMs,
      roomC: body.roomC,
      source: 'hand',
      ...(Number.isFinite(value) && (unit === 'C' || unit === 'F') ? { typed: { value, unit } } : {}),
    };
  });
}

/** Readings of the product; one of the fresh mix before stuffing is on the record but stops no clock. */
export function phReadings(ph: readonly EntryOf<'ph-read'>[]): PhReading[] {
  return ph.map(({ atMs, body }) => ({ atMs, ph: body.ph, method: body.method, doubted: body.doubted }));
}

/** Null until the pieces are stuffed: there is no clock before. */
export function fermentFigures(batch: Batch, nowMs: number): FermentClock | null {
  if (batch.stuffedAtMs === null) return null;
  return fermentClock({
    roomReadings: roomReadings(batch.room),
    phReadings: phReadings(batch.ph),
    stuffedAtMs: batch.stuffedAtMs,
    ruleSet: batch.opened.body.ruleSet,
    nowMs,
  });
}
