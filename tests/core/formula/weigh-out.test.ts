import { readFileSync } from 'node:fs';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { figuresFromGrams } from '#core/formula/figures.ts';
import type { Amount, CureLabel, Formula, FormulaLine, Role } from '#core/formula/formula.ts';
import { amountG, needsPieces } from '#core/formula/formula.ts';
import { chooseScale, roundToStep } from '#core/formula/scale.ts';
import { exactGrams, weighOut } from '#core/formula/weigh-out.ts';

const CURE: CureLabel = { nitritePct: 6.25, nitratePct: 4, nitriteSalt: 'NaNO2', nitrateSalt: 'NaNO3' };
const SCALES = [
  { id: 'meat', stepG: 1, capacityG: null },
  { id: 'bench', stepG: 0.1, capacityG: 500 },
  { id: 'pocket', stepG: 0.01, capacityG: 50 },
];

function line(id: string, role: Role, amount: Amount, more: Partial<FormulaLine> = {}): FormulaLine {
  return { id, name: id, role, amount, ...more };
}

function formula(...lines: FormulaLine[]): Formula {
  return { name: 'invented', kind: 'comminuted', species: ['pork'], fatPctOfMeat: 25, lines };
}

const SALT = line('salt', 'salt', { basis: 'pct-of-meat', amountPct: 2.8 });
const NITRITE = line('cure', 'cure', { basis: 'pct-of-meat', amountPct: 0.25 }, { cure: CURE });

function weighed(lines: FormulaLine[], { leanG = 2411, fatG = 804, pieces = null as number | null } = {}) {
  return weighOut({ formula: formula(...lines), leanG, fatG, pieces, scales: SCALES });
}

describe('3,215 g of meat', () => {
  const out = weighed([SALT, NITRITE]);

  test('weighs out 90.0 g salt and 8.03 g cure', () => {
    expect(out.lines.map(({ roundedG, scaleId }) => [roundedG, scaleId])).toEqual([
      [90, 'bench'],
      [8.03, 'pocket'],
    ]);
  });

  test('carries 156.1 mg/kg nitrite, recomputed from the rounded grams', () => {
    expect(out.figures.nitrite?.mgPerKgMeat).toBeCloseTo(156.1, 1);
    expect(out.exact.nitrite?.mgPerKgMeat).toBeCloseTo(156.25, 9);
  });

  test('3,300 g instead updates every line', () => {
    const more = weighed([SALT, NITRITE], { leanG: 2475, fatG: 825 });
    expect(more.lines.map(({ roundedG }) => roundedG)).toEqual([92.4, 8.25]);
  });
});

test('total salt counts the salt in the cure: 2.8 + 0.224 is 3.02 % of meat', () => {
  const { saltPctOfMeat, saltPctOfMix } = weighed([SALT, NITRITE], { leanG: 7500, fatG: 2500 }).figures;
  expect(saltPctOfMeat).toBeCloseTo(3.02, 2);
  expect(saltPctOfMix).toBeCloseTo((3.024375 / 103.05) * 100, 6);
});

test('salt wanted in total is plain salt plus the salt of the cure', () => {
  const {
    saltTotal,
  }: { saltTotal: Record<'meatG' | 'plainSaltG' | 'cureG' | 'saltFromCureG' | 'targetSaltPct', number> } =
    JSON.parse(readFileSync('fixtures/published/nitrite.json', 'utf8'));
  const { addedSaltG, cureSaltG, saltPctOfMeat } = figuresFromGrams({
    leanG: saltTotal.meatG,
    fatG: 0,
    lines: [
      { role: 'salt', massG: saltTotal.plainSaltG },
      { role: 'cure', massG: saltTotal.cureG, cure: { ...CURE, nitratePct: 0 } },
    ],
  });
  expect(cureSaltG).toBeCloseTo(saltTotal.saltFromCureG, 9);
  expect(addedSaltG + cureSaltG).toBeCloseTo(280, 9);
  expect(saltPctOfMeat).toBeCloseTo(saltTotal.targetSaltPct, 9);
});

