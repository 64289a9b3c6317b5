import { temperatureToC } from '#core/units.ts';
import type { LoggerChoices, LoggerQuestion, LoggerRead } from '#files/logger-csv.ts';
import type { Batch } from '#record/batch.ts';
import type { BodyOf } from '#record/kinds.ts';
import type { Place } from '#record/place.ts';
import { type LoggedRow, packRoomLog } from '#record/room-log.ts';
import type { SubjectId } from '#record/subject.ts';
import type { Words } from '#words/en.ts';
import { decimal, joined, temperature } from '#words/format.ts';

type Found = Extract<LoggerRead, { state: 'read' }>;
type Asked = Extract<LoggerRead, { state: 'asked' }>;

const HOUR_MS = 3_600_000;
/** Of the room before stuffing and after the end no more is kept than shows where it came from and where it went. */
const MARGIN_MS = 6 * HOUR_MS;

export type DryRun = {
  readonly bodies: readonly BodyOf<'room-logged'>[];
  readonly count: string;
  readonly rows: readonly { label: string; value: string }[];
};

/** What was found in the file, and what of it would be kept. Null where none of it lies within this ferment. */
export function dryRun(
  { series, found, passedOver }: Found,
  {
    batch,
    name,
    thermometer,
    nowMs,
    zone,
    place,
    words,
  }: {
    batch: Batch;
    name: string;
    thermometer: SubjectId | null;
    nowMs: number;
    zone: string;
    place: Place;
    words: Words;
  },
): DryRun | null {
  const say = words.logger.found;
  const rows = within(series.atMs, series.valuesDeg, batch, nowMs);
  const [first, last] = [rows[0], rows.at(-1)];
  if (!first || !last) return null;
  const bodies = packRoomLog({
    name,
    unit: series.unit,
    rows,
    ...(thermometer ? { thermometer } : {}),
  });
  const degrees = (value: number) => joined(temperature(temperatureToC({ value, unit: series.unit }), place));
  const values = rows.map(({ value }) => value);
  const least = values.reduce((low, value) => Math.min(low, value));
  const most = values.reduce((high, value) => Math.max(high, value));
  const count = (value: number) => decimal(value, 0, place);
  const gaps = series.gaps.filter(({ toMs, fromMs }) => toMs >= first.atMs && fromMs <= last.atMs).length;
  const column = found.columns.find(({ index }) => index === found.temperature);
  const passed = (Object.keys(say.passed) as (keyof typeof say.passed)[]).flatMap((key) =>
    passedOver[key] > 0 ? [say.passed[key](passedOver[key])] : [],
  );
  return {
    bodies,
    count: count(rows.length),
    rows: [
      { label: say.labels.readings, value: say.count(count(rows.length), count(series.atMs.length)) },
      {
        label: say.labels.span,
        value: say.span(words.dates.full(first.atMs, zone), words.dates.full(last.atMs, zone)),
      },
      { label: say.labels.range, value: say.range(degrees(least), degrees(most)) },
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
      { label: say.labels.kept, value: say.entries(bodies.length) },
    ],
  };
}

function within(
  atMs: readonly number[],
  valuesDeg: readonly number[],
  batch: Batch,
  nowMs: number,
): LoggedRow[] {
  const fromMs = (batch.stuffedAtMs ?? batch.opened.atMs) - MARGIN_MS;
  const toMs = Math.min(nowMs, (batch.fermentEnded?.atMs ?? batch.hung?.atMs ?? nowMs) + MARGIN_MS);
  return atMs.flatMap((each, at) => {
    const value = valuesDeg[at];
    return each >= fromMs && each <= toMs && value !== undefined ? [{ atMs: each, value }] : [];
  });
}

function periodText(periodMs: number): string {
  const seconds = Math.round(periodMs / 1000);
  if (seconds < 60) return `${seconds}\u00a0s`;
  return seconds % 60 === 0
    ? `${seconds / 60}\u00a0min`
    : `${Math.floor(seconds / 60)}\u00a0min ${seconds % 60}\u00a0s`;
}

function columnText(
  column: { index: number; name: string; examples: readonly string[] },
  words: Words,
): string {
  return words.logger.option.column(column.name, column.index + 1, column.examples.slice(0, 2).join(', '));
}

export type QuestionView = {
  readonly key: LoggerQuestion['code'];
  readonly text: string;
  readonly options: readonly { value: string; label: string }[];
  /** What an answer adds to the choices. */
  readonly choose: (value: string) => LoggerChoices;
};

/** What the file leaves open, each with its answers. */
export function questionViews({ questions, columns }: Asked, words: Words): QuestionView[] {
  const { option } = words.logger;
  const column = (index: number | null) => {
    const found = columns.find((each) => each.index === index);
    return index === null ? option.none : found ? columnText(found, words) : option.column('', index + 1, '');
  };
  return questions.map((question) => questionView(question, column, words));
}

function questionView(
  question: LoggerQuestion,
  column: (index: number | null) => string,
  words: Words,
): QuestionView {
  const { question: ask, option } = words.logger;
  const { code } = question;
  switch (code) {
    case 'time-column':
    case 'temperature-column':
    case 'humidity-column':
      return {
        key: code,
        text: ask[code],
        options: question.options.map((index) => ({ value: String(index), label: column(index) })),
        choose: (value) =>
          code === 'time-column'
            ? { timeColumn: Number(value) }
            : code === 'temperature-column'
              ? { temperatureColumn: Number(value) }
              : { humidityColumn: value === 'null' ? null : Number(value) },
      };
    case 'date-order':
      return {
        key: code,
        text: ask[code](question.text),
        options: question.options.map(({ order, dayMs }) => ({
          value: order,
          label: words.dates.fullDay(dayMs, '+00:00'),
        })),
        choose: (value) => ({ order: question.options.find(({ order }) => order === value)?.order }),
      };
    case 'clock':
      return {
        key: code,
        text: ask[code](String(question.row)),
        options: question.options.map((value) => ({ value, label: option[value] })),
        choose: (value) => ({ clock: question.options.find((each) => each === value) }),
      };
    case 'repeated-hour':
      return {
        key: code,
        text: ask[code](String(question.row)),
        options: question.options.map((value) => ({ value, label: option[value] })),
        choose: (value) => ({ repeated: question.options.find((each) => each === value) }),
      };
    case 'unit':
      return {
        key: code,
        text: ask[code],
        options: question.options.map((value) => ({ value, label: option[value] })),
        choose: (value) => ({ unit: question.options.find((each) => each === value) }),
      };
  }
}
