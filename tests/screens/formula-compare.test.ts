import { describe, expect, test } from 'vitest';
import type { Formula, FormulaLine } from '#core/formula/formula.ts';
import type { EntryId } from '#record/entry.ts';
import { compareView } from '#screens/formulas/compare-view.ts';
import { compareOptions } from '#screens/formulas/versions-view.ts';
import { en as words } from '#words/en.ts';
import { plainText } from '#words/said.ts';

const place = {
  chosen: true,
  mass: 'metric',
  temperature: 'C',
  decimal: ',',
  paper: 'A4',
  initials: '',
  ruleSet: 'EU',
} as const;

const line = (id: string, amountPct: number, more: Partial<FormulaLine> = {}): FormulaLine => ({
  id,
  name: id,
  role: 'spice',
  amount: { basis: 'pct-of-meat', amountPct },
  ...more,
});

const formula = (lines: FormulaLine[], more: Partial<Formula> = {}): Formula => ({
  name: 'Invented',
  kind: 'comminuted',
  species: ['pork'],
  fatPctOfMeat: 25,
  lines,
  ...more,
});

const compare = (left: Formula, right: Formula) => compareView(left, right, { place, words });
const told = (left: Formula, right: Formula) =>
  compare(left, right)
    .rows.filter(({ change }) => change !== 'same')
    .map(({ title, word, left: before, right: after, details }) => [title, word, before, after, details]);

describe('two versions side by side', () => {
  test('the same formula twice has no difference', () => {
    const one = formula([line('salt', 2.8), line('pepper', 0.3)]);
    expect(plainText(compare(one, one).sentence)).toBe('No difference between these two.');
    expect(compare(one, one).rows.map(({ word }) => word)).toEqual(['the same', 'the same']);
  });

  test('names what changed, with both amounts', () => {
    const before = formula([line('salt', 2.55), line('pepper', 0.3)]);
    const after = formula([line('salt', 2.8), line('pepper', 0.3)], { targetLossPct: 38 });
    expect(told(before, after)).toEqual([
      ['Target loss', 'added', '–', '38\u00a0%', ''],
      ['salt', 'changed', '2,55\u00a0% of meat', '2,8\u00a0% of meat', ''],
    ]);
  });

  test('names what came in and what was left out, in its place', () => {
    const before = formula([line('salt', 2.8), line('garlic', 0.2), line('pepper', 0.3)]);
    const after = formula([line('salt', 2.8), line('pepper', 0.3), line('caraway', 0.1)]);
    expect(compare(before, after).rows.map(({ title, change }) => [title, change])).toEqual([
      ['salt', 'same'],
      ['garlic', 'removed'],
      ['pepper', 'same'],
      ['caraway', 'added'],
    ]);
  });

  test('a line keeps its history under a new name', () => {
    const after = formula([line('salt', 2.8, { name: 'Sea salt' })]);
    expect(told(formula([line('salt', 2.8)]), after)).toEqual([
      ['Sea salt', 'changed', '2,8\u00a0% of meat', '2,8\u00a0% of meat', 'name: salt'],
    ]);
  });

  test('another bag is a change even at the same percentage', () => {
    const bag = (nitritePct: number) =>
      line('cure', 0.25, {
        role: 'cure',
        cure: { nitritePct, nitratePct: 0, nitriteSalt: 'NaNO2', nitrateSalt: 'NaNO3' },
      });
    expect(told(formula([bag(6.25)]), formula([bag(5.88)]))[0]?.slice(2)).toEqual([
      '0,25\u00a0% of meat · 6,25\u00a0% nitrite',
      '0,25\u00a0% of meat · 5,88\u00a0% nitrite',
      '',
    ]);
  });

  test('another order alone is no difference', () => {
    const [a, b] = [line('a', 1), line('b', 2)];
    expect(told(formula([a, b]), formula([b, a]))).toEqual([]);
  });
});

test('every version of this formula can be laid beside another, and beside the newest of any other formula', () => {
  const saved = (id: string, subject: 'formula:a' | 'formula:b', name: string) =>
    ({ id: id as EntryId, subject, body: { formula: formula([], { name }), note: '' } }) as const;
  const own = [saved('a1', 'formula:a', 'Own'), saved('a2', 'formula:a', 'Own')];
  const others = [saved('b1', 'formula:b', 'Other'), saved('b2', 'formula:b', 'Other, later')];
  expect(compareOptions(own, [...own, ...others])).toEqual([
    { value: 'a1', label: '1' },
    { value: 'a2', label: '2' },
    { value: 'b2', label: 'Other, later' },
  ]);
});
