import type { BackSchedule } from '#core/drying/back-schedule.ts';
import type { DueEvent } from '#files/icalendar.ts';
import type { DueAhead } from '#record/due-ahead.ts';
import { type CalendarDay, daysBefore } from '#words/days.ts';
import type { Words } from '#words/en.ts';
import type { Ahead } from './calendar-view.ts';

const HOUR_MS = 3_600_000;
const bare = (id: string) => id.slice(id.indexOf(':') + 1);
const uid = (id: string, what: string) => `${bare(id)}-${what}@greenweight`;
/** Whole hours since something began: a later export counts higher, so that a calendar moves what it has. */
const hoursSince = (beganMs: number, nowMs: number) => Math.max(0, Math.floor((nowMs - beganMs) / HOUR_MS));

type Given = { readonly nowMs: number; readonly zone: string; readonly words: Words };

/** Everything that will be due, and for each batch the first day on which it may be at target. */
export function calendarEvents({
  ahead,
  due,
  ...given
}: Given & { ahead: readonly Ahead[]; due: readonly DueAhead[] }): DueEvent[] {
  return [
    ...ahead.flatMap((each) => targetEvent(each, given)),
    ...due.map((each) => ({ ...dueEvent(each, given), atMs: each.atMs, alarmMinutesBefore: 0 })),
  ].sort((a, b) => a.atMs - b.atMs);
}

function targetEvent({ batch, ahead }: Ahead, { nowMs, zone, words }: Given): DueEvent[] {
  const { event } = words.calendar;
  const window = ahead && words.hanging.window(ahead.first, { nowMs, zone });
  if (!ahead?.first.p10Ms || !window) return [];
  const { formula, lot } = batch.opened.body;
  return [
    {
      uid: `${bare(batch.id)}@greenweight`,
      sequence: hoursSince(batch.opened.atMs, nowMs),
      title: event.window(formula.name, lot),
      atMs: Math.max(nowMs, ahead.first.p10Ms),
      alarmMinutesBefore: 0,
      note: event.note(window),
    },
  ];
}

function dueEvent(
  due: DueAhead,
  { nowMs, words }: Given,
): Pick<DueEvent, 'uid' | 'sequence' | 'title' | 'note'> {
  const { event } = words.calendar;
  switch (due.code) {
    case 'read-air':
      return {
        uid: uid(due.chamber.id, due.code),
        sequence: hoursSince(0, nowMs),
        title: event.air(due.chamber.name),
      };
    case 'leave':
    case 'back':
      return { uid: uid(due.entry, due.code), sequence: 0, title: event[due.code] };
    case 'frozen': {
      const { name, lot } = due.lot.received.body;
      return {
        uid: uid(due.lot.id, due.code),
        sequence: hoursSince(due.lot.received.atMs, nowMs),
        title: event.frozen(name, lot),
        note: event.frozenNote,
      };
    }
    default: {
      const { opened, id } = due.batch;
      const { formula, lot } = opened.body;
      const say = {
        'read-ph': event.ph,
        'runs-out': event.runsOut,
        'half-day': event.halfDay,
        'weigh-round': event.round,
      }[due.code];
      const notes = { 'runs-out': event.runsOutNote, 'half-day': event.halfDayNote };
      return {
        uid: uid(id, due.code),
        sequence: hoursSince(opened.atMs, nowMs),
        title: say(formula.name, lot),
        ...(due.code === 'runs-out' || due.code === 'half-day' ? { note: notes[due.code] } : {}),
      };
    }
  }
}

/** Eight in the morning by the clock of the phone. */
const MORNING_HOUR = 8;

/** The days of the likely schedule, by which somebody could begin. */
export function planEvents(
  { likely }: BackSchedule,
  {
    date,
    momentOf,
    nowMs,
    words,
  }: {
    date: CalendarDay;
    /** An hour of a day on this phone's clock, as an instant. */
    momentOf: (day: CalendarDay, hour: number) => number;
    nowMs: number;
    words: Words;
  },
): DueEvent[] {
  if (likely === null) return [];
  const { plan, planNote } = words.calendar.event;
  const frozen = likely.freezeDay !== likely.thawDay;
  const steps = [
    ...(frozen
      ? ([
          ['freeze', likely.freezeDay],
          ['thaw', likely.thawDay],
        ] as const)
      : []),
    ['stuff', likely.stuffDay],
    ['hang', likely.hangDay],
    ['down', likely.downDay],
    ['ready', 0],
  ] as const;
  return steps
    .map(([step, days]) => ({
      uid: `plan-${date}-${step}@greenweight`,
      sequence: hoursSince(0, nowMs),
      title: plan[step],
      atMs: momentOf(daysBefore(date, days), MORNING_HOUR),
      alarmMinutesBefore: 0,
      note: planNote(date),
    }))
    .filter(({ atMs }) => atMs > nowMs);
}
