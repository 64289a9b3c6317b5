import { readFileSync } from 'node:fs';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { cylinderRemaining } from '#core/drying/cylinder.ts';
import { equilibriumLossPct, mixFromFat } from '#core/drying/equilibrium.ts';
import { dryRadially, skinTransfer } from '#core/drying/radial.ts';
import { freshRings, stepRings } from '#core/drying/radial-cells.ts';

type Day = {
  day: number;
  lossPct: number;
  meanAw: number;
  skinAw: number;
  centreAw: number;
  diameterMm: number;
};
type Published = {
  base: Day[];
  alternatives: Record<string, Day[]>;
  skinTransfer: { diameterMm: number; airMPerS: number; heatWPerM2K: number; vapourMPerS: number }[];
};
const published: Published = JSON.parse(readFileSync('fixtures/published/drying-radial.json', 'utf8'));

const mix = mixFromFat({ fatFraction: 0.2, saltFraction: 0.027, sugarFraction: 0.005 });
const steady = (humidityPct: number) => [{ fromDay: 0, chamberC: 13, humidityPct }];
const base = {
  diameterMm: 55,
  mix,
  air: steady(80),
  airMPerS: 0.2,
  diffusivity13M2PerS: 7e-11,
  drynessPower: 0,
};

describe('rings of water', () => {
  // A skin with a law in a straight line, a piece that keeps its size: the case that has an exact answer.
  it('dry as the series says, with and without resistance at the skin', () => {
    for (const [biot, tolerance] of [
      [1, 2e-4],
      [5, 5e-4],
      [50, 1e-3],
    ] as const) {
      const rings = freshRings({ diameterMm: 50, waterFraction: 0.6, rings: 200, shrinks: false });
      const fresh = 1.5;
      const atRest = 0.5;
      const diffusivity = 5e-11;
      const radiusM = 0.025;
      const solidsKgPerM3 = 1 / rings.solidsM3PerKg;
      const skin = (biot * diffusivity * solidsKgPerM3) / radiusM;
      const seconds = 600;
      const steps = Math.round((0.1 * radiusM ** 2) / diffusivity / seconds);
      for (let step = 0; step < steps; step++)
        stepRings(rings, {
          seconds,
          diffusivityM2PerS: () => diffusivity,
          skinKgPerM2S: (water) => skin * (water - atRest),
        });
      const mean = rings.waterKgPerKg.reduce((sum, water) => sum + water, 0) / 200;
      const fourier = (diffusivity * steps * seconds) / radiusM ** 2;
      const remaining = (mean - atRest) / (fresh - atRest);
      expect(Math.abs(remaining - cylinderRemaining({ fourier, biot }))).toBeLessThan(tolerance);
    }
  });

  it('lose exactly what leaves through the skin', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 10, max: 120 }),
        fc.integer({ min: -5, max: 300 }),
        fc.integer({ min: 60, max: 90_000 }),
        (diameterMm, flux, seconds) => {
          const rings = freshRings({ diameterMm, waterFraction: 0.6, rings: 12 });
          const held = () => rings.waterKgPerKg.reduce((sum, water) => sum + water, 0) * rings.solidsKgPerM;
          const before = held();
          let left = 0;
          for (let step = 0; step < 5; step++)
            left +=
              seconds *
              stepRings(rings, {
                seconds,
                diffusivityM2PerS: (water) => 4e-11 * Math.max(water, 0.1),
                skinKgPerM2S: (water) => flux * 1e-9 * water,
              }).outflowKgPerMS;
          expect(Math.abs(before - held() - left) / before).toBeLessThan(1e-12);
        },
      ),
      { numRuns: 50 },
    );
  });

  it('refuse a piece that cannot be', () => {
    expect(() => freshRings({ diameterMm: 0, waterFraction: 0.6 })).toThrow(RangeError);
    expect(() => freshRings({ diameterMm: 50, waterFraction: 1 })).toThrow(RangeError);
    expect(() => freshRings({ diameterMm: 50, waterFraction: 0.6, rings: 1 })).toThrow(RangeError);
  });
});

