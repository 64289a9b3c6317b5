import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { nextRound, ROUND_DAYS } from '#record/round-rhythm.ts';

const DAY_MS = 86_400_000;
const HUNG_MS = Date.UTC(2024, 0, 8, 18, 30);
const nextAfter = (lastDay: number, nowDay = lastDay) => {
  const at = (day: number) => HUNG_MS + day * DAY_MS;
  const { atMs, isHalfDay } = nextRound({ hungMs: HUNG_MS, lastMs: at(lastDay), nowMs: at(nowDay) });
  return [Math.round((100 * (atMs - HUNG_MS)) / DAY_MS) / 100, isHalfDay];
};

describe('the rounds that are asked', () => {
  it('by hand, done as asked: on hanging, half a day later, daily in the first week, then weekly', () => {
    const days: number[] = [];
    let lastMs: number | null = null;
    for (let round = 0; round < 11; round++) {
      lastMs = nextRound({ hungMs: HUNG_MS, lastMs, nowMs: lastMs ?? HUNG_MS }).atMs;
      days.push((lastMs - HUNG_MS) / DAY_MS);
    }
    expect(days).toEqual([0, 0.5, 1, 2, 3, 4, 5, 6, 13, 20, 27]);
    expect(ROUND_DAYS).toEqual(days.slice(0, 8));
  });

  it('begin at hanging where nothing was weighed, or only days before', () => {
    expect(nextRound({ hungMs: HUNG_MS, lastMs: null, nowMs: HUNG_MS }).atMs).toBe(HUNG_MS);
    expect(nextAfter(-2)).toEqual([0, false]);
    // On the day of hanging, before it: that one counts.
    expect(nextAfter(-0.2)).toEqual([0.5, true]);
  });

  it('a weighing some minutes after hanging is not the one half a day later', () => {
    expect(nextAfter(0.02)).toEqual([0.5, true]);
    expect(nextAfter(0.24)).toEqual([0.5, true]);
    expect(nextAfter(0.3)).toEqual([1, false]);
  });

  it('count a round that comes early, and do not ask again for one that was missed', () => {
    expect(nextAfter(0.9)).toEqual([2, false]);
    expect(nextAfter(3.4)).toEqual([4, false]);
    expect(nextAfter(3.6)).toEqual([5, false]);
    expect(nextAfter(10)).toEqual([17, false]);
  });

  it('of the first week are over with it: then a week after the last', () => {
    expect(nextAfter(0, 6.9)).toEqual([0.5, true]);
    expect(nextAfter(0, 7)).toEqual([7, false]);
    expect(nextAfter(4, 8)).toEqual([11, false]);
  });

  it('never ask twice in six hours, and never later than a week', () => {
    fc.assert(
      fc.property(fc.integer({ min: 0, max: 40 * 24 * 60 }), (minutes) => {
        const lastMs = HUNG_MS + minutes * 60_000;
        const aheadMs = nextRound({ hungMs: HUNG_MS, lastMs, nowMs: lastMs }).atMs - lastMs;
        expect(aheadMs).toBeGreaterThanOrEqual(DAY_MS / 4);
        expect(aheadMs).toBeLessThanOrEqual(7 * DAY_MS);
      }),
    );
  });
});
