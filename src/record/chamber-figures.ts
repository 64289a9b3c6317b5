/** What hangs in a chamber gives off, now and in the weeks ahead, and what the chamber was seen to carry. Estimates but for the last. */
import { type HumidityToSet, humidityToSet } from '#core/air/humidity-to-set.ts';
import { mixAw } from '#core/drying/water-activity.ts';
import type { Batch } from './batch.ts';
import type { KnownAir } from './drying-air.ts';
import { mixOf, type PieceForecast, pieceForecast } from './forecast-figures.ts';
import type { Piece } from './piece.ts';

export type WeekAhead = {
  readonly aheadDays: number;
  readonly humidity: HumidityToSet;
  readonly waterGPerDay: number;
};

export type Carried = { readonly gPerDay: number; readonly untilMs: number };

const DAY_MS = 24 * 3_600_000;
const WEEK_DAYS = 7;
const WEEKS_AHEAD = 4;

export type Load = { readonly batch: Batch; readonly greenG: number; readonly forecast: PieceForecast };

/** The piece of middle weight stands for its batch. `air`: of the chamber in which they hang. */
export function loads(batches: readonly Batch[], nowMs: number, air: KnownAir | null = null): Load[] {
  return batches.flatMap((batch) => {
    const up = hanging(batch);
    const middle = up.toSorted((a, b) => a.greenG - b.greenG)[Math.floor(up.length / 2)];
    const forecast = middle && pieceForecast(middle, batch, nowMs, { air });
    return forecast ? [{ batch, greenG: sum(up.map(({ greenG }) => greenG)), forecast }] : [];
  });
}

/** Empty while nothing hangs. */
export function weeksAhead(inside: readonly Load[], nowMs: number): WeekAhead[] {
  if (inside.length === 0) return [];
  return Array.from({ length: WEEKS_AHEAD + 1 }, (_, week) => {
    const atMs = nowMs + week * WEEK_DAYS * DAY_MS;
    return {
      aheadDays: week * WEEK_DAYS,
      humidity: humidityToSet({
        allAw: inside.map(({ batch, forecast }) =>
          mixAw({ mix: mixOf(batch), lossPct: forecast.band(atMs).p50Pct }),
        ),
      }),
      waterGPerDay: waterOn(inside, atMs),
    };
  });
}

/** What all that hangs gives off on a day to come. */
export function waterOn(inside: readonly Load[], atMs: number): number {
  return sum(inside.map((load) => waterGPerDay(load, atMs, atMs + DAY_MS)));
}

/** What so much fresh sausage of the same kind would add in its first week; null while no batch says which kind. */
export function addedGPerDay(like: Batch | null, addedG: number): number | null {
  const [piece] = like?.pieces ?? [];
  const startMs = piece?.stuffed.atMs;
  if (!like || !piece || startMs === undefined) return null;
  const forecast = pieceForecast(piece, { ...like, hung: null, room: [] }, startMs);
  if (forecast === null) return null;
  return waterGPerDay({ greenG: addedG, forecast }, startMs, startMs + WEEK_DAYS * DAY_MS);
}

const LONGEST_DAYS = 14;

/** The most that all pieces together were weighed to lose in a day; null before two weighings. Pieces not weighed count as nothing. */
export function mostCarried(batches: readonly Batch[]): Carried | null {
  const spans = batches.flatMap(({ hung, pieces }) => pieces.flatMap((piece) => spansOf(piece, hung?.atMs)));
  const ends = new Set(spans.map(({ toMs }) => toMs));
  // A record of years has ten thousand spans: gone through once, in the order of time.
  const changes = spans
    .flatMap(({ fromMs, toMs, gPerDay }) => [
      { atMs: fromMs, gPerDay },
      { atMs: toMs, gPerDay: -gPerDay },
    ])
    .sort((one, two) => one.atMs - two.atMs);
  let most: Carried | null = null;
  let gPerDay = 0;
  for (const [at, { atMs, gPerDay: more }] of changes.entries()) {
    const first = changes[at - 1]?.atMs !== atMs;
    if (first && ends.has(atMs) && (most === null || gPerDay > most.gPerDay))
      most = { gPerDay, untilMs: atMs };
    gPerDay += more;
  }
  return most;
}

/** Between neighbouring weighings since the piece was hung. A round takes minutes: its ends are taken to whole hours. */
function spansOf({ weighings }: Piece, hungMs: number | undefined) {
  const hourOf = (atMs: number) => Math.round(atMs / (DAY_MS / 24)) * (DAY_MS / 24);
  const own = weighings.filter(({ atMs, netG }) => hungMs !== undefined && atMs >= hungMs && netG > 0);
  return own.slice(1).flatMap((to, at) => {
    const from = own[at] ?? to;
    const fromMs = hourOf(from.atMs);
    const toMs = hourOf(to.atMs);
    const days = (toMs - fromMs) / DAY_MS;
    return days > 0 && days <= LONGEST_DAYS ? [{ fromMs, toMs, gPerDay: (from.netG - to.netG) / days }] : [];
  });
}

function waterGPerDay(
  { greenG, forecast }: Pick<Load, 'greenG' | 'forecast'>,
  fromMs: number,
  toMs: number,
): number {
  const lostPct = forecast.band(toMs).p50Pct - forecast.band(fromMs).p50Pct;
  return (Math.max(0, lostPct) / 100) * greenG * (DAY_MS / (toMs - fromMs));
}

function hanging({ pieces }: Batch): Piece[] {
  return pieces.filter(({ status }) => status === 'hanging');
}

function sum(amountsG: readonly number[]): number {
  return amountsG.reduce((totalG, amountG) => totalG + amountG, 0);
}
