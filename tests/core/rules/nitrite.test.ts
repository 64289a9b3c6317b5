import { readFileSync } from 'node:fs';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { figuresFromGrams, type LineGrams } from '#core/formula/figures.ts';
import type { CureLabel } from '#core/formula/formula.ts';
import { figureBounds } from '#core/formula/scale-error.ts';
import type { InJudged } from '#core/rules/judge-formula.ts';
import { mostCure, nitriteFindings } from '#core/rules/nitrite.ts';
import type { RuleSetId } from '#core/rules/rule.ts';
import { RULE_SETS } from '#core/rules/rule-sets.ts';
import { saltFindings } from '#core/rules/salt.ts';

type OunceLimit = {
  agent: 'nitrite' | 'nitrate';
  method: 'comminuted' | 'whole-muscle';
  mgPerKg: number;
};
const published: {
  ounceLimits: OunceLimit[];
  euAdded: { naNO2MgPerKg: number; naNO3MgPerKg: number; withinLimits: boolean }[];
} = JSON.parse(readFileSync('fixtures/published/nitrite.json', 'utf8'));

const ONLY_NITRITE: CureLabel = {
  nitritePct: 6.25,
  nitratePct: 0,
  nitriteSalt: 'NaNO2',
  nitrateSalt: 'NaNO3',
};

function given({
  cureG,
  label = ONLY_NITRITE,
  meatG = 3215,
  ruleSet = 'US' as RuleSetId,
  kind = 'comminuted' as InJudged['kind'],
  stage = 'weighed' as InJudged['stage'],
  stepG = 0.01 as number | null,
  saltG = 90 as number | null,
}: {
  cureG: number | null;
  label?: CureLabel | undefined;
  meatG?: number;
  ruleSet?: RuleSetId;
  kind?: InJudged['kind'];
  stage?: InJudged['stage'];
  stepG?: number | null;
  saltG?: number | null;
}): InJudged {
  const lines: LineGrams[] = [
    { role: 'cure', massG: cureG, cure: label },
    { role: 'salt', massG: saltG },
  ];
  const meat = { leanG: meatG, fatG: 0 };
  const bounds =
    stepG === null
      ? { upper: null, lower: null }
      : figureBounds({ ...meat, meatErrorG: 0, lines: lines.map((line) => ({ ...line, errorG: stepG })) });
  return { ruleSet, kind, stage, figures: figuresFromGrams({ ...meat, lines }), ...bounds };
}

const most = (found: ReturnType<typeof nitriteFindings>) =>
  found.find(({ rule }) => rule === 'nitrite-in-most');

