import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { airByDay, driedDays } from '#core/drying/air-days.ts';

const HOUR_MS = 3_600_000;
const DAY_MS = 24 * HOUR_MS;
const planned = { chamberC: 13, humidityPct: 80 };
const air = (given: Partial<Parameters<typeof airByDay>[0]>) =>
  airByDay({ startMs: 0, nowMs: 2 * DAY_MS, hungMs: null, readings: [], rests: [], planned, ...given });

describe('air by days of drying', () => {
  it('is the mean of what was read in a day, by time', () => {
    const readings = [
      { fromMs: 0, chamberC: 10, humidityPct: 90 },
      { fromMs: 18 * HOUR_MS, chamberC: 14, humidityPct: 70 },
    ];
    expect(air({ readings })).toEqual([
      { fromDay: 0, chamberC: 11, humidityPct: 85 },
      { fromDay: 1, chamberC: 14, humidityPct: 70 },
      { fromDay: 2, ...planned },
    ]);
  });

  it('begins a step where the piece was hung, so that the warm room never leaks into the chamber', () => {
    const readings = [
      { fromMs: 0, chamberC: 22, humidityPct: 92 },
      { fromMs: 30 * HOUR_MS, chamberC: 13, humidityPct: 82 },
    ];
    expect(air({ readings, hungMs: 30 * HOUR_MS })).toEqual([
      { fromDay: 0, chamberC: 22, humidityPct: 92 },
      { fromDay: 1, chamberC: 22, humidityPct: 92 },
      { fromDay: 1.25, chamberC: 13, humidityPct: 82 },
      { fromDay: 2, ...planned },
    ]);
  });

  it('leaves a rest out of the days and out of the mean', () => {
    const readings = [
      { fromMs: 0, chamberC: 13, humidityPct: 80 },
      { fromMs: 12 * HOUR_MS, chamberC: 3, humidityPct: 30 },
      { fromMs: DAY_MS, chamberC: 13, humidityPct: 78 },
    ];
    const rests = [{ fromMs: 12 * HOUR_MS, toMs: DAY_MS }];
    expect(air({ readings, rests })).toEqual([
      { fromDay: 0, chamberC: 13, humidityPct: 80 },
      { fromDay: 0.5, chamberC: 13, humidityPct: 78 },
      { fromDay: 1.5, ...planned },
    ]);
  });

  it('stands still while a rest is open, and knows nothing before stuffing', () => {
    const rests = [{ fromMs: DAY_MS, toMs: null }];
    expect(air({ rests, nowMs: 9 * DAY_MS }).at(-1)?.fromDay).toBe(1);
    expect(driedDays({ startMs: 0, rests }, 5 * DAY_MS)).toBe(1);
    expect(() => air({ startMs: 3 * DAY_MS })).toThrow(RangeError);
  });

  it('goes forward from 0, within what was read and planned, whatever the readings and rests', () => {
    const hour = fc.integer({ min: 0, max: 240 });
    const reading = fc.record({
      at: hour,
      chamberC: fc.integer({ min: 0, max: 30 }),
      humidityPct: fc.integer({ min: 40, max: 98 }),
    });
    fc.assert(
      fc.property(fc.array(reading, { maxLength: 30 }), hour, hour, hour, (read, from, span, hung) => {
        const steps = air({
          nowMs: 10 * DAY_MS,
          hungMs: hung * HOUR_MS,
          readings: read.map(({ at, ...one }) => ({ fromMs: at * HOUR_MS, ...one })),
          rests: [{ fromMs: from * HOUR_MS, toMs: (from + span) * HOUR_MS }],
        });
        const humid = [...read.map(({ humidityPct }) => humidityPct), planned.humidityPct];
        for (const [at, { fromDay, humidityPct }] of steps.entries()) {
          expect(fromDay).toBeGreaterThanOrEqual(steps[at - 1]?.fromDay ?? 0);
          expect(humidityPct).toBeGreaterThanOrEqual(Math.min(...humid) - 1e-9);
          expect(humidityPct).toBeLessThanOrEqual(Math.max(...humid) + 1e-9);
        }
        const rested = Math.min(240, from + span) - from;
        expect(steps.at(-1)?.fromDay).toBeCloseTo(10 - rested / 24, 9);
      }),
    );
  });
});
