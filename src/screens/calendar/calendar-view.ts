import type { Batch } from '#record/batch.ts';
import type { BatchAhead } from '#record/drying-batch.ts';
import { pieceFigures } from '#record/piece-figures.ts';
import type { Chamber } from '#record/place.ts';
import type { SubjectId } from '#record/subject.ts';
import { calendarDay, daysBetween } from '#words/days.ts';
import type { Words } from '#words/en.ts';
import { type Said, said } from '#words/said.ts';
import { type RailsRow, railsRows } from './rails-view.ts';

/** `ahead`: undefined while it is worked out, null where nothing can be expected. */
export type Ahead = { readonly batch: Batch; readonly ahead: BatchAhead | null | undefined };

export type CalendarRow = {
  readonly key: SubjectId;
  readonly href: string;
  readonly title: string;
  readonly note: string;
  /** Its window stands in the note, or will: room is kept for it. */
  readonly hasWindow: boolean;
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
/** So much stands free until every end is in sight: the picture does not move with each answer. */
const IN_SIGHT_DAYS = 56;

export function isWaiting({ ahead }: Ahead): boolean {
  return ahead === undefined;
}

function startOf({ batch }: Ahead): number {
  return batch.stuffedAtMs ?? batch.opened.atMs;
}

/** From the first stuffing to the last end in sight. */
export function axisOf(ahead: readonly Ahead[], nowMs: number): Axis {
  const fromMs = Math.min(...ahead.map(startOf));
  const inSightMs = nowMs + (ahead.some(isWaiting) ? IN_SIGHT_DAYS * DAY_MS : 0);
  const toMs = Math.max(inSightMs, ...ahead.map((each) => endOf(each.ahead, nowMs))) + 2 * DAY_MS;
  const share = (atMs: number) => Math.min(100, Math.max(0, (100 * (atMs - fromMs)) / (toMs - fromMs)));
  return { fromMs, toMs, share };
}

/** What hangs, or will. */
export function comes({ stage, pieces }: Batch): boolean {
  return (stage === 'hanging' || stage === 'ferment') && pieces.some(({ status }) => status === 'hanging');
}

function atTarget({ pieces }: Batch): 'all' | 'some' | 'none' {
  const up = pieces.filter(({ status }) => status === 'hanging');
  const there = up.filter((piece) => pieceFigures(piece).atTarget).length;
  return there === 0 ? 'none' : there === up.length ? 'all' : 'some';
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
  const next = ahead
    .filter((each) => each.ahead?.first.p50Ms && atTarget(each.batch) === 'none')
    .sort((a, b) => (a.ahead?.first.p50Ms ?? 0) - (b.ahead?.first.p50Ms ?? 0))[0]?.ahead;
  return {
    sentence: said(
      ...(ahead.some(isWaiting)
        ? calendar.working(ahead.length)
        : calendar.sentence(ahead.length, next ? words.hanging.window(next.first, { nowMs, zone }) : null)),
      ...(clash ? calendar.rails.clashes(clash.title) : []),
    ),
    rails,
    today: share(nowMs),
    months: monthsBetween(axis.fromMs, axis.toMs, zone).map((atMs) => ({
      key: calendarDay(atMs, zone),
      at: share(atMs),
      label: words.dates.shortDay(atMs, zone, nowMs),
    })),
    // In the order in which they were begun, which no answer changes.
    rows: [...ahead]
      .sort((a, b) => startOf(a) - startOf(b))
      .map((each) => rowOf(each, { share, chambers, nowMs, zone, words })),
  };
}

type Given = Pick<Axis, 'share'> & {
  readonly chambers: readonly Chamber[];
  readonly nowMs: number;
  readonly zone: string;
  readonly words: Words;
};

function rowOf(each: Ahead, { share, chambers, nowMs, zone, words }: Given): CalendarRow {
  const { calendar, batches } = words;
  const { batch, ahead } = each;
  const there = atTarget(batch);
  const up = batch.pieces.filter(({ status }) => status === 'hanging');
  const first = ahead && words.hanging.window(ahead.first, { nowMs, zone });
  const all = ahead && words.hanging.window(ahead.all, { nowMs, zone });
  return {
    key: batch.id,
    href: `#/batches/${batch.id.slice('batch:'.length)}/hanging`,
    title: `${batch.opened.body.formula.name}, ${batches.lot(batch.opened.body.lot)}`,
    note: calendar.row({
      pieces: up.length,
      chamber:
        batch.stage === 'ferment'
          ? calendar.ferments
          : (chambers.find(({ id }) => id === batch.hung?.body.chamber)?.name ?? null),
      window:
        there === 'all'
          ? calendar.atTarget
          : isWaiting(each)
            ? calendar.windowWorking
            : !first
              ? calendar.open
              : up.length === 1
                ? calendar.window(first)
                : calendar.windows(there === 'some' ? null : first, all ?? null),
    }),
    hasWindow: there !== 'all' && ahead !== null,
    bar: { from: share(startOf(each)), to: share(nowMs) },
    window:
      there === 'all' || !ahead?.first.p10Ms
        ? null
        : {
            from: share(Math.max(nowMs, ahead.first.p10Ms)),
            to: share(Math.max(nowMs + DAY_MS, endOf(ahead, nowMs))),
            open: ahead.all.p90Ms === null,
          },
  };
}

/** When all of it should be at target at the latest; where that is open, four weeks after what can be told of it. */
export function endOf(ahead: BatchAhead | null | undefined, nowMs: number): number {
  if (!ahead) return nowMs + OPEN_END_DAYS * DAY_MS;
  const { first, all } = ahead;
  const openMs = all.p50Ms ?? all.p10Ms ?? first.p50Ms ?? first.p10Ms ?? nowMs;
  return Math.max(nowMs, all.p90Ms ?? openMs + OPEN_END_DAYS * DAY_MS);
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
