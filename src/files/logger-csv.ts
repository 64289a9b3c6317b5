/**
 * The table of a data logger as readings of the room. Nothing is guessed: what the file leaves open comes back as a question, to be
 * answered by `choices`; what cannot be read refuses the file, with the row and the reason.
 */
import type { TemperatureUnit } from '#core/units.ts';
import type { ClockChoices, ClockHabit, ClockQuestion } from './logger-clock.ts';
import {
  type ColumnChoices,
  type ColumnQuestion,
  chooseColumns,
  offsetIn,
  unitIn,
} from './logger-columns.ts';
import { type DateQuestion, datesOf } from './logger-days.ts';
import { type InstantCode, instantsOf } from './logger-instants.ts';
import type { Layout, LayoutProblem, LoggerColumn } from './logger-layout.ts';
import { type Gathered, gathering, type RowCounts, type RowRefusal } from './logger-readings.ts';
import type { Columns } from './logger-row.ts';
import { type LoggerSeries, packed } from './logger-series.ts';
import { findTable, type ParsedText, rowsOf, type TableRefusal } from './logger-table.ts';
import { loggerText, type TextProblem } from './logger-text.ts';
import type { DateOrder } from './logger-when.ts';
import { type OffsetMsAt, offsetOf } from './zone-offset.ts';

export type LoggerChoices = ColumnChoices &
  ClockChoices & {
    readonly order?: DateOrder | undefined;
    readonly unit?: TemperatureUnit | undefined;
    /** Rows, counted from 1, that the maker has looked at and will not have. */
    readonly leaveOut?: readonly number[] | undefined;
  };

export type LoggerQuestion =
  | ColumnQuestion
  | DateQuestion
  | ClockQuestion
  | { readonly code: 'unit'; readonly column: number; readonly options: readonly TemperatureUnit[] };

/** Rows are counted from 1 as a spreadsheet counts them. */
export type LoggerRefusal =
  | RowRefusal
  | {
      readonly row: number;
      readonly code: InstantCode | 'two-at-once' | 'mixed-dates';
      readonly text: string;
    }
  | (TableRefusal & { readonly text: '' })
  | { readonly row: null; readonly code: TextProblem | LayoutProblem | 'no-readings' | 'no-such-column' };

export type LoggerRead =
  | {
      state: 'read';
      series: LoggerSeries;
      /** What the readings were taken from, and how they were understood. */
      found: Columns & {
        readonly columns: readonly LoggerColumn[];
        readonly order: DateOrder;
        /** `told`: the file itself says how far its times are ahead of UTC. */
        readonly clock: ClockHabit | 'unchanged' | 'told';
      };
      passedOver: RowCounts & {
        readonly duplicates: number;
        readonly outOfOrder: number;
        readonly newestFirst: boolean;
      };
    }
  | { state: 'asked'; questions: readonly LoggerQuestion[]; columns: readonly LoggerColumn[] }
  | { state: 'refused'; refusal: LoggerRefusal }
  | { state: 'cancelled' };

export type LoggerInput = {
  readonly bytes: Uint8Array;
  /** Where the logger's clock was set: the name of a zone, or how far it is ahead of UTC at an instant. */
  readonly zone: string | OffsetMsAt;
  readonly choices?: LoggerChoices | undefined;
  readonly signal?: AbortSignal | undefined;
  readonly onProgress?: ((doneFraction: number) => void) | undefined;
};

/** @throws RangeError if `zone` is the name of no zone. */
export async function readLogger({
  bytes,
  zone,
  choices = {},
  signal,
  onProgress,
}: LoggerInput): Promise<LoggerRead> {
  const offsetAt = offsetOf(zone);
  const decoded = loggerText(bytes);
  if (!decoded.ok) return refused({ row: null, code: decoded.code });
  const table = await findTable(decoded.text);
  if (!table.ok) return refused({ row: null, code: table.code });
  const chosen = chooseColumns(table.layout, choices);
  if (chosen.state === 'asked') return { ...chosen, columns: table.layout.columns };
  if (chosen.state === 'no-such-column') return refused({ row: null, code: chosen.state });
  const rows = await gather(table, chosen.columns, { choices, signal, onProgress });
  if (rows.state !== 'known') return rows;
  return understood(rows.gathered, { layout: table.layout, columns: chosen.columns, choices, offsetAt });
}

function refused(refusal: LoggerRefusal): LoggerRead & { state: 'refused' } {
  return { state: 'refused', refusal };
}

type Run = Pick<LoggerInput, 'signal' | 'onProgress'> & { readonly choices: LoggerChoices };
type Rows =
  | { state: 'known'; gathered: Gathered }
  | { state: 'cancelled' }
  | (LoggerRead & { state: 'refused' });

async function gather(
  table: ParsedText,
  columns: Columns,
  { choices, signal, onProgress }: Run,
): Promise<Rows> {
  const all = gathering(table.layout, columns, new Set(choices.leaveOut));
  let row = 0;
  for await (const step of rowsOf(table)) {
    if (step.refusal) return refused({ ...step.refusal, text: '' });
    for (const cells of step.rows) {
      row += 1;
      const refusal = all.add(cells, row);
      if (refusal) return refused(refusal);
    }
    onProgress?.(step.doneFraction);
    await new Promise((resolve) => setTimeout(resolve));
    if (signal?.aborted) return { state: 'cancelled' };
  }
  const end = all.end();
  if ('code' in end) return refused(end);
  return end.readings.length === 0
    ? refused({ row: null, code: 'no-readings' })
    : { state: 'known', gathered: end };
}

type Known = { layout: Layout; columns: Columns; choices: LoggerChoices; offsetAt: OffsetMsAt };

/** What a date means and which unit it is are asked at once; what the clock did can only be asked once the dates are known. */
function understood(
  { readings, counts, unit }: Gathered,
  { layout, columns, choices, offsetAt }: Known,
): LoggerRead {
  const nameOf = (at: number | null): string => (at === null ? '' : (layout.names[at] ?? ''));
  const dated = datesOf(readings, choices.order);
  if (dated.state === 'refused') return refused({ row: dated.row, code: 'mixed-dates', text: dated.text });
  const known = choices.unit ?? unit ?? unitIn(nameOf(columns.temperature));
  if (dated.state === 'asked' || known === null) {
    const questions: LoggerQuestion[] = dated.state === 'asked' ? [dated.question] : [];
    if (known === null) questions.push({ code: 'unit', column: columns.temperature, options: ['C', 'F'] });
    return { state: 'asked', questions, columns: layout.columns };
  }
  const { order, walls } = dated;
  const shown = readings.map((reading, at) => ({ ...reading, wallMs: walls[at] ?? Number.NaN }));
  const toldMs = offsetIn(nameOf(columns.time)) ?? offsetIn(nameOf(layout.dateColumn));
  const textAt = (row: number): string => readings.find((reading) => reading.row === row)?.text ?? '';
  const instants = instantsOf(shown, { toldMs, offsetAt }, choices);
  if (instants.state === 'asked')
    return { state: 'asked', questions: [instants.question], columns: layout.columns };
  if (instants.state === 'refused')
    return refused({ row: instants.row, code: instants.code, text: textAt(instants.row) });
  const { clock, newestFirst, repeats } = instants;
  const series = packed(instants.readings, known);
  if (!series.ok) return refused({ row: series.row, code: 'two-at-once', text: textAt(series.row) });
  const { outOfOrder } = series;
  return {
    state: 'read',
    series: series.series,
    found: { ...columns, columns: layout.columns, order, clock },
    passedOver: { ...counts, duplicates: repeats + series.duplicates, outOfOrder, newestFirst },
  };
}
