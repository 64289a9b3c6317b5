import { describe, expect, it } from 'vitest';
import { calendar } from '#files/icalendar.ts';
import type { DueAhead } from '#record/due-ahead.ts';
import { calendarEvents, planEvents } from '#screens/calendar/calendar-events.ts';
import { en as words } from '#words/en.ts';
import { batchOf, book, CHAMBER, HOUR_MS, openBatch, START_MS, setUp, ZONE } from './book.ts';

const batch = batchOf(openBatch(setUp(book())));
const NOW_MS = START_MS + 10 * HOUR_MS;
const due: DueAhead[] = [
  { code: 'weigh-round', batch, atMs: NOW_MS + 9 * HOUR_MS },
  { code: 'runs-out', batch, atMs: NOW_MS + 3 * HOUR_MS },
  { code: 'read-air', chamber: { id: CHAMBER, name: 'Cellar' }, atMs: NOW_MS + 5 * HOUR_MS },
  { code: 'leave', entry: 'e-1', seq: 4, atMs: NOW_MS + 2 * HOUR_MS },
];
const events = (nowMs = NOW_MS) => calendarEvents({ ahead: [], due, nowMs, zone: ZONE, words });

describe('events for a calendar', () => {
  it('are all that will be due, in order, each with a name that stays', () => {
    expect(events().map(({ title }) => title)).toEqual([
      'You leave the workshop: weigh, fill, set',
      'Degree-hours run out at the last temperature: Invented salame, lot 240108',
      'Read the air of Cellar',
      'Weigh round: Invented salame, lot 240108',
    ]);
    const uids = events().map(({ uid }) => uid);
    expect(new Set(uids).size).toBe(uids.length);
    expect(events(NOW_MS + 30 * HOUR_MS).map(({ uid }) => uid)).toEqual(uids);
  });

  it('count up from export to export, so that a calendar moves what it has', () => {
    const later = events(NOW_MS + 30 * HOUR_MS);
    for (const [at, { sequence, title }] of events().entries())
      if (!title.startsWith('You leave')) expect(later[at]?.sequence).toBeGreaterThan(sequence);
  });

  it('make a file that a calendar reads', () => {
    const text = calendar({ events: events(), madeAtMs: NOW_MS });
    expect(text.match(/BEGIN:VEVENT/g)).toHaveLength(4);
    expect(text).toContain('DTSTART:20240108T190000Z');
  });

  it('hold the days of a back-schedule, in the morning by the clock of the phone', () => {
    const likely = { freezeDay: 83, thawDay: 63, stuffDay: 61, hangDay: 59, downDay: 7 };
    const momentOf = (day: string, hour: number) => Date.parse(`${day}T${String(hour).padStart(2, '0')}:00Z`);
    const given = { date: '2026-12-24', momentOf, nowMs: Date.UTC(2026, 9, 10), words };
    const plan = planEvents({ early: null, likely, last: null }, given);
    // By hand: into the freezer on 2 October is past; out of it on 22, stuffed on 24, hung on 26 October, down on 17 December.
    expect(plan.map(({ title, atMs }) => [title, new Date(atMs).toISOString().slice(0, 13)])).toEqual([
      ['Out of the freezer', '2026-10-22T08'],
      ['Stuff', '2026-10-24T08'],
      ['Hang it to dry', '2026-10-26T08'],
      ['Take it down, as likely as not', '2026-12-17T08'],
      ['The wished date', '2026-12-24T08'],
    ]);
    expect(planEvents({ early: null, likely: null, last: null }, given)).toEqual([]);
  });
});
