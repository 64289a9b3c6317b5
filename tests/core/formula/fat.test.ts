import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { cutToAddG, fatPctOfMeat, fatToAddG, pearsonSquare } from '#core/formula/fat.ts';

describe('pure fat', () => {
  test('4,536 g of lean at 30 % needs 1,944 g of fat, not 1,361 (arithmetic, derived)', () => {
    expect(fatToAddG({ leanG: 4536, fatPct: 30 })).toBeCloseTo(1944, 9);
  });

  test('3 kg and 1.3 kg is 30.2 %, 3 kg and 0.9 kg is 23.1 % (arithmetic, derived)', () => {
    expect(fatPctOfMeat({ leanG: 3000, fatG: 1300 })).toBeCloseTo(30.2, 1);
    expect(fatPctOfMeat({ leanG: 3000, fatG: 900 })).toBeCloseTo(23.1, 1);
  });

  test('what is added gives the share that was wanted (property)', () => {
    fc.assert(
      fc.property(fc.integer({ min: 1, max: 99_999 }), fc.integer({ min: 0, max: 999 }), (leanG, tenths) => {
        const fatPct = tenths / 10;
        expect(fatPctOfMeat({ leanG, fatG: fatToAddG({ leanG, fatPct }) })).toBeCloseTo(fatPct, 9);
      }),
    );
  });

  test('lean alone cannot be all fat, and no meat has no share', () => {
    expect(() => fatToAddG({ leanG: 1, fatPct: 100 })).toThrow(RangeError);
    expect(() => fatPctOfMeat({ leanG: 0, fatG: 0 })).toThrow(RangeError);
  });
});

describe('two cuts with their own fat', () => {
  test('the square meets the wanted fat and the whole meat (property)', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 0, max: 300 }),
        fc.integer({ min: 301, max: 950 }),
        fc.integer({ min: 0, max: 100 }),
        fc.integer({ min: 1, max: 50_000 }),
        (leanTenths, fatTenths, betweenPct, meatG) => {
          const firstFatPct = leanTenths / 10;
          const secondFatPct = fatTenths / 10;
          // The two ends exactly: rounding would lie a hair outside of what the two cuts can make.
          const wantedFatPct =
            betweenPct === 100
              ? secondFatPct
              : firstFatPct + ((secondFatPct - firstFatPct) * betweenPct) / 100;
          const parts = pearsonSquare({ firstFatPct, secondFatPct, wantedFatPct, meatG });
          const { firstG = Number.NaN, secondG = Number.NaN } = parts ?? {};
          expect(firstG + secondG).toBeCloseTo(meatG, 6);
          expect((firstG * firstFatPct + secondG * secondFatPct) / meatG).toBeCloseTo(wantedFatPct, 6);
        },
      ),
    );
  });

  test('nothing between two cuts is fatter than the fatter one', () => {
    const two = { firstFatPct: 5, secondFatPct: 20, meatG: 1000 };
    expect(pearsonSquare({ ...two, wantedFatPct: 25 })).toBeNull();
    expect(pearsonSquare({ ...two, secondFatPct: 5, wantedFatPct: 5 })).toBeNull();
  });

  test('adding to what is there agrees with the square', () => {
    const addG = cutToAddG({ haveG: 3000, haveFatPct: 7.14, addFatPct: 88.69, wantedFatPct: 25 }) ?? 0;
    const square = pearsonSquare({
      firstFatPct: 7.14,
      secondFatPct: 88.69,
      wantedFatPct: 25,
      meatG: 3000 + addG,
    });
    expect(square?.secondG).toBeCloseTo(addG, 6);
  });

  test('a leaner cut never makes it fatter, and nothing is added where it fits already', () => {
    expect(cutToAddG({ haveG: 1000, haveFatPct: 20, addFatPct: 10, wantedFatPct: 25 })).toBeNull();
    expect(cutToAddG({ haveG: 1000, haveFatPct: 20, addFatPct: 25, wantedFatPct: 25 })).toBeNull();
    expect(cutToAddG({ haveG: 1000, haveFatPct: 20, addFatPct: 80, wantedFatPct: 20 })).toBe(0);
  });
});
