import { describe, expect, test } from 'vitest';
import { figuresFromGrams } from '#core/formula/figures.ts';
import type { CureLabel, Formula, FormulaLine, Role } from '#core/formula/formula.ts';
import { formulaGuards, type GuardCode } from '#core/formula/guards.ts';
import { formulaProblems } from '#core/formula/problems.ts';
import { exactGrams } from '#core/formula/weigh-out.ts';

const NITRITE: CureLabel = { nitritePct: 6.25, nitratePct: 0, nitriteSalt: 'NaNO2', nitrateSalt: 'NaNO3' };
const BOTH: CureLabel = { ...NITRITE, nitratePct: 4 };

function line(id: string, role: Role, amountPct: number, more: Partial<FormulaLine> = {}): FormulaLine {
  return { id, name: id, role, amount: { basis: 'pct-of-meat', amountPct }, ...more };
}

function made({
  salt = 2.8,
  cures = [line('cure', 'cure', 0.25, { cure: BOTH })],
  starter = true,
  ...more
}: { salt?: number; cures?: FormulaLine[]; starter?: boolean } & Partial<Formula>): Formula {
  const culture = starter ? [line('culture', 'starter', 0.02)] : [];
  return {
    name: 'invented',
    kind: 'comminuted',
    species: ['pork'],
    fatPctOfMeat: 25,
    lines: [line('salt', 'salt', salt), ...cures, ...culture],
    ...more,
  };
}

function guards(formula: Formula, ruleSet: 'US' | 'CA' | 'EU' = 'US') {
  const bench = { leanG: 2411, fatG: 804 };
  const grams = exactGrams({ formula, ...bench, pieces: null });
  const lines = formula.lines.map(({ role, cure }, at) => ({ role, cure, massG: grams[at] ?? 0 }));
  return formulaGuards({ formula, figures: figuresFromGrams({ ...bench, lines }), ruleSet });
}

const codes = (formula: Formula, ruleSet?: 'US' | 'CA' | 'EU'): GuardCode[] =>
  guards(formula, ruleSet).map(({ code }) => code);
const cure = (label: CureLabel | undefined, amountPct = 0.25) => [
  line('cure', 'cure', amountPct, { cure: label }),
];

describe('guards', () => {
  test('a usual formula raises none', () => {
    expect(codes(made({ plannedDays: 70 }))).toEqual([]);
  });

  test('nitrite alone for ten weeks is asked about, for three it is not', () => {
    expect(codes(made({ cures: cure(NITRITE), plannedDays: 70 }))).toEqual(['nitrite-alone-for-long']);
    expect(codes(made({ cures: cure(NITRITE), plannedDays: 21 }))).toEqual([]);
  });

  test('two cures show their nitrite added up', () => {
    const two = made({ cures: [...cure(NITRITE), line('second', 'cure', 0.25, { cure: BOTH })] });
    const found = guards(two).find(({ code }) => code === 'two-cures');
    expect(found?.value).toBeCloseTo(312.5, 9);
    expect(found?.asks).toBe('confirm');
    expect(codes(two)).toContain('muscle-limit-on-mix');
  });

  test('180 mg/kg is the limit of a pickle, not of a mix', () => {
    expect(codes(made({ cures: cure(BOTH, 0.288) }))).toEqual(['pumped-limit-on-mix']);
  });

  test('6.25 taken as a fraction stops: more than ten times the limit', () => {
    const found = guards(made({ cures: cure(BOTH, 25) }));
    expect(found[0]).toMatchObject({ code: 'ten-times-over', asks: 'stop' });
    expect(found[0]?.value).toBeCloseTo(15_625, 6);
  });

  test('0.0625 on the label looks like a fraction', () => {
    expect(codes(made({ cures: cure({ ...BOTH, nitritePct: 0.0625 }) }))).toContain('label-like-a-fraction');
  });

  test('pure nitrite and a bag without a label stop', () => {
    const pure = guards(made({ cures: cure({ ...NITRITE, nitritePct: 99 }, 0.015) }));
    expect(pure[0]).toMatchObject({ code: 'nearly-pure-agent', asks: 'stop', lineId: 'cure' });
    expect(guards(made({ cures: cure(undefined) }))[0]).toMatchObject({
      code: 'cure-without-label',
      asks: 'stop',
    });
  });

  test.each<[GuardCode, Formula]>([
    ['no-cure', made({ cures: [] })],
    ['nitrate-alone', made({ cures: cure({ ...BOTH, nitritePct: 0 }) })],
    ['little-nitrite', made({ cures: cure(BOTH, 0.05) })],
    ['little-salt', made({ salt: 2.2 })],
    ['much-salt', made({ salt: 28 })],
    ['no-starter', made({ starter: false })],
    ['game', made({ species: ['pork', 'wild-boar'] })],
    ['belly-has-its-own-limit', made({ kind: 'whole-muscle', starter: false })],
  ])('%s is raised', (code, formula) => {
    expect(codes(formula)).toContain(code);
  });

  test('a salt that has yet to be known is not called little', () => {
    expect(codes(made({ salt: 0, cures: cure(undefined, 2.8) }))).not.toContain('little-salt');
  });

  test('the limit of the rule set decides what is ten times over', () => {
    const strong = made({ cures: cure(BOTH, 2) });
    expect(codes(strong, 'EU')).toContain('ten-times-over');
    expect(codes(strong, 'US')).not.toContain('ten-times-over');
  });
});

describe('problems', () => {
  test('a usual formula has none', () => {
    expect(formulaProblems(made({}))).toEqual([]);
  });

  test('each is named', () => {
    const odd = made({
      lines: [
        { ...line('a', 'liquid', 0), amount: { basis: 'pct-of-total', amountPct: 60 } },
        { ...line('a', 'other', 0), amount: { basis: 'pct-of-total', amountPct: 40 } },
        line('cure', 'cure', 0.25, { cure: { ...BOTH, nitritePct: 97 } }),
        line('shoulder', 'lean', 70),
        line('back fat', 'fat', 20),
      ],
    });
    expect(formulaProblems(odd)).toEqual([
      { code: 'mix-is-all-shares', sharePct: 100 },
      { code: 'same-id-twice', lineId: 'a' },
      { code: 'label-over-100', lineId: 'cure' },
      { code: 'fat-lines-differ', linesPct: 20, fatPctOfMeat: 25 },
      { code: 'meat-lines-not-100', linesPct: 90 },
    ]);
  });
});
