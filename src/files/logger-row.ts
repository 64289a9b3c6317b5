/** One row of a logger's table: a reading, something to pass over, or a reason to refuse the file. */
import type { TemperatureUnit } from '#core/units.ts';
import { cleaned, isNoReading, type NumberCell, numberIn } from './logger-cell.ts';
import type { Layout } from './logger-layout.ts';
import { type Days, isMeantAsWhen, type When, whenIn } from './logger-when.ts';
import { shortLine } from './plain-text.ts';

export type Columns = {
  readonly time: number;
  readonly temperature: number;
  readonly humidity: number | null;
};

/** A reading before it is known which day its date means, and which instant its time. */
export type RawReading = {
  readonly row: number;
  /** The cells that tell the time, as they stand. */
  readonly text: string;
  readonly days: Days;
  readonly timeMs: number;
  readonly offsetMs: number | null;
  readonly halves: boolean;
  readonly valueDeg: number;
  readonly unit: TemperatureUnit | null;
  readonly rhPct: number | null;
  readonly marks: readonly ('.' | ',')[];
};

export type RowCode =
  | 'no-time'
  | 'bad-time'
  | 'no-such-date'
  | 'too-many-cells'
  | 'cut-short'
  | 'not-a-number'
  | 'out-of-range';

export type RowRead =
  | { state: 'reading'; reading: RawReading; humidityOutOfRange: boolean }
  | { state: 'nothing' | 'note' | 'missing' }
  /** Without a time: the end of the table, if no reading follows. */
  | { state: 'timeless'; text: string }
  | { state: 'refused'; code: RowCode; text: string };

/** What any thermometer of the trade may show, in either unit; beyond it stands what a broken sensor writes. */
const LEAST_DEG = -76;
const MOST_DEG = 302;
const MOST_TEXT = 60;

export function readRow(cells: readonly string[], row: number, layout: Layout, columns: Columns): RowRead {
  if (cells.every((cell) => cell.trim() === '')) return { state: 'nothing' };
  if (cells[0]?.startsWith('#') || isHead(cells, layout)) return { state: 'note' };
  const text = timeText(cells, layout, columns);
  const degrees = cells[columns.temperature];
  const when = timeOf(cells, text, layout);
  if (!when) return withoutTime(cells, text, degrees);
  const { days, timeMs, offsetMs, halves } = when;
  if (cells.slice(layout.width).some((cell) => cell.trim() !== ''))
    return refused('too-many-cells', cells.join(' '));
  if (degrees === undefined) return refused('cut-short', cells.join(' '));
  if (days === null || timeMs === null) return refused('bad-time', text);
  if (Object.keys(days).length === 0) return refused('no-such-date', text);
  if (isNoReading(degrees)) return { state: 'missing' };
  const temperature = numberIn(degrees);
  if (!temperature) return refused('not-a-number', degrees);
  const { value, unit } = temperature;
  if (!(value >= LEAST_DEG && value <= MOST_DEG)) return refused('out-of-range', degrees);
  const humid = columns.humidity === null ? '' : (cells[columns.humidity] ?? '');
  const humidity = isNoReading(humid) ? null : numberIn(humid);
  if (humidity === null && !isNoReading(humid)) return refused('not-a-number', humid);
  const inRange = humidity === null || (humidity.value >= 0 && humidity.value <= 100);
  const rhPct = humidity && inRange ? humidity.value : null;
  const reading = {
    row,
    text,
    days,
    timeMs,
    offsetMs,
    halves,
    valueDeg: value,
    unit,
    rhPct,
    marks: marksOf(temperature, humidity),
  };
  return { state: 'reading', reading, humidityOutOfRange: !inRange };
}

function withoutTime(cells: readonly string[], text: string, degrees: string | undefined): RowRead {
  if (isMeantAsWhen(text)) return refused('bad-time', text);
  if (degrees !== undefined && numberIn(degrees)) return refused('no-time', cells.join(' '));
  return { state: 'timeless', text: shortLine(cells.join(' '), MOST_TEXT) };
}

function marksOf(...numbers: (NumberCell | null)[]): ('.' | ',')[] {
  return numbers.flatMap((number) => (number?.mark ? [number.mark] : []));
}

/** Date, time and, where AM or PM has a cell of its own behind them, that too. */
function timeText(cells: readonly string[], { dateColumn }: Layout, { time }: Columns): string {
  const behind = cells[time + 1] ?? '';
  const half = /^\s*[ap]\.? ?m\.?\s*$/i.test(behind) ? behind : '';
  const date = dateColumn === null ? '' : (cells[dateColumn] ?? '');
  return [date, cells[time] ?? '', half]
    .map(cleaned)
    .filter((part) => part !== '')
    .join(' ');
}

function timeOf(cells: readonly string[], text: string, { dateColumn }: Layout): When | null {
  const dateText = dateColumn === null ? '' : cleaned(cells[dateColumn] ?? '');
  if (dateText === '') return dateColumn === null ? whenIn(text) : null;
  const [date, time] = [whenIn(dateText), whenIn(text.slice(dateText.length).trim())];
  return date?.days && date.timeMs === null && time && time.days === null
    ? { ...time, days: date.days }
    : null;
}

/** Where files were put one behind the other, the head stands again between them. */
function isHead(cells: readonly string[], { head }: Layout): boolean {
  return (
    head.length > 0 &&
    cells.length === head.length &&
    cells.every((cell, at) => cell.trim() === head[at]?.trim())
  );
}

function refused(code: RowCode, text: string): RowRead {
  return { state: 'refused', code, text: shortLine(text, MOST_TEXT) };
}
