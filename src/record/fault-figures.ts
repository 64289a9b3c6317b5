/** What a fault is held against: stage, warmth, pH and loss of a batch as far as they were read. */
import { lossPct } from '#core/drying/loss.ts';
import type { DegreeHourSum } from '#core/ferment/degree-hours.ts';
import type { FermentClock } from '#core/ferment/ferment-clock.ts';
import type { Batch } from './batch.ts';
import { fermentFigures, phReadings, roomSeries } from './ferment-figures.ts';

export type FaultFigures = {
  readonly batch: Batch;
  readonly clock: FermentClock | null;
  readonly aboveHours: number;
  readonly unreadHours: number;
  readonly lastRoom: { readonly atMs: number; readonly roomC: number } | null;
  readonly lastPh: { readonly atMs: number; readonly ph: number } | null;
  readonly meanLossPct: number | null;
  readonly pieces: number;
};

/** Batches that a fault can touch: those that hang or ferment, and those taken down that nobody decided on. */
export function faultFigures(batches: readonly Batch[], nowMs: number): FaultFigures[] {
  return batches
    .filter(
      ({ stage, decided }) =>
        stage === 'ferment' || stage === 'hanging' || (stage === 'finished' && !decided),
    )
    .map((batch) => {
      const clock = fermentFigures(batch, nowMs);
      const losses = batch.pieces.flatMap(({ greenG, weighings }) => {
        const last = weighings.at(-1);
        return last && greenG > 0 ? [lossPct({ greenG, nowG: last.netG })] : [];
      });
      const lastRoom = roomSeries(batch).readings.at(-1);
      const lastPh = phReadings(batch).at(-1);
      return {
        batch,
        clock,
        aboveHours: clock?.sum ? hoursAboveBase(clock.sum, clock.base.value) : 0,
        unreadHours: (clock?.gaps ?? []).reduce((sum, gap) => sum + gap.durationHours, 0),
        lastRoom: lastRoom ? { atMs: lastRoom.atMs, roomC: lastRoom.roomC } : null,
        lastPh: lastPh ? { atMs: lastPh.atMs, ph: lastPh.ph } : null,
        meanLossPct: losses.length > 0 ? losses.reduce((sum, each) => sum + each, 0) / losses.length : null,
        pieces: losses.length,
      };
    });
}

/** Hours that the room was read above the base, along straight lines. */
export function hoursAboveBase(sum: DegreeHourSum, baseDeg: number): number {
  return sum.steps.reduce((hours, { fromDeg, toDeg, durationHours }) => {
    const lowDeg = Math.min(fromDeg, toDeg);
    const highDeg = Math.max(fromDeg, toDeg);
    if (highDeg <= baseDeg) return hours;
    const share = lowDeg >= baseDeg ? 1 : (highDeg - baseDeg) / (highDeg - lowDeg);
    return hours + share * durationHours;
  }, 0);
}
