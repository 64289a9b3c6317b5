import { describe, expect, it } from 'vitest';
import { offsetBelief } from '#core/drying/belief.ts';
import { mixFromFat } from '#core/drying/equilibrium.ts';
import { dryRadially } from '#core/drying/radial.ts';
import { radialFit, radialLosses, radialSpread } from '#core/drying/radial-fit.ts';

const mix = mixFromFat({ fatFraction: 0.22, saltFraction: 0.027, sugarFraction: 0.005 });
const air = [
  { fromDay: 0, chamberC: 22, humidityPct: 92 },
  { fromDay: 2, chamberC: 13, humidityPct: 80 },
];
const piece = { diameterMm: 55, mix, air, hungDay: 2, humiditySdPct: 4 };
const spread = radialSpread({ humiditySdPct: 4 });
const believed = offsetBelief({ spread, siblings: [], earlierBatches: [] });
/** A slow mix in drier, quieter air than was told. */
const TRUE = [-0.5, 0.3, -0.4, -3, 0.02, 0.01];
const weighedOn = (days: number[], off = 0) =>
  radialLosses(piece, { unknowns: TRUE, days }).map((lossPct, i) => ({
    day: days[i] ?? 0,
    lossPct: lossPct + (i % 2 === 0 ? off : -off),
  }));

describe('the radial model fitted to weighings', () => {
  it('is the model itself where nothing strays, within a point of a fine run', () => {
    const [coarse] = radialLosses(piece, { unknowns: [0, 0, 0, 0, 0, 0], days: [40] });
    const [fine] = dryRadially({
      diameterMm: 55,
      mix,
      air,
      airMPerS: 0.2,
      days: [40],
      stepHours: 0.5,
      rings: 60,
    });
    expect(Math.abs((coarse ?? 0) - (fine?.lossPct ?? 0))).toBeLessThan(1);
  });

  it('is what was believed before any weighing', () => {
    const { mean, covariance } = radialFit({ piece, believed, weighIns: [] });
    expect({ mean, covariance }).toEqual(believed);
  });

  it('foretells days that it never saw, from four weighings of a piece whose unknowns nobody knew', () => {
    const { mean } = radialFit({ piece, believed, weighIns: weighedOn([4, 9, 16, 23]) });
    const later = radialLosses(piece, { unknowns: mean, days: [45, 70] });
    for (const [i, { lossPct }] of weighedOn([45, 70]).entries())
      expect(Math.abs((later[i] ?? 0) - lossPct)).toBeLessThan(0.8);
    const unfitted = radialLosses(piece, { unknowns: believed.mean, days: [45] });
    expect(Math.abs((unfitted[0] ?? 0) - (weighedOn([45])[0]?.lossPct ?? 0))).toBeGreaterThan(2);
  });

  it('stands where no step to any side is likelier', () => {
    const weighIns = weighedOn([4, 9, 16, 23, 30], 0.3);
    const { mean } = radialFit({ piece, believed, weighIns });
    // The belief as its definition has it: five equally correlated weighings of 0.5 points, independent unknowns.
    const cost = (unknowns: readonly number[]) => {
      const losses = radialLosses(piece, { unknowns, days: weighIns.map(({ day }) => day) });
      const misfit = weighIns.reduce((sum, { lossPct }, i) => sum + (lossPct - (losses[i] ?? 0)) ** 2, 0);
      const strayed = unknowns.reduce(
        (sum, one, i) => sum + one ** 2 / (believed.covariance[i]?.[i] ?? 0),
        0,
      );
      return misfit / (0.5 ** 2 * (1 + 0.1 * 4)) + strayed;
    };
    const best = cost(mean);
    for (const [i, row] of believed.covariance.entries())
      for (const side of [-0.5, 0.5]) {
        const moved = mean.map((one, k) => (k === i ? one + side * Math.sqrt(row[i] ?? 0) : one));
        expect(cost(moved)).toBeGreaterThan(best - 0.1);
      }
  });

  it('is surer with every weighing, and counts a coarse scale for less', () => {
    const weighIns = weighedOn([4, 9, 16, 23]);
    const variance = (given: typeof weighIns) =>
      radialFit({ piece, believed, weighIns: given }).covariance[0]?.[0] ?? Number.NaN;
    expect(variance(weighIns.slice(0, 2))).toBeLessThan(variance([]));
    expect(variance(weighIns)).toBeLessThan(variance(weighIns.slice(0, 2)));
    const coarse = weighIns.map((one) => ({ ...one, scaleSdPct: 2 }));
    expect(variance(coarse)).toBeGreaterThan(variance(weighIns));
  });

  it('takes what cannot be for what it cannot be, and a gain of weight as it comes', () => {
    expect(() => radialFit({ piece, believed, weighIns: [{ day: -1, lossPct: 3 }] })).toThrow(RangeError);
    expect(() => radialFit({ piece, believed, weighIns: [{ day: 1, lossPct: Number.NaN }] })).toThrow(
      RangeError,
    );
    expect(() => radialSpread({ humiditySdPct: -1 })).toThrow(RangeError);
    const gained = radialFit({
      piece,
      believed,
      weighIns: [
        { day: 3, lossPct: -4 },
        { day: 9, lossPct: 99 },
      ],
    });
    expect(gained.mean.every(Number.isFinite)).toBe(true);
  });
});
