import { readFileSync } from 'node:fs';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { mixComposition } from '#core/formula/composition.ts';
import { CUTS, cutByFat, cutOf } from '#core/formula/cuts.ts';
import type { Formula, FormulaLine } from '#core/formula/formula.ts';
import { lossPctForMpr, type Slice, saltPctOfSlice, sliceAfterLoss } from '#core/formula/slice.ts';
import { exactGrams } from '#core/formula/weigh-out.ts';

const published: {
  rawCuts: { ndb: string; waterPct: number; proteinPct: number; fatPct: number; mpr: number }[];
  worked: {
    fractions: Record<'water' | 'protein' | 'fat' | 'salt' | 'sugar', number>;
    lossPctForMpr19: number;
    lossPctForMpr16: number;
    track: (Slice & { lossPct: number })[];
  };
  massBalance: {
    moistureFraction: number;
    proteinFraction: number;
    mprTarget: number;
    lossFraction: number;
    finalMoistureFraction: number;
  };
} = JSON.parse(readFileSync('fixtures/published/composition.json', 'utf8'));

const SALT: FormulaLine = {
  id: 'salt',
  name: 'salt',
  role: 'salt',
  amount: { basis: 'pct-of-meat', amountPct: 2.8 },
};
const DEXTROSE: FormulaLine = {
  id: 'dextrose',
  name: 'dextrose',
  role: 'sugar',
  amount: { basis: 'pct-of-meat', amountPct: 0.5 },
};

function composed(lines: FormulaLine[], { leanG = 800, fatG = 200 } = {}) {
  const formula: Formula = {
    name: 'invented',
    kind: 'comminuted',
    species: ['pork'],
    fatPctOfMeat: 20,
    lines,
  };
  const gramsByLine = exactGrams({ formula, leanG, fatG, pieces: null });
  return mixComposition({ formula, leanG, fatG, gramsByLine });
}

describe('table of cuts', () => {
  test('is the published one, row by row', () => {
    expect(CUTS.length).toBe(published.rawCuts.length);
    for (const { mpr, ...row } of published.rawCuts) {
      const cut = cutOf(row.ndb);
      expect(cut).toMatchObject(row);
      expect((cut?.waterPct ?? 0) / (cut?.proteinPct ?? 1)).toBeCloseTo(mpr, 2);
    }
    expect(cutOf('99999')).toBeNull();
  });

  test('a cut known by its fat alone is near its row, back fat, separable fat and jowl excepted', () => {
    for (const cut of CUTS.filter(({ ndb }) => !['10004', '10006', '10105'].includes(ndb))) {
      const { waterPct, proteinPct } = cutByFat(cut);
      expect(Math.abs(waterPct - cut.waterPct)).toBeLessThan(1.5);
      expect(Math.abs(proteinPct - cut.proteinPct)).toBeLessThan(1.5);
    }
    expect(() => cutByFat({ fatPct: 101 })).toThrow(RangeError);
  });
});

describe('0.80 lean and 0.20 back fat, 2.8 % salt, 0.5 % dextrose', () => {
  const { composition, assumed } = composed([SALT, DEXTROSE]);

  test('has the published composition', () => {
    const { fractions } = published.worked;
    expect(composition.waterFraction).toBeCloseTo(fractions.water, 6);
    expect(composition.proteinFraction).toBeCloseTo(fractions.protein, 6);
    expect(composition.fatFraction).toBeCloseTo(fractions.fat, 6);
    expect(composition.saltFraction).toBeCloseTo(fractions.salt, 6);
    expect(composition.sugarFraction).toBeCloseTo(fractions.sugar, 6);
    expect(assumed).toEqual(['lean-cut', 'fat-cut']);
  });

  test.each(published.worked.track)('at $lossPct % loss', ({ lossPct, ...slice }) => {
    const got = sliceAfterLoss({ composition, lossPct });
    expect(got.moisturePct).toBeCloseTo(slice.moisturePct, 3);
    expect(got.proteinPct).toBeCloseTo(slice.proteinPct, 3);
    expect(got.fatPct).toBeCloseTo(slice.fatPct, 3);
    expect(got.saltPct).toBeCloseTo(slice.saltPct, 3);
    expect(got.mpr).toBeCloseTo(slice.mpr, 4);
    expect(got.waterPhaseSaltPct).toBeCloseTo(slice.waterPhaseSaltPct, 3);
  });

  test('has 4.37 % salt in the slice at 38 % loss', () => {
    expect(sliceAfterLoss({ composition, lossPct: 38 }).saltPct).toBeCloseTo(4.37, 2);
    expect(saltPctOfSlice({ saltPctOfMix: 100 * composition.saltFraction, lossPct: 38 })).toBeCloseTo(
      4.37,
      2,
    );
  });

  test('reaches MPR 1.9 and 1.6 at the published losses', () => {
    expect(lossPctForMpr({ ...composition, mpr: 1.9 })).toBeCloseTo(published.worked.lossPctForMpr19, 3);
    expect(lossPctForMpr({ ...composition, mpr: 1.6 })).toBeCloseTo(published.worked.lossPctForMpr16, 3);
  });
});

