import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { mixFromFat } from '#core/drying/equilibrium.ts';
import { dryRadially } from '#core/drying/radial.ts';
import { mostPctPerDay, skinRate } from '#core/drying/skin-rate.ts';

const mix = mixFromFat({ fatFraction: 0.25, saltFraction: 0.027, sugarFraction: 0.005 });
const hungIn = (humidityPct: number, airMPerS: number, diffusivity13M2PerS = 8e-11) =>
  dryRadially({
    diameterMm: 55,
    mix,
    air: [{ fromDay: 0, chamberC: 13, humidityPct }],
    airMPerS,
    days: [0.5, 1, 2, 3, 4],
    diffusivity13M2PerS,
  }).map(({ day, lossPct }) => ({ days: day, lossPct }));
const most = mostPctPerDay({ diameterMm: 55 });

describe('how fast a piece lost when it was hung', () => {
  it('is the rate of a steady loss, whatever was weighed when', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 5, max: 80 }),
        fc.uniqueArray(fc.integer({ min: 1, max: 40 }), { minLength: 4, maxLength: 8 }),
        (tenths, days) => {
          const rate = skinRate(days.map((day) => ({ days: day / 10, lossPct: ((tenths / 10) * day) / 10 })));
          const { pctPerDay = Number.NaN, sdPctPerDay = Number.NaN } = rate ?? {};
          expect(Math.abs(pctPerDay - tenths / 10)).toBeLessThan(2.5 * sdPctPerDay);
        },
      ),
    );
  });

  // By the radial model: in still damp air the rim keeps up, in a draught at 58 % it does not.
  it('lies under what its diameter bears in still air at 84 %, far above it in a draught at 58 %', () => {
    expect(skinRate(hungIn(84, 0.1))?.pctPerDay).toBeLessThan(most);
    const fast = skinRate(hungIn(58, 0.5));
    expect((fast?.pctPerDay ?? 0) - 2 * (fast?.sdPctPerDay ?? 0)).toBeGreaterThan(most);
  });

  it('shows a skin that closes by a curve that bends over at once', () => {
    const root = [0.5, 1, 2, 3, 4].map((days) => ({ days, lossPct: 5 * Math.sqrt(days) }));
    const steady = [0.5, 1, 2, 3, 4].map((days) => ({ days, lossPct: 3 * days }));
    expect(skinRate(root)?.closes).toBe(true);
    expect(skinRate(steady)?.closes).toBe(false);
    expect(skinRate([{ days: 1, lossPct: 3 }])?.closes).toBe(false);
  });

  it('is not known from a weighing after the first days, and refuses what cannot be', () => {
    expect(skinRate([])).toBeNull();
    expect(skinRate([{ days: 7, lossPct: 20 }])).toBeNull();
    expect(() => skinRate([{ days: -1, lossPct: 2 }])).toThrow(RangeError);
    expect(() => skinRate([{ days: 1, lossPct: Number.NaN }])).toThrow(RangeError);
    expect(() => mostPctPerDay({ diameterMm: 0 })).toThrow(RangeError);
  });
});
