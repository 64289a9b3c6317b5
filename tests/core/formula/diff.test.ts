import { describe, expect, test } from 'vitest';
import { compareGrams, formulaDiff } from '#core/formula/diff.ts';
import type { Formula } from '#core/formula/formula.ts';

const before: Formula = {
  name: 'invented',
  kind: 'comminuted',
  species: ['pork'],
  fatPctOfMeat: 25,
  lines: [
    { id: 's', name: 'Salt', role: 'salt', amount: { basis: 'pct-of-meat', amountPct: 2.8 } },
    { id: 'p', name: 'Pepper', role: 'spice', amount: { basis: 'pct-of-meat', amountPct: 0.4 } },
    { id: 'w', name: 'Wine', role: 'liquid', amount: { basis: 'pct-of-total', amountPct: 2 } },
  ],
};
const [salt, pepper, wine] = before.lines as [
  Formula['lines'][number],
  Formula['lines'][number],
  Formula['lines'][number],
];

describe('two formulas', () => {
  test('the same one differs in nothing, in whatever order its lines and keys stand', () => {
    const turned: Formula = {
      ...before,
      lines: [
        wine,
        pepper,
        { amount: { amountPct: 2.8, basis: 'pct-of-meat' }, role: 'salt', name: 'Salt', id: 's' },
      ],
    };
    expect(formulaDiff(before, turned)).toEqual({ fields: [], lines: [] });
  });

  test('say what was added, taken out and changed', () => {
    const fennel = { ...pepper, id: 'f', name: 'Fennel' };
    const saltier = { ...salt, amount: { basis: 'pct-of-meat', amountPct: 3 } } as const;
    const after: Formula = { ...before, fatPctOfMeat: 30, lines: [saltier, wine, fennel] };
    expect(formulaDiff(before, after)).toEqual({
      fields: [{ field: 'fatPctOfMeat', before: 25, after: 30 }],
      lines: [
        {
          change: 'changed',
          before: salt,
          after: saltier,
          fields: [{ field: 'amount', before: salt.amount, after: saltier.amount }],
        },
        { change: 'added', after: fennel },
        { change: 'removed', before: pepper },
      ],
    });
  });

  test('of different origin meet by role and name', () => {
    const foreign: Formula = { ...before, lines: [{ ...salt, id: 'x', name: ' salt ' }] };
    const { lines } = formulaDiff(before, foreign);
    expect(lines.map(({ change }) => change)).toEqual(['changed', 'removed', 'removed']);
  });

  test('a renamed line stays itself though a new one takes its old name', () => {
    const after: Formula = {
      ...before,
      lines: [
        { ...pepper, id: 'new' },
        { ...pepper, name: 'White pepper' },
      ],
    };
    const { lines } = formulaDiff({ ...before, lines: [pepper] }, after);
    expect(lines.map(({ change }) => change)).toEqual(['added', 'changed']);
  });

  test('a change from something to nothing is told as null', () => {
    const noted: Formula = { ...before, note: 'as in autumn' };
    expect(formulaDiff(noted, before).fields).toEqual([
      { field: 'note', before: 'as in autumn', after: null },
    ]);
  });
});

test('grams on one base whatever each was written on', () => {
  const after: Formula = {
    ...before,
    lines: [{ ...salt, amount: { basis: 'g-per-kg-meat', doseGPerKg: 28 } }, wine],
  };
  const rows = compareGrams({ before, after, meatG: 4000, pieces: null });
  expect(rows.map(({ name }) => name)).toEqual(['Salt', 'Wine', 'Pepper']);
  expect(rows[0]?.beforeGPerKg).toBeCloseTo(28, 9);
  expect(rows[0]?.afterGPerKg).toBeCloseTo(28, 9);
  expect(rows[2]).toMatchObject({ beforeGPerKg: 4, afterGPerKg: null });
});