describe('[nitrite-in-most] US, comminuted', () => {
  test.each(published.ounceLimits)('$agent $method: $mgPerKg mg/kg of green meat', (row) => {
    const rule = RULE_SETS.US.formula.find(
      ({ measure, kinds, limit }) =>
        measure === row.agent && kinds.includes(row.method) && limit.relation === '<=',
    );
    expect(rule?.limit.value).toBeCloseTo(row.mgPerKg, 9);
  });

  test('8.04 g on 3,215 g is a deviation', () => {
    const found = most(nitriteFindings(given({ cureG: 8.04 })));
    expect(found?.verdict).toBe('deviation');
    expect(found?.value).toBeCloseTo(156.3, 1);
  });

  test('8.03 g keeps the limit, but the scale could hide 8.04: no reading, and it asks for a finer scale', () => {
    const found = most(nitriteFindings(given({ cureG: 8.03 })));
    expect(found?.verdict).toBe('no-reading');
    expect(found?.missing).toEqual(['finer-scale']);
    expect(found?.value).toBeCloseTo(156.1, 1);
  });

  test('8.03 g on a scale of 0.001 g is within the limit', () => {
    expect(most(nitriteFindings(given({ cureG: 8.03, stepG: 0.001 })))?.verdict).toBe('within-limit');
  });

  test('8.02 g on a scale of 0.01 g is within the limit, and is the most that is', () => {
    expect(most(nitriteFindings(given({ cureG: 8.02 })))?.verdict).toBe('within-limit');
    const question = {
      ruleSet: 'US',
      kind: 'comminuted',
      label: ONLY_NITRITE,
      meatG: 3215,
      meatErrorG: 0,
    } as const;
    expect(mostCure({ ...question, stepG: 0.01 })?.cureG).toBe(8.02);
  });

  test('a plan is pending, never within the limit', () => {
    const found = most(nitriteFindings(given({ cureG: 8, stage: 'planned' })));
    expect(found?.verdict).toBe('pending');
    expect(found?.missing).toEqual(['weighed-grams']);
  });

  test('a plan over the limit is a deviation already', () => {
    expect(most(nitriteFindings(given({ cureG: 16, stage: 'planned' })))?.verdict).toBe('deviation');
  });

  test('exactly 0.25 % of a 6.25 % cure is not over, whatever binary fractions say (property)', () => {
    fc.assert(
      fc.property(fc.integer({ min: 1, max: 400_000 }), (tenths) => {
        const meatG = tenths / 10;
        const found = most(
          nitriteFindings(given({ cureG: meatG * 0.0025, meatG, stage: 'planned', saltG: 1 })),
        );
        expect(found?.verdict).toBe('pending');
      }),
    );
  });

  test('a scale nobody named leaves it open', () => {
    const found = most(nitriteFindings(given({ cureG: 5, stepG: null })));
    expect(found?.missing).toEqual(['scale-step']);
    expect(found?.verdict).toBe('no-reading');
  });

  test('a cure without a label is no reading, and carries no figure', () => {
    const lines: LineGrams[] = [{ role: 'cure', massG: 8 }];
    const figures = figuresFromGrams({ leanG: 3215, fatG: 0, lines });
    for (const stage of ['planned', 'weighed'] as const) {
      const found = most(nitriteFindings({ ...given({ cureG: 8 }), figures, stage }));
      expect(found).toMatchObject({ verdict: 'no-reading', value: null, missing: ['cure-label'] });
    }
  });

  test('a cure that is over by itself is a deviation while the second has no label', () => {
    const figures = figuresFromGrams({
      leanG: 3215,
      fatG: 0,
      lines: [
        { role: 'cure', massG: 9, cure: ONLY_NITRITE },
        { role: 'cure', massG: 8 },
      ],
    });
    expect(most(nitriteFindings({ ...given({ cureG: 9 }), figures }))?.verdict).toBe('deviation');
  });

  test('a second cure on top of the first shows the nitrite doubled', () => {
    const figures = figuresFromGrams({
      leanG: 1000,
      fatG: 0,
      lines: [
        { role: 'cure', massG: 2.5, cure: ONLY_NITRITE },
        { role: 'cure', massG: 2.5, cure: { ...ONLY_NITRITE, nitratePct: 4 } },
      ],
    });
    const found = most(nitriteFindings({ ...given({ cureG: 2.5 }), figures }));
    expect(found?.value).toBeCloseTo(312.5, 9);
    expect(found?.verdict).toBe('deviation');
  });

  test('a whole muscle has the limit of a dry cure', () => {
    const found = most(nitriteFindings(given({ cureG: 25, kind: 'whole-muscle' })));
    expect(found?.limit?.value).toBeCloseTo(625, 9);
    expect(found?.verdict).toBe('within-limit');
  });
});

test('[nitrite-in-least] US: nothing at all is under the least', () => {
  const found = nitriteFindings(given({ cureG: 0 })).find(({ rule }) => rule === 'nitrite-in-least');
  expect(found?.verdict).toBe('deviation');
});

