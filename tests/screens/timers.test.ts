import { expect, it } from 'vitest';
import { BEFORE_STUFFING } from '#core/ferment/back-plan.ts';
import { calendar } from '#files/icalendar.ts';
import { batch as foldBatch } from '#record/batch.ts';
import type { SubjectId } from '#record/subject.ts';
import { timersView } from '#screens/timers/timers-view.ts';
import { en } from '#words/en.ts';
import { plainText } from '#words/said.ts';
import { HOUR_MS, START_MS, writer } from '../record/make.ts';

const BATCH: SubjectId<'batch'> = 'batch:1';
const FINISH_MS = START_MS + 6 * HOUR_MS;

function view(hours: number) {
  const log = writer();
  const plan = {
    fermentC: 24,
    phLow: 4.9,
    phHigh: 5.2,
    dryC: 13,
    dryRhPct: 78,
    diameterMm: 45,
    targetLossPct: 35,
  };
  const formula = { name: 'Test', kind: 'comminuted' as const, species: [], fatPctOfMeat: 25, lines: [] };
  log.write('batch-opened', BATCH, { lot: 'T1', formula, ruleSet: 'CA', plan }, { atMs: START_MS - HOUR_MS });
  const tasks = BEFORE_STUFFING.map(({ id, durationMinutes }) => ({ name: id, minutes: durationMinutes }));
  log.write('stuffing-planned', BATCH, { finishMs: FINISH_MS, tasks }, { atMs: START_MS });
  const timer = { name: 'Knives', endMs: START_MS + HOUR_MS };
  log.write('timer-set', BATCH, timer, { atMs: START_MS });
  const batch = foldBatch(BATCH, log.entries);
  if (!batch) throw new Error('view: no batch');
  return timersView({ batch, nowMs: START_MS + hours * HOUR_MS, zone: '+00:00', words: en });
}

it('culture, casings and mould begin so that all are ready when stuffing begins (durations: common practice)', () => {
  // START_MS is 08:00; stuffing at 14:00.
  expect(view(0).tasks.map(({ key, figure }) => [key, figure])).toEqual([
    ['mould', '09:00 today'],
    ['casings', '12:00 today'],
    ['culture', '13:30 today'],
    ['stuffing', '14:00 today'],
  ]);
  expect(plainText(view(2).sentence)).toContain('Soak the casings, 12:00 today');
  expect(view(2).tasks[0]?.note).toContain('late by 1 h');
});

it('a timer is an instant on the record, whatever the app did in between', () => {
  expect(view(0.5).timers[0]?.endMs).toBe(START_MS + HOUR_MS);
  expect(view(0.5).timers).toEqual(view(0).timers);
});

it('what lies ahead goes to a calendar under the same names each time', () => {
  const uids = (hours: number) => view(hours).events.map(({ uid }) => uid);
  expect(uids(0)).toHaveLength(5);
  expect(uids(2).every((uid) => uids(0).includes(uid))).toBe(true);
  const text = calendar({ events: view(0).events, madeAtMs: START_MS });
  expect(text).toContain('DTSTART:20240108T140000Z');
  expect(text).toContain('BEGIN:VALARM');
});
