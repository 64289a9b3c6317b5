import { describe, expect, it } from 'vitest';
import { offsetBelief } from '#core/drying/belief.ts';
import { mixFromFat } from '#core/drying/equilibrium.ts';
import { lowerRoot } from '#core/drying/matrix.ts';
import { fanBand, fanChance, fanWindow, radialFan } from '#core/drying/radial-fan.ts';
import { radialFit, radialLosses, radialSpread } from '#core/drying/radial-fit.ts';

const mixOf = (fatFraction: number) => mixFromFat({ fatFraction, saltFraction: 0.027, sugarFraction: 0.005 });
const believed = offsetBelief({
  spread: radialSpread({ humiditySdPct: 4 }),
  siblings: [],
  earlierBatches: [],
});
const hung = (fatFraction: number, humidityPct = 80, diameterMm = 61) => ({
  diameterMm,
  mix: mixOf(fatFraction),
  air: [{ fromDay: 0, chamberC: 13, humidityPct }],
  hungDay: 0,
  humiditySdPct: 4,
});
const fanOf = (piece: ReturnType<typeof hung>, targetLossPct = 35) =>
  radialFan({ piece, believed, fromDay: 0, targetLossPct });

describe('where a piece’s loss is going', () => {
  // Common practice: 61 mm, 13 °C, 80 %: 35 to 40 % lost in about 60 days.
  it.each([0.2, 0.25, 0.3])('on day 60 of a 61 mm piece of %f fat its band meets 35 to 40 %%', (fat) => {
    const { p10Pct, p90Pct } = fanBand(fanOf(hung(fat), 40), { day: 60 });
    expect(p10Pct).toBeLessThan(40);
    expect(p90Pct).toBeGreaterThan(35);
  });

  it('never dries in air wetter than the piece, and nothing breaks', () => {
    const sure = offsetBelief({
      spread: radialSpread({ humiditySdPct: 0.5 }),
      siblings: [],
      earlierBatches: [],
    });
    const fan = radialFan({ piece: hung(0.25, 98), believed: sure, fromDay: 0, targetLossPct: 35 });
    expect(fanWindow(fan, { targetLossPct: 35 })).toEqual({
      p10Days: null,
      p50Days: null,
      p90Days: null,
      neverFraction: 1,
    });
    // Where the dial may be wrong it may dry after all; it is not likely to.
    const unsure = fanWindow(fanOf(hung(0.25, 98)), { targetLossPct: 35 });
    expect([unsure.p50Days, unsure.p90Days]).toEqual([null, null]);
    expect(unsure.neverFraction).toBeGreaterThan(0.5);
    for (const day of fan.days)
      for (const value of Object.values(fanBand(fan, { day }))) expect(value).toBeGreaterThanOrEqual(0);
  });

  it('widens from a point, never crosses itself and never falls', () => {
    const fan = fanOf(hung(0.25));
    let before = { p10Pct: 0, p50Pct: 0, p90Pct: 0 };
    for (const day of [0, 0.2, 1, 3, 7, 14, 30, 60, 90, 200, 390]) {
      const band = fanBand(fan, { day });
      expect(band.p10Pct).toBeLessThanOrEqual(band.p50Pct);
      expect(band.p50Pct).toBeLessThanOrEqual(band.p90Pct);
      expect(band.p90Pct).toBeLessThanOrEqual(100 * hung(0.25).mix.waterFraction);
      expect(band.p50Pct).toBeGreaterThanOrEqual(before.p50Pct - 1e-6);
      before = band;
    }
  });

  it('has its window where its band crosses the target', () => {
    const fan = fanOf(hung(0.25));
    const { p10Days, p50Days, p90Days } = fanWindow(fan, { targetLossPct: 35 });
    // Between two days told the band runs on a straight line, the chance not quite.
    expect(fanBand(fan, { day: p10Days ?? 0 }).p90Pct).toBeCloseTo(35, 0);
    expect(fanBand(fan, { day: p50Days ?? 0 }).p50Pct).toBeCloseTo(35, 0);
    expect(fanChance(fan, { day: p90Days ?? 0, lossPct: 35 })).toBeCloseTo(0.9, 2);
    expect(fanWindow(fan, { targetLossPct: 30 }).p50Days).toBeLessThan(p50Days ?? 0);
    expect(() => fanWindow(fan, { targetLossPct: 0 })).toThrow(RangeError);
  });

  it('is the band of as many pieces drawn from the belief', () => {
    const piece = { ...hung(0.25, 80, 55), hungDay: 2 };
    const unknowns = [-0.3, 0.2, 0.2, 2, 0.01, 0];
    const weighIns = [5, 12, 19].map((day) => ({
      day,
      lossPct: radialLosses(piece, { unknowns, days: [day] })[0] ?? 0,
    }));
    const fit = radialFit({ piece, believed, weighIns });
    const fan = radialFan({ piece, believed: fit, fromDay: 19, targetLossPct: 38 });
    const root = lowerRoot(fit.covariance);
    const drawn = Array.from({ length: 300 }, (_, draw) => {
      const z = fit.mean.map((_, axis) => evenNormal(draw, axis));
      const at = fit.mean.map(
        (mean, row) => mean + z.reduce((sum, one, k) => sum + one * (root[row]?.[k] ?? 0), 0),
      );
      return radialLosses(piece, { unknowns: at, days: [45] })[0] ?? 0;
    }).sort((a, b) => a - b);
    const { p10Pct, p50Pct, p90Pct } = fanBand(fan, { day: 45 });
    expect(Math.abs(p10Pct - (drawn[29] ?? 0))).toBeLessThan(0.8);
    expect(Math.abs(p50Pct - (drawn[149] ?? 0))).toBeLessThan(0.5);
    expect(Math.abs(p90Pct - (drawn[269] ?? 0))).toBeLessThan(0.8);
  });

  it.each([78, 82, 84])(
    'in air of %d points of humidity is later for every point more to lose',
    (humidityPct) => {
      let beforeDays = 0;
      for (let targetLossPct = 20; targetLossPct <= 36; targetLossPct += 0.5) {
        const piece = hung(0.25, humidityPct);
        const { p50Days } = fanWindow(fanOf(piece, targetLossPct), { targetLossPct });
        // Where it goes over from a band to drawn pieces both are told a little apart.
        expect(p50Days ?? 400).toBeGreaterThan(0.97 * beforeDays);
        beforeDays = p50Days ?? 400;
      }
    },
  );

  it.each([84, 90, 96])(
    'in air of %d points of humidity is told as by pieces drawn at random',
    (humidityPct) => {
      const piece = hung(0.25, humidityPct, 55);
      const days = Array.from({ length: 200 }, (_, at) => 2 * (at + 1));
      const reached = Array.from({ length: 300 }, (_, draw) => {
        const unknowns = believed.covariance.map((row, i) => evenNormal(draw, i) * Math.sqrt(row[i] ?? 0));
        const losses = radialLosses(piece, { unknowns, days, stepHours: 24 });
        return days[losses.findIndex((lossPct) => lossPct >= 35)] ?? Number.POSITIVE_INFINITY;
      }).sort((a, b) => a - b);
      const { p10Days, p50Days, neverFraction } = fanWindow(fanOf(piece), { targetLossPct: 35 });
      const middle = reached[149] ?? Number.POSITIVE_INFINITY;
      if (middle < 150) expect(Math.abs(Math.log((p50Days ?? 0) / middle))).toBeLessThan(0.25);
      else expect(p50Days ?? middle).toBeGreaterThan(120);
      const never = reached.filter((day) => day === Number.POSITIVE_INFINITY).length / reached.length;
      expect(Math.abs(neverFraction - never)).toBeLessThan(0.05);
      const tenth = reached[29] ?? Number.POSITIVE_INFINITY;
      // Near one in ten the day is anybody's guess.
      if (tenth === Number.POSITIVE_INFINITY) expect(p10Days ?? tenth).toBeGreaterThan(120);
      else expect(Math.abs(Math.log((p10Days ?? 0) / tenth))).toBeLessThan(0.25);
    },
  );
});

/** Evenly spread normal numbers: a lattice of irrational steps through Box and Muller's formula. */
function evenNormal(draw: number, axis: number): number {
  const roots = [2, 3, 5, 7, 11, 13, 17, 19, 23, 29, 31, 37].map(Math.sqrt);
  const even = (at: number) => ((draw + 1) * (roots[at] ?? 1)) % 1;
  return Math.sqrt(-2 * Math.log(even(2 * axis))) * Math.cos(2 * Math.PI * even(2 * axis + 1));
}
