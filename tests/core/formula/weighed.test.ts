import { describe, expect, test } from 'vitest';
import type { Formula } from '#core/formula/formula.ts';
import { type Weighing, weighedFigures } from '#core/formula/weighed.ts';
import { nitriteFindings } from '#core/rules/nitrite.ts';
import { saltFindings } from '#core/rules/salt.ts';

const formula: Formula = {
  name: 'invented',
  kind: 'comminuted',
  species: ['pork'],
  fatPctOfMeat: 25,
  lines: [
    { id: 'salt', name: 'salt', role: 'salt', amount: { basis: 'pct-of-meat', amountPct: 2.8 } },
    {
      id: 'cure',
      name: 'cure',
      role: 'cure',
      amount: { basis: 'pct-of-meat', amountPct: 0.25 },
      cure: { nitritePct: 6.25, nitratePct: 0, nitriteSalt: 'NaNO2', nitrateSalt: 'NaNO3' },
    },
    { id: 'wine', name: 'wine', role: 'liquid', amount: { basis: 'pct-of-meat', amountPct: 2 } },
    { id: 'mould', name: 'mould', role: 'mould', amount: { basis: 'fixed', amountG: 2 } },
  ],
};

function weighed(weighings: Weighing[], meatStepsG: (number | null)[] = [1, 1]) {
  return weighedFigures({ formula, leanG: 2411, fatG: 804, meatStepsG, weighings });
}

function most(given: ReturnType<typeof weighed>, ruleSet: 'US' | 'CA' = 'US') {
  return nitriteFindings({ ...given, ruleSet, kind: 'comminuted' })[0];
}

const SALT: Weighing = { lineId: 'salt', massG: 90, stepG: 0.1 };
const WINE: Weighing = { lineId: 'wine', massG: 64, stepG: 1 };
const cure = (massG: number, stepG: number | null = 0.01): Weighing => ({ lineId: 'cure', massG, stepG });

describe('a weigh-out under way', () => {
  test('is pending before the cure is weighed', () => {
    const given = weighed([SALT]);
    expect(given.stage).toBe('planned');
    expect(given.figures.missing).toEqual(['cure-grams', 'line-grams']);
    expect(most(given)?.verdict).toBe('pending');
  });

  test('too much cure is a deviation though the salt is not weighed yet', () => {
    expect(most(weighed([cure(8.04)]))?.verdict).toBe('deviation');
  });

  test('8.00 g keeps the limit with every scale at its worst', () => {
    const given = weighed([SALT, cure(8)]);
    expect(most(given)?.verdict).toBe('within-limit');
    expect(given.upper?.nitrite?.mgPerKgMeat).toBeCloseTo((8.01 * 62_500) / 3213, 9);
    expect(given.lower?.nitrite?.mgPerKgMeat).toBeCloseTo((7.99 * 62_500) / 3217, 9);
  });

  test('two portions add up, and so do their errors', () => {
    const given = weighed([SALT, cure(4), cure(4)]);
    expect(given.upper?.nitrite?.mgPerKgMeat).toBeCloseTo((8.02 * 62_500) / 3213, 9);
  });

  test('a cure or a meat on an unnamed scale leaves it open', () => {
    expect(most(weighed([SALT, cure(8, null)]))?.missing).toEqual(['scale-step']);
    expect(most(weighed([SALT, cure(8)], [1, null]))?.missing).toEqual(['scale-step']);
    expect(most(weighed([SALT, cure(8)], []))?.missing).toEqual(['scale-step']);
  });

  test('salt of the mix waits for every line, and wine on an unnamed scale only widens it', () => {
    const inCanada = (given: ReturnType<typeof weighed>) =>
      saltFindings({ ...given, ruleSet: 'CA', kind: 'comminuted' })[0];
    expect(inCanada(weighed([SALT, cure(8)]))?.missing).toEqual(['line-grams']);
    expect(inCanada(weighed([SALT, cure(8), WINE]))?.verdict).toBe('within-limit');
    const widened = weighed([SALT, cure(8), { ...WINE, stepG: null }]);
    expect(widened.lower?.saltPctOfMix).toBeLessThan(weighed([SALT, cure(8), WINE]).lower?.saltPctOfMix ?? 0);
  });

  test('a line of another formula is refused', () => {
    expect(() => weighed([{ lineId: 'sugar', massG: 1, stepG: 1 }])).toThrow(RangeError);
  });
});
