import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { aboutMs, clockDoubts, clockSteps, doubted } from '#record/clock-steps.ts';
import { clockSubject, putRight } from '#record/put-right.ts';
import { HOUR_MS, idOf, START_MS } from './make.ts';
import { correction, DAY_MS, phone } from './wrong-clock.ts';

const WRONG_MS = 400 * DAY_MS;
const nowMs = START_MS + 30 * HOUR_MS;

/** Ten notes an hour apart, the fourth to the seventh with a clock that stands wrong. */
function wrongFor(aheadMs: number) {
  const one = phone();
  for (let hours = 1; hours <= 10; hours++)
    one.note(hours, `${hours}`, { aheadMs: hours >= 4 && hours <= 7 ? aheadMs : 0 });
  return one;
}

describe('where a clock stood wrong', () => {
  it('is nowhere in a book without a step', () => {
    const one = wrongFor(0);
    expect(clockDoubts(one.entries, nowMs)).toEqual([]);
    expect(doubted(one.entries, []).size).toBe(0);
  });

  it.each([
    ['ahead', WRONG_MS],
    ['behind', -WRONG_MS],
  ] as const)('is told by the two leaps of a clock that stood 400 days %s', (side, aheadMs) => {
    const one = wrongFor(aheadMs);
    const [doubt, ...others] = clockDoubts(one.entries, nowMs);
    expect(others).toEqual([]);
    expect(doubt?.told).toBe(true);
    const likely = doubt?.sides[0];
    expect([likely?.side, likely?.first.seq, likely?.last.seq]).toEqual([side, 4, 7]);
    expect(likely && aboutMs(likely)).toBe(-aheadMs);
    expect(likely?.leastMs).toBe(-aheadMs - HOUR_MS);
    expect(likely?.mostMs).toBe(-aheadMs + HOUR_MS);
    const flagged = doubted(one.entries, doubt ? [doubt] : []);
    expect(one.entries.filter(({ id }) => flagged.has(id)).map(({ seq }) => seq)).toEqual([4, 5, 6, 7]);
  });

  it('is nowhere any more once it was put right, and there again when that was struck', () => {
    for (const aheadMs of [WRONG_MS, -WRONG_MS, 2 * HOUR_MS]) {
      const one = wrongFor(aheadMs);
      const body = correction(one, { fromSeq: 4, toSeq: 7, shiftMs: -aheadMs });
      const fix = one.write(11, 'clock-corrected', clockSubject(one.device), body);
      const right = putRight(one.entries, one.entries);
      expect([clockSteps(right), clockDoubts(right, nowMs)]).toEqual([[], []]);
      one.write(12, 'struck', fix.subject, {}, { strikes: fix.id });
      const again = putRight(one.entries, one.entries);
      expect([clockSteps(again).length, clockDoubts(again, nowMs).length]).toEqual([1, 1]);
    }
  });

  it('is on the side that lies ahead of now, with or without an entry since the clock came back', () => {
    const one = phone();
    for (const hours of [1, 2]) one.note(hours, 'ahead from the first day', { aheadMs: WRONG_MS });
    const before = clockDoubts(one.entries, nowMs);
    expect(before).toMatchObject([{ told: true, sides: [{ side: 'ahead', leastMs: null }] }]);
    one.note(3, 'right again');
    const after = clockDoubts(one.entries, nowMs);
    expect(after).toMatchObject([{ told: true, sides: [{ side: 'ahead' }, { side: 'behind' }] }]);
    expect([...doubted(one.entries, after).keys()]).toEqual(one.entries.slice(0, 2).map(({ id }) => id));
    const [likely] = after[0]?.sides ?? [];
    expect(likely && aboutMs(likely)).toBe(HOUR_MS - WRONG_MS);
  });

  it('is on both sides where nothing tells, and both are flagged', () => {
    const one = phone();
    for (const hours of [1, 2]) one.note(hours, 'one day', { aheadMs: 5 * HOUR_MS });
    for (const hours of [3, 4]) one.note(hours, 'the other');
    const nobodyWroteMs = START_MS + 9 * HOUR_MS;
    const doubts = clockDoubts(one.entries, nobodyWroteMs);
    expect(doubts).toMatchObject([{ told: false, sides: [{ side: 'behind' }, { side: 'ahead' }] }]);
    expect(doubted(one.entries, doubts).size).toBe(4);
    one.note(9, 'past all that it ever showed: a leap, or a long pause');
    expect(clockDoubts(one.entries, nobodyWroteMs)).toMatchObject([{ told: false }]);
  });

  it('is not said of daylight saving, which moves the offset and not the clock', () => {
    const one = phone();
    for (const hours of [1, 2]) one.note(hours, 'summer', { zone: '+02:00' });
    for (const hours of [3, 4]) one.note(hours, 'winter', { zone: '+01:00' });
    expect([clockSteps(one.entries), clockDoubts(one.entries, nowMs)]).toEqual([[], []]);
  });

  it('holds every entry that a wrong clock wrote, however long and however wrong it stood', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 2, max: 8 }),
        fc.integer({ min: 1, max: 5 }),
        fc.integer({ min: -800, max: 800 }).filter((days) => Math.abs(days) > 2),
        (before, wrong, days) => {
          const one = phone();
          const total = before + wrong + 4;
          for (let hours = 1; hours <= total; hours++) {
            const aheadMs = hours > before && hours <= before + wrong ? days * DAY_MS : 0;
            one.note(hours, `${hours}`, { aheadMs });
          }
          const doubts = clockDoubts(one.entries, START_MS + (total + 1) * HOUR_MS);
          const flagged = doubted(one.entries, doubts);
          expect(one.entries.filter(({ id }) => flagged.has(id)).map(({ seq }) => seq)).toEqual(
            Array.from({ length: wrong }, (_, at) => before + 1 + at),
          );
          expect(doubts.map(({ sides: [side] }) => aboutMs(side))).toEqual([-days * DAY_MS]);
        },
      ),
    );
  });

  it('takes no longer than a moment for 20,000 entries that each step back', () => {
    const one = phone();
    const note = one.note(1, 'back and back');
    const entries = Array.from({ length: 20_000 }, (_, at) => ({
      ...note,
      id: idOf(at + 1),
      seq: at + 1,
      writtenAtMs: START_MS - at * 10 * 60_000,
    }));
    const fromMs = performance.now();
    const doubts = clockDoubts(entries, nowMs);
    expect([doubts.length, doubted(entries, doubts).size]).toEqual([19_999, 20_000]);
    expect(performance.now() - fromMs).toBeLessThan(3000);
  });
});
