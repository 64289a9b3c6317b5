import { wallClock } from '#words/format.ts';

const fields = (options: Intl.DateTimeFormatOptions) =>
  new Intl.DateTimeFormat('en-GB', { ...options, timeZone: 'UTC', hourCycle: 'h23' });
const dayMonth = fields({ day: 'numeric', month: 'long' });
const dayMonthYear = fields({ day: 'numeric', month: 'long', year: 'numeric' });
const weekday = fields({ weekday: 'long' });
const shortDay = fields({ day: 'numeric', month: 'short' });
const shortDayYear = fields({ day: 'numeric', month: 'short', year: 'numeric' });
const time = fields({ hour: '2-digit', minute: '2-digit' });

const DAY_MS = 24 * 3600 * 1000;

/** How many midnights of the wall clock lie between two moments there. */
function daysApart(fromMs: number, toMs: number, zone: string): number {
  const midnight = (atMs: number) => Math.floor(wallClock(atMs, zone).getTime() / DAY_MS);
  return midnight(toMs) - midnight(fromMs);
}

/** A day of another year than this one is said with its year. */
function isOtherYear(at: Date, nowMs: number | undefined, zone: string): boolean {
  return nowMs !== undefined && at.getUTCFullYear() !== wallClock(nowMs, zone).getUTCFullYear();
}

export const dates = {
  clock: (atMs: number, zone: string): string => time.format(wallClock(atMs, zone)),
  /** With its year where that is not the year of `nowMs`. */
  day: (atMs: number, zone: string, nowMs?: number): string => {
    const at = wallClock(atMs, zone);
    return (isOtherYear(at, nowMs, zone) ? dayMonthYear : dayMonth).format(at);
  },
  fullDay: (atMs: number, zone: string): string => dayMonthYear.format(wallClock(atMs, zone)),
  shortDay: (atMs: number, zone: string, nowMs?: number): string => {
    const at = wallClock(atMs, zone);
    return (isOtherYear(at, nowMs, zone) ? shortDayYear : shortDay).format(at);
  },
  full: (atMs: number, zone: string): string =>
    `${dayMonthYear.format(wallClock(atMs, zone))}, ${time.format(wallClock(atMs, zone))}`,
  /** A moment as somebody at the bench would say it: "18:30", "04:10 tomorrow", "Friday 09:00", "2 January, 08:00". */
  near: (atMs: number, nowMs: number, zone: string): string => {
    const clock = time.format(wallClock(atMs, zone));
    const days = daysApart(nowMs, atMs, zone);
    if (days === 0) return `${clock} today`;
    if (days === 1) return `${clock} tomorrow`;
    if (days === -1) return `${clock} yesterday`;
    if (days > 1 && days < 7) return `${weekday.format(wallClock(atMs, zone))} ${clock}`;
    return `${dates.day(atMs, zone, nowMs)}, ${clock}`;
  },
  /** A window of days: "between 4 and 9 January", "between 28 December and 3 January", "about 4 January". */
  between: (fromMs: number, toMs: number, zone: string, nowMs?: number): string => {
    const from = wallClock(fromMs, zone);
    const to = wallClock(toMs, zone);
    const last = dates.day(toMs, zone, nowMs);
    if (daysApart(fromMs, toMs, zone) === 0) return `about ${last}`;
    if (from.getUTCMonth() === to.getUTCMonth() && from.getUTCFullYear() === to.getUTCFullYear())
      return `between ${from.getUTCDate()} and ${last}`;
    return from.getUTCFullYear() === to.getUTCFullYear()
      ? `between ${dayMonth.format(from)} and ${last}`
      : `between ${dayMonthYear.format(from)} and ${dayMonthYear.format(to)}`;
  },
  /** How long ago, roughly; exact times stand beside it where they matter. */
  ago: (atMs: number, nowMs: number): string => {
    const minutes = Math.floor((nowMs - atMs) / 60_000);
    if (minutes < 1) return 'just now';
    if (minutes < 60) return `${minutes} min ago`;
    const hours = Math.floor(minutes / 60);
    if (hours < 48) return hours === 1 ? 'an hour ago' : `${hours} hours ago`;
    return `${Math.floor(hours / 24)} days ago`;
  },
  dayCount: (fromMs: number, nowMs: number, zone: string): number => daysApart(fromMs, nowMs, zone),
  span: (hours: number): string => {
    const whole = Math.floor(hours);
    const minutes = Math.floor((hours - whole) * 60);
    if (whole >= 48) return `${Math.floor(whole / 24)} days ${whole % 24} h`;
    if (whole === 0) return `${minutes} min`;
    return minutes === 0 ? `${whole} h` : `${whole} h ${minutes} min`;
  },
};
