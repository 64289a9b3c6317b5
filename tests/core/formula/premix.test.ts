import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { figuresFromGrams } from '#core/formula/figures.ts';
import { premix, premixWithin } from '#core/formula/premix.ts';
import { meatToDiluteG, shortfall } from '#core/formula/rescue.ts';
import {
  figureBounds,
  fitScales,
  lineError,
  readingErrorG,
  weighingErrorG,
} from '#core/formula/scale-error.ts';

describe('the step of a scale', () => {
  test('2.5 g cure is ±20 % by half a step of 1 g, ±2 % by half a step of 0.1 g (arithmetic, derived)', () => {
    const cure = { massG: 2.5, portions: 1, meatG: 1000, nitritePct: 6.25 };
    expect(lineError({ ...cure, stepG: 1 }).readingPct).toBeCloseTo(20, 9);
    expect(lineError({ ...cure, stepG: 0.1 }).readingPct).toBeCloseTo(2, 9);
    expect(
      lineError({ massG: 0.25, portions: 1, meatG: 1000, nitritePct: null, stepG: 0.1 }).readingPct,
    ).toBe(20);
  });

  test('with the tare it is twice that, and 62.5 mg/kg of nitrite on 1 kg', () => {
    const error = lineError({ massG: 2.5, stepG: 1, portions: 1, meatG: 1000, nitritePct: 6.25 });
    expect(error).toMatchObject({ weighingPct: 40, weighingG: 1, nitriteMgPerKg: 62.5 });
  });

  test('nothing to weigh has no percentage', () => {
    expect(lineError({ massG: 0, stepG: 1, portions: 1, meatG: 1, nitritePct: null }).readingPct).toBeNull();
  });

  test('portions add up', () => {
    expect(readingErrorG({ stepG: 0.1, portions: 3 })).toBeCloseTo(0.15, 12);
    expect(weighingErrorG({ stepG: 0.1, portions: 3 })).toBeCloseTo(0.3, 12);
    expect(() => readingErrorG({ stepG: Number.NaN, portions: 1 })).toThrow(RangeError);
  });

  test('the coarsest scale that will do comes first, one that cannot carry it not at all', () => {
    const scales = [
      { id: 'pocket', stepG: 0.01, capacityG: 50 },
      { id: 'kitchen', stepG: 1, capacityG: null },
      { id: 'bench', stepG: 0.1, capacityG: 500 },
    ];
    expect(fitScales({ massG: 90, tolerancePct: 1, scales }).map(({ id }) => id)).toEqual(['bench']);
    expect(fitScales({ massG: 8, tolerancePct: 5, scales }).map(({ id }) => id)).toEqual(['bench', 'pocket']);
    expect(fitScales({ massG: 900, tolerancePct: 1, scales }).map(({ id }) => id)).toEqual(['kitchen']);
  });

  test('every weighing inside its error stays inside the bounds (property)', () => {
    const off = fc.integer({ min: -100, max: 100 }).map((hundredths) => hundredths / 100);
    fc.assert(
      fc.property(off, off, off, off, (meatOff, saltOff, cureOff, wineOff) => {
        const lines = [
          { role: 'salt', massG: 28, errorG: 0.1 },
          { role: 'cure', massG: 2.5, errorG: 0.05, cure: CURE },
          { role: 'liquid', massG: 25, errorG: 1 },
        ] as const;
        const { upper, lower } = figureBounds({ leanG: 750, fatG: 250, meatErrorG: 2, lines });
        const offs = [saltOff, cureOff, wineOff];
        const meatFactor = 1 + (2 * meatOff) / 1000;
        const real = figuresFromGrams({
          leanG: 750 * meatFactor,
          fatG: 250 * meatFactor,
          lines: lines.map((line, at) => ({ ...line, massG: line.massG + (offs[at] ?? 0) * line.errorG })),
        });
        for (const [low, value, high] of [
          [lower.saltPctOfMix, real.saltPctOfMix, upper.saltPctOfMix],
          [lower.saltPctOfMeat, real.saltPctOfMeat, upper.saltPctOfMeat],
          [lower.knownNitrite.mgPerKgMeat, real.knownNitrite.mgPerKgMeat, upper.knownNitrite.mgPerKgMeat],
        ] as const) {
          expect(value).toBeGreaterThanOrEqual(low - 1e-9);
          expect(value).toBeLessThanOrEqual(high + 1e-9);
        }
      }),
    );
  });
});

