import { describe, expect, it } from 'vitest';
import type { DryingDays } from '#core/drying/back-schedule.ts';
import { mixFromFat } from '#core/drying/equilibrium.ts';
import { dryRadially } from '#core/drying/radial.ts';
import { dryingAhead, planAhead, stillMakesIt } from '#record/drying-ahead.ts';
import { dryingHistory } from '#record/drying-history.ts';
import { mixOf } from '#record/forecast-figures.ts';
import type { SubjectId } from '#record/subject.ts';
import {
  batchOf,
  book,
  ferment,
  HOUR_MS,
  openBatch,
  START_MS,
  setUp,
  stuff,
  weighMeat,
  weighRound,
} from '../screens/book.ts';

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

const EARLIER = [1, 2, 3].map((number): SubjectId => `batch:018cdc00-0000-7000-a000-0000000000d${number}`);

/** Diffusivity of a usual mix at 13 °C, in m²/s, as the forecast takes it before it knows better. */
const USUAL_M2_PER_S = 8e-11;

/** Earlier batches from the same cellar whose water moved so many times as quick as usual. Invented. */
function earlierBatches(times: number, weighedOnDays: readonly number[] = [4, 9, 16, 25]) {
  const of = setUp(book(), { ruleSet: 'CA' });
  for (const [at, id] of EARLIER.entries()) {
    const fromHours = at * 40 * 24 + 2;
    openBatch(of, { id, lot: `E-${at}`, atHours: fromHours - 2 });
    weighMeat(of, { id, atHours: fromHours - 1.8 });
    ferment(stuff(of, { id, atHours: fromHours, number: at + 1 }), { id, fromHours });
    const batch = batchOf(of, id);
    const dried = dryRadially({
      diameterMm: 55,
      mix: mixOf(batch),
      air: [
        { fromDay: 0, chamberC: 24, humidityPct: 92 },
        { fromDay: 31 / 24, chamberC: 13, humidityPct: 80 },
      ],
      airMPerS: 0.2,
      diffusivity13M2PerS: times * USUAL_M2_PER_S,
      days: weighedOnDays.map((day) => 31 / 24 + day),
    });
    for (const [round, day] of weighedOnDays.entries()) {
      const masses = batch.pieces.map(({ greenG }) =>
        Math.round(greenG * (1 - (dried[round]?.lossPct ?? 0) / 100)),
      );
      weighRound(of, fromHours + 31 + day * 24, masses, { id, number: at + 1 });
    }
  }
  return EARLIER.map((id) => batchOf(of, id));
}

const NOW_MS = START_MS + 130 * 24 * HOUR_MS;
const earlier = (...given: Parameters<typeof earlierBatches>) =>
  dryingHistory(earlierBatches(...given), NOW_MS);

describe('own history', () => {
  it('moves the dates towards how own batches dried, and draws the window closer', () => {
    const window = ({ p10Days, p90Days }: DryingDays) => (p90Days ?? Number.NaN) / (p10Days ?? Number.NaN);
    const slow = dryingAhead(wish, earlier(0.5));
    const quick = dryingAhead(wish, earlier(2));
    expect(slow.p50Days).toBeGreaterThan(1.15 * p50({}));
    expect(quick.p50Days).toBeLessThan(0.85 * p50({}));
    expect(window(quick)).toBeLessThan(window(dryingAhead(wish)));
  });

  it('of batches that dried as was to be expected changes little', () => {
    // The middle of all that may be is slower than the usual itself.
    expect(Math.abs((dryingAhead(wish, earlier(1)).p50Days ?? 0) / p50({}) - 1)).toBeLessThan(0.1);
  });

  it('is not told by batches that were hardly weighed', () => {
    expect(earlier(1.5, [2])).toEqual([]);
    expect(dryingAhead(wish, [])).toEqual(dryingAhead(wish));
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

  it.each([
    { humidityPct: 78, diameterMm: 60, leftDays: 40 },
    { humidityPct: 82, diameterMm: 60, leftDays: 44 },
    { humidityPct: 84, diameterMm: 70, leftDays: 46 },
  ])('is in time when it is asked for: $diameterMm mm, $humidityPct %, $leftDays days left', (asked) => {
    const { leftDays, ...air } = asked;
    const damp = { ...wish, ...air, targetLossPct: 38 };
    const { diameterMm, targetLossPct } = stillMakesIt(damp, { leftDays });
    for (const changed of [{ diameterMm: diameterMm ?? 0 }, { targetLossPct: targetLossPct ?? 0 }])
      expect(Math.ceil(dryingAhead({ ...damp, ...changed }).p50Days ?? Infinity)).toBeLessThanOrEqual(
        leftDays,
      );
  });

  it('is nothing when there is no time left', () => {
    expect(stillMakesIt(wish, { leftDays: 2 })).toEqual({ diameterMm: null, targetLossPct: null });
  });
});

describe('a plan', () => {
  const batches = earlierBatches(0.5);
  const ask = (more: Partial<Parameters<typeof planAhead>[0]> = {}) =>
    planAhead({ wish, batches, nowMs: NOW_MS, leftDays: 400, ...more });

  it('counts own batches, and says what diameter, mix and air alone would', () => {
    expect(ask()).toEqual({
      drying: dryingAhead(wish, earlier(0.5)),
      aloneDays: p50({}),
      batches: 3,
      still: null,
    });
    expect(ask({ batches: [] })).toMatchObject({ drying: dryingAhead(wish), aloneDays: p50({}), batches: 0 });
  });

  it('says what would still make it only where it is late', () => {
    const days = Math.ceil(ask().drying.p50Days ?? 0);
    expect(ask({ leftDays: days }).still).toBeNull();
    expect(ask({ leftDays: days - 1 }).still?.diameterMm).toBeLessThan(wish.diameterMm);
    expect(ask({ wish: { ...wish, humidityPct: 99 } }).still).not.toBeNull();
  });
});
