/** When a ferment should reach a pH: a window, never a reading. No verdict rests on it. */
import { NORMAL_90_SD, normalCdf, risingRoot } from '#core/drying/normal.ts';
import type { RoomReading } from './degree-hours.ts';
import { type PhSpread, phChance, phPosterior, phSpread } from './ph-posterior.ts';
import { type CulturePace, type OwnFerment, phPrior } from './ph-prior.ts';
import { disbeliefOf, type PhReading } from './ph-reading.ts';
import { warmClock } from './warm-hours.ts';

const MS_PER_HOUR = 3_600_000;
/** How far ahead is looked: beyond it a ferment that is still above its target has stalled. */
export const LOOK_AHEAD_HOURS = 96;
/** The window holds 80 %: one in ten earlier, one in ten later. */
const EARLY = 1 - normalCdf(NORMAL_90_SD);
const CURVE_POINTS = 33;

export type PhForecastInput = {
  readonly phReadings: readonly PhReading[];
  readonly roomReadings: readonly RoomReading[];
  readonly stuffedAtMs: number;
  readonly nowMs: number;
  readonly culture: CulturePace;
  readonly dextroseGPerKg?: number | undefined;
  /** What the room will be; without it, its last reading. */
  readonly aheadC?: number | undefined;
  /** The maker's own finished ferments with this culture, fitted. */
  readonly own?: readonly OwnFerment[] | undefined;
};

/** Null: not within the time that is looked ahead. A time before now: it may have got there already. */
export type PhWindow = {
  readonly ph: number;
  readonly earliestAtMs: number | null;
  readonly likelyAtMs: number | null;
  readonly latestAtMs: number | null;
  /** The chance that it gets there within the time looked ahead, 0 to 1. */
  readonly chance: number;
};

export type PhForecast = {
  readonly windows: readonly PhWindow[];
  /** Where it ends: low, likely and high of 80 %. */
  readonly endPh: { readonly lowPh: number; readonly midPh: number; readonly highPh: number };
  /** For the picture: from stuffing to 12 h after the last window, at most as far as is looked ahead. */
  readonly curve: readonly {
    readonly atMs: number;
    readonly lowPh: number;
    readonly midPh: number;
    readonly highPh: number;
  }[];
  /** How many readings it rests on. */
  readonly count: number;
  readonly aheadC: number;
  readonly assumes: readonly ('room-stays' | 'culture-unknown' | 'sugar-unknown')[];
};

/**
 * When the pH should reach each target, as an 80 % window, from whatever was read: culture and sugar at first, the readings as they come.
 * Wrong tool: for a ferment without a culture it is little more than a guess, and for one that has begun to rise.
 *
 * Formula: posterior over exponential and logistic lines on the warm clock; quantiles of the first time at or below the target.
 * Units: pH, g/kg, epoch ms, °C. Valid: null without a room temperature since stuffing. Doubted readings and those of a failed meter are
 * left out; a strip counts a little.
 * Source: phPrior, phPosterior and warmClock carry theirs; scored on 200 invented ferments in tests/backtest.
 * @throws RangeError unless the numbers are finite.
 * @example forecastPh({ phReadings: [], roomReadings: [], stuffedAtMs: 0, nowMs: 0, culture: 'medium' }, [5.3]) // => null
 */
export function forecastPh(input: PhForecastInput, targetsPh: readonly number[]): PhForecast | null {
  const { roomReadings, stuffedAtMs, nowMs, aheadC, culture, dextroseGPerKg, own } = input;
  const clock = warmClock({
    roomReadings: roomReadings.filter((reading) => reading.atMs <= nowMs),
    stuffedAtMs,
    aheadC,
  });
  if (clock === null) return null;
  const usable = input.phReadings.filter((reading) => {
    const why = disbeliefOf(reading);
    return reading.atMs >= stuffedAtMs && reading.atMs <= nowMs && (why === null || why === 'strip');
  });
  const readings = usable.map((reading) => ({ ...reading, warmHours: clock.warmHoursAt(reading.atMs) }));
  const posterior = phPosterior({ prior: phPrior({ culture, dextroseGPerKg, own }), readings });
  const endMs = Math.max(stuffedAtMs, nowMs) + LOOK_AHEAD_HOURS * MS_PER_HOUR;
  const chanceAt = (ph: number, atMs: number): number =>
    phChance(phSpread(posterior, clock.warmHoursAt(atMs)), ph);
  const windows = targetsPh.map((ph): PhWindow => {
    const reachedMs = (level: number): number | null =>
      chanceAt(ph, stuffedAtMs) >= level
        ? stuffedAtMs
        : risingRoot((atMs) => chanceAt(ph, atMs), {
            level,
            low: stuffedAtMs,
            high: endMs,
            tolerance: MS_PER_HOUR / 60,
          });
    return {
      ph,
      earliestAtMs: reachedMs(EARLY),
      likelyAtMs: reachedMs(0.5),
      latestAtMs: reachedMs(1 - EARLY),
      chance: chanceAt(ph, endMs),
    };
  });
  const lastMs = Math.max(nowMs, ...windows.map((window) => window.latestAtMs ?? endMs));
  const curveEndMs = Math.min(endMs, lastMs + 12 * MS_PER_HOUR);
  const curve = Array.from({ length: CURVE_POINTS }, (_, at) => {
    const atMs = stuffedAtMs + ((curveEndMs - stuffedAtMs) * at) / (CURVE_POINTS - 1);
    return { atMs, ...bandOf(phSpread(posterior, clock.warmHoursAt(atMs))) };
  });
  const assumes: PhForecast['assumes'][number][] = aheadC === undefined ? ['room-stays'] : [];
  if (culture === 'unknown') assumes.push('culture-unknown');
  if (dextroseGPerKg === undefined) assumes.push('sugar-unknown');
  return {
    windows,
    endPh: bandOf(phSpread(posterior, Number.POSITIVE_INFINITY)),
    curve,
    count: readings.length,
    aheadC: clock.aheadC,
    assumes,
  };
}

function bandOf(spread: PhSpread): { lowPh: number; midPh: number; highPh: number } {
  const at = (level: number): number =>
    risingRoot((ph) => phChance(spread, ph), {
      level,
      low: 2,
      high: 9,
      tolerance: 1e-3,
    }) ?? Number.NaN;
  return { lowPh: at(EARLY), midPh: at(0.5), highPh: at(1 - EARLY) };
}
