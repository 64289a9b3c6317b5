/** Where a batch's pH should be when: a window, the degree-hours it would have used by then, and when to read next. Estimates. */
import type { RoomReading } from '#core/ferment/degree-hours.ts';
import { degreeHoursBy } from '#core/ferment/ferment-ahead.ts';
import type { FermentClock } from '#core/ferment/ferment-clock.ts';
import { type NextReading, nextPhReading } from '#core/ferment/next-reading.ts';
import { forecastPh, type PhForecast, type PhWindow } from '#core/ferment/ph-forecast.ts';
import type { CulturePace, OwnFerment } from '#core/ferment/ph-prior.ts';
import { COUNTED_UNTIL_PH } from '#core/ferment/ph-reading.ts';
import { sugarInMix } from '#core/formula/sugar.ts';
import type { Batch } from './batch.ts';
import { phReadings, roomSeries } from './ferment-figures.ts';
import { phBandOf } from './ferment-plan.ts';
import { plannedWeighOut } from './weigh-out-figures.ts';

export type PhAhead = {
  readonly forecast: PhForecast;
  /** For the pH at which counting stops, and for the upper edge of the maker's band. */
  readonly stop: PhWindow;
  readonly band: PhWindow;
  /** Degree-hours when the pH is likely there, and at the late end of its window; null where that lies too far ahead. */
  readonly likelyDegreeHours: number | null;
  readonly latestDegreeHours: number | null;
  readonly next: NextReading | null;
  /** The maker's own earlier ferments that it rests on, beside the readings. */
  readonly own: readonly OwnFerment[];
};

/** An hour has many rows of a logger; the warmth of a culture does not change within minutes. */
const MOST_ROOM_READINGS = 400;

export function culturePace({ fermentSet, opened }: Batch): CulturePace {
  const hasStarter = opened.body.formula.lines.some(({ role }) => role === 'starter');
  return fermentSet?.body.pace ?? (hasStarter ? 'unknown' : 'none');
}

/** As dextrose, the middle of what its sugars come to; undefined while no meat was weighed. */
export function dextroseGPerKg(batch: Batch): number | undefined {
  const plan = plannedWeighOut(batch, []);
  const { formula } = batch.opened.body;
  if (plan === null) return undefined;
  const sugar = sugarInMix({
    formula,
    meatG: batch.leanG + batch.fatG,
    gramsByLine: plan.lines.map(({ exactG }) => exactG),
  });
  return (sugar.addedLowGPerKg + sugar.addedHighGPerKg) / 2 + sugar.hiddenGPerKg;
}

/** Null before the first room temperature, and where no ferment is planned. */
export function phAhead(
  batch: Batch,
  clock: FermentClock,
  nowMs: number,
  paces: readonly OwnFerment[] = [],
): PhAhead | null {
  const { stuffedAtMs } = batch;
  const own = phBandOf(batch.plan);
  if (stuffedAtMs === null || clock.sum === null || own === null) return null;
  const culture = culturePace(batch);
  const readings = phReadings(batch);
  const forecast = forecastPh(
    {
      phReadings: readings,
      roomReadings: thinned(roomSeries(batch).readings.filter((reading) => reading.atMs >= stuffedAtMs)),
      stuffedAtMs,
      nowMs,
      culture,
      dextroseGPerKg: dextroseGPerKg(batch),
      own: paces,
    },
    [COUNTED_UNTIL_PH.value, own.highPh],
  );
  const [stop, band] = forecast?.windows ?? [];
  if (!forecast || !stop || !band) return null;
  const { sum } = clock;
  const { ruleSet } = batch.opened.body;
  const by = (atMs: number | null) => (atMs === null ? null : degreeHoursBy({ ruleSet, sum, atMs }));
  return {
    forecast,
    stop,
    band,
    likelyDegreeHours: by(stop.likelyAtMs),
    latestDegreeHours: by(stop.latestAtMs),
    own: paces,
    next: nextPhReading({
      phReadings: readings,
      stuffedAtMs,
      nowMs,
      window: stop,
      leftHours: clock.finding.verdict === 'does-not-apply' ? null : (clock.ahead?.hoursLeft.hours ?? null),
      isFast: culture === 'fast',
    }),
  };
}

/** Every so many-th reading, the last one always: it is what the time ahead begins from. */
export function thinned(readings: readonly RoomReading[]): readonly RoomReading[] {
  const every = Math.ceil(readings.length / MOST_ROOM_READINGS);
  return every <= 1 ? readings : readings.filter((_, at) => at % every === 0 || at === readings.length - 1);
}
