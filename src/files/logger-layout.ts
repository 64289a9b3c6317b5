/** How a logger's table is laid out, found from its first rows: where readings begin, what tells the time, and what each column is called. */
import { cleaned, isNoReading, numberIn } from './logger-cell.ts';
import { whenIn } from './logger-when.ts';
import { shortLine } from './plain-text.ts';

export type Rows = readonly (readonly string[])[];

/** A column that holds numbers, as it may be shown to choose from. `index` counts from 0. */
export type LoggerColumn = {
  readonly index: number;
  readonly name: string;
  readonly examples: readonly string[];
};

export type Layout = {
  readonly firstRow: number;
  /** More cells than this no row has, empty ones at its end not counted. */
  readonly width: number;
  readonly names: readonly string[];
  /** The cells of that row as they stand. */
  readonly head: readonly string[];
  /** Columns that each tell the whole time, or the time of day where the date stands in a column of its own. */
  readonly timeColumns: readonly number[];
  readonly dateColumn: number | null;
  readonly columns: readonly LoggerColumn[];
};

export type LayoutProblem = 'no-times' | 'no-time-of-day' | 'no-numbers' | 'comma-unclear';
export type FoundLayout = { ok: true; layout: Layout } | { ok: false; code: LayoutProblem };

type Kind = 'full' | 'date' | 'time' | 'number' | 'blank' | 'text';

const NEARLY_ALL = 0.8;
/** Where half of a column is numbers, a cell that is none is an error and no other kind of column. */
const HALF = 0.5;
const MOST_NAME = 60;
const EXAMPLES = 3;

export function findLayout(rows: Rows, separator: string): FoundLayout {
  const kinds = rows.map((row) => row.map(kindOf));
  const times = timeColumns(kinds);
  if (!times)
    return {
      ok: false,
      code: kinds.some((row) => row.includes('date') && row.includes('number'))
        ? 'no-time-of-day'
        : 'no-times',
    };
  const firstReading = kinds.findIndex((row) => isReading(row, times));
  const first = rows[firstReading] ?? [];
  const head = headOf(rows, kinds, { times, before: firstReading, width: trimmedLength(first) });
  const firstRow = head ? head.row + 1 : firstReading;
  const readings = rows.slice(firstRow).filter((_, at) => isReading(kinds[firstRow + at] ?? [], times));
  const names = head?.names ?? [];
  const width = Math.max(trimmedLength(names), trimmedLength(first));
  const columns = numberColumns(readings, { width, names, times });
  if (columns.length === 0) return { ok: false, code: 'no-numbers' };
  if (separator === ',' && !head && isCommaUnclear(readings, columns))
    return { ok: false, code: 'comma-unclear' };
  return { ok: true, layout: { firstRow, width, names, head: head?.cells ?? [], ...times, columns } };
}

function kindOf(cell: string): Kind {
  if (isNoReading(cell)) return 'blank';
  const when = whenIn(cell);
  if (when) return when.timeMs === null ? 'date' : when.days === null ? 'time' : 'full';
  return numberIn(cell) ? 'number' : 'text';
}

type Times = { readonly timeColumns: readonly number[]; readonly dateColumn: number | null };

/** By the rows that hold a number beside the time: summaries above the table are fewer than its readings. */
function timeColumns(kinds: readonly (readonly Kind[])[]): Times | null {
  const withNumber = kinds.filter((row) => row.includes('number'));
  const full = often(withNumber, 'full');
  if (full.length > 0) return { timeColumns: full, dateColumn: null };
  const parted = withNumber.filter((row) => row.includes('date') && row.includes('time'));
  const [dateColumn] = often(parted, 'date');
  const time = often(parted, 'time');
  return dateColumn === undefined || time.length === 0 ? null : { timeColumns: time, dateColumn };
}

/** Columns that are of a kind nearly as often as the one that is so most often. */
function often(kinds: readonly (readonly Kind[])[], kind: Kind): number[] {
  const counts = new Map<number, number>();
  for (const row of kinds)
    for (const [at, each] of row.entries()) if (each === kind) counts.set(at, (counts.get(at) ?? 0) + 1);
  const most = Math.max(0, ...counts.values());
  return [...counts]
    .filter(([, count]) => count >= most * NEARLY_ALL)
    .map(([at]) => at)
    .sort((a, b) => a - b);
}

function tellsTime(row: readonly Kind[], { timeColumns: columns, dateColumn }: Times): boolean {
  const wanted = dateColumn === null ? 'full' : 'time';
  return columns.some((at) => row[at] === wanted) && (dateColumn === null || row[dateColumn] === 'date');
}

function isReading(row: readonly Kind[], times: Times): boolean {
  return (
    tellsTime(row, times) && row.some((kind, at) => kind === 'number' && !times.timeColumns.includes(at))
  );
}

/** The nearest row above the readings that names at least two columns; a row of units beneath it is read with it. */
function headOf(
  rows: Rows,
  kinds: readonly (readonly Kind[])[],
  { times, before, width }: { times: Times; before: number; width: number },
) {
  const above = rows
    .map((cells, row) => ({ cells, row }))
    .slice(0, before)
    .filter(
      ({ cells, row }) => cells.some((cell) => cell.trim() !== '') && !tellsTime(kinds[row] ?? [], times),
    );
  const named = above.at(-1);
  if (!named || !namesColumns(named.cells, width)) return null;
  const over = above.at(-2);
  const names = named.cells.map((cell) => shortLine(cleaned(cell), MOST_NAME));
  if (!isUnits(named.cells) || !over || !namesColumns(over.cells, width)) return { ...named, names };
  const both = over.cells.map((cell, at) => shortLine(`${cleaned(cell)} ${names[at] ?? ''}`, MOST_NAME));
  return { ...named, names: both };
}

function namesColumns(cells: readonly string[], width: number): boolean {
  const named = cells.filter((cell) => cell.trim() !== '' && !numberIn(cell));
  return named.length >= 2 && cells.length >= width;
}

function isUnits(cells: readonly string[]): boolean {
  return cells.every(
    (cell) =>
      cell.trim() === '' ||
      /[°º˚%℃℉]|^[[(]?(c|f|rh|celsius|fahrenheit|local|utc|-|[dmyhs:/. -]{4,20})[\])]?$/i.test(cleaned(cell)),
  );
}

function numberColumns(
  readings: Rows,
  { width, names, times }: { width: number; names: readonly string[]; times: Times },
): LoggerColumn[] {
  const taken = [...times.timeColumns, times.dateColumn];
  const indexes = Array.from({ length: width }, (_, at) => at).filter((at) => !taken.includes(at));
  return indexes.flatMap((index) => {
    const cells = readings.map((row) => row[index] ?? '').filter((cell) => !isNoReading(cell));
    const numbers = cells.filter((cell) => numberIn(cell));
    if (numbers.length === 0 || numbers.length < cells.length * HALF) return [];
    return [
      {
        index,
        name: names[index] ?? '',
        examples: numbers.slice(0, EXAMPLES).map((cell) => shortLine(cell, MOST_NAME)),
      },
    ];
  });
}

/** `12,5` parted by commas is one number or two, and without names nothing tells which. */
function isCommaUnclear(readings: Rows, columns: readonly LoggerColumn[]): boolean {
  const whole = readings.every((row) =>
    columns.every(({ index }) => /^[+-]?\d*$/.test(cleaned(row[index] ?? ''))),
  );
  return columns.length > 1 && whole;
}

function trimmedLength(cells: readonly string[]): number {
  return cells.findLastIndex((cell) => cell.trim() !== '') + 1;
}
