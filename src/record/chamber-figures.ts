/** What hangs in a chamber gives off, now and in the weeks ahead, and what the chamber was seen to carry. Estimates but for the last. */
import { type HumidityToSet, humidityToSet } from '#core/air/humidity-to-set.ts';
import { mixAw } from '#core/drying/water-activity.ts';
import type { Batch } from './batch.ts';
import { type BatchAhead, type CoursePoint, lossOn } from './drying-batch.ts';
import { mixOf, pieceForecast } from './forecast-figures.ts';
import type { Piece } from './piece.ts';

export type WeekAhead = {
  readonly aheadDays: number;
  readonly humidity: HumidityToSet;
  readonly waterGPerDay: number;
};

export type Carried = { readonly gPerDay: number; readonly untilMs: number };

const DAY_MS = 24 * 3_600_000;
const WEEK_DAYS = 7;
/** Days ahead that are told: now, and each of four weeks. */
export const WEEKS_AHEAD_DAYS: readonly number[] = [0, 7, 14, 21, 28];

/** A batch that hangs and the course of the piece that stands for it. */
export type Load = {
  readonly batch: Batch;
  readonly greenG: number;
  readonly course: readonly CoursePoint[];
};

/** Of what is expected of each batch; what nothing is expected of is left out. */
export function loads(expected: readonly { batch: Batch; ahead: BatchAhead | null | undefined }[]): Load[] {
  return expected.flatMap(({ batch, ahead }) => {
    const up = hanging(batch);
    return ahead && ahead.course.length > 0 && up.length > 0
      ? [{ batch, greenG: sum(up.map(({ greenG }) => greenG)), course: ahead.course }]
      : [];
  });
}

/** Empty while nothing hangs. */
export function weeksAhead(inside: readonly Load[], nowMs: number): WeekAhead[] {
  if (inside.length === 0) return [];
  return WEEKS_AHEAD_DAYS.map((aheadDays) => {
    const atMs = nowMs + aheadDays * DAY_MS;
    return {
      aheadDays,
      humidity: humidityToSet({
        allAw: inside.map(({ batch, course }) => mixAw({ mix: mixOf(batch), lossPct: lossOn(course, atMs) })),
      }),
      waterGPerDay: waterOn(inside, atMs),
    };
  });
}

/** What all that hangs gives off on a day to come. */
export function waterOn(inside: readonly Load[], atMs: number): number {
  return sum(
    inside.map(({ greenG, course }) =>
      waterGPerDay({ greenG, lossPctAt: (at) => lossOn(course, at) }, atMs, atMs + DAY_MS),
    ),
  );
}

/** What so much fresh sausage of the same kind would add in its first week; null while no batch says which kind. */
export function addedGPerDay(like: Batch | null, addedG: number): number | null {
  const [piece] = like?.pieces ?? [];
  const startMs = piece?.stuffed.atMs;
  if (!like || !piece || startMs === undefined) return null;
  const forecast = pieceForecast(piece, { ...like, hung: null, room: [] }, startMs);
  if (forecast === null) return null;
  const lossPctAt = (atMs: number) => forecast.band(atMs).p50Pct;
  return waterGPerDay({ greenG: addedG, lossPctAt }, startMs, startMs + WEEK_DAYS * DAY_MS);
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
  { greenG, lossPctAt }: { greenG: number; lossPctAt: (atMs: number) => number },
  fromMs: number,
  toMs: number,
): number {
  const lostPct = lossPctAt(toMs) - lossPctAt(fromMs);
  return (Math.max(0, lostPct) / 100) * greenG * (DAY_MS / (toMs - fromMs));
}

function hanging({ pieces }: Batch): Piece[] {
  return pieces.filter(({ status }) => status === 'hanging');
}

function sum(amountsG: readonly number[]): number {
  return amountsG.reduce((totalG, amountG) => totalG + amountG, 0);
}