describe('a percentage of the whole mix', () => {
  test('5 % of total is 5 % of what comes out, itself included', () => {
    const out = weighed([SALT, line('wine', 'liquid', { basis: 'pct-of-total', amountPct: 5 })]);
    expect((out.lines[1]?.exactG ?? 0) / out.exact.mixG).toBeCloseTo(0.05, 12);
  });

  test('two of them are solved together', () => {
    const out = weighed([
      line('wine', 'liquid', { basis: 'pct-of-total', amountPct: 5 }),
      line('water', 'liquid', { basis: 'pct-of-total', amountPct: 3 }),
    ]);
    expect(out.exact.mixG).toBeCloseTo(3215 / 0.92, 9);
  });

  test('a mix cannot be all wine', () => {
    const all = formula(line('wine', 'liquid', { basis: 'pct-of-total', amountPct: 100 }));
    expect(() => exactGrams({ formula: all, leanG: 1, fatG: 1, pieces: null })).toThrow(RangeError);
  });

  test('holds for any mix (property)', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 1, max: 40000 }),
        fc.integer({ min: 0, max: 9000 }),
        fc.integer({ min: 1, max: 400 }),
        fc.integer({ min: 0, max: 300 }),
        (leanG, fatG, tenthsPct, saltTenthsPct) => {
          const [wineG = 0, saltG = 0] = exactGrams({
            formula: formula(
              line('wine', 'liquid', { basis: 'pct-of-total', amountPct: tenthsPct / 10 }),
              line('salt', 'salt', { basis: 'pct-of-meat', amountPct: saltTenthsPct / 10 }),
            ),
            leanG,
            fatG,
            pieces: null,
          });
          const shareOfMix = wineG / (leanG + fatG + wineG + saltG);
          expect(shareOfMix).toBeCloseTo(tenthsPct / 1000, 10);
        },
      ),
    );
  });
});

describe('lines that do not scale with the meat', () => {
  test('halving 2 kg keeps 60 ml carrier and the least culture', () => {
    const lines = [
      line('carrier', 'liquid', { basis: 'fixed', amountG: 60 }),
      line('culture', 'starter', { basis: 'at-least', minimumG: 2.5, doseGPerKg: 0.12 }),
    ];
    const at = (leanG: number) => weighed(lines, { leanG, fatG: 0 }).lines.map(({ roundedG }) => roundedG);
    expect(at(2000)).toEqual([60, 2.5]);
    expect(at(1000)).toEqual([60, 2.5]);
  });

  test('a quarter of a 25 g pack for 1.2 kg is 6.25 g', () => {
    const amount: Amount = {
      basis: 'pack-share',
      packG: 25,
      packFraction: 0.25,
      doseGPerKg: 0.12,
      minimumG: 0,
    };
    expect(amountG(amount, { leanG: 1200, fatG: 0, mixG: 1200, pieces: null })).toBe(6.25);
  });

  test('per piece needs the pieces', () => {
    const twine = line('net', 'other', { basis: 'per-piece', pieceG: 2 });
    expect(weighed([twine], { pieces: 14 }).lines[0]?.roundedG).toBe(28);
    expect(needsPieces(formula(twine))).toBe(true);
    expect(() => weighed([twine])).toThrow(RangeError);
  });
});

