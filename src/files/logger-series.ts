/** Readings at their instants as packed columns, in order of time, each instant once. */
import { type TemperatureUnit, temperatureToC } from '#core/units.ts';
import { usualStep } from './logger-clock.ts';

export type LoggerGap = { readonly fromMs: number; readonly toMs: number };

export type LoggerSeries = {
  readonly startMs: number;
  readonly atMs: readonly number[];
  readonly roomC: readonly number[];
  readonly rhPct: readonly (number | null)[];
  /** As the file has them, in `unit`: a class of degree-hours is taken from these. */
  readonly valuesDeg: readonly number[];
  readonly unit: TemperatureUnit;
  /** The step that most readings are apart; null for a single one. */
  readonly periodMs: number | null;
  /** Between two readings that are more than one and a half periods apart. */
  readonly gaps: readonly LoggerGap[];
};

export type Reading = {
  readonly row: number;
  readonly atMs: number;
  readonly valueDeg: number;
  readonly rhPct: number | null;
};

export type Packed =
  | { ok: true; series: LoggerSeries; duplicates: number; outOfOrder: number }
  /** Two readings that differ stand at one instant. */
  | { ok: false; row: number };

/** `readings` as they stand in the file, at least one. */
export function packed(readings: readonly Reading[], unit: TemperatureUnit): Packed {
  const ordered = [...readings].sort((a, b) => a.atMs - b.atMs || a.row - b.row);
  const once: Reading[] = [];
  for (const reading of ordered) {
    const last = once.at(-1);
    if (last?.atMs !== reading.atMs) once.push(reading);
    else if (last.valueDeg !== reading.valueDeg || last.rhPct !== reading.rhPct)
      return { ok: false, row: reading.row };
  }
  const atMs = once.map((reading) => reading.atMs);
  const periodMs = usualStep(atMs);
  const series = {
    startMs: atMs[0] ?? Number.NaN,
    atMs,
    roomC: once.map(({ valueDeg }) => temperatureToC({ value: valueDeg, unit })),
    rhPct: once.map(({ rhPct }) => rhPct),
    valuesDeg: once.map(({ valueDeg }) => valueDeg),
    unit,
    periodMs,
    gaps: periodMs === null ? [] : gapsOf(atMs, periodMs),
  };
  return { ok: true, series, duplicates: readings.length - once.length, outOfOrder: outOfOrder(readings) };
}

function gapsOf(atMs: readonly number[], periodMs: number): LoggerGap[] {
  return atMs.slice(1).flatMap((toMs, at) => {
    const fromMs = atMs[at] ?? toMs;
    return toMs - fromMs > 1.5 * periodMs ? [{ fromMs, toMs }] : [];
  });
}

function outOfOrder(readings: readonly Reading[]): number {
  let latestMs = Number.NEGATIVE_INFINITY;
  let count = 0;
  for (const { atMs } of readings) {
    if (atMs < latestMs) count += 1;
    latestMs = Math.max(latestMs, atMs);
  }
  return count;
}
