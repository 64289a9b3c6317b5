import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { degreeHourSum } from '#core/ferment/degree-hours.ts';
import { mergeRoomReadings, type PackedRoom } from '#core/ferment/room-series.ts';
import { HOUR_MS, roomC } from './hours.ts';

function packed(values: number[], rest: Partial<PackedRoom> = {}): PackedRoom {
  return {
    startMs: 0,
    sinceStartS: values.map((_, index) => index * 600),
    valuesDeg: values,
    unit: 'C',
    ...rest,
  };
}

describe('hand readings and loggers in one series', () => {
  it('are in order of time, and keep what the logger wrote', () => {
    const { readings } = mergeRoomReadings({
      hand: roomC([0.1, 24]),
      logged: [packed([75, 76], { unit: 'F' })],
    });
    expect(readings.map(({ source }) => source)).toEqual(['logger', 'hand', 'logger']);
    expect(readings[0]?.typed).toEqual({ value: 75, unit: 'F' });
  });

  it('the offset of a logger counts in the sum', () => {
    const sum = (offsetC: number): number =>
      degreeHourSum({
        readings: mergeRoomReadings({ hand: [], logged: [packed([24, 24, 24, 24, 24, 24, 24], { offsetC })] })
          .readings,
        unit: 'C',
        baseDeg: 15.6,
        fromMs: 0,
        toMs: HOUR_MS,
      })?.totalDegreeHours ?? 0;
    expect(sum(0)).toBeCloseTo(8.4, 9);
    expect(sum(1)).toBeCloseTo(9.4, 9);
  });

  it('two files that overlap count once', () => {
    const once = mergeRoomReadings({ hand: [], logged: [packed([20, 21, 22])] });
    const twice = mergeRoomReadings({ hand: [], logged: [packed([20, 21, 22]), packed([20, 21])] });
    expect(twice).toEqual(once);
  });

  it('says where a hand and a logger beside it disagree by more than 2 °C', () => {
    const { disagreements } = mergeRoomReadings({
      hand: roomC([0.1, 27], [0.2, 21.5], [9, 40]),
      logged: [packed([20, 21, 22])],
    });
    expect(disagreements).toEqual([{ atMs: 0.1 * HOUR_MS, handC: 27, loggerC: 21 }]);
  });

  it('refuses columns of different length and values that are not numbers', () => {
    expect(() => mergeRoomReadings({ hand: [], logged: [packed([20], { sinceStartS: [] })] })).toThrow(
      'columns requires equal length',
    );
    expect(() => mergeRoomReadings({ hand: [], logged: [packed([Number.NaN])] })).toThrow(RangeError);
  });

  it('the order in which files are given changes nothing', () => {
    const file = fc
      .array(fc.record({ since: fc.nat(600), tenths: fc.integer({ min: 0, max: 400 }) }), { maxLength: 15 })
      .map((rows) => [...rows].sort((a, b) => a.since - b.since))
      .map((rows) =>
        packed(
          rows.map(({ tenths }) => tenths / 10),
          { sinceStartS: rows.map(({ since }) => since) },
        ),
      );
    fc.assert(
      fc.property(file, file, (one, other) => {
        const times = (logged: PackedRoom[]): string[] =>
          mergeRoomReadings({ hand: [], logged })
            .readings.map(({ atMs, roomC: value }) => `${atMs} ${value}`)
            .sort();
        expect(times([one, other])).toEqual(times([other, one]));
      }),
    );
  });
});
