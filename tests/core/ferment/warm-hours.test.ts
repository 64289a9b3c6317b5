import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { warmClock, warmHoursOfRamp } from '#core/ferment/warm-hours.ts';
import { HOUR_MS, roomC } from './hours.ts';

describe('hours at 24 °C', () => {
  it('a ramp is worth what thin slices of it are', () => {
    for (const [fromC, toC] of [
      [4, 24],
      [24, 4],
      [-10, 10],
      [20, 30],
    ] as const) {
      let sliced = 0;
      for (let slice = 0; slice < 100_000; slice += 1) {
        const deg = fromC + ((toC - fromC) * (slice + 0.5)) / 100_000;
        sliced += ((Math.max(0, deg - 3) / 21) ** 2 * 6) / 100_000;
      }
      expect(warmHoursOfRamp({ fromC, toC, durationHours: 6 })).toBeCloseTo(sliced, 6);
    }
  });

  it('nothing grows at or below 3 °C', () => {
    expect(warmHoursOfRamp({ fromC: 3, toC: -20, durationHours: 6 })).toBe(0);
  });

  it('takes the first reading back to stuffing and the last one, or a plan, ahead', () => {
    const room = roomC([2, 24], [5, 24]);
    const clock = warmClock({ roomReadings: room, stuffedAtMs: 0 });
    expect(clock?.warmHoursAt(2 * HOUR_MS)).toBeCloseTo(2, 9);
    expect(clock?.warmHoursAt(9 * HOUR_MS)).toBeCloseTo(9, 9);
    const planned = warmClock({ roomReadings: room, stuffedAtMs: 0, aheadC: 3 });
    expect(planned?.warmHoursAt(9 * HOUR_MS)).toBeCloseTo(5, 9);
  });

  it('cannot run without a reading', () => {
    expect(warmClock({ roomReadings: roomC([-1, 24]), stuffedAtMs: 0 })).toBeNull();
  });

  it('never runs backwards, and a warmer room never runs slower', () => {
    const temps = fc.array(fc.integer({ min: -50, max: 320 }), { minLength: 1, maxLength: 10 });
    fc.assert(
      fc.property(temps, fc.nat(60), fc.nat(20), fc.nat(50), (tenths, atHours, later, warmer) => {
        const clockOf = (more: number) =>
          warmClock({
            roomReadings: roomC(...tenths.map((value, index) => [index * 3, (value + more) / 10] as const)),
            stuffedAtMs: 0,
          });
        const at = (more: number, hours: number): number => clockOf(more)?.warmHoursAt(hours * HOUR_MS) ?? 0;
        expect(at(0, atHours + later)).toBeGreaterThanOrEqual(at(0, atHours) - 1e-9);
        expect(at(warmer, atHours)).toBeGreaterThanOrEqual(at(0, atHours) - 1e-9);
      }),
    );
  });
});