describe('what goes in', () => {
  test('mould on the casing is no part of the mix', () => {
    const out = weighed([line('mould', 'mould', { basis: 'fixed', amountG: 5 })]);
    expect(out.figures.mixG).toBe(3215);
  });

  test('meat lines share the lean and the fat that lie on the bench', () => {
    const out = weighed(
      [
        line('shoulder', 'lean', { basis: 'pct-of-meat', amountPct: 50 }),
        line('beef', 'lean', { basis: 'pct-of-meat', amountPct: 25 }),
        line('back fat', 'fat', { basis: 'pct-of-meat', amountPct: 25 }),
        SALT,
      ],
      { leanG: 3000, fatG: 700 },
    );
    expect(out.lines.map(({ exactG }) => exactG).slice(0, 3)).toEqual([2000, 1000, 700]);
    expect(out.exact.mixG).toBeCloseTo(3700 * 1.028, 9);
  });

  test('a cure without a label leaves nitrite unknown, and what is known of the other stays visible', () => {
    const { figures } = weighed([NITRITE, line('bag', 'cure', { basis: 'pct-of-meat', amountPct: 0.25 })]);
    expect(figures.nitrite).toBeNull();
    expect(figures.missing).toEqual(['cure-label']);
    expect(figures.knownNitrite.mgPerKgMeat).toBeCloseTo(156.1, 1);
  });

  test('a nitrited salt entered as salt keeps its nitrite, and is rounded as a cure', () => {
    const nitrited = { ...CURE, nitritePct: 0.5, nitratePct: 0 };
    const { lines, figures } = weighed([
      line('nitrited', 'salt', { basis: 'pct-of-meat', amountPct: 2.8 }, { cure: nitrited }),
    ]);
    expect(lines[0]?.rounding).toBe('down');
    expect(figures.nitrite?.mgPerKgMeat).toBeCloseTo(140, 0);
    expect(figures.addedSaltG).toBe(0);
    expect(figures.saltG).toBeCloseTo(90 * 0.995, 9);
  });

  test('a salt not yet weighed is named', () => {
    const { missing, saltG } = figuresFromGrams({
      leanG: 1000,
      fatG: 0,
      lines: [{ role: 'salt', massG: null }],
    });
    expect(missing).toEqual(['salt-grams']);
    expect(saltG).toBe(0);
  });
});

describe('steps of a scale', () => {
  test('a starter is never under, a cure never over, and a salt at most half a step off (property)', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 0, max: 5_000_000 }),
        fc.constantFrom(0.01, 0.05, 0.1, 0.5, 1, 2, 5),
        (ten4, stepG) => {
          const massG = ten4 / 10_000;
          const by = (rounding: 'nearest' | 'down' | 'up') => roundToStep({ massG, stepG, rounding });
          expect(by('down')).toBeLessThanOrEqual(massG + 1e-6);
          expect(by('up')).toBeGreaterThanOrEqual(massG - 1e-6);
          expect(Math.abs(by('nearest') - massG)).toBeLessThanOrEqual(stepG / 2 + 1e-9);
          expect(by('up') - by('down')).toBeLessThanOrEqual(stepG + 1e-9);
        },
      ),
    );
  });

  test('what is already a whole step stays (property)', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 0, max: 100_000 }),
        fc.constantFrom(0.01, 0.1, 0.5, 1),
        (steps, stepG) => {
          const massG = Number((steps * stepG).toPrecision(12));
          for (const rounding of ['nearest', 'down', 'up'] as const)
            expect(roundToStep({ massG, stepG, rounding })).toBe(massG);
        },
      ),
    );
  });

  test('too much for any scale goes in portions', () => {
    const small = [{ id: 'pocket', stepG: 0.01, capacityG: 50 }];
    expect(chooseScale({ massG: 120, scales: small }).portions).toBe(3);
    expect(() => chooseScale({ massG: 1, scales: [] })).toThrow(RangeError);
  });

  test('a line can be sent to another scale', () => {
    const out = weighOut({
      formula: formula(NITRITE),
      leanG: 2411,
      fatG: 804,
      pieces: null,
      scales: SCALES,
      lineScales: { cure: 'bench' },
    });
    expect(out.lines[0]?.roundedG).toBe(8);
  });
});

