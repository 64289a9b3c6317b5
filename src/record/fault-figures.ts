/** What a fault is held against: stage, warmth, pH and loss of a batch as far as they were read. */
import { type AirPoint, bandHours } from '#core/air/air-series.ts';
import { lossPct } from '#core/drying/loss.ts';
import type { DegreeHourSum } from '#core/ferment/degree-hours.ts';
import type { FermentClock } from '#core/ferment/ferment-clock.ts';
import { DEGREE_HOUR_RULES } from '#core/rules/degree-hours.ts';
import { temperatureToC } from '#core/units.ts';
import type { Batch } from './batch.ts';
import type { ChamberAir } from './chamber-air.ts';
import { fermentFigures, phReadings, roomSeries } from './ferment-figures.ts';
import type { SubjectId } from './subject.ts';

export type FaultFigures = {
  readonly batch: Batch;
  readonly clock: FermentClock | null;
  readonly aboveHours: number;
  readonly unreadHours: number;
  readonly lastRoom: { readonly atMs: number; readonly roomC: number } | null;
  readonly lastPh: { readonly atMs: number; readonly ph: number } | null;
  readonly meanLossPct: number | null;
  readonly pieces: number;
  /** Of the chamber in which it hangs; null while it hangs in none, or no air was read there since. */
  readonly air: FaultAir | null;
};

/** What was read of a chamber in the last week, or since the batch hangs in it. */
export type FaultAir = {
  readonly last: AirPoint;
  readonly warmest: AirPoint;
  /** Above the base of the degree-hours: a mark to compare with, no limit of this stage. */
  readonly aboveHours: number;
  readonly baseC: number;
  readonly unreadHours: number;
};

const HOUR_MS = 3_600_000;
const LOOK_BACK_MS = 7 * 24 * HOUR_MS;
/** Common practice: a chamber is read by hand once a day, with two hours' grace. */
const AIR_GAP_HOURS = 26;

/** Batches that a fault can touch: those that hang or ferment, and those taken down that nobody decided on. */
export function faultFigures(
  batches: readonly Batch[],
  nowMs: number,
  airs: ReadonlyMap<SubjectId, ChamberAir> = new Map(),
): FaultFigures[] {
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
        air: airOf(batch, airs, nowMs),
      };
    });
}

function airOf(batch: Batch, airs: ReadonlyMap<SubjectId, ChamberAir>, nowMs: number): FaultAir | null {
  const chamber = batch.hung?.body.chamber;
  const all = chamber ? airs.get(chamber) : undefined;
  if (!batch.hung || !all) return null;
  const fromMs = Math.max(batch.hung.atMs, nowMs - LOOK_BACK_MS);
  const points = all.points.filter(({ atMs }) => atMs >= fromMs && atMs <= nowMs);
  const [first, last] = [points[0], points.at(-1)];
  if (!first || !last) return null;
  const { unit, base } = DEGREE_HOUR_RULES[batch.opened.body.ruleSet];
  const baseC = temperatureToC({ value: base.value, unit });
  const { aboveHours, unknownHours } = bandHours(
    points.map(({ atMs, airC }) => ({ atMs, value: airC })),
    { low: -100, high: baseC, gapHours: AIR_GAP_HOURS },
  );
  const ends = [first.atMs - fromMs, nowMs - last.atMs].map((spanMs) => spanMs / HOUR_MS);
  const unreadEnds = ends.filter((spanHours) => spanHours > AIR_GAP_HOURS);
  return {
    last,
    warmest: points.reduce((most, each) => (each.airC > most.airC ? each : most)),
    aboveHours,
    baseC,
    unreadHours: unreadEnds.reduce((sum, spanHours) => sum + spanHours, unknownHours),
  };
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
