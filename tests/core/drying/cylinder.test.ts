import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { besselJ, cylinderRemaining, cylinderRoots } from '#core/drying/cylinder.ts';

type Published = {
  j0Roots: { root: number; j1: number }[];
  infiniteBiot: { fourier: number; remaining: number }[];
  biot: { biot: number; roots: number[]; rows: { fourier: number; remaining: number }[] }[];
  textbookFirstRoots: Record<string, number | string>;
};
const published: Published = JSON.parse(readFileSync('fixtures/published/drying-cylinder.json', 'utf8'));

describe('diffusion out of a cylinder', () => {
  it('has the zeros of J0, and J1 there, to twelve digits', () => {
    const roots = cylinderRoots({ biot: Infinity, count: published.j0Roots.length });
    published.j0Roots.forEach(({ root, j1 }, k) => {
      expect(Math.abs((roots[k] ?? 0) - root)).toBeLessThan(1e-12);
      expect(Math.abs(besselJ({ order: 1, x: root }) - j1)).toBeLessThan(1e-12);
    });
  });

  it('has the roots and the remaining water of five Biot numbers to 1e-9', () => {
    for (const { biot, roots, rows } of published.biot) {
      const found = cylinderRoots({ biot, count: roots.length });
      roots.forEach((root, k) => {
        expect(Math.abs((found[k] ?? 0) - root)).toBeLessThan(1e-9);
      });
      for (const { fourier, remaining } of rows)
        expect(Math.abs(cylinderRemaining({ fourier, biot }) - remaining)).toBeLessThan(1e-9);
    }
  });

  it('has the remaining water without resistance at the skin, early and late', () => {
    for (const { fourier, remaining } of published.infiniteBiot)
      expect(Math.abs(cylinderRemaining({ fourier, biot: Infinity }) - remaining)).toBeLessThan(1e-9);
  });

  it('starts its first root where the heat conduction textbooks print it', () => {
    for (const biot of [0.1, 1, 10, 100])
      expect(cylinderRoots({ biot, count: 1 })[0]).toBeCloseTo(
        Number(published.textbookFirstRoots[String(biot)]),
        4,
      );
  });

  it('refuses what it does not hold for', () => {
    for (const biot of [0, -1, Number.NaN])
      expect(() => cylinderRoots({ biot, count: 1 })).toThrow(RangeError);
    expect(() => cylinderRoots({ biot: 1, count: 0 })).toThrow(RangeError);
    expect(() => cylinderRemaining({ fourier: Number.NaN, biot: 1 })).toThrow(RangeError);
    expect(() => cylinderRemaining({ fourier: 1e-5, biot: 1 })).toThrow(RangeError);
    expect(() => besselJ({ order: 0, x: Number.NaN })).toThrow(RangeError);
  });
});
