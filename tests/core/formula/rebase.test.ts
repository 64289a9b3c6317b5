import fc from 'fast-check';
import { expect, test } from 'vitest';
import type { Amount, Formula } from '#core/formula/formula.ts';
import { rebase, type ShownBasis } from '#core/formula/rebase.ts';
import { exactGrams } from '#core/formula/weigh-out.ts';

const SHOWN: ShownBasis[] = [
  'pct-of-meat',
  'pct-of-lean',
  'pct-of-total',
  'g-per-kg-meat',
  'fixed',
  'at-least',
  'per-piece',
];

const given = { leanG: 2411, fatG: 804, pieces: 6 };

function made(first: Amount, second: Amount): Formula {
  return {
    name: 'invented',
    kind: 'comminuted',
    species: ['pork'],
    fatPctOfMeat: 25,
    lines: [
      { id: 'wine', name: 'wine', role: 'liquid', amount: first },
      { id: 'salt', name: 'salt', role: 'salt', amount: second },
    ],
  };
}

function mixG(grams: readonly number[]): number {
  return grams.reduce((sum, massG) => sum + massG, given.leanG + given.fatG);
}

test('"5 % of total" gives the same grams after switching its base twice', () => {
  const salt: Amount = { basis: 'pct-of-meat', amountPct: 2.8 };
  const before = exactGrams({ formula: made({ basis: 'pct-of-total', amountPct: 5 }, salt), ...given });
  const bench = { ...given, mixG: mixG(before) };
  const once = rebase({ amount: { basis: 'pct-of-total', amountPct: 5 }, basis: 'pct-of-meat', bench });
  const twice = rebase({ amount: once, basis: 'pct-of-total', bench });
  expect(exactGrams({ formula: made(once, salt), ...given })[0]).toBeCloseTo(before[0] ?? 0, 9);
  expect(exactGrams({ formula: made(twice, salt), ...given })[0]).toBeCloseTo(before[0] ?? 0, 9);
});

test('any chain of bases keeps the grams of every line (property)', () => {
  fc.assert(
    fc.property(
      fc.integer({ min: 0, max: 300 }),
      fc.integer({ min: 0, max: 400 }),
      fc.array(fc.constantFrom(...SHOWN), { maxLength: 6 }),
      (wineTenths, saltTenths, chain) => {
        let wine: Amount = { basis: 'pct-of-total', amountPct: wineTenths / 10 };
        const salt: Amount = { basis: 'g-per-kg-meat', doseGPerKg: saltTenths / 10 };
        const before = exactGrams({ formula: made(wine, salt), ...given });
        const bench = { ...given, mixG: mixG(before) };
        for (const basis of chain) wine = rebase({ amount: wine, basis, bench });
        const after = exactGrams({ formula: made(wine, salt), ...given });
        after.forEach((massG, at) => {
          expect(massG).toBeCloseTo(before[at] ?? -1, 7);
        });
      },
    ),
  );
});

test('a share of a pack becomes plain grams', () => {
  const pack: Amount = { basis: 'pack-share', packG: 25, packFraction: 0.25, doseGPerKg: 0.12, minimumG: 0 };
  expect(rebase({ amount: pack, basis: 'fixed', bench: { ...given, mixG: 3300 } })).toEqual({
    basis: 'fixed',
    amountG: 6.25,
  });
});

test('there is no percentage of lean without lean, and no grams a piece without pieces', () => {
  const amount: Amount = { basis: 'fixed', amountG: 10 };
  const bench = { leanG: 0, fatG: 500, mixG: 510, pieces: null };
  expect(() => rebase({ amount, basis: 'pct-of-lean', bench })).toThrow(RangeError);
  expect(() => rebase({ amount, basis: 'per-piece', bench })).toThrow(RangeError);
});
