import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  degreeHourSum,
  degreeHoursOfRamp,
  loggerGapHours,
  type RoomReading,
  readingInUnit,
} from '#core/ferment/degree-hours.ts';
import { HOUR_MS, roomC, roomF } from './hours.ts';

const CA = { unit: 'C', baseDeg: 15.6, fromMs: 0 } as const;
const US = { unit: 'F', baseDeg: 60, fromMs: 0 } as const;

/** The area by brute force: midpoints of many thin slices. */
function slicedArea(fromDeg: number, toDeg: number, baseDeg: number, durationHours: number): number {
  const slices = 200_000;
  let area = 0;
  for (let index = 0; index < slices; index += 1) {
    const deg = fromDeg + ((toDeg - fromDeg) * (index + 0.5)) / slices;
    area += (Math.max(0, deg - baseDeg) * durationHours) / slices;
  }
  return area;
}

/** Temperatures in whole tenths from -5 to 45 °C, at whole-hour spacings from 0 (a step) to 5 h. */
const series = fc
  .array(fc.record({ spacing: fc.integer({ min: 0, max: 5 }), tenths: fc.integer({ min: -50, max: 450 }) }), {
    minLength: 2,
    maxLength: 12,
  })
  .map((points) => {
    let atMs = 0;
    return points.map(({ spacing, tenths }): RoomReading => {
      atMs += spacing * HOUR_MS;
      return { atMs, roomC: tenths / 10, source: 'hand' };
    });
  });

function total(readings: readonly RoomReading[], fromMs = 0, toMs = Number.MAX_SAFE_INTEGER): number {
  return degreeHourSum({ readings, ...CA, fromMs, toMs })?.totalDegreeHours ?? 0;
}

describe('degree-hours of a ramp', () => {
  it('a 6 h ramp from 4 to 24 °C adds 10.6, as the integral says', () => {
    const ramp = { fromDeg: 4, toDeg: 24, baseDeg: 15.6, durationHours: 6 };
    expect(degreeHoursOfRamp(ramp)).toBeCloseTo(10.584, 9);
    expect(slicedArea(4, 24, 15.6, 6)).toBeCloseTo(10.584, 5);
  });

  it.each([
    // from,   to, base, hours
    [24.0, 4.0, 15.6, 6],
    [15.6, 24.0, 15.6, 3],
    [75.0, 85.0, 60.0, 2],
    [10.0, 15.0, 15.6, 9],
    [-4.0, 40.0, 15.6, 7],
  ])(
    'the closed form from %d to %d above %d over %d h is the area of thin slices',
    (fromDeg, toDeg, baseDeg, durationHours) => {
      expect(degreeHoursOfRamp({ fromDeg, toDeg, baseDeg, durationHours })).toBeCloseTo(
        slicedArea(fromDeg, toDeg, baseDeg, durationHours),
        4,
      );
    },
  );

  it('refuses what cannot be, NaN included', () => {
    expect(() =>
      degreeHoursOfRamp({ fromDeg: 20, toDeg: Number.NaN, baseDeg: 15.6, durationHours: 1 }),
    ).toThrow(RangeError);
    expect(() => degreeHoursOfRamp({ fromDeg: 20, toDeg: 20, baseDeg: 15.6, durationHours: -1 })).toThrow(
      'durationHours requires a number >= 0, got -1',
    );
  });
});

describe('a reading in the unit of the rule set', () => {
  it('keeps the number that was typed: 90 °F is exactly 90', () => {
    for (const value of [59, 60, 77.7, 80, 90, 98.6, 100, 100.4])
      expect(
        readingInUnit({ ...roomF([0, value])[0], atMs: 0, roomC: (value - 32) / 1.8, source: 'hand' }, 'F'),
      ).toBe(value);
  });

  it('converts 98.6 °F to exactly 37 °C, so that a class edge does not hang on the last bit', () => {
    const [reading] = roomF([0, 98.6]);
    expect(reading && readingInUnit(reading, 'C')).toBe(37);
  });

  it('lets the corrected temperature count where it differs from what was typed', () => {
    expect(readingInUnit({ atMs: 0, roomC: 25, typed: { value: 24, unit: 'C' }, source: 'hand' }, 'C')).toBe(
      25,
    );
  });
});

