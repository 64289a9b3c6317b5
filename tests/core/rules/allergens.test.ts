import { readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import {
  ALLERGEN_LISTS,
  ALLERGENS,
  allergensIn,
  allergensToAsk,
  type LabelledLine,
  SULPHITE_LIMIT,
  sulphitesIn,
} from '#core/rules/allergens.ts';

const published: {
  EU: { count: number; entries: string[] };
  US: { count: number; entries: string[] };
  CA: { count: number };
  sulphitesMgPerKg: { value: number };
} = JSON.parse(readFileSync('fixtures/published/allergens.json', 'utf8'));

const line = (
  id: string,
  allergens: string[],
  massG = 5,
  sulphiteMgPerKg: number | null = null,
): LabelledLine => ({
  id,
  massG,
  allergens,
  sulphiteMgPerKg,
});

describe('lists', () => {
  test.each(['EU', 'US'] as const)('%s is the published one, in its order', (ruleSet) => {
    const entries = ALLERGEN_LISTS[ruleSet].entries.map(({ entry }) => entry);
    expect(entries).toEqual(published[ruleSet].entries);
    expect(entries.length).toBe(published[ruleSet].count);
  });

  test('Canada has eleven, mustard among them', () => {
    const { entries } = ALLERGEN_LISTS.CA;
    expect(entries.length).toBe(published.CA.count);
    expect(entries.flatMap(({ codes }) => codes)).toContain('mustard');
  });

  test('the limit of sulphites is the published one', () => {
    expect(SULPHITE_LIMIT.value).toBe(published.sulphitesMgPerKg.value);
  });
});

describe('allergens of a batch', () => {
  const lines = [line('mustard', ['mustard']), line('bread', ['wheat']), line('beer', ['other-gluten'])];

  test('the EU counts all cereals with gluten as one, the US names wheat alone', () => {
    expect(allergensIn({ lines, finishedG: 600, ruleSet: 'EU' }).entries).toEqual([
      { entry: 'cereals-with-gluten', lineIds: ['bread', 'beer'] },
      { entry: 'mustard', lineIds: ['mustard'] },
    ]);
    expect(allergensIn({ lines, finishedG: 600, ruleSet: 'US' }).entries).toEqual([
      { entry: 'wheat', lineIds: ['bread'] },
    ]);
  });

  test('every code can be named by some rule set', () => {
    for (const code of ALLERGENS) {
      const found = allergensIn({ lines: [line('x', [code])], finishedG: 1, ruleSet: 'EU' });
      expect(found.entries.length).toBe(1);
    }
  });
});

describe('sulphites from wine', () => {
  const wine = (sulphiteMgPerKg: number | null) => [line('wine', ['sulphites'], 25, sulphiteMgPerKg)];

  test('unknown amounts are to be named', () => {
    const found = allergensIn({ lines: wine(null), finishedG: 625, ruleSet: 'EU' });
    expect(found.sulphites).toEqual({ state: 'unknown', mostMgPerKg: null });
    expect(found.entries).toEqual([{ entry: 'sulphites', lineIds: ['wine'] }]);
  });

  test('exactly 10 mg/kg is not over, more is', () => {
    expect(sulphitesIn({ lines: wine(250), finishedG: 625 })).toEqual({ state: 'not-over', mostMgPerKg: 10 });
    expect(sulphitesIn({ lines: wine(251), finishedG: 625 }).state).toBe('over');
    expect(allergensIn({ lines: wine(250), finishedG: 625, ruleSet: 'EU' }).entries).toEqual([]);
  });

  test('drying brings them over', () => {
    expect(sulphitesIn({ lines: wine(250), finishedG: 620 }).state).toBe('over');
  });

  test('none without a line that brings them, and none judged without a weight', () => {
    expect(sulphitesIn({ lines: [line('salt', [])], finishedG: 1 }).state).toBe('none');
    expect(() => sulphitesIn({ lines: [], finishedG: 0 })).toThrow(RangeError);
  });
});

test.each([
  ['Red wine', ['sulphites']],
  ['Skim milk powder', ['milk']],
  ['Celery powder', ['celery']],
  ['Mustard seed', ['mustard']],
  ['Pistachios', ['nuts']],
  ['Beer', ['other-gluten']],
  ['Black pepper', []],
])('%s asks about %s', (name, asked) => {
  expect(allergensToAsk(name)).toEqual(asked);
});
