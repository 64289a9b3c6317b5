import { describe, expect, it } from 'vitest';
import { NORMAL_90_SD, normalCdf, normalQuantile, risingRoot } from '#core/drying/normal.ts';

// Abramowitz & Stegun, Handbook of Mathematical Functions (1964), table 26.1; from memory, high confidence.
const TABLE_26_1: [number, number][] = [
  [0, 0.5],
  [0.5, 0.691462461274013],
  [1, 0.841344746068543],
  [1.5, 0.933192798731142],
  [2, 0.977249868051821],
  [3, 0.99865010196837],
  [4, 0.999968328758167],
];

describe('the normal distribution', () => {
  it('agrees with the printed table to its last digit', () => {
    for (const [z, p] of TABLE_26_1) {
      expect(Math.abs(normalCdf(z) - p)).toBeLessThan(1e-14);
      expect(Math.abs(normalCdf(-z) - (1 - p))).toBeLessThan(1e-14);
    }
  });

  it('keeps nine tenths below 1.2816 sd', () => {
    expect(normalCdf(NORMAL_90_SD)).toBeCloseTo(0.9, 14);
  });

  it('joins its two forms and runs out at nothing', () => {
    expect(normalCdf(-7.0710678118655) / normalCdf(-7.0710678118654)).toBeCloseTo(1, 6);
    expect(normalCdf(-40)).toBe(0);
    expect(normalCdf(40)).toBe(1);
  });
});

describe('its quantile', () => {
  it('is the other way round of the printed table, and of a millionth', () => {
    for (const [z, p] of TABLE_26_1) expect(normalQuantile(p)).toBeCloseTo(z, 10);
    expect(normalQuantile(1e-6)).toBeCloseTo(-4.753424308822899, 8); // A&S table 26.5, from memory
  });

  it('refuses chances of 0 and 1, which have none', () => {
    for (const chance of [0, 1, -0.1, Number.NaN]) expect(() => normalQuantile(chance)).toThrow(RangeError);
  });
});

describe('the root finder', () => {
  it('finds the quantiles of the normal distribution', () => {
    const at = (level: number) => risingRoot(normalCdf, { level, low: -30, high: 30, tolerance: 1e-10 });
    expect(at(0.9)).toBeCloseTo(NORMAL_90_SD, 8);
    expect(at(0.5)).toBeCloseTo(0, 8);
  });

  it('has no answer outside its ends', () => {
    expect(risingRoot((x) => x, { level: 9, low: 0, high: 8, tolerance: 1e-9 })).toBeNull();
    expect(risingRoot((x) => x, { level: -1, low: 0, high: 8, tolerance: 1e-9 })).toBeNull();
  });

  it('crosses a step', () => {
    const step = (x: number) => (x < 3 ? 0 : 1);
    expect(risingRoot(step, { level: 0.5, low: 0, high: 8, tolerance: 1e-9 })).toBeCloseTo(3, 8);
  });
});