describe('the sum over readings', () => {
  it('80 °F for 55 h is exactly 1100', () => {
    expect(
      degreeHourSum({ readings: roomF([0, 80], [55, 80]), ...US, toMs: 55 * HOUR_MS })?.totalDegreeHours,
    ).toBe(1100);
  });

  it('leaves out readings before stuffing and starts at the first one after', () => {
    const sum = degreeHourSum({
      readings: roomC([-1, 40], [1, 25.6], [3, 25.6]),
      ...CA,
      toMs: 3 * HOUR_MS,
    });
    expect(sum?.fromMs).toBe(HOUR_MS);
    expect(sum?.totalDegreeHours).toBeCloseTo(20, 9);
    expect(sum?.highestDeg).toBe(25.6);
  });

  it('cuts the line where counting stops, and what comes later sets no class', () => {
    const sum = degreeHourSum({ readings: roomC([0, 20], [10, 40]), ...CA, toMs: 5 * HOUR_MS });
    expect(sum?.highestDeg).toBe(30);
    expect(sum?.totalDegreeHours).toBeCloseTo(5 * 9.4, 9);
  });

  it('draws nothing ahead of the last reading', () => {
    const sum = degreeHourSum({ readings: roomC([0, 25.6], [2, 25.6]), ...CA, toMs: 50 * HOUR_MS });
    expect(sum?.totalDegreeHours).toBeCloseTo(20, 9);
    expect(sum?.toMs).toBe(2 * HOUR_MS);
  });

  it('counts a hotter reading at the very end for the class: a tie goes against the maker', () => {
    const sum = degreeHourSum({ readings: roomC([0, 24], [5, 24], [5, 34]), ...CA, toMs: 5 * HOUR_MS });
    expect(sum?.highestDeg).toBe(34);
  });

  it('refuses readings out of order', () => {
    expect(() => degreeHourSum({ readings: roomC([2, 20], [1, 20]), ...CA, toMs: 9 })).toThrow(
      'degreeHourSum: readings requires order of time',
    );
  });

  it('marks a stretch by hand of more than 6 h, and not one of 6 h', () => {
    const gaps = (hours: number): boolean[] =>
      degreeHourSum({ readings: roomC([0, 20], [hours, 20]), ...CA, toMs: hours * HOUR_MS })?.steps.map(
        (step) => step.isGap,
      ) ?? [];
    expect(gaps(6)).toEqual([false]);
    expect(gaps(6.01)).toEqual([true]);
  });

  it('marks a stretch of more than three periods of a logger', () => {
    const logged = [0, 10, 20, 30, 60, 91, 101].map(
      (minutes): RoomReading => ({ atMs: minutes * 60_000, roomC: 20, source: 'logger' }),
    );
    const sum = degreeHourSum({ readings: logged, ...CA, toMs: 101 * 60_000 });
    expect(sum?.steps.map((step) => step.isGap)).toEqual([false, false, false, false, true, false]);
  });

  it('never lets a slow logger be read less often than a hand', () => {
    expect(
      loggerGapHours([0, 4, 8].map((hours) => ({ atMs: hours * HOUR_MS, roomC: 20, source: 'logger' }))),
    ).toBe(6);
  });
});

describe('laws of the sum', () => {
  it('splitting a series at any reading changes nothing', () => {
    fc.assert(
      fc.property(series, fc.nat(), (readings, pick) => {
        const at = readings[pick % readings.length]?.atMs ?? 0;
        const before = readings.filter((reading) => reading.atMs <= at);
        const after = readings.filter((reading) => reading.atMs >= at);
        expect(total(before) + total(after)).toBeCloseTo(total(readings), 6);
      }),
    );
  });

  it('cutting the span anywhere changes nothing', () => {
    fc.assert(
      fc.property(series, fc.integer({ min: 0, max: 60 }), (readings, half) => {
        const cutMs = half * HOUR_MS * 0.5;
        const first = degreeHourSum({ readings, ...CA, toMs: cutMs });
        if (first === null) return;
        const bridge: RoomReading = { atMs: first.toMs, roomC: first.lastDeg, source: 'hand' };
        const rest = [bridge, ...readings.filter((reading) => reading.atMs > first.toMs)];
        expect(first.totalDegreeHours + total(rest)).toBeCloseTo(total(readings), 6);
      }),
    );
  });

  it('a temperature that lies on the line adds nothing', () => {
    fc.assert(
      fc.property(series, fc.nat(), fc.integer({ min: 1, max: 9 }), (readings, pick, tenth) => {
        const index = pick % (readings.length - 1);
        const before = readings[index];
        const after = readings[index + 1];
        if (before === undefined || after === undefined) return;
        const share = tenth / 10;
        const onLine: RoomReading = {
          atMs: before.atMs + (after.atMs - before.atMs) * share,
          roomC: before.roomC + (after.roomC - before.roomC) * share,
          source: 'hand',
        };
        if (before.atMs === after.atMs) return;
        const more = [...readings.slice(0, index + 1), onLine, ...readings.slice(index + 1)];
        expect(total(more)).toBeCloseTo(total(readings), 6);
      }),
    );
  });

  it('a warmer reading never lowers the sum', () => {
    fc.assert(
      fc.property(series, fc.nat(), fc.integer({ min: 0, max: 100 }), (readings, pick, tenths) => {
        const warmer = readings.map((reading, index) =>
          index === pick % readings.length ? { ...reading, roomC: reading.roomC + tenths / 10 } : reading,
        );
        expect(total(warmer)).toBeGreaterThanOrEqual(total(readings) - 1e-9);
      }),
    );
  });

  it('in °F the sum is 1.8 times the sum in °C over the same base', () => {
    fc.assert(
      fc.property(series, (readings) => {
        const inF = degreeHourSum({ readings, ...US, toMs: Number.MAX_SAFE_INTEGER });
        const inC = degreeHourSum({ readings, ...CA, baseDeg: 28 / 1.8, toMs: Number.MAX_SAFE_INTEGER });
        expect(inF?.totalDegreeHours).toBeCloseTo((inC?.totalDegreeHours ?? 0) * 1.8, 5);
      }),
    );
  });
});