describe('any formula on any bench', () => {
  const hundredths = (most: number) => fc.integer({ min: 1, max: most * 100 }).map((value) => value / 100);
  const bench = fc.record({
    leanG: fc.integer({ min: 100, max: 20_000 }),
    fatG: fc.integer({ min: 0, max: 9000 }),
  });

  test('grams grow with the meat where they should, and with nothing where they should not (property)', () => {
    fc.assert(
      fc.property(
        bench,
        fc.integer({ min: 2, max: 9 }),
        fc.record({ pct: hundredths(5), doseGPerKg: hundredths(20), massG: hundredths(100) }),
        ({ leanG, fatG }, times, { pct, doseGPerKg, massG }) => {
          const lines: FormulaLine[] = (
            [
              { basis: 'pct-of-meat', amountPct: pct },
              { basis: 'pct-of-lean', amountPct: pct },
              { basis: 'g-per-kg-meat', doseGPerKg },
              { basis: 'fixed', amountG: massG },
              { basis: 'per-piece', pieceG: massG },
              { basis: 'at-least', minimumG: massG, doseGPerKg },
              { basis: 'pack-share', packG: 25, packFraction: 0.25, doseGPerKg, minimumG: massG },
              { basis: 'pct-of-total', amountPct: pct },
            ] as const
          ).map((amount, at) => ({ id: String(at), name: '', role: 'spice', amount }));
          const formula: Formula = { name: '', kind: 'comminuted', species: [], fatPctOfMeat: 25, lines };
          const small = exactGrams({ formula, leanG, fatG, pieces: 7 });
          const large = exactGrams({ formula, leanG: times * leanG, fatG: times * fatG, pieces: 7 });
          const grown = large.map((one, at) => one / (small[at] ?? Number.NaN));
          for (const at of [0, 1, 2]) expect(grown[at]).toBeCloseTo(times, 9);
          for (const at of [3, 4]) expect(grown[at]).toBe(1);
          const byWeightG = (times * (leanG + fatG) * doseGPerKg) / 1000;
          expect(large[5]).toBeCloseTo(Math.max(byWeightG, massG), 6);
          expect(large[6]).toBeCloseTo(Math.max(byWeightG, 6.25, massG), 6);
          // A share of a mix that holds what does not grow grows by less than the meat, and by more than nothing.
          expect(grown[7]).toBeGreaterThan(1);
          expect(grown[7]).toBeLessThan(times);
        },
      ),
    );
  });

  test('every figure is that of the rounded grams, whatever the scale (property)', () => {
    fc.assert(
      fc.property(
        bench,
        fc.constantFrom(0.01, 0.1, 0.5, 1, 2, 5),
        fc.record({
          saltPct: hundredths(4),
          curePct: hundredths(3),
          nitritePct: hundredths(7),
          spicePct: hundredths(2),
        }),
        ({ leanG, fatG }, stepG, { saltPct, curePct, nitritePct, spicePct }) => {
          const line = (id: string, role: FormulaLine['role'], amountPct: number): FormulaLine => ({
            ...{ id, name: '', role },
            amount: { basis: 'pct-of-meat', amountPct },
          });
          const cure = { nitritePct, nitratePct: 1, nitriteSalt: 'NaNO2', nitrateSalt: 'NaNO3' } as const;
          const lines = [
            line('salt', 'salt', saltPct),
            { ...line('cure', 'cure', curePct), cure },
            line('spice', 'spice', spicePct),
          ];
          const out = weighOut({
            formula: { name: '', kind: 'comminuted', species: [], fatPctOfMeat: 25, lines },
            ...{ leanG, fatG, pieces: null, scales: [{ id: 'k', stepG, capacityG: null }] },
          });
          const [saltG = 0, cureG = 0, spiceG = 0] = out.lines.map(({ roundedG }) => roundedG);
          for (const massG of [saltG, cureG, spiceG])
            expect(Math.abs(massG / stepG - Math.round(massG / stepG))).toBeLessThan(1e-6);
          const meatG = leanG + fatG;
          const saltOfCureG = (cureG * (100 - nitritePct - 1)) / 100;
          expect(out.figures.saltPctOfMeat).toBeCloseTo((100 * (saltG + saltOfCureG)) / meatG, 9);
          expect(out.figures.mixG).toBeCloseTo(meatG + saltG + cureG + spiceG, 6);
          expect(out.figures.nitrite?.mgPerKgMeat).toBeCloseTo((cureG * nitritePct * 1e4) / meatG, 6);
          expect(out.figures.nitrate?.mgPerKgMix).toBeCloseTo(
            (cureG * 1e4) / (meatG + saltG + cureG + spiceG),
            6,
          );
        },
      ),
    );
  });
});
