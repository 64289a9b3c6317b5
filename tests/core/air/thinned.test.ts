import fc from 'fast-check';
import { expect, it } from 'vitest';
import { thinned } from '#core/air/thinned.ts';

const series = fc
  .array(fc.integer({ min: 0, max: 300 }), { minLength: 1, maxLength: 400 })
  .map((values) => values.map((value, at) => ({ atMs: at * 60_000, value: value / 10 })));

it('a thinned series is short, in order, made of its samples, and keeps the highest and the lowest', () => {
  fc.assert(
    fc.property(series, fc.integer({ min: 2, max: 60 }), (all, most) => {
      const few = thinned(all, { most });
      expect(few.length).toBeLessThanOrEqual(most);
      expect(few).toEqual(all.filter((each) => few.includes(each)));
      const values = (of: typeof few) => of.map(({ value }) => value);
      expect(Math.max(...values(few))).toBe(Math.max(...values(all)));
      expect(Math.min(...values(few))).toBe(Math.min(...values(all)));
    }),
  );
});

it('fewer than two samples cannot hold both extremes', () => {
  expect(() => thinned([], { most: 1 })).toThrow(RangeError);
  expect(() => thinned([], { most: Number.NaN })).toThrow(RangeError);
});
