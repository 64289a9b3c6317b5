import { readFileSync } from 'node:fs';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { fitPhLine, type PhShape, phLeft, phOnLine } from '#core/ferment/ph-line.ts';
import { finalPh } from '#core/formula/final-ph.ts';

const published: {
  series: { rows: { hours: number; ph: number }[]; fermentPoints: number };
  fits: { exponentialAfterLag: { rmse: number; lag_h: number; k_per_h: number }; logistic: { rmse: number } };
  dextrose: { rows: { dextrosePct: number; finalPh: number }[] };
} = JSON.parse(readFileSync('fixtures/published/ferment-ph-curves.json', 'utf8'));

const shapes = fc.constantFrom<PhShape>('steady', 'exponential', 'logistic');

describe('the line nearest to a published ferment at 30 °C', () => {
  const { rows, fermentPoints } = published.series;
  const readings = rows.slice(0, fermentPoints).map(({ hours, ph }) => ({ warmHours: hours, ph }));

  it('exponential after a lag misses it by no more than was computed elsewhere, with the same lag and pace', () => {
    const fit = fitPhLine({ shape: 'exponential', readings });
    const { rmse, lag_h, k_per_h } = published.fits.exponentialAfterLag;
    expect(fit?.rmsePh).toBeLessThanOrEqual(rmse * (1 + 1e-6));
    expect(fit?.lagHours).toBeCloseTo(lag_h, 2);
    expect(Math.LN2 / (fit?.halfHours ?? Number.NaN)).toBeCloseTo(k_per_h, 3);
  });

  it('logistic misses it by no more than was computed elsewhere', () => {
    const fit = fitPhLine({ shape: 'logistic', readings });
    expect(fit?.rmsePh).toBeLessThanOrEqual(published.fits.logistic.rmse * (1 + 1e-6));
  });

  it('too few readings give no line', () => {
    expect(fitPhLine({ shape: 'exponential', readings: readings.slice(0, 4) })).toBeNull();
  });
});

describe('where a ferment ends', () => {
  // The tolerance is ours: the buffering of 60 was derived from these two rows, which differ in it.
  it.each(published.dextrose.rows)(
    '$dextrosePct % dextrose ends near $finalPh',
    ({ dextrosePct, finalPh: published_ }) => {
      const ph = finalPh({
        startPh: 5.65,
        dextroseGPerKg: dextrosePct * 10,
        bufferMmolPerKg: 60,
        conversionFraction: 0.9,
      });
      expect(Math.abs(ph - published_)).toBeLessThan(0.1);
    },
  );
});

describe('laws of the line', () => {
  const pace = fc
    .record({ shape: shapes, lag: fc.integer({ min: 0, max: 400 }), half: fc.integer({ min: 10, max: 600 }) })
    .map(({ shape, lag, half }) => ({ shape, lagHours: lag / 10, halfHours: half / 10 }));

  it('starts whole, never rises, and never falls below nothing', () => {
    fc.assert(
      fc.property(pace, fc.nat(2000), fc.nat(500), (given, at, later) => {
        expect(phLeft(given, 0)).toBeCloseTo(1, 12);
        const left = phLeft(given, at / 10);
        expect(phLeft(given, (at + later) / 10)).toBeLessThanOrEqual(left);
        expect(left).toBeGreaterThanOrEqual(0);
      }),
    );
  });

  it('gives its own line back from readings without error', () => {
    fc.assert(
      fc.property(
        shapes,
        fc.integer({ min: 40, max: 120 }),
        fc.integer({ min: 60, max: 200 }),
        fc.integer({ min: 5, max: 12 }),
        (shape, lag, half, drop) => {
          const line = { shape, startPh: 5.8, dropPh: drop / 10, lagHours: lag / 10, halfHours: half / 10 };
          const readings = [0, 4, 7, 10, 14, 18, 22, 27, 33, 40, 48, 60].map((warmHours) => ({
            warmHours,
            ph: phOnLine(line, warmHours),
          }));
          expect(fitPhLine({ shape, readings })?.rmsePh).toBeLessThan(1e-4);
        },
      ),
      { numRuns: 20 },
    );
  });

  it('refuses a half time that cannot be', () => {
    expect(() => phLeft({ shape: 'logistic', lagHours: 1, halfHours: Number.NaN }, 1)).toThrow(RangeError);
  });
});
