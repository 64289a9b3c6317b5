import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import {
  batchFromStock,
  benchForFat,
  meatForMix,
  mixForFinishedG,
  mixForPiecesG,
} from '#core/formula/batch-size.ts';
import type { Formula } from '#core/formula/formula.ts';
import { weighOut } from '#core/formula/weigh-out.ts';

const formula: Formula = {
  name: 'invented',
  kind: 'comminuted',
  species: ['pork'],
  fatPctOfMeat: 25,
  lines: [
    { id: 'salt', name: 'salt', role: 'salt', amount: { basis: 'pct-of-meat', amountPct: 2.8 } },
    { id: 'wine', name: 'wine', role: 'liquid', amount: { basis: 'pct-of-total', amountPct: 2 } },
    { id: 'carrier', name: 'water', role: 'liquid', amount: { basis: 'fixed', amountG: 60 } },
    {
      id: 'culture',
      name: 'culture',
      role: 'starter',
      amount: { basis: 'at-least', minimumG: 2.5, doseGPerKg: 0.25 },
    },
  ],
};
const SCALES = [{ id: 'any', stepG: 0.001, capacityG: null }];

describe('by what is at hand', () => {
  const hand = { formula, leanG: 3000, fatG: 1300, pieces: null };

  test('lean runs out first and fat is left', () => {
    expect(batchFromStock({ ...hand, stock: {} })).toEqual({
      leanG: 3000,
      fatG: 1000,
      runsOut: 'lean',
      leanLeftG: 0,
      fatLeftG: 300,
    });
  });

  test('fat runs out first', () => {
    expect(batchFromStock({ ...hand, fatG: 500, stock: {} })).toMatchObject({ runsOut: 'fat', leanG: 1500 });
  });

  test('70 g of salt is enough for 2.5 kg of meat', () => {
    const out = batchFromStock({ ...hand, stock: { salt: 70, carrier: 60 } });
    expect(out.runsOut).toBe('salt');
    expect(out.leanG + out.fatG).toBeCloseTo(2500, 6);
  });

  test('a line that is short at any size leaves no batch', () => {
    expect(batchFromStock({ ...hand, stock: { carrier: 59 } })).toMatchObject({
      runsOut: 'carrier',
      leanG: 0,
    });
  });

  test('no line ever needs more than there is (property)', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 100, max: 20_000 }),
        fc.integer({ min: 100, max: 20_000 }),
        fc.integer({ min: 3, max: 900 }),
        fc.integer({ min: 3, max: 900 }),
        (leanG, fatG, saltG, wineG) => {
          const out = batchFromStock({
            formula,
            leanG,
            fatG,
            pieces: null,
            stock: { salt: saltG, wine: wineG },
          });
          expect(out.leanLeftG).toBeGreaterThanOrEqual(-1e-9);
          expect(out.fatLeftG).toBeGreaterThanOrEqual(-1e-9);
          const { lines } = weighOut({
            formula,
            leanG: out.leanG,
            fatG: out.fatG,
            pieces: null,
            scales: SCALES,
          });
          expect(lines[0]?.exactG).toBeLessThanOrEqual(saltG + 1e-6);
          expect(lines[1]?.exactG).toBeLessThanOrEqual(wineG + 1e-6);
        },
      ),
    );
  });
});

describe('by the mix wanted', () => {
  test('the meat found gives that mix again (property)', () => {
    fc.assert(
      fc.property(fc.integer({ min: 200, max: 50_000 }), (mixG) => {
        const meat = meatForMix({ formula, mixG, pieces: null }) ?? { leanG: 0, fatG: 0 };
        expect(meat.fatG / (meat.leanG + meat.fatG)).toBeCloseTo(0.25, 9);
        const { exact } = weighOut({ formula, ...meat, pieces: null, scales: SCALES });
        expect(exact.mixG).toBeCloseTo(mixG, 5);
      }),
    );
  });

  test('60 g of water leave no room for meat in 50 g of mix', () => {
    expect(meatForMix({ formula, mixG: 50, pieces: null })).toBeNull();
    expect(() => meatForMix({ formula, mixG: 0, pieces: null })).toThrow(RangeError);
  });

  test('twelve pieces of 500 g and 150 g in the stuffer', () => {
    expect(mixForPiecesG({ pieces: 12, pieceG: 500, leftoverG: 150 })).toBe(6150);
  });

  test('10 kg finished at 38 % loss and 3 % sampled takes 16.6 kg of mix', () => {
    const mixG = mixForFinishedG({ finishedG: 10_000, lossPct: 38, sampledPct: 3 });
    expect(mixG * 0.62 * 0.97).toBeCloseTo(10_000, 9);
    expect(() => mixForFinishedG({ finishedG: 1, lossPct: 100, sampledPct: 0 })).toThrow(RangeError);
  });
});

test('all the lean with the fat for 30 %', () => {
  expect(benchForFat({ leanG: 4536, fatPct: 30 }).fatG).toBeCloseTo(1944, 9);
});
