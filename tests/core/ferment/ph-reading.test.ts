import { describe, expect, it } from 'vitest';
import {
  crossingEstimateMs,
  disbeliefOf,
  type PhReading,
  stopOfCounting,
  withMeterFailed,
} from '#core/ferment/ph-reading.ts';
import { meterPh } from './hours.ts';

describe('believing a reading', () => {
  it('a failed meter is named before a doubt, and a doubt before a strip', () => {
    const worst: PhReading = { ...meterPh(1, 5), method: 'strip', doubted: true, meterFailed: true };
    expect(disbeliefOf(worst)).toBe('meter-failed');
    expect(disbeliefOf({ ...worst, meterFailed: false })).toBe('doubted');
    expect(disbeliefOf(meterPh(1, 5))).toBeNull();
  });

  it('the line needs a believed reading on both sides of 5.30', () => {
    expect(crossingEstimateMs([meterPh(1, 5.2)])).toBeNull();
    expect(crossingEstimateMs([{ ...meterPh(1, 5.5), doubted: true }, meterPh(2, 5.2)])).toBeNull();
  });

  it('refuses readings out of order and a pH that is not a number', () => {
    const given = { stuffedAtMs: 0, nowMs: 9e9 };
    expect(() => stopOfCounting({ readings: [meterPh(2, 5), meterPh(1, 5)], ...given })).toThrow(RangeError);
    expect(() => stopOfCounting({ readings: [meterPh(2, Number.NaN)], ...given })).toThrow(RangeError);
  });
});

describe('readings of a meter that failed', () => {
  const readings = [
    meterPh(1, 5.6),
    meterPh(5, 5.4),
    meterPh(9, 5.2),
    { ...meterPh(9, 5), method: 'strip' as const },
  ];
  const failed = (checks: { hours: number; hasFailed: boolean }[]): (boolean | undefined)[] =>
    withMeterFailed(
      readings,
      checks.map(({ hours, hasFailed }) => ({ atMs: hours * 3_600_000, hasFailed })),
    ).map((reading) => reading.meterFailed);

  it('a failed check reaches back to the last good one, and on to the next', () => {
    expect(
      failed([
        { hours: 3, hasFailed: false },
        { hours: 7, hasFailed: true },
      ]),
    ).toEqual([undefined, true, true, undefined]);
  });

  it('a good check after a failed one ends it', () => {
    expect(
      failed([
        { hours: 3, hasFailed: true },
        { hours: 7, hasFailed: false },
      ]),
    ).toEqual([true, true, undefined, undefined]);
  });
});
