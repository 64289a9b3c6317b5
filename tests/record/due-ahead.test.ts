import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { due, lastRoundMs } from '#record/due.ts';
import { dueAhead } from '#record/due-ahead.ts';
import { nextRound } from '#record/round-rhythm.ts';
import { PLACE, type SubjectId } from '#record/subject.ts';
import {
  BATCH,
  type Book,
  batchOf,
  book,
  CHAMBER,
  ferment,
  HOUR_MS,
  kitOf,
  openBatch,
  placeOf,
  readRoom,
  START_MS,
  setUp,
  stuff,
  weighMeat,
  weighOutSalt,
  weighRound,
} from '../screens/book.ts';

const stuffed = () => stuff(weighOutSalt(weighMeat(openBatch(setUp(book(), { ruleSet: 'US' })))));
const LOT: SubjectId = 'lot:018cdc00-0000-7000-a000-0000000000e1';

function ahead(of: Book, hours: number) {
  const { chambers, lots } = kitOf(of);
  const nowMs = START_MS + hours * HOUR_MS;
  return dueAhead({
    batches: [batchOf(of)],
    chambers,
    lots,
    entries: of.entries,
    checks: [],
    ruleSet: placeOf(of).ruleSet,
    nowMs,
  }).map(({ code, atMs }) => [code, (atMs - START_MS) / HOUR_MS]);
}

describe('what will be due', () => {
  it('of a ferment: the pH twelve hours after the last, and the hour at which degree-hours run out', () => {
    const of = readRoom(stuffed(), 2, 24);
    const [ph, runsOut] = ahead(of, 3);
    expect(ph).toEqual(['read-ph', 14]);
    expect(runsOut?.[0]).toBe('runs-out');
    // By hand: 1200 degree-hours Fahrenheit above 60 °F, at 75.2 °F: 1200 / 15.2 = 78.9 h from stuffing on.
    expect(runsOut?.[1]).toBeCloseTo(2 + 1200 / 15.2, 0);
  });

  it('of what hangs: the round half a day after hanging, the next of the week, and the next reading of its air', () => {
    const of = weighRound(ferment(stuffed()), 34, [800, 790, 795, 810], { stage: 'to-drying' });
    of.put(35, 'air-read', CHAMBER, { airC: 13, rhPct: 80 });
    expect(ahead(of, 36)).toEqual([
      ['half-day', 45],
      ['read-air', 59],
    ]);
    expect(ahead(weighRound(of, 45.5, [797, 787, 792, 807]), 46)[0]).toEqual(['weigh-round', 57]);
  });

  it('of the workshop: leaving, coming back, and a lot whose time in the freezer is over', () => {
    const of = setUp(book(), { ruleSet: 'US' });
    openBatch(of);
    const at = (hours: number) => START_MS + hours * HOUR_MS;
    of.put(0, 'absence-planned', PLACE, { fromMs: at(48), toMs: at(96), helper: '' });
    of.put(0, 'received', LOT, { what: 'lean', name: 'Shoulder', lot: 'S-1', supplier: '', species: 'pork' });
    of.put(1, 'frozen', LOT, { thicknessMm: 100, method: 'room' });
    of.put(2, 'freezer-read', LOT, { tempC: -16, where: 'core' });
    // Twenty days at -15 °C from when the core is there, for pork up to 15 cm thick (the table of the rule set).
    expect(ahead(of, 3)).toEqual([
      ['leave', 48],
      ['back', 96],
      ['frozen', 2 + 20 * 24],
    ]);
    expect(ahead(of, 50).map(([code]) => code)).toEqual(['back', 'frozen']);
  });
});

describe('the next weigh round', () => {
  it('is the instant from which Today says so, and not a minute before', () => {
    fc.assert(
      fc.property(fc.integer({ min: 0, max: 20 * 24 }), (hoursAfter) => {
        const at = 34 + hoursAfter;
        const of = weighRound(ferment(stuffed()), at, [700, 690, 695, 710]);
        const batch = batchOf(of, BATCH);
        const [hungMs, lastMs] = [batch.hung?.atMs ?? Number.NaN, lastRoundMs(batch)];
        const nextMs = nextRound({ hungMs, lastMs, nowMs: lastMs ?? hungMs }).atMs;
        const asks = ['weigh-round', 'half-day'];
        const isDue = (nowMs: number) => due(batch, nowMs).some(({ code }) => asks.includes(code));
        expect(isDue(nextMs)).toBe(true);
        expect(isDue(nextMs - 60_000)).toBe(false);
      }),
      { numRuns: 30 },
    );
  });
});

describe('the round half a day after hanging', () => {
  const HUNG = 33;
  const weighed = () =>
    weighRound(ferment(stuffed()), HUNG + 0.5, [800, 790, 795, 810], { stage: 'to-drying' });
  const codes = (of: Book, hours: number) =>
    due(batchOf(of), START_MS + (HUNG + hours) * HOUR_MS).map(({ code }) => code);

  it('is asked from then on, and after a day it is over: the daily round asks instead', () => {
    expect(codes(weighed(), 11)).toEqual([]);
    expect(codes(weighed(), 12)).toEqual(['half-day']);
    expect(codes(weighed(), 23)).toEqual(['half-day']);
    expect(codes(weighed(), 24)).toEqual(['weigh-round']);
    expect(codes(weighed(), 24 * 7 - 0.1)).toEqual(['weigh-round']);
    expect(codes(weighed(), 24 * 7)).toEqual([]);
  });

  it('is satisfied by one round, also by one that comes a little early', () => {
    const early = weighRound(weighed(), HUNG + 7, [797, 787, 792, 807]);
    expect(codes(early, 12)).toEqual([]);
    expect(codes(early, 24)).toEqual(['weigh-round']);
  });

  it('is not asked where nothing was weighed on hanging: the first round is', () => {
    expect(codes(ferment(stuffed()), 1)).toEqual(['weigh-round']);
    expect(codes(ferment(stuffed()), 12)).toEqual(['weigh-round']);
  });
});
