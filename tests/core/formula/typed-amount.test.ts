import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { type AmountProblem, readAmount } from '#core/formula/typed-amount.ts';
import { readNumber } from '#core/formula/typed-number.ts';

describe('amounts as recipes print them', () => {
  test.each([
    ['5 % of total', { basis: 'pct-of-total', amountPct: 5 }, false],
    ['2.8% of meat and fat', { basis: 'pct-of-meat', amountPct: 2.8 }, false],
    ['30 % of the lean', { basis: 'pct-of-lean', amountPct: 30 }, false],
    ['28 g/kg', { basis: 'g-per-kg-meat', doseGPerKg: 28 }, true],
    ['2,5 g per kg', { basis: 'g-per-kg-meat', doseGPerKg: 2.5 }, true],
    ['1.5 oz for 10 lb', { basis: 'g-per-kg-meat', doseGPerKg: 9.375 }, true],
    ['1½ oz for 10 lb of meat', { basis: 'g-per-kg-meat', doseGPerKg: 9.375 }, false],
    ['25 g per 200 kg', { basis: 'g-per-kg-meat', doseGPerKg: 0.125 }, true],
    ['2 g per 1 kg of mix', { basis: 'pct-of-total', amountPct: 0.2 }, false],
    ['100 g on 1 kg lean', { basis: 'pct-of-lean', amountPct: 10 }, false],
    ['60 g', { basis: 'fixed', amountG: 60 }, false],
    ['2 g each', { basis: 'per-piece', pieceG: 2 }, false],
    ['0.12 g/kg, min 2.5 g', { basis: 'at-least', minimumG: 2.5, doseGPerKg: 0.12 }, true],
    ['at least 2.5 g, 0.12 g/kg', { basis: 'at-least', minimumG: 2.5, doseGPerKg: 0.12 }, true],
    [
      '1/4 of a pack of 25 g',
      { basis: 'pack-share', packG: 25, packFraction: 0.25, doseGPerKg: 0, minimumG: 0 },
      false,
    ],
  ])('%s', (typed, amount, assumedMeat) => {
    expect(readAmount(typed, '.')).toEqual({ ok: true, amount, assumedMeat });
  });

  test.each<[string, AmountProblem]>([
    ['', 'empty'],
    ['5 %', 'percent-of-what'],
    ['110 % of meat', 'over-100-percent'],
    ['2 kg per 1 kg of mix', 'over-100-percent'],
    ['2 tsp', 'spoons'],
    ['60 ml', 'volume'],
    ['25 ml/kg', 'volume'],
    ['156 ppm', 'agent-not-cure'],
    ['156 mg/kg', 'agent-not-cure'],
    ['5', 'unit-missing'],
    ['-5 g', 'not-understood'],
    ['a pinch', 'not-understood'],
    ['5 g for 0 kg', 'not-understood'],
    ['1,250 g', 'ambiguous-number'],
    ['at least 1/0 g, 2 g/kg', 'ambiguous-number'],
    ['at least 2 g, 5 % of total', 'not-understood'],
  ])('"%s" asks: %s', (typed, problem) => {
    expect(readAmount(typed, '.')).toEqual({ ok: false, problem });
  });

  test('nothing typed is ever read as an amount that is not a number (property)', () => {
    const letters = fc.constantFrom(...'0123456789.,/ %gkozlb'.split(''));
    fc.assert(
      fc.property(fc.string({ unit: letters, maxLength: 14 }), (typed) => {
        const read = readAmount(typed, ',');
        if (!read.ok) return;
        for (const value of Object.values(read.amount))
          if (typeof value === 'number')
            expect(value).toSatisfy((some: number) => some >= 0 && some < Infinity);
      }),
    );
  });
});

describe('numbers with a mark', () => {
  test.each([
    ['2,5', '.', 2.5],
    ['2.5', ',', 2.5],
    ['.5', '.', 0.5],
    ['0,250', '.', 0.25],
    ['6.250', '.', 6.25],
    ['1,250', ',', 1.25],
    ['1,250.5', '.', 1250.5],
    ['1.250,5', '.', 1250.5],
    ['1,250,000', '.', 1_250_000],
    ['1 3/4', '.', 1.75],
    ['1,250', '.', null],
    ['1.250', ',', null],
    ['1,25,0', '.', null],
    ['1.2,5', '.', null],
    ['1/0', '.', null],
    ['', '.', null],
  ] as const)('%s with "%s" is %s', (typed, decimal, value) => {
    expect(readNumber(typed, decimal)).toBe(value);
  });
});
