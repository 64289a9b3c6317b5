import type { Batch } from '#record/batch.ts';
import type { PieceForecast } from '#record/forecast-figures.ts';
import type { Piece } from '#record/piece.ts';
import { pieceFigures } from '#record/piece-figures.ts';
import type { Chamber } from '#record/place.ts';
import type { SubjectId } from '#record/subject.ts';
import { calendarDay, daysBetween } from '#words/days.ts';
import type { Words } from '#words/en.ts';
import { type Said, said } from '#words/said.ts';
import { type RailsRow, railsRows } from './rails-view.ts';

export type Ahead = { readonly batch: Batch; readonly piece: Piece; readonly forecast: PieceForecast | null };

export type CalendarRow = {
  readonly key: SubjectId;
  readonly href: string;
  readonly title: string;
  readonly note: string;
  /** Shares of the width, 0 to 100. */
  readonly bar: { readonly from: number; readonly to: number };
  readonly window: { readonly from: number; readonly to: number; readonly open: boolean } | null;
};

/** Where on the width an instant stands, 0 to 100. */
export type Axis = {
  readonly fromMs: number;
  readonly toMs: number;
  readonly share: (atMs: number) => number;
};

export type CalendarView = {
  readonly sentence: Said;
  readonly rows: readonly CalendarRow[];
  readonly rails: readonly RailsRow[];
  readonly today: number;
  readonly months: readonly { key: string; at: number; label: string }[];
};

const DAY_MS = 24 * 3_600_000;
const OPEN_END_DAYS = 28;

/** From the first stuffing to the last end in sight. */
export function axisOf(ahead: readonly Ahead[], nowMs: number): Axis {
  const fromMs = Math.min(...ahead.map(({ piece }) => piece.stuffed.atMs));
  const toMs = Math.max(...ahead.map(({ forecast }) => endOf(forecast, nowMs))) + 2 * DAY_MS;
  const share = (atMs: number) => Math.min(100, Math.max(0, (100 * (atMs - fromMs)) / (toMs - fromMs)));
  return { fromMs, toMs, share };
}

/** Of a batch that hangs or will, the piece of middle weight: it stands for the others. */
export function middlePiece({ pieces }: Batch): Piece | null {
  const up = pieces.filter(({ status }) => status === 'hanging').sort((a, b) => a.greenG - b.greenG);
  return up[Math.floor(up.length / 2)] ?? null;
}

export function calendarView({
  ahead,
  chambers,
  nowMs,
  zone,
  words,
}: {
  ahead: readonly Ahead[];
  chambers: readonly Chamber[];
  nowMs: number;
  zone: string;
  words: Words;
}): CalendarView {
  const { calendar } = words;
  if (ahead.length === 0) return { sentence: calendar.none, rows: [], rails: [], today: 0, months: [] };
  const axis = axisOf(ahead, nowMs);
  const { share } = axis;
  const rails = railsRows({ ahead, chambers, axis, nowMs, zone, words });
  const clash = rails.find((row) => row.clash !== null);
  const waiting = ahead
    .filter(({ piece, forecast }) => forecast?.p50Ms && !pieceFigures(piece).atTarget)
    .sort((a, b) => (a.forecast?.p50Ms ?? 0) - (b.forecast?.p50Ms ?? 0));
  const next = waiting[0]?.forecast;
  return {
    sentence: said(
      ...calendar.sentence(ahead.length, next ? windowOf(next, nowMs, zone, words) : null),
      ...(clash ? calendar.rails.clashes(clash.title) : []),
    ),
    rails,
    today: share(nowMs),
    months: monthsBetween(axis.fromMs, axis.toMs, zone).map((atMs) => ({
      key: calendarDay(atMs, zone),
      at: share(atMs),
      label: words.dates.shortDay(atMs, zone, nowMs),
    })),
    rows: [...ahead]
      .sort((a, b) => endOf(a.forecast, nowMs) - endOf(b.forecast, nowMs))
      .map(({ batch, piece, forecast }) => {
        const done = pieceFigures(piece).atTarget;
        const open = forecast?.p90Ms === null;
        const window = !done && forecast && windowOf(forecast, nowMs, zone, words);
        return {
          key: batch.id,
          href: `#/batches/${batch.id.slice('batch:'.length)}/hanging`,
          title: `${batch.opened.body.formula.name}, ${words.batches.lot(batch.opened.body.lot)}`,
          note: calendar.row({
            pieces: batch.pieces.filter(({ status }) => status === 'hanging').length,
            chamber:
              batch.stage === 'ferment'
                ? calendar.ferments
                : (chambers.find(({ id }) => id === batch.hung?.body.chamber)?.name ?? null),
            window: done ? calendar.atTarget : window ? calendar.window(window) : calendar.open,
          }),
          bar: { from: share(piece.stuffed.atMs), to: share(nowMs) },
          window:
            done || !forecast?.p10Ms
              ? null
              : {
                  from: share(Math.max(nowMs, forecast.p10Ms)),
                  to: share(Math.max(nowMs + DAY_MS, endOf(forecast, nowMs))),
                  open,
                },
        };
      }),
  };
}

export function endOf(forecast: PieceForecast | null, nowMs: number): number {
  return Math.max(nowMs, forecast?.p90Ms ?? (forecast?.p50Ms ?? nowMs) + OPEN_END_DAYS * DAY_MS);
}

export function windowOf(
  { p10Ms, p90Ms }: PieceForecast,
  nowMs: number,
  zone: string,
  words: Words,
): string | null {
  if (p10Ms === null) return null;
  const fromMs = Math.max(nowMs, p10Ms);
  if (p90Ms === null) return words.hanging.from(words.dates.day(fromMs, zone, nowMs));
  return words.dates.between(fromMs, Math.max(fromMs, p90Ms), zone, nowMs);
}

const MOST_TICKS = 4;

/** The first of each month in between, thinned where there are many. */
function monthsBetween(fromMs: number, toMs: number, zone: string): number[] {
  const firsts: number[] = [];
  for (let atMs = fromMs; atMs <= toMs; atMs += DAY_MS)
    if (calendarDay(atMs, zone).endsWith('-01')) firsts.push(atMs);
  const every = Math.ceil(firsts.length / MOST_TICKS);
  return firsts.filter((_, at) => at % every === 0);
}

/** How many days, at least one: a day that begins late still counts. */
export function wholeDays(fromMs: number, toMs: number, zone: string): number {
  return Math.max(1, daysBetween(calendarDay(fromMs, zone), calendarDay(toMs, zone)));
}