const CURE = { nitritePct: 6.25, nitratePct: 0, nitriteSalt: 'NaNO2', nitrateSalt: 'NaNO3' } as const;

describe('a premix', () => {
  const asked = { partG: 2.5, carrierG: 28, stepG: 1 };

  test('10 g cure in 90 g salt: use 25.0 g and cut the salt by 22.5 g (arithmetic, derived)', () => {
    expect(premix({ ...asked, premixPct: 10, makePartG: 10 })).toMatchObject({
      makePartG: 10,
      makeCarrierG: 90,
      useG: 25,
      cutCarrierG: 22.5,
      restG: 5.5,
    });
  });

  test('keeps both totals, exactly and to half a step (property)', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 1, max: 900 }),
        fc.integer({ min: 0, max: 40_000 }),
        fc.constantFrom(2, 5, 10, 20),
        fc.constantFrom(0.01, 0.1, 1),
        (partHundredths, carrierHundredths, premixPct, stepG) => {
          const partG = partHundredths / 100;
          const carrierG = carrierHundredths / 100;
          const made = premix({ partG, carrierG, premixPct, stepG, makePartG: 10 });
          if (made === null) {
            expect((partG * 100) / premixPct - partG).toBeGreaterThan(carrierG);
            return;
          }
          expect((made.useG * premixPct) / 100).toBeCloseTo(partG, 9);
          expect(made.useG - partG + made.restG).toBeCloseTo(carrierG, 9);
          expect((made.useRoundedG * premixPct) / 100).toBeLessThanOrEqual(partG + 1e-6);
          const carrierAfterG = made.useRoundedG * (1 - premixPct / 100) + made.restRoundedG;
          expect(Math.abs(carrierAfterG - carrierG)).toBeLessThanOrEqual(stepG / 2 + 1e-6);
        },
      ),
    );
  });

  test('takes the strongest that keeps the tolerance, and none where the carrier is too little', () => {
    expect(premixWithin({ ...asked, tolerancePct: 5 })?.useG).toBe(25);
    expect(premixWithin({ ...asked, tolerancePct: 1 })).toBeNull();
    expect(premixWithin({ ...asked, carrierG: 5, tolerancePct: 5 })).toBeNull();
  });

  test('refuses what cannot be', () => {
    expect(() => premix({ ...asked, partG: 0, premixPct: 10, makePartG: 10 })).toThrow(RangeError);
    expect(() => premix({ ...asked, premixPct: 100, makePartG: 10 })).toThrow(RangeError);
  });
});

describe('before it is stuffed', () => {
  test('10 g cure where 8 g were wanted on 3.2 kg asks for 800 g more meat', () => {
    const moreG = meatToDiluteG({ cureG: 10, wantedCureG: 8, meatG: 3200 });
    expect(10 / (3200 + moreG)).toBeCloseTo(8 / 3200, 12);
    expect(meatToDiluteG({ cureG: 7, wantedCureG: 8, meatG: 3200 })).toBe(0);
  });

  test('cure for 25 lb on 30 lb is 130 of 156 mg/kg and a sixth short (arithmetic, derived)', () => {
    const short = shortfall({ targetG: 30, weighedG: 25, meatG: 12_000, nitritePct: 6.25 });
    expect(short.missingPct).toBeCloseTo(100 / 6, 9);
    expect(short.nitriteMgPerKg).toBeCloseTo(130.2, 1);
    expect(() => shortfall({ targetG: 0, weighedG: 1, meatG: 1, nitritePct: null })).toThrow(RangeError);
  });
});
