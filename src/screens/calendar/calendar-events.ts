import type { DueEvent } from '#files/icalendar.ts';
import type { Words } from '#words/en.ts';
import { type Ahead, windowOf } from './calendar-view.ts';

const DAY_MS = 24 * 3_600_000;

/** One event a batch: the first day on which it may be at target. Its uid stays, so that a later export moves it. */
export function calendarEvents({
  ahead,
  nowMs,
  zone,
  words,
}: {
  ahead: readonly Ahead[];
  nowMs: number;
  zone: string;
  words: Words;
}): DueEvent[] {
  const { event } = words.calendar;
  return ahead.flatMap(({ batch, piece, forecast }) => {
    const window = forecast && windowOf(forecast, nowMs, zone, words);
    if (!forecast?.p10Ms || !window) return [];
    const { formula, lot } = batch.opened.body;
    return [
      {
        uid: `${batch.id.slice('batch:'.length)}@greenweight`,
        // Counts the weighings that moved it: it only grows.
        sequence: piece.weighings.length + Math.floor((nowMs - piece.stuffed.atMs) / DAY_MS),
        title: event.window(formula.name, lot),
        atMs: Math.max(nowMs, forecast.p10Ms),
        alarmMinutesBefore: 0,
        note: event.note(window),
      },
    ];
  });
}