describe('the radial model', () => {
  const changes: Record<string, Partial<typeof base> & { shrinks?: boolean }> = {
    'RH 75 %': { air: steady(75) },
    'v 0.05 m/s': { airMPerS: 0.05 },
    'd 80 mm': { diameterMm: 80 },
    'no shrinkage': { shrinks: false },
    'step RH 90->85->80->75 (day 3,7,14)': {
      air: [
        { fromDay: 0, chamberC: 13, humidityPct: 90 },
        { fromDay: 3, chamberC: 13, humidityPct: 85 },
        { fromDay: 7, chamberC: 13, humidityPct: 80 },
        { fromDay: 14, chamberC: 13, humidityPct: 75 },
      ],
    },
  };
  it('agrees with a run made elsewhere within 0.15 points of loss, base and alternatives', () => {
    const runs = { base: published.base, ...published.alternatives };
    expect(Object.keys(runs)).toHaveLength(6);
    for (const [name, days] of Object.entries(runs)) {
      const run = dryRadially({ ...base, ...changes[name], days: days.map(({ day }) => day) });
      days.forEach((expected, i) => {
        const found = run[i];
        expect(Math.abs((found?.lossPct ?? Number.NaN) - expected.lossPct)).toBeLessThan(0.15);
        expect(Math.abs((found?.meanAw ?? Number.NaN) - expected.meanAw)).toBeLessThan(0.002);
        expect(Math.abs((found?.centreAw ?? Number.NaN) - expected.centreAw)).toBeLessThan(0.002);
        expect(Math.abs((found?.skinAw ?? Number.NaN) - expected.skinAw)).toBeLessThan(0.01);
        expect(Math.abs((found?.diameterMm ?? Number.NaN) - expected.diameterMm)).toBeLessThan(0.05);
      });
    }
  });

  it('has the heat and vapour transfer of the published table', () => {
    for (const { diameterMm, airMPerS, heatWPerM2K, vapourMPerS } of published.skinTransfer) {
      const found = skinTransfer({ diameterMm, airMPerS });
      expect(Math.abs(found.heatWPerM2K / heatWPerM2K - 1)).toBeLessThan(0.002);
      expect(Math.abs(found.vapourMPerS / vapourMPerS - 1)).toBeLessThan(0.002);
    }
  });

  it('hardly changes with twice the rings or half the step', () => {
    const [coarse] = dryRadially({ ...base, days: [14] });
    const [fine] = dryRadially({ ...base, days: [14], rings: 60, stepHours: 0.5 });
    expect(Math.abs((fine?.lossPct ?? 0) - (coarse?.lossPct ?? 9))).toBeLessThan(0.03);
  });

  it('comes to rest at the loss that the air allows', () => {
    const [rested] = dryRadially({ ...base, diameterMm: 30, days: [400], stepHours: 6 });
    expect(rested?.lossPct).toBeCloseTo(equilibriumLossPct({ mix, humidityPct: 80 }), 1);
  });

  it('never dries in air wetter than the piece, and never breaks', () => {
    fc.assert(
      fc.property(fc.integer({ min: 963, max: 1000 }), fc.integer({ min: 1, max: 250 }), (permille, dC) => {
        const air = [{ fromDay: 0, chamberC: dC / 10, humidityPct: permille / 10 }];
        for (const day of dryRadially({ ...base, air, days: [1, 20, 60], rings: 12, stepHours: 6 })) {
          expect(day.lossPct).toBeLessThan(1e-9);
          expect(day.waterKgPerKg.every(Number.isFinite)).toBe(true);
          expect(day.skinAw).toBeLessThanOrEqual(1);
        }
      }),
      { numRuns: 20 },
    );
  });

  it('keeps the skin drier than the centre while it dries, with water in every ring', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 40, max: 92 }),
        fc.integer({ min: 30, max: 110 }),
        (humidityPct, diameterMm) => {
          for (const day of dryRadially({
            ...base,
            diameterMm,
            air: steady(humidityPct),
            drynessPower: 1,
            days: [2, 30],
            rings: 12,
            stepHours: 6,
          })) {
            expect(day.skinAw).toBeLessThan(day.centreAw + 1e-12);
            expect(day.skinAw).toBeGreaterThan(humidityPct / 100 - 0.02);
            expect(Math.min(...day.waterKgPerKg)).toBeGreaterThan(0);
          }
        },
      ),
      { numRuns: 20 },
    );
  });

  it('refuses what cannot be', () => {
    expect(() => dryRadially({ ...base, air: [], days: [1] })).toThrow(RangeError);
    expect(() => dryRadially({ ...base, diffusivity13M2PerS: 0, days: [1] })).toThrow(RangeError);
    expect(() => dryRadially({ ...base, airMPerS: Number.NaN, days: [1] })).toThrow(RangeError);
    expect(() => skinTransfer({ diameterMm: 60, airMPerS: 50 })).toThrow(RangeError);
  });
});
