/** Dates and times as loggers write them. What a date means is left open here: every order that it allows is given back. */
import { cleaned } from './logger-cell.ts';

export type DateOrder = 'ymd' | 'dmy' | 'mdy';
export type Days = Readonly<Partial<Record<DateOrder, number>>>;

export type When = {
  /** Midnight of the day, as if in UTC, under each order that makes it a day; null when the cell holds no date. */
  readonly days: Days | null;
  /** Since midnight; null when the cell holds no time. */
  readonly timeMs: number | null;
  /** What the cell itself says its time is ahead of UTC. */
  readonly offsetMs: number | null;
  /** 12-hour clock, told by AM or PM. */
  readonly halves: boolean;
};

export const HOUR_MS = 3_600_000;
export const DAY_MS = 24 * HOUR_MS;
const LEAST_YEAR = 1970;
const MOST_YEAR = 2099;
/** Years of two digits are from 1970 to 2069: no logger is older. */
const CENTURY_FROM = 70;
const LANGUAGES = ['en', 'de', 'fr', 'it', 'es', 'pt', 'nl', 'da', 'sv', 'pl'];

const NUMERIC = /^(\d{1,4})([-/.]) ?(\d{1,2})\2 ?(\d{1,4})(?=$|[^\d])/;
const COMPACT = /^(\d{4})(\d\d)(\d\d)(?=$|[t _]|\d{6}$)/;
const DAY_FIRST = /^(\d{1,2})\.?[ \-/]([\p{L}]{3,12})\.?[ \-/,]{1,2}(\d{4}|\d\d)(?=$|[^\d])/u;
const NAME_FIRST = /^([\p{L}]{3,12})\.?[ \-/](\d{1,2})(?:,|, |[ \-/])(\d{4})(?=$|[^\d])/u;
const YEAR_FIRST = /^(\d{4})[ \-/]([\p{L}]{3,12})\.?[ \-/](\d{1,2})(?=$|[^\d])/u;
const TIME =
  /^(\d{1,2}):(\d\d)(?::(\d\d)(?:[.,](\d{1,9}))?)?(?: ?([ap])\.? ?m\.?)?(?: ?(z|utc|gmt|(?:utc|gmt)? ?([+-])(\d{1,2})(?::?(\d\d))?))?$/;
const COMPACT_TIME = /^(\d\d)(\d\d)(\d\d)?$/;
const EPOCH = /^(\d{10}|\d{13})$/;

/** Null when the cell holds neither a date nor a time, or one that no calendar and no clock has. */
export function whenIn(cell: string): When | null {
  const text = withoutWeekday(cleaned(cell).toLowerCase());
  const epoch = epochIn(text);
  if (epoch) return epoch;
  const date = dateIn(text);
  if (!date) return timeOf(text);
  const rest = text.slice(date.length);
  if (rest === '') return { days: date.days, timeMs: null, offsetMs: null, halves: false };
  const time = timeOf(rest.replace(/^(?:[t _-]|, ?)/, ''), COMPACT.test(text));
  return time ? { ...time, days: date.days } : null;
}

/** Whether a cell was meant as a date or a time, though it may be none. */
export function isMeantAsWhen(cell: string): boolean {
  return /^\d+[-/.:]\d+[-/.:]?\d*/.test(cleaned(cell));
}

function epochIn(text: string): When | null {
  if (!EPOCH.test(text)) return null;
  const atMs = Number(text) * (text.length === 10 ? 1000 : 1);
  const year = new Date(atMs).getUTCFullYear();
  if (year < 2000 || year > MOST_YEAR) return null;
  const dayMs = Math.floor(atMs / DAY_MS) * DAY_MS;
  return { days: alike(dayMs), timeMs: atMs - dayMs, offsetMs: 0, halves: false };
}

function dateIn(text: string): { days: Days; length: number } | null {
  const numeric = NUMERIC.exec(text);
  if (numeric) {
    const [all, a = '', , b = '', c = ''] = numeric;
    const days = orders(a, b, c);
    return days && { days, length: all.length };
  }
  const compact = COMPACT.exec(text);
  if (compact)
    return { days: under('ymd', dayOf(compact[1], compact[2], compact[3])), length: compact[0].length };
  const named = namedDate(text);
  return named && { days: named.dayMs === null ? {} : alike(named.dayMs), length: named.length };
}

function orders(a: string, b: string, c: string): Days | null {
  if (a.length === 4) return under('ymd', dayOf(a, b, c));
  const ends = c.length === 4 || c.length === 2;
  if (a.length > 2 || !(ends || c.length === 1)) return null;
  const years = ends ? { ...under('dmy', dayOf(c, b, a)), ...under('mdy', dayOf(c, a, b)) } : {};
  return a.length === 2 && c.length <= 2 ? { ...years, ...under('ymd', dayOf(a, b, c)) } : years;
}

