import { describe, expect, it } from 'vitest';
import { mixFromFat } from '#core/drying/equilibrium.ts';
import { dryingAhead, stillMakesIt } from '#record/drying-ahead.ts';

const wish = {
  mix: mixFromFat({ fatFraction: 0.25, saltFraction: 0.028, sugarFraction: 0.003 }),
  diameterMm: 60,
  targetLossPct: 35,
  chamberC: 13,
  humidityPct: 78,
};
const p50 = (changed: Partial<typeof wish>) => dryingAhead({ ...wish, ...changed }).p50Days ?? Number.NaN;

describe('how long it will dry', () => {
  it('is a window in order, longer for thicker pieces, wetter air and a higher target', () => {
    const { p10Days, p50Days, p90Days } = dryingAhead(wish);
    expect(p10Days).toBeLessThan(p50Days ?? 0);
    expect(p50Days).toBeLessThan(p90Days ?? Number.POSITIVE_INFINITY);
    expect(p50({ diameterMm: 40 })).toBeLessThan(p50({}));
    expect(p50({ targetLossPct: 30 })).toBeLessThan(p50({}));
    expect(p50({ humidityPct: 84 })).toBeGreaterThan(p50({}));
  });

  it('is not known where such air dries nothing', () => {
    expect(dryingAhead({ ...wish, humidityPct: 99 })).toEqual({
      p10Days: null,
      p50Days: null,
      p90Days: null,
    });
  });
});

describe('what would still make it', () => {
  it('is the thickest casing and the highest target that are as likely as not in time', () => {
    const leftDays = Math.ceil(p50({})) - 5;
    const { diameterMm, targetLossPct } = stillMakesIt(wish, { leftDays });
    expect(Math.ceil(p50({ diameterMm: diameterMm ?? 0 }))).toBeLessThanOrEqual(leftDays);
    expect(Math.ceil(p50({ diameterMm: (diameterMm ?? 0) + 2 }))).toBeGreaterThan(leftDays);
    expect(Math.ceil(p50({ targetLossPct: targetLossPct ?? 0 }))).toBeLessThanOrEqual(leftDays);
    expect(Math.ceil(p50({ targetLossPct: (targetLossPct ?? 0) + 1 }))).toBeGreaterThan(leftDays);
  });

  it('is nothing when there is no time left', () => {
    expect(stillMakesIt(wish, { leftDays: 2 })).toEqual({ diameterMm: null, targetLossPct: null });
  });
});
