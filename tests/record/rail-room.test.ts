import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { busiest, firstClash, freeFrom, occupancy, type Stay } from '#record/rail-room.ts';

const DAY_MS = 24 * 3_600_000;
const stay = (key: string, pieces: number, fromDay: number, untilDay: number): Stay => ({
  key,
  pieces,
  fromMs: fromDay * DAY_MS,
  untilMs: untilDay * DAY_MS,
});

describe('a rail of 24 places', () => {
  // By hand: 12 until day 30, 10 from day 10 to 40, 6 from day 20 to 50. 28 hang from day 20 to 30.
  const stays = [stay('a', 12, 0, 30), stay('b', 10, 10, 40), stay('c', 6, 20, 50)];

  it('is booked twice from day 20 on', () => {
    expect(occupancy(stays).map(({ fromMs, pieces }) => [fromMs / DAY_MS, pieces])).toEqual([
      [0, 12],
      [10, 22],
      [20, 28],
      [30, 16],
      [40, 6],
    ]);
    expect(firstClash(stays, { places: 24, nowMs: 5 * DAY_MS })).toEqual({
      fromMs: 20 * DAY_MS,
      untilMs: 30 * DAY_MS,
      pieces: 28,
    });
    expect(firstClash(stays, { places: 28, nowMs: 0 })).toBeNull();
    expect(firstClash(stays, { places: 24, nowMs: 31 * DAY_MS })).toBeNull();
  });

  it('offers the day from which a batch has room as long as it hangs', () => {
    const wish = { places: 24, pieces: 6, fromMs: 15 * DAY_MS, days: 25 };
    expect(freeFrom(stays.slice(0, 2), wish)).toBe(30 * DAY_MS);
    expect(freeFrom(stays.slice(0, 1), wish)).toBe(15 * DAY_MS);
    expect(freeFrom([], { ...wish, pieces: 25 })).toBeNull();
  });
});

describe('any rail', () => {
  const stays = fc.array(
    fc
      .tuple(
        fc.integer({ min: 0, max: 60 }),
        fc.integer({ min: 1, max: 40 }),
        fc.integer({ min: 1, max: 12 }),
      )
      .map(([from, days, pieces]) => stay('x', pieces, from, from + days)),
    { maxLength: 8 },
  );
  const onDay = (all: readonly Stay[], day: number) =>
    all
      .filter(({ fromMs, untilMs }) => fromMs <= day * DAY_MS && day * DAY_MS < untilMs)
      .reduce((sum, { pieces }) => sum + pieces, 0);

  it('holds at its busiest what counting day by day finds', () => {
    fc.assert(
      fc.property(
        stays,
        fc.integer({ min: 0, max: 60 }),
        fc.integer({ min: 1, max: 40 }),
        (all, from, days) => {
          const counted = Math.max(...Array.from({ length: days }, (_, at) => onDay(all, from + at)));
          expect(busiest(all, { fromMs: from * DAY_MS, untilMs: (from + days) * DAY_MS })).toBe(counted);
        },
      ),
    );
  });

  it('is free from the first day that counting day by day finds', () => {
    fc.assert(
      fc.property(
        stays,
        fc.integer({ min: 1, max: 20 }),
        fc.integer({ min: 1, max: 30 }),
        (all, pieces, days) => {
          const places = 20;
          const fits = (start: number) =>
            Array.from({ length: days }, (_, at) => onDay(all, start + at) + pieces <= places).every(Boolean);
          const first = Array.from({ length: 120 }, (_, at) => at).find(fits);
          const found = freeFrom(all, { places, pieces, fromMs: 0, days });
          expect(found === null ? undefined : found / DAY_MS).toBe(first);
        },
      ),
    );
  });
});
