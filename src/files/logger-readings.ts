/** All rows of a logger's table held against each other: one decimal mark, one unit, one clock of 24 or twice 12 hours. */
import type { TemperatureUnit } from '#core/units.ts';
import type { Layout } from './logger-layout.ts';
import { type Columns, type RawReading, type RowCode, readRow } from './logger-row.ts';
import { HOUR_MS } from './logger-when.ts';

export type RowRefusal = {
  readonly row: number;
  readonly code: RowCode | 'no-am-pm' | 'mixed-decimals' | 'mixed-units';
  readonly text: string;
};

/** What was passed over, each counted, so that nothing goes missing unsaid. */
export type RowCounts = {
  readonly title: number;
  readonly note: number;
  /** With a time and no temperature. */
  readonly missing: number;
  readonly leftOut: number;
  readonly humidityOutOfRange: number;
};

export type Gathered = {
  readonly readings: readonly RawReading[];
  readonly counts: RowCounts;
  /** The unit that the cells themselves carry. */
  readonly unit: TemperatureUnit | null;
};

export type Gathering = {
  /** The first row that cannot be read refuses the file. */
  readonly add: (cells: readonly string[], row: number) => RowRefusal | null;
  readonly end: () => RowRefusal | Gathered;
};

export function gathering(layout: Layout, columns: Columns, leaveOut: ReadonlySet<number>): Gathering {
  const readings: RawReading[] = [];
  const counts = { title: layout.firstRow, note: 0, missing: 0, leftOut: 0, humidityOutOfRange: 0 };
  let mark: '.' | ',' | null = null;
  let unit: TemperatureUnit | null = null;
  let timeless: RowRefusal | null = null;
  let timelessRows = 0;
  let lostHalf: RowRefusal | null = null;
  let twentyFourHours = false;

  function take(reading: RawReading): RowRefusal | null {
    const { row, text, marks, timeMs, halves } = reading;
    if (marks.some((each) => each !== (mark ?? marks[0]))) return { row, code: 'mixed-decimals', text };
    if (reading.unit && unit && reading.unit !== unit) return { row, code: 'mixed-units', text };
    mark ??= marks[0] ?? null;
    unit ??= reading.unit;
    if (!halves && (timeMs < HOUR_MS || timeMs >= 13 * HOUR_MS)) twentyFourHours = true;
    if (!lostHalf && losesHalf(readings.at(-1), reading)) lostHalf = { row, code: 'no-am-pm', text };
    readings.push(reading);
    return null;
  }

  return {
    add(cells, row) {
      if (row <= layout.firstRow) return null;
      if (leaveOut.has(row)) {
        counts.leftOut += 1;
        return null;
      }
      const read = readRow(cells, row, layout, columns);
      if (read.state === 'refused') return { row, code: read.code, text: read.text };
      if (read.state === 'timeless') {
        timeless ??= { row, code: 'no-time', text: read.text };
        timelessRows += 1;
        return null;
      }
      if (read.state === 'note' || read.state === 'missing') counts[read.state] += 1;
      if (read.state !== 'reading') return null;
      if (timeless) return timeless;
      if (read.humidityOutOfRange) counts.humidityOutOfRange += 1;
      return take(read.reading);
    },
    end() {
      if (lostHalf && !twentyFourHours) return lostHalf;
      return { readings, counts: { ...counts, note: counts.note + timelessRows }, unit };
    },
  };
}

/** From twelve to one on one day without AM or PM: by a clock of twice 12 hours, whether it is day or night cannot be told. */
function losesHalf(before: RawReading | undefined, { days, timeMs, halves }: RawReading): boolean {
  if (!before || before.halves || halves) return false;
  const [hourBefore, hour] = [Math.floor(before.timeMs / HOUR_MS), Math.floor(timeMs / HOUR_MS)];
  const oneDay = (['ymd', 'dmy', 'mdy'] as const).some(
    (order) => days[order] !== undefined && days[order] === before.days[order],
  );
  return hourBefore === 12 && hour === 1 && oneDay;
}
