import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { bandHours, doorOpenings, widestSwing } from '#core/air/air-series.ts';
import { humidityToSet } from '#core/air/humidity-to-set.ts';

const HOUR_MS = 3_600_000;
const samples = fc
  .array(fc.tuple(fc.integer({ min: 1, max: 300 }), fc.integer({ min: 0, max: 300 })), {
    minLength: 2,
    maxLength: 60,
  })
  .map((steps) => {
    let atMs = 0;
    return steps.map(([minutes, tenths]) => {
      atMs += minutes * 60_000;
      return { atMs, value: tenths / 10 };
    });
  });
const band = { low: 10, high: 18, gapHours: 4 };

describe('time in band', () => {
  it('by hand: ten hours from 10 to 20 stand two below 12, four in and four above 16', () => {
    const rising = [
      { atMs: 0, value: 10 },
      { atMs: 10 * HOUR_MS, value: 20 },
    ];
    const hours = { belowHours: 2, inHours: 4, aboveHours: 4, unknownHours: 0 };
    expect(bandHours(rising, { low: 12, high: 16, gapHours: 12 })).toEqual(hours);
    expect(bandHours(rising, { low: 12, high: 16, gapHours: 8 }).unknownHours).toBe(10);
  });

  it('adds up to all the time there was, and halves add up to the whole', () => {
    fc.assert(
      fc.property(samples, fc.nat(), (all, cut) => {
        const at = cut % all.length;
        const sum = ({ belowHours, inHours, aboveHours, unknownHours }: ReturnType<typeof bandHours>) =>
          belowHours + inHours + aboveHours + unknownHours;
        const whole = bandHours(all, band);
        const first = bandHours(all.slice(0, at + 1), band);
        const second = bandHours(all.slice(at), band);
        const spanHours = ((all.at(-1)?.atMs ?? 0) - (all[0]?.atMs ?? 0)) / HOUR_MS;
        expect(sum(whole)).toBeCloseTo(spanHours, 9);
        expect(first.inHours + second.inHours).toBeCloseTo(whole.inHours, 9);
        expect(first.aboveHours + second.aboveHours).toBeCloseTo(whole.aboveHours, 9);
      }),
    );
  });

  it('takes no band upside down and no reading out of order', () => {
    expect(() => bandHours([], { ...band, low: 20 })).toThrow(RangeError);
    expect(() =>
      bandHours(
        [
          { atMs: 1, value: 1 },
          { atMs: 0, value: 1 },
        ],
        band,
      ),
    ).toThrow(RangeError);
  });
});

describe('swings', () => {
  it('are what the slowest way of counting gives', () => {
    fc.assert(
      fc.property(samples, (all) => {
        const slow = all.map(({ atMs }) => {
          const inside = all.filter((each) => each.atMs <= atMs && each.atMs >= atMs - 5 * HOUR_MS);
          const values = inside.map(({ value }) => value);
          return Math.max(...values) - Math.min(...values);
        });
        expect(widestSwing(all, { hours: 5 })).toBeCloseTo(Math.max(...slow), 9);
      }),
    );
  });
});

describe('the door', () => {
  const every = (minutes: number, values: readonly number[]) =>
    values.map((value, at) => ({ atMs: at * minutes * 60_000, value }));

  it('is seen by a fast fall of humidity, once an opening', () => {
    const twice = [80, 80, 72, 70, 74, 78, 80, 80, 80, 73, 76, 80];
    expect(doorOpenings(every(5, twice))).toEqual([10 * 60_000, 45 * 60_000]);
  });

  it('is not seen in a slow fall, and cannot be seen by a slow logger', () => {
    expect(doorOpenings(every(5, [80, 79, 78, 77, 76, 75, 74]))).toEqual([]);
    expect(doorOpenings(every(30, [80, 70, 80]))).toBe(null);
  });
});

describe('humidity to set', () => {
  it('by hand: aw 0.96 gives 91 to 93 %, as the published page has it for a fresh batter', () => {
    expect(humidityToSet({ allAw: [0.96] })).toEqual({ lowPct: 91, highPct: 93, pieces: 0 });
  });

  it('is that of the wettest, and counts what it would wet', () => {
    const { lowPct, pieces } = humidityToSet({ allAw: [0.9, 0.95, 0.91] });
    expect(lowPct).toBeCloseTo(90, 9);
    expect(pieces).toBe(2);
  });

  it('needs a piece', () => {
    expect(() => humidityToSet({ allAw: [] })).toThrow(RangeError);
    expect(() => humidityToSet({ allAw: [Number.NaN] })).toThrow(RangeError);
  });
});
