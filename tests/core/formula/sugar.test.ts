import { readFileSync } from 'node:fs';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { finalPh, finalPhBand } from '#core/formula/final-ph.ts';
import type { Formula } from '#core/formula/formula.ts';
import { ownFactor, PRACTICE_FACTOR, sugarForPh, sugarInMix } from '#core/formula/sugar.ts';

const published: {
  finalPh: { dextroseGPerKg: number; startPh: number[]; finalPh: number }[];
  predicted: {
    startPh: number;
    conversionFraction: number;
    tolerance: number;
    bufferMmolPerKg: number[];
    rows: { dextroseGPerKg: number; finalPh: number[] }[];
  };
  practice: { startPh: number; targetPh: number; lowGPerKg: number; highGPerKg: number };
} = JSON.parse(readFileSync('fixtures/published/sugar-ph.json', 'utf8'));

describe('final pH', () => {
  test.each(published.finalPh)('$dextroseGPerKg g/kg ends at $finalPh, inside the band', (row) => {
    for (const startPh of row.startPh) {
      const { lowPh, highPh } = finalPhBand({ startPh, dextroseGPerKg: row.dextroseGPerKg });
      expect(lowPh).toBeLessThanOrEqual(row.finalPh);
      expect(highPh).toBeGreaterThanOrEqual(row.finalPh);
    }
  });

  test.each(published.predicted.rows)('$dextroseGPerKg g/kg by three bufferings', (row) => {
    const { startPh, conversionFraction, bufferMmolPerKg, tolerance } = published.predicted;
    row.finalPh.forEach((expected, at) => {
      const got = finalPh({
        startPh,
        conversionFraction,
        dextroseGPerKg: row.dextroseGPerKg,
        bufferMmolPerKg: bufferMmolPerKg[at] ?? 0,
      });
      expect(Math.abs(got - expected)).toBeLessThanOrEqual(tolerance);
    });
  });

  test('balances acid and buffer (property)', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 540, max: 620 }),
        fc.integer({ min: 0, max: 100 }),
        fc.integer({ min: 40, max: 90 }),
        (startHundredths, dextroseTenths, bufferMmolPerKg) => {
          const startPh = startHundredths / 100;
          const ph = finalPh({
            startPh,
            dextroseGPerKg: dextroseTenths / 10,
            bufferMmolPerKg,
            conversionFraction: 0.9,
          });
          const acidMmol = (0.9 * 2 * 1000 * (dextroseTenths / 10)) / 180.16;
          const ionised = 10 ** (ph - 3.86) / (1 + 10 ** (ph - 3.86));
          expect(bufferMmolPerKg * (startPh - ph)).toBeCloseTo(acidMmol * ionised, 8);
        },
      ),
    );
  });

  test('more sugar never ends higher, and strains stop by themselves', () => {
    const ends = [0, 2, 4, 6, 8, 10, 20].map((dextroseGPerKg) =>
      finalPhBand({ startPh: 5.8, dextroseGPerKg }),
    );
    for (const [at, band] of ends.entries()) {
      expect(band.lowPh).toBeLessThanOrEqual(band.highPh);
      expect(band.highPh).toBeLessThanOrEqual(ends[at - 1]?.highPh ?? 5.8);
    }
    expect(ends.at(-1)).toEqual({ lowPh: 4.4, highPh: 4.4, strainsStop: true });
    expect(() => finalPhBand({ startPh: Number.NaN, dextroseGPerKg: 1 })).toThrow(RangeError);
  });
});

