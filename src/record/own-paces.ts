/** How fast the maker's own finished ferments fell, and how far, to set out from in the next one. */
import { fitPhLine, type PhLine, type PhShape, phLeft } from '#core/ferment/ph-line.ts';
import { type OwnFerment, phPrior } from '#core/ferment/ph-prior.ts';
import { disbeliefOf } from '#core/ferment/ph-reading.ts';
import { warmClock } from '#core/ferment/warm-hours.ts';
import type { Batch } from './batch.ts';
import { phReadings, roomSeries } from './ferment-figures.ts';
import { dextroseGPerKg, thinned } from './ph-ahead.ts';

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

/** A line that had so much of its fall before it when it was last read says nothing of where it ends. */
const MOST_LEFT = 0.15;
/** How alike sugar and room must be for one end to say something of another. */
const ALIKE = { dextroseGPerKg: 1.5, roomC: 3 } as const;

type Fitted = { readonly line: PhLine; readonly isRead: boolean };
const fitted = new WeakMap<Batch, Fitted | null>();

/**
 * Paces of finished ferments with the culture of this batch, by the name of its line, in a formula of the same kind; the last ones.
 * A ferment counts with five believed readings or more, that of the fresh mix among them. A fit takes its time: `pause` is awaited
 * before each, so that the page can do other things meanwhile.
 */
export async function ownPaces(
  batches: readonly Batch[],
  batch: Batch,
  pause: () => Promise<unknown>,
): Promise<OwnFerment[]> {
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
  const paces: OwnFerment[] = [];
  for (const other of others) {
    const fit = fitted.get(other) ?? (fitted.has(other) ? null : await fittedTo(other, pause));
    fitted.set(other, fit);
    if (fit === null) continue;
    const { shape, lagHours, halfHours, dropPh } = fit.line;
    const expectedPh = fit.isRead ? dropExpectedPh(other, batch) : null;
    paces.push({
      shape,
      lagHours: Math.max(0, lagHours),
      halfHours,
      ...(expectedPh === null ? {} : { beyondPh: dropPh - expectedPh }),
    });
  }
  return paces;
}

/** What its sugar lets expect of the other ferment; null where it says nothing of this one's end. */
function dropExpectedPh(other: Batch, batch: Batch): number | null {
  const [of, here] = [dextroseGPerKg(other), dextroseGPerKg(batch)];
  if (of === undefined || here === undefined || Math.abs(of - here) > ALIKE.dextroseGPerKg) return null;
  const [otherC, hereC] = [meanRoomC(other), meanRoomC(batch)];
  if (otherC === null || hereC === null || Math.abs(otherC - hereC) > ALIKE.roomC) return null;
  return phPrior({ culture: 'unknown', dextroseGPerKg: of }).dropPh;
}

/** Of what was read from stuffing to the end, whoever read it. */
function meanRoomC(batch: Batch): number | null {
  const { stuffedAtMs, fermentEnded, hung } = batch;
  const endMs = fermentEnded?.atMs ?? hung?.atMs ?? Number.POSITIVE_INFINITY;
  const during = thinned(roomSeries(batch).readings).filter(
    ({ atMs, doubted }) => doubted !== true && atMs >= (stuffedAtMs ?? endMs) && atMs <= endMs,
  );
  return during.length === 0 ? null : during.reduce((sum, { roomC }) => sum + roomC, 0) / during.length;
}

function cultureKey({ opened }: Batch): string {
  const { lines, kind } = opened.body.formula;
  const names = lines.filter(({ role }) => role === 'starter').map(({ name }) => name.trim().toLowerCase());
  return [kind, ...names.sort()].join('|');
}

async function fittedTo(batch: Batch, pause: () => Promise<unknown>): Promise<Fitted | null> {
  const readings = warmReadings(batch);
  let best: (PhLine & { readonly rmsePh: number }) | null = null;
  for (const shape of SHAPES) {
    await pause();
    const line = fitPhLine({ shape, readings });
    if (line === null || line.rmsePh > MOST_RMSE_PH) continue;
    if (!(line.halfHours >= HALF_HOURS.least && line.halfHours <= HALF_HOURS.most)) continue;
    if (best === null || line.rmsePh < best.rmsePh) best = line;
  }
  if (best === null) return null;
  const lastHours = readings.at(-1)?.warmHours ?? 0;
  return { line: best, isRead: phLeft(best, lastHours) <= MOST_LEFT };
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
