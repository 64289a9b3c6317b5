/** The air that a batch dries in: read and logged as far as it was, then as it is set or planned. */
import type { AirPoint } from '#core/air/air-series.ts';
import { airByDay } from '#core/drying/air-days.ts';
import type { AirReading } from '#core/drying/clock.ts';
import { DIAL_SD_PCT } from '#core/drying/implied-humidity.ts';
import type { AirStep } from '#core/drying/radial.ts';
import type { Batch } from './batch.ts';
import type { ChamberAir } from './chamber-air.ts';
import type { Piece } from './piece.ts';

/** What a chamber's record says of its air, as far as drying needs it: small enough to be handed to another thread. */
export type KnownAir = {
  readonly points: readonly AirPoint[];
  readonly set: { readonly atMs: number; readonly airC: number; readonly rhPct: number | null } | null;
};

export type PlannedAir = { readonly chamberC: number; readonly humidityPct: number };

const HOUR_MS = 3_600_000;
/** A reading by hand speaks for a day; then the plan does, until the next. */
const SPEAKS_MS = 24 * HOUR_MS;
/** Humid, as a warm stage is kept, where nobody read it (published range 90 to 95 %, read second-hand). */
const FERMENT_RH_PCT = 92;

/** The first reading of each hour. */
export function knownAir({ points, set }: Pick<ChamberAir, 'points' | 'set'>): KnownAir {
  let lastHour = Number.NEGATIVE_INFINITY;
  return {
    points: points.filter(({ atMs }) => {
      const hour = Math.floor(atMs / HOUR_MS);
      if (hour === lastHour) return false;
      lastHour = hour;
      return true;
    }),
    set: set && { atMs: set.atMs, airC: set.body.airC, rhPct: set.body.rhPct ?? null },
  };
}

/** What was last set, else what the air was read as on hanging, else the plan. */
export function plannedAir({ plan, hung }: Batch, known: KnownAir | null, nowMs: number): PlannedAir {
  const planned = {
    chamberC: hung?.body.airC ?? plan.dryC,
    humidityPct: hung?.body.rhPct ?? plan.dryRhPct,
  };
  const set = known?.set;
  if (!set || set.atMs > nowMs || set.atMs < (hung?.atMs ?? Infinity)) return planned;
  return { chamberC: set.airC, humidityPct: set.rhPct ?? planned.humidityPct };
}

/** The ferment's room, then the chamber's readings since hanging; where they are silent for more than a day, the plan. */
export function airOf(batch: Batch, known: KnownAir | null, nowMs: number): AirReading[] {
  const planned = plannedAir(batch, known, nowMs);
  const room = batch.room.map(({ atMs, body }) => ({
    fromMs: atMs,
    chamberC: body.roomC,
    humidityPct: body.rhPct ?? FERMENT_RH_PCT,
  }));
  const hungMs = batch.hung?.atMs;
  if (hungMs === undefined) return room;
  const inChamber = (known?.points ?? []).filter(({ atMs }) => atMs >= hungMs && atMs <= nowMs);
  return [
    ...room,
    { fromMs: hungMs, ...planned },
    ...inChamber.flatMap(({ atMs, airC, rhPct }, at) => {
      const reading = { fromMs: atMs, chamberC: airC, humidityPct: rhPct ?? planned.humidityPct };
      const silent = (inChamber[at + 1]?.atMs ?? nowMs) - atMs > SPEAKS_MS;
      return silent ? [reading, { fromMs: atMs + SPEAKS_MS, ...planned }] : [reading];
    }),
  ];
}

/** What the chamber showed since the pieces were hung: the mean of its readings, else what is set or planned. */
export function shownHumidityPct(batch: Batch, known: KnownAir | null, nowMs: number): number {
  const hungMs = batch.hung?.atMs ?? Infinity;
  const read = (known?.points ?? []).flatMap(({ atMs, rhPct }) =>
    atMs >= hungMs && atMs <= nowMs && rhPct !== null ? [rhPct] : [],
  );
  return read.length > 0
    ? read.reduce((sum, rhPct) => sum + rhPct, 0) / read.length
    : plannedAir(batch, known, nowMs).humidityPct;
}

/** The air of each day that a piece was in it, from stuffing on, and the air planned from then on. */
export function dailyAir(
  batch: Batch,
  { stuffed, rests }: Pick<Piece, 'stuffed' | 'rests'>,
  known: KnownAir | null,
  nowMs: number,
): AirStep[] {
  return airByDay({
    startMs: stuffed.atMs,
    nowMs,
    hungMs: batch.hung?.atMs ?? null,
    readings: airOf(batch, known, nowMs),
    rests,
    planned: plannedAir(batch, known, nowMs),
  });
}

/** A logger is good to so many points, its own offsets put right (set on simulated makers, computed); readings by hand are as a dial. */
export const LOGGER_SD_PCT = 1.5;
const LOGGER_A_DAY = 12;

/** How far the humidity known since hanging, or of the last day, may be from the one there was. */
export function humiditySdPct({ hung }: Batch, known: KnownAir | null, nowMs: number): number {
  const fromMs = Math.min(hung?.atMs ?? nowMs, nowMs - 24 * HOUR_MS);
  const read = (known?.points ?? []).filter(
    ({ atMs, rhPct }) => atMs >= fromMs && atMs <= nowMs && rhPct !== null,
  );
  const aDay = read.length / ((nowMs - fromMs) / (24 * HOUR_MS));
  return aDay >= LOGGER_A_DAY ? LOGGER_SD_PCT : DIAL_SD_PCT;
}
