import { readFileSync } from 'node:fs';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { type AirReading, dryingClock, dryingPace, instantOf, thetaAt } from '#core/drying/clock.ts';
import { growth } from '#core/drying/course.ts';
import { equilibriumLossPct, mixFromFat } from '#core/drying/equilibrium.ts';

type Published = {
  equivalentTime: Record<
    'stepHumidity' | 'stepTemperature',
    { day: number; thetaDays: number; lossPct: number }[]
  >;
};
const { equivalentTime }: Published = JSON.parse(
  readFileSync('fixtures/published/drying-radial.json', 'utf8'),
);
const mix = mixFromFat({ fatFraction: 0.2, saltFraction: 0.027, sugarFraction: 0.005 });
const DAY_MS = 86_400_000;
const planned = { chamberC: 13, humidityPct: 80 };
const clockOf = (air: AirReading[], nowDay: number, rests: { fromMs: number; toMs: number | null }[] = []) =>
  dryingClock({ hungMs: 0, nowMs: nowDay * DAY_MS, mix, air, rests, planned });

describe('the drying clock', () => {
  const humidities = [
    [0, 90],
    [3, 85],
    [7, 80],
    [14, 75],
  ] as const;
  const letDown = humidities.map(([day, humidityPct]) => ({
    fromMs: day * DAY_MS,
    chamberC: 13,
    humidityPct,
  }));

  it('counts the reference days of a humidity let down in steps', () => {
    const clock = clockOf(letDown, 60);
    for (const { day, thetaDays } of equivalentTime.stepHumidity)
      expect(Math.abs(thetaAt(clock, day * DAY_MS) / thetaDays - 1)).toBeLessThan(0.005);
  });

  it('gives the loss of the radial model within 2.1 points while the humidity is let down', () => {
    const clock = dryingClock({
      hungMs: 0,
      nowMs: 60 * DAY_MS,
      mix,
      air: letDown,
      rests: [],
      planned: { chamberC: 13, humidityPct: 75 },
    });
    const finalPct = equilibriumLossPct({ mix, humidityPct: 75 });
    for (const { day, lossPct } of equivalentTime.stepHumidity) {
      const thetaDays = thetaAt(clock, day * DAY_MS);
      // tau and shape of the constant 80 % run, fitted outside this project.
      const grown = growth({
        course: clock.steps,
        lnTau: Math.log(14.400975),
        shape: 1.015469,
        thetaDays,
        tailHazard: Infinity,
      });
      expect(Math.abs(finalPct * grown - lossPct)).toBeLessThan(2.1);
    }
  });

  it('stands still in a bag and goes on after it', () => {
    const rests = [{ fromMs: 10 * DAY_MS, toMs: 24 * DAY_MS }];
    const hung = clockOf([], 30);
    const bagged = clockOf([], 30, rests);
    expect(thetaAt(bagged, 24 * DAY_MS)).toBeCloseTo(thetaAt(hung, 10 * DAY_MS), 9);
    expect(thetaAt(bagged, 17 * DAY_MS)).toBeCloseTo(thetaAt(hung, 10 * DAY_MS), 9);
    expect(instantOf(bagged, 40)).toBeCloseTo((instantOf(hung, 40) ?? 0) + 14 * DAY_MS, -2);
    expect(clockOf([], 12, [{ fromMs: 10 * DAY_MS, toMs: null }]).resting).toBe(true);
  });

  it('adds up the same from hourly readings as from one', () => {
    const hourly = Array.from({ length: 24 * 20 }, (_, hour) => ({
      fromMs: (hour * DAY_MS) / 24,
      ...planned,
    }));
    expect(thetaAt(clockOf(hourly, 20), 20 * DAY_MS)).toBeCloseTo(thetaAt(clockOf([], 20), 20 * DAY_MS), 9);
    expect(clockOf(hourly, 20).steps).toHaveLength(20);
  });

  it('never comes to a day in air wetter than the piece', () => {
    const wet = dryingClock({
      hungMs: 0,
      nowMs: 5 * DAY_MS,
      mix,
      air: [],
      rests: [],
      planned: { chamberC: 13, humidityPct: 98 },
    });
    expect(thetaAt(wet, 50 * DAY_MS)).toBe(0);
    expect(instantOf(wet, 1)).toBeNull();
    expect(wet.steps.every(({ finalRatio }) => Number.isFinite(finalRatio))).toBe(true);
  });

  it('goes forward only, and from an instant to its days and back', () => {
    fc.assert(
      fc.property(
        fc.array(fc.tuple(fc.integer({ min: 0, max: 40 }), fc.integer({ min: 60, max: 94 })), {
          maxLength: 8,
        }),
        fc.integer({ min: 1, max: 60 }),
        (readings, day) => {
          const air = readings.map(([from, humidityPct]) => ({
            fromMs: from * DAY_MS,
            chamberC: 13,
            humidityPct,
          }));
          const clock = clockOf(air, 30);
          const here = thetaAt(clock, day * DAY_MS);
          expect(thetaAt(clock, (day + 1) * DAY_MS)).toBeGreaterThan(here);
          expect((instantOf(clock, here) ?? 0) / DAY_MS).toBeCloseTo(day, 6);
        },
      ),
    );
  });

  it('refuses what cannot be', () => {
    expect(() => dryingClock({ hungMs: 2, nowMs: 1, mix, air: [], rests: [], planned })).toThrow(RangeError);
    expect(() => thetaAt(clockOf([], 3), -1)).toThrow(RangeError);
    expect(() => instantOf(clockOf([], 3), Number.NaN)).toThrow(RangeError);
    expect(() => dryingPace({ startAw: 0.96, humidityPct: Number.NaN, chamberC: 13 })).toThrow(RangeError);
  });
});
