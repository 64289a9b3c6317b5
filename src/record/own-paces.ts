/** How fast the maker's own finished ferments fell, to set out from in the next one. */
import { fitPhLine, type PhPace, type PhShape } from '#core/ferment/ph-line.ts';
import { disbeliefOf } from '#core/ferment/ph-reading.ts';
import { warmClock } from '#core/ferment/warm-hours.ts';
import type { Batch } from './batch.ts';
import { phReadings, roomSeries } from './ferment-figures.ts';
import { thinned } from './ph-ahead.ts';

const SHAPES: readonly PhShape[] = ['exponential', 'logistic'];
/** A line that misses its readings by more tells nothing of the next ferment. */
const MOST_RMSE_PH = 0.15;
/** A pace outside this is a fit that ran away. */
const HALF_HOURS = { least: 1, most: 100 } as const;
/** The last dozen: cultures and makers change. */
const MOST_FERMENTS = 12;
const HOUR_MS = 3_600_000;
/** A reading of the fresh mix this near to stuffing stands for the start. */
const MIX_MS = 6 * HOUR_MS;

const fitted = new WeakMap<Batch, PhPace | null>();

/**
 * Paces of finished ferments with the culture of this batch, by the name of its line, in a formula of the same kind; the last ones.
 * A ferment counts with five believed readings or more, that of the fresh mix among them. A fit takes its time: `pause` is awaited
 * before each, so that the page can do other things meanwhile.
 */
export async function ownPaces(
  batches: readonly Batch[],
  batch: Batch,
  pause: () => Promise<unknown>,
): Promise<PhPace[]> {
  const key = cultureKey(batch);
  const others = batches
    .filter(
      (other) =>
        other.id !== batch.id &&
        (other.fermentEnded !== null || other.hung !== null) &&
        cultureKey(other) === key,
    )
    .sort((a, b) => b.opened.atMs - a.opened.atMs)
    .slice(0, MOST_FERMENTS);
  const paces: PhPace[] = [];
  for (const other of others) {
    const pace = fitted.get(other) ?? (fitted.has(other) ? null : await fittedPace(other, pause));
    fitted.set(other, pace);
    if (pace !== null) paces.push(pace);
  }
  return paces;
}

function cultureKey({ opened }: Batch): string {
  const { lines, kind } = opened.body.formula;
  const names = lines.filter(({ role }) => role === 'starter').map(({ name }) => name.trim().toLowerCase());
  return [kind, ...names.sort()].join('|');
}

async function fittedPace(batch: Batch, pause: () => Promise<unknown>): Promise<PhPace | null> {
  const readings = warmReadings(batch);
  let best: { readonly line: PhPace; readonly rmsePh: number } | null = null;
  for (const shape of SHAPES) {
    await pause();
    const line = fitPhLine({ shape, readings });
    if (line === null || line.rmsePh > MOST_RMSE_PH) continue;
    if (!(line.halfHours >= HALF_HOURS.least && line.halfHours <= HALF_HOURS.most)) continue;
    if (best === null || line.rmsePh < best.rmsePh) best = { line, rmsePh: line.rmsePh };
  }
  if (best === null) return null;
  const { shape, lagHours, halfHours } = best.line;
  return { shape, lagHours: Math.max(0, lagHours), halfHours };
}

function warmReadings(batch: Batch): { warmHours: number; ph: number }[] {
  const { stuffedAtMs, fermentEnded, hung } = batch;
  const endMs = fermentEnded?.atMs ?? hung?.atMs;
  if (stuffedAtMs === null || endMs === undefined) return [];
  const clock = warmClock({ roomReadings: thinned(roomSeries(batch).readings), stuffedAtMs });
  if (clock === null) return [];
  const mix = batch.ph.findLast(
    ({ atMs, body }) =>
      body.sample === 'mix' &&
      body.method === 'meter' &&
      !body.doubted &&
      atMs <= stuffedAtMs + MIX_MS &&
      atMs >= stuffedAtMs - MIX_MS,
  );
  const later = phReadings(batch).filter(
    (reading) => reading.atMs >= stuffedAtMs && reading.atMs <= endMs && disbeliefOf(reading) === null,
  );
  return [
    ...(mix ? [{ warmHours: 0, ph: mix.body.ph }] : []),
    ...later.map(({ atMs, ph }) => ({ warmHours: clock.warmHoursAt(atMs), ph })),
  ];
}
