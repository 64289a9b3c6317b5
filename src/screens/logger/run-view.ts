import type { LoggerRead } from '#files/logger-csv.ts';
import type { Place } from '#record/place.ts';
import type { SubjectId } from '#record/subject.ts';
import type { Fact } from '#store/use-append.ts';
import type { Words } from '#words/en.ts';
import { decimal, joined, temperature } from '#words/format.ts';
import { columnText } from './questions-view.ts';

export type Found = Extract<LoggerRead, { state: 'read' }>;

/** What would be kept of a file, and what was found in it: shown before anything is kept. */
export type Run = {
  readonly facts: readonly Fact[];
  readonly count: string;
  readonly rows: readonly { label: string; value: string }[];
};

/** What the maker said beside the file. */
export type Picked = { readonly name: string; readonly instrument: SubjectId | null };

export type Shown = { readonly zone: string; readonly place: Place; readonly words: Words };

type Kept = {
  readonly atMs: readonly number[];
  readonly airC: readonly number[];
  readonly entries: number;
};

/** At least one reading is kept. */
export function foundRows(
  { series, found, passedOver }: Found,
  { atMs, airC, entries }: Kept,
  { readings, more = [] }: { readings: string; more?: Run['rows'] },
  { zone, place, words }: Shown,
): Run['rows'] {
  const say = words.logger.found;
  const degrees = (tempC: number) => joined(temperature(tempC, place));
  const [fromMs = 0, toMs = 0] = [atMs[0], atMs.at(-1)];
  const gaps = series.gaps.filter((gap) => gap.toMs >= fromMs && gap.fromMs <= toMs).length;
  const column = found.columns.find(({ index }) => index === found.temperature);
  const passed = (Object.keys(say.passed) as (keyof typeof say.passed)[]).flatMap((key) =>
    passedOver[key] > 0 ? [say.passed[key](passedOver[key])] : [],
  );
  return [
    { label: say.labels.readings, value: readings },
    {
      label: say.labels.span,
      value: say.span(words.dates.full(fromMs, zone), words.dates.full(toMs, zone)),
    },
    { label: say.labels.range, value: say.range(degrees(least(airC)), degrees(most(airC))) },
    ...more,
    {
      label: say.labels.every,
      value: [
        series.periodMs === null ? say.single : say.every(periodText(series.periodMs)),
        ...(gaps > 0 ? [say.gaps(gaps)] : []),
      ].join(', '),
    },
    ...(column ? [{ label: say.labels.column, value: columnText(column, words) }] : []),
    { label: say.labels.order, value: words.logger.order[found.order] },
    ...(found.clock === 'unchanged' ? [] : [{ label: say.labels.clock, value: say.clock[found.clock] }]),
    { label: say.labels.passedOver, value: passed.join(', ') || say.nothing },
    { label: say.labels.kept, value: say.entries(entries) },
  ];
}

/** Too many values to spread into Math.min. */
export function least(values: readonly number[]): number {
  return values.reduce((low, value) => Math.min(low, value), Number.POSITIVE_INFINITY);
}

export function most(values: readonly number[]): number {
  return values.reduce((high, value) => Math.max(high, value), Number.NEGATIVE_INFINITY);
}

export function countText(count: number, place: Place): string {
  return decimal(count, 0, place);
}

function periodText(periodMs: number): string {
  const seconds = Math.round(periodMs / 1000);
  if (seconds < 60) return `${seconds}\u00a0s`;
  return seconds % 60 === 0
    ? `${seconds / 60}\u00a0min`
    : `${Math.floor(seconds / 60)}\u00a0min ${seconds % 60}\u00a0s`;
}