describe('EU, as ions', () => {
  test.each(published.euAdded)('$naNO2MgPerKg and $naNO3MgPerKg mg/kg', (row) => {
    const label = { ...ONLY_NITRITE, nitritePct: row.naNO2MgPerKg / 100, nitratePct: row.naNO3MgPerKg / 100 };
    const found = nitriteFindings(given({ cureG: 10, meatG: 1000, label, ruleSet: 'EU', stepG: 0.0001 }));
    expect(found.some(({ verdict }) => verdict === 'deviation')).toBe(!row.withinLimits);
  });

  test('28 g/kg of a 0.5 % salt, an old habit, is over', () => {
    const label = { ...ONLY_NITRITE, nitritePct: 0.5 };
    const found = most(nitriteFindings(given({ cureG: 28, meatG: 1000, label, ruleSet: 'EU', saltG: 0 })));
    expect(found?.value).toBeCloseTo(93.8, 9);
    expect(found?.verdict).toBe('deviation');
  });

  test('the most of a 0.5 % salt is 23.8 g/kg, less the error of the scale', () => {
    const label = { ...ONLY_NITRITE, nitritePct: 0.5 };
    const question = { ruleSet: 'EU', kind: 'comminuted', label, meatG: 1000, meatErrorG: 0 } as const;
    expect(mostCure({ ...question, stepG: 0.001 })?.cureG).toBeCloseTo(23.879, 9);
    expect(mostCure({ ...question, stepG: 0.1 })?.cureG).toBe(23.7);
  });

  test('potassium nitrate just under by the published factor and over by the molar one stays open', () => {
    const label: CureLabel = { ...ONLY_NITRITE, nitritePct: 0, nitratePct: 1.47, nitrateSalt: 'KNO3' };
    const found = nitriteFindings(given({ cureG: 10, meatG: 1000, label, ruleSet: 'EU', stepG: 0.0001 }));
    expect(found.find(({ rule }) => rule === 'nitrate-in-most')).toMatchObject({
      verdict: 'no-reading',
      missing: ['finer-scale'],
    });
  });
});

describe('Canada counts nitrite and nitrate together', () => {
  test('between 100 and 200 mg/kg', () => {
    const verdicts = (cureG: number) =>
      nitriteFindings(given({ cureG, meatG: 1000, ruleSet: 'CA' })).map(({ verdict }) => verdict);
    expect(verdicts(1.5)).toEqual(['within-limit', 'deviation']);
    expect(verdicts(2.5)).toEqual(['within-limit', 'within-limit']);
    expect(verdicts(3.3)).toEqual(['deviation', 'within-limit']);
  });
});

describe('[salt-in-least]', () => {
  const salt = (more: Parameters<typeof given>[0]) => saltFindings(given(more))[0];

  test('Canada asks for 2.5 % of the mix, the salt in the cure counted', () => {
    expect(salt({ ruleSet: 'CA', cureG: 2.5, meatG: 1000, saltG: 23 })?.verdict).toBe('deviation');
    expect(salt({ ruleSet: 'CA', cureG: 2.5, meatG: 1000, saltG: 24 })?.verdict).toBe('within-limit');
  });

  test('a salt not weighed is no reading', () => {
    expect(salt({ ruleSet: 'CA', cureG: 2.5, meatG: 1000, saltG: null })).toMatchObject({
      verdict: 'no-reading',
      missing: ['salt-grams'],
      value: null,
    });
  });

  test('the US and EU sets ask for none', () => {
    expect(salt({ ruleSet: 'EU', cureG: 1, saltG: 0 })?.verdict).toBe('does-not-apply');
    expect(salt({ ruleSet: 'US', cureG: 1, saltG: 0 })?.verdict).toBe('does-not-apply');
  });
});

describe('rule sets', () => {
  const rules = Object.values(RULE_SETS).flatMap(({ formula, laboratory }) => [...formula, ...laboratory]);

  test('no limit rests on memory below high confidence', () => {
    for (const { limit } of rules)
      expect(['read', 'read-second-hand', 'memory-high', 'derived']).toContain(limit.source.standing);
  });

  test('each says that it was never compared with the official text', () => {
    for (const set of Object.values(RULE_SETS)) expect(set.comparedWithOfficialTextOn).toBeNull();
  });
});

test('more cure never turns a deviation into anything better (property)', () => {
  const rank = { 'within-limit': 0, 'does-not-apply': 0, pending: 0, 'no-reading': 1, deviation: 2 };
  fc.assert(
    fc.property(
      fc.integer({ min: 0, max: 2000 }),
      fc.integer({ min: 0, max: 2000 }),
      fc.constantFrom<RuleSetId>('US', 'CA', 'EU'),
      (lessCenti, moreCenti, ruleSet) => {
        const at = (centi: number) =>
          nitriteFindings(given({ cureG: (lessCenti + centi) / 100, meatG: 1000, ruleSet }))
            .filter(({ limit }) => limit?.relation === '<=')
            .map(({ verdict }) => rank[verdict]);
        const before = at(0);
        at(moreCenti).forEach((after, i) => {
          expect(after).toBeGreaterThanOrEqual(before[i] ?? 0);
        });
      },
    ),
  );
});
