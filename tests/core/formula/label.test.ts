import { readFileSync } from 'node:fs';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { Formula, FormulaLine, Role } from '#core/formula/formula.ts';
import { labelItems, per100G } from '#core/formula/label.ts';
import { exactGrams } from '#core/formula/weigh-out.ts';

const published: { meatPer100G: { meatPct: number; lossPct: number; low: number; high: number } } =
  JSON.parse(readFileSync('fixtures/published/allergens.json', 'utf8'));

const CURE = { nitritePct: 6.25, nitratePct: 4, nitriteSalt: 'NaNO2', nitrateSalt: 'NaNO3' } as const;

function line(id: string, role: Role, amountPct: number, more: Partial<FormulaLine> = {}): FormulaLine {
  return { id, name: id, role, amount: { basis: 'pct-of-meat', amountPct }, ...more };
}

function items(lines: FormulaLine[], { leanG = 750, fatG = 250 } = {}) {
  const formula: Formula = {
    name: 'invented',
    kind: 'comminuted',
    species: ['pork'],
    fatPctOfMeat: 25,
    lines,
  };
  const gramsByLine = exactGrams({ formula, leanG, fatG, pieces: null });
  return labelItems({ formula, leanG, fatG, gramsByLine });
}

test('95.7 % meat at 40 % loss was made with 159 to 160 g of meat per 100 g', () => {
  const { meatPct, lossPct, low, high } = published.meatPer100G;
  const meatG = per100G({ pctOfMix: meatPct, lossPct });
  expect(meatG).toBeGreaterThanOrEqual(low);
  expect(meatG).toBeLessThanOrEqual(high);
  expect(() => per100G({ pctOfMix: 1, lossPct: 100 })).toThrow(RangeError);
});

describe('ingredients', () => {
  const all = items([
    line('fennel', 'spice', 0.4),
    line('salt', 'salt', 2.8),
    line('cure', 'cure', 0.25, { cure: CURE }),
    line('wine', 'liquid', 2.5),
    line('mould', 'mould', 0.1),
  ]);

  test('stand by weight at mixing, the salt of the cure with the salt and its agents apart', () => {
    expect(all.map(({ name, role, agent }) => agent ?? (name || role))).toEqual([
      'lean',
      'fat',
      'salt',
      'wine',
      'fennel',
      'NaNO2',
      'NaNO3',
    ]);
    expect(all.find(({ name }) => name === 'salt')?.massG).toBeCloseTo(28 + 2.5 * 0.8975, 9);
  });

  test('a named spice has its percentage', () => {
    expect(all.find(({ name }) => name === 'fennel')?.pctOfMix).toBeCloseTo(4 / 10.595, 9);
  });

  test('nitrited salt alone is salt and nitrite', () => {
    const only = items([
      line('nitrited salt', 'cure', 2.6, { cure: { ...CURE, nitritePct: 0.5, nitratePct: 0 } }),
    ]);
    expect(only.map(({ role, agent, lineIds }) => [role, agent, lineIds.length])).toEqual([
      ['lean', null, 0],
      ['fat', null, 0],
      ['salt', null, 0],
      ['cure', 'NaNO2', 1],
    ]);
  });

  test('nitrited salt entered as salt is still salt and nitrite', () => {
    const label = { ...CURE, nitritePct: 0.5, nitratePct: 0 };
    const entered = items([line('nitrited', 'salt', 2.6, { cure: label })]);
    expect(entered.map(({ role, agent }) => [role, agent])).toEqual([
      ['lean', null],
      ['fat', null],
      ['salt', null],
      ['salt', 'NaNO2'],
    ]);
  });

  test('the same agent from two bags stands once', () => {
    const two = items([line('one', 'cure', 0.1, { cure: CURE }), line('two', 'cure', 0.2, { cure: CURE })]);
    const nitrite = two.filter(({ agent }) => agent === 'NaNO2');
    expect(nitrite.map(({ lineIds }) => lineIds)).toEqual([['one', 'two']]);
    expect(nitrite[0]?.massG).toBeCloseTo(3 * 0.0625, 9);
  });

  test('named meats replace lean and fat', () => {
    const named = items([line('shoulder', 'lean', 75), line('back fat', 'fat', 25)]);
    expect(named.map(({ name }) => name)).toEqual(['shoulder', 'back fat']);
  });

  test('all of the mix is on the label, in falling order (property)', () => {
    const amounts = fc.array(fc.integer({ min: 1, max: 60 }), { minLength: 5, maxLength: 5 });
    const roles: Role[] = ['salt', 'cure', 'sugar', 'spice', 'liquid'];
    fc.assert(
      fc.property(amounts, (tenths) => {
        const lines = roles.map((role, at) =>
          line(role, role, (tenths[at] ?? 0) / 10, role === 'cure' ? { cure: CURE } : {}),
        );
        const label = items(lines);
        expect(label.reduce((sum, { pctOfMix }) => sum + pctOfMix, 0)).toBeCloseTo(100, 9);
        label.forEach(({ massG }, at) => {
          expect(massG).toBeLessThanOrEqual(label[at - 1]?.massG ?? massG);
        });
      }),
    );
  });
});