function namedDate(text: string): { dayMs: number | null; length: number } | null {
  const dayFirst = DAY_FIRST.exec(text);
  const nameFirst = NAME_FIRST.exec(text);
  const yearFirst = YEAR_FIRST.exec(text);
  const found = dayFirst ?? nameFirst ?? yearFirst;
  if (!found) return null;
  const [all, one = '', two = '', three = ''] = found;
  const [year, name, day] = dayFirst ? [three, two, one] : nameFirst ? [three, one, two] : [one, two, three];
  const month = months().get(bare(name));
  return month === undefined ? null : { dayMs: dayOf(year, String(month), day), length: all.length };
}

function timeOf(text: string, compact = false): When | null {
  const found = TIME.exec(text) ?? (compact ? COMPACT_TIME.exec(text) : null);
  if (!found) return null;
  const [
    ,
    hourText,
    minuteText,
    secondText = '0',
    fraction = '0',
    half,
    zone,
    sign,
    zoneHours = '0',
    zoneMinutes = '0',
  ] = found;
  const [hour, minute, second] = [Number(hourText), Number(minuteText), Number(secondText)];
  const whole = hour === 24 && minute === 0 && second === 0;
  if (minute > 59 || second > 59 || (hour > 23 && !whole)) return null;
  if (half && (hour > 12 || (hour === 0 && half === 'p'))) return null;
  const hours = half ? (hour % 12) + (half === 'p' ? 12 : 0) : hour;
  const timeMs =
    hours * HOUR_MS + minute * 60_000 + second * 1000 + Math.floor(Number(`0.${fraction}`) * 1000);
  const aheadMs = Number(zoneHours) * HOUR_MS + Number(zoneMinutes) * 60_000;
  return {
    days: null,
    timeMs,
    offsetMs: zone ? (sign === '-' ? -aheadMs : aheadMs) : null,
    halves: half !== undefined,
  };
}

function dayOf(yearText = '', monthText = '', dayText = ''): number | null {
  const short = Number(yearText);
  const year = yearText.length === 4 ? short : short + (short < CENTURY_FROM ? 2000 : 1900);
  const [month, day] = [Number(monthText), Number(dayText)];
  const date = new Date(Date.UTC(year, month - 1, day));
  const exists = date.getUTCMonth() === month - 1 && date.getUTCDate() === day;
  return exists && year >= LEAST_YEAR && year <= MOST_YEAR ? date.getTime() : null;
}

function under(order: DateOrder, dayMs: number | null): Days {
  return dayMs === null ? {} : { [order]: dayMs };
}

function alike(dayMs: number): Days {
  return { ymd: dayMs, dmy: dayMs, mdy: dayMs };
}

function withoutWeekday(text: string): string {
  const [word = ''] = /^\p{L}{2,12}/u.exec(text) ?? [];
  return word !== '' && weekdays().has(bare(word)) ? text.slice(word.length).replace(/^[., ]+/, '') : text;
}

function bare(name: string): string {
  return name.normalize('NFD').replace(/[^a-z]/g, '');
}

let monthNames: Map<string, number> | null = null;
let weekdayNames: Set<string> | null = null;

/** A name that two languages give to different months is no name. */
function months(): Map<string, number> {
  if (monthNames) return monthNames;
  const found = new Map<string, number>([['sept', 9]]);
  const twofold = new Set<string>();
  for (const { name, at } of names('month', 12)) {
    if ((found.get(name) ?? at) !== at) twofold.add(name);
    found.set(name, at);
  }
  for (const name of twofold) found.delete(name);
  monthNames = found;
  return found;
}

function weekdays(): Set<string> {
  weekdayNames ??= new Set(
    names('weekday', 7)
      .map(({ name }) => name)
      .filter((name) => !months().has(name)),
  );
  return weekdayNames;
}

/** 2001 began on a Monday: its first days and its months are all that is asked for. */
function names(what: 'month' | 'weekday', count: number): { name: string; at: number }[] {
  return LANGUAGES.flatMap((language) =>
    (['short', 'long'] as const).flatMap((length) => {
      const format = new Intl.DateTimeFormat(language, { [what]: length, timeZone: 'UTC' });
      return Array.from({ length: count }, (_, at) => {
        const date = what === 'month' ? Date.UTC(2001, at, 1) : Date.UTC(2001, 0, at + 1);
        return { name: bare(format.format(date).toLowerCase()), at: at + 1 };
      });
    }),
  ).filter(({ name }) => name.length >= 2);
}