test('the mass balance of moisture and protein (derived)', () => {
  const { moistureFraction, proteinFraction, mprTarget, lossFraction, finalMoistureFraction } =
    published.massBalance;
  const lossPct = lossPctForMpr({ waterFraction: moistureFraction, proteinFraction, mpr: mprTarget });
  expect(lossPct).toBeCloseTo(100 * lossFraction, 6);
  const composition = {
    waterFraction: moistureFraction,
    proteinFraction,
    fatFraction: 0.2,
    saltFraction: 0.03,
    sugarFraction: 0,
    otherFraction: 0.01,
  };
  const { moisturePct, mpr } = sliceAfterLoss({ composition, lossPct });
  expect(moisturePct / 100).toBeCloseTo(finalMoistureFraction, 6);
  expect(mpr).toBeCloseTo(mprTarget, 9);
});

describe('what the lines say of the meat', () => {
  const meat = (
    id: string,
    role: 'lean' | 'fat',
    amountPct: number,
    more: Partial<FormulaLine>,
  ): FormulaLine => ({
    id,
    name: id,
    role,
    amount: { basis: 'pct-of-meat', amountPct },
    ...more,
  });

  test('a named cut and a measured fat replace what would be assumed', () => {
    const { composition, assumed } = composed([
      meat('butt', 'lean', 80, { cutNdb: '10084' }),
      meat('belly', 'fat', 20, { ownFatPct: 50 }),
    ]);
    expect(assumed).toEqual([]);
    expect(composition.fatFraction).toBeCloseTo(0.8 * 0.0571 + 0.2 * 0.5, 9);
  });

  test('a liquid is water but for its sugar, and a cure is salt but for its agents', () => {
    const wine: FormulaLine = {
      id: 'must',
      name: 'must',
      role: 'liquid',
      amount: { basis: 'fixed', amountG: 100 },
      hiddenSugarPct: 20,
    };
    const cure: FormulaLine = {
      id: 'cure',
      name: 'cure',
      role: 'cure',
      amount: { basis: 'fixed', amountG: 10 },
      cure: { nitritePct: 6.25, nitratePct: 4, nitriteSalt: 'NaNO2', nitrateSalt: 'NaNO3' },
    };
    const { composition, assumed } = composed([wine, cure]);
    expect(composition.sugarFraction).toBeCloseTo(20 / 1110, 12);
    expect(composition.saltFraction).toBeCloseTo(8.975 / 1110, 12);
    expect(assumed).toContain('liquid-is-water');
  });

  test('for a cut that is not in the table the usual one is taken, and that is said', () => {
    const unknown = composed([meat('x', 'lean', 80, { cutNdb: '1' })]);
    expect(unknown).toEqual(composed([meat('x', 'lean', 80, {})]));
    expect(unknown.assumed).toContain('lean-cut');
  });
});

test('parts of the slice and what is left out always make the whole slice (property)', () => {
  fc.assert(
    fc.property(
      fc.integer({ min: 1, max: 5000 }),
      fc.integer({ min: 0, max: 5000 }),
      fc.integer({ min: 0, max: 60 }),
      (leanG, fatG, lossOfWaterPct) => {
        const { composition } = composed([SALT, DEXTROSE], { leanG, fatG });
        const lossPct = composition.waterFraction * lossOfWaterPct;
        const { moisturePct, proteinPct, fatPct, saltPct } = sliceAfterLoss({ composition, lossPct });
        const rest = (100 * (composition.sugarFraction + composition.otherFraction)) / (1 - lossPct / 100);
        expect(moisturePct + proteinPct + fatPct + saltPct + rest).toBeCloseTo(100, 8);
      },
    ),
  );
});

test('more cannot be lost than there is water', () => {
  const { composition } = composed([SALT]);
  expect(() => sliceAfterLoss({ composition, lossPct: 60 })).toThrow(RangeError);
  expect(() => saltPctOfSlice({ saltPctOfMix: 3, lossPct: 100 })).toThrow(RangeError);
});
