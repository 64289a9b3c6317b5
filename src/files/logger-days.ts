/** Which part of a date is the day and which the month: told by the dates themselves or by the maker, never guessed. */
import type { RawReading } from './logger-row.ts';
import type { DateOrder } from './logger-when.ts';

export type DateQuestion = {
  readonly code: 'date-order';
  readonly row: number;
  readonly text: string;
  /** What the date of that row would be under each order: its midnight, as if in UTC. */
  readonly options: readonly { readonly order: DateOrder; readonly dayMs: number }[];
};

export type Dated =
  /** The time that each reading shows, taken as if it were UTC. */
  | { state: 'known'; order: DateOrder; walls: readonly number[] }
  | { state: 'asked'; question: DateQuestion }
  /** A date that no order makes a day of which also makes days of those before. */
  | { state: 'refused'; row: number; text: string };

export function datesOf(readings: readonly RawReading[], chosen: DateOrder | undefined): Dated {
  let orders: readonly DateOrder[] = chosen ? [chosen] : ['ymd', 'dmy', 'mdy'];
  for (const { row, text, days } of readings) {
    orders = orders.filter((order) => days[order] !== undefined);
    if (orders.length === 0) return { state: 'refused', row, text };
  }
  const [order = 'ymd'] = orders;
  const unclear = readings.find(({ days }) => orders.some((each) => days[each] !== days[order]));
  if (unclear) {
    const { row, text, days } = unclear;
    const options = orders.map((each) => ({ order: each, dayMs: days[each] ?? Number.NaN }));
    return { state: 'asked', question: { code: 'date-order', row, text, options } };
  }
  return {
    state: 'known',
    order,
    walls: readings.map(({ days, timeMs }) => (days[order] ?? Number.NaN) + timeMs),
  };
}