describe('sugar for a wanted pH', () => {
  const { startPh, targetPh, lowGPerKg, highGPerKg } = published.practice;

  test('5.8 to 5.1 takes 2.1 to 7.0 g/kg by practice', () => {
    const band = sugarForPh({ startPh, targetPh, factor: PRACTICE_FACTOR, hiddenGPerKg: 0 });
    expect(band.addLowGPerKg).toBeCloseTo(lowGPerKg, 9);
    expect(band.addHighGPerKg).toBeCloseTo(highGPerKg, 9);
  });

  test('hidden sugar reduces it, and never below nothing', () => {
    const band = sugarForPh({ startPh, targetPh, factor: PRACTICE_FACTOR, hiddenGPerKg: 3 });
    expect(band.addLowGPerKg).toBe(0);
    expect(band.addHighGPerKg).toBeCloseTo(4, 9);
    expect(band.needLowGPerKg).toBeCloseTo(2.1, 9);
  });

  test('a target above the start is refused', () => {
    expect(() => sugarForPh({ startPh: 5, targetPh: 5, factor: PRACTICE_FACTOR, hiddenGPerKg: 0 })).toThrow(
      RangeError,
    );
  });
});

describe('own factor (invented batches)', () => {
  const batches = [
    { startPh: 5.8, endPh: 5.0, sugarGPerKg: 4.8 },
    { startPh: 5.7, endPh: 5.1, sugarGPerKg: 3.9 },
    { startPh: 5.8, endPh: 5.2, sugarGPerKg: 3.5 },
  ];

  test('three batches narrow the band', () => {
    const own = ownFactor(batches);
    expect(own).toMatchObject({ from: 'own-batches', batches: 3 });
    expect(own?.lowGPerKg).toBeGreaterThan(PRACTICE_FACTOR.lowGPerKg);
    expect(own?.highGPerKg).toBeLessThan(PRACTICE_FACTOR.highGPerKg);
  });

  test('two are too few, and a batch that did not fall tells nothing', () => {
    expect(ownFactor(batches.slice(0, 2))).toBeNull();
    expect(ownFactor([...batches.slice(0, 2), { startPh: 5.6, endPh: 5.6, sugarGPerKg: 3 }])).toBeNull();
  });

  test('batches that agree leave no width (property)', () => {
    fc.assert(
      fc.property(fc.integer({ min: 3, max: 14 }), fc.integer({ min: 3, max: 10 }), (count, tenths) => {
        const same = Array.from({ length: count }, (_, at) => {
          const fall = 0.5 + at / 50;
          return { startPh: 5.8, endPh: 5.8 - fall, sugarGPerKg: tenths * fall };
        });
        const own = ownFactor(same);
        expect(own?.lowGPerKg).toBeCloseTo(tenths / 10, 9);
        expect(own?.highGPerKg).toBeCloseTo(tenths / 10, 9);
      }),
    );
  });
});

test('sugar of a formula: weighed, hidden, and of kinds that do less', () => {
  const formula: Formula = {
    name: 'invented',
    kind: 'comminuted',
    species: ['pork'],
    fatPctOfMeat: 25,
    lines: [
      {
        id: 'd',
        name: 'dextrose',
        role: 'sugar',
        amount: { basis: 'fixed', amountG: 6 },
        sugarKind: 'dextrose',
      },
      {
        id: 'l',
        name: 'lactose',
        role: 'sugar',
        amount: { basis: 'fixed', amountG: 2 },
        sugarKind: 'lactose',
      },
      {
        id: 'w',
        name: 'vermouth',
        role: 'liquid',
        amount: { basis: 'fixed', amountG: 50 },
        hiddenSugarPct: 15,
      },
    ],
  };
  const sugar = sugarInMix({ formula, meatG: 2000, gramsByLine: [6, 2, 50] });
  expect(sugar.addedLowGPerKg).toBeCloseTo((6 * 0.91 + 2 * 0.5) / 2, 9);
  expect(sugar.addedHighGPerKg).toBeCloseTo((6 + 2 * 1.05) / 2, 9);
  expect(sugar.hiddenGPerKg).toBeCloseTo(3.75, 9);
  expect(() => sugarInMix({ formula, meatG: 2000, gramsByLine: [] })).toThrow(RangeError);
});
