import { readFileSync } from 'node:fs';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import {
  casingForMixM,
  casingPlan,
  diameterToFlatMm,
  flatToDiameterMm,
  geometricFillGPerM,
  learnedFillGPerM,
} from '#core/formula/casing.ts';
import { CASING_ROWS, type CasingKind, fillsFor } from '#core/formula/casing-tables.ts';

const published: {
  fills: { casing: CasingKind; fromMm: number; toMm: number; gPerM: [number, number]; ratioMid: number }[];
  geometry: { diameterMm: number; gPerM: number }[];
} = JSON.parse(readFileSync('fixtures/published/casing.json', 'utf8'));

describe('published tables', () => {
  test.each(published.fills)('$casing $fromMm to $toMm mm', ({ casing, fromMm, toMm, gPerM, ratioMid }) => {
    const middleMm = (fromMm + toMm) / 2;
    const row = fillsFor({ casing, diameterMm: middleMm }).find(
      ({ lowGPerM }) => Math.abs(lowGPerM - gPerM[0]) < 0.1,
    );
    expect(row?.highGPerM).toBeCloseTo(gPerM[1], 1);
    const full = geometricFillGPerM({ diameterMm: middleMm, densityKgPerL: 1 });
    expect(((row?.lowGPerM ?? 0) + (row?.highGPerM ?? 0)) / 2 / full).toBeCloseTo(ratioMid, 2);
  });

  test('two that differ are both there: beef middles of 52 mm', () => {
    const fills = fillsFor({ casing: 'beef-middle', diameterMm: 52 });
    expect(fills.map(({ lowGPerM }) => Math.round(lowGPerM))).toEqual([1778, 1300]);
    expect(new Set(fills.map(({ source }) => source.body)).size).toBe(2);
  });

  test('no row holds more than a casing stuffed full, a stretching one excepted', () => {
    for (const { casing, toMm, highGPerM } of CASING_ROWS)
      if (casing !== 'fibrous')
        expect(highGPerM).toBeLessThan(1.06 * geometricFillGPerM({ diameterMm: toMm, densityKgPerL: 1 }));
  });
});

test.each(published.geometry)('a full casing of $diameterMm mm holds $gPerM g a metre', (row) => {
  expect(geometricFillGPerM({ diameterMm: row.diameterMm, densityKgPerL: 1 })).toBeCloseTo(row.gPerM, 1);
});

describe('flat and round', () => {
  test('100 mm flat is 63.7 mm round, and back', () => {
    expect(flatToDiameterMm(100)).toBeCloseTo(63.7, 1);
    expect(diameterToFlatMm(63.7)).toBeCloseTo(100, 0);
  });

  test('one undoes the other (property)', () => {
    fc.assert(
      fc.property(fc.integer({ min: 1, max: 3000 }), (tenthsMm) => {
        expect(diameterToFlatMm(flatToDiameterMm(tenthsMm / 10))).toBeCloseTo(tenthsMm / 10, 10);
      }),
    );
  });
});

describe('planning', () => {
  test('5.2 kg at 1.4 kg a metre takes 3.7 m; with 3.2 m used the own fill is 1.63 kg a metre', () => {
    expect(casingForMixM({ mixG: 5200, fillGPerM: 1400 })).toBeCloseTo(3.7, 1);
    expect((learnedFillGPerM([{ mixG: 5200, usedM: 3.2 }]) ?? 0) / 1000).toBeCloseTo(1.63, 2);
    expect(learnedFillGPerM([])).toBeNull();
  });

  test('pieces, what is kept and what is left over make the mix again (property)', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 100, max: 50_000 }),
        fc.integer({ min: 0, max: 90 }),
        fc.integer({ min: 50, max: 3000 }),
        fc.integer({ min: 200, max: 3000 }),
        (mixG, keptG, pieceG, fillGPerM) => {
          const plan = casingPlan({ mixG, keptG, pieceG, fillGPerM, endsMm: 60 });
          expect(plan.pieces * pieceG + plan.leftoverG + keptG).toBeCloseTo(mixG, 6);
          expect(plan.leftoverG).toBeLessThan(pieceG);
          const stuffedM = plan.casingM - (plan.pieces * 60) / 1000;
          expect(stuffedM * fillGPerM + (plan.leftoverMm * fillGPerM) / 1000).toBeCloseTo(mixG - keptG, 5);
        },
      ),
    );
  });

  test('twelve pieces of 0.1 kg out of 1.2 kg are twelve', () => {
    const pieceG = 0.1 * 3 * 1000;
    expect(casingPlan({ mixG: 3600, keptG: 0, pieceG, fillGPerM: 1000, endsMm: 0 }).pieces).toBe(12);
    expect(() => casingPlan({ mixG: 1, keptG: 0, pieceG: 0, fillGPerM: 1, endsMm: 0 })).toThrow(RangeError);
    expect(() => casingPlan({ mixG: 1, keptG: 0, pieceG: 1, fillGPerM: 0, endsMm: 0 })).toThrow(RangeError);
  });
});
