/** Calendar days as a maker counts them on the wall: no hours, no summer time. */
import { addDays, differenceInCalendarDays, format, isValid, parse, subDays } from 'date-fns';
import { wallClock } from './format.ts';

/** `2026-12-24`. */
export type CalendarDay = string;

const SHAPE = 'yyyy-MM-dd';
const AT_NOON = new Date(2000, 0, 1, 12);
const dateOf = (day: CalendarDay): Date => parse(day, SHAPE, AT_NOON);

export function isCalendarDay(text: string): boolean {
  return /^\d{4}-\d{2}-\d{2}$/.test(text) && isValid(dateOf(text));
}

/** The day on the wall there and then. */
export function calendarDay(atMs: number, zone: string): CalendarDay {
  return wallClock(atMs, zone).toISOString().slice(0, 10);
}

export function daysBefore(day: CalendarDay, days: number): CalendarDay {
  return format(subDays(dateOf(day), days), SHAPE);
}

export function daysAfter(day: CalendarDay, days: number): CalendarDay {
  return format(addDays(dateOf(day), days), SHAPE);
}

/** From the first to the second. */
export function daysBetween(from: CalendarDay, to: CalendarDay): number {
  return differenceInCalendarDays(dateOf(to), dateOf(from));
}

/** Noon of that day as if the zone were UTC: to be written with the zone `+00:00`. */
export function noonMs(day: CalendarDay): number {
  const [year = 0, month = 1, date = 1] = day.split('-').map(Number);
  return Date.UTC(year, month - 1, date, 12);
}
