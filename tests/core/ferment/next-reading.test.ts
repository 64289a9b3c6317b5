import { describe, expect, it } from 'vitest';
import { nextPhReading } from '#core/ferment/next-reading.ts';
import type { PhWindow } from '#core/ferment/ph-forecast.ts';
import type { PhReading } from '#core/ferment/ph-reading.ts';
import { HOUR_MS, meterPh } from './hours.ts';

type Given = Partial<Parameters<typeof nextPhReading>[0]>;
const opensAt = (hours: number): PhWindow => ({
  ph: 5.3,
  earliestAtMs: hours * HOUR_MS,
  likelyAtMs: null,
  latestAtMs: null,
  chance: 0.5,
});

function next(
  phReadings: readonly PhReading[],
  nowHours: number,
  given: Given = {},
): [number, string] | null {
  const answer = nextPhReading({
    phReadings,
    stuffedAtMs: 0,
    nowMs: nowHours * HOUR_MS,
    window: null,
    leftHours: null,
    ...given,
  });
  return answer && [answer.dueAtMs / HOUR_MS, answer.why];
}

describe('the next pH reading (common practice)', () => {
  it('the first test is at 18 h, with a fast culture at 12 h; the fresh mix does not replace it', () => {
    expect(next([], 1)).toEqual([18, 'first']);
    expect(next([], 1, { isFast: true })).toEqual([12, 'first']);
    expect(next([meterPh(0, 5.8)], 1)).toEqual([18, 'first']);
  });

  it('two readings 0.05 apart: the next in 12 h', () => {
    expect(next([meterPh(18, 5.7), meterPh(24, 5.65)], 24)).toEqual([36, 'flat']);
  });

  it('falling towards the target: in 4 to 6 h, as the window opens', () => {
    const readings = [meterPh(18, 5.7), meterPh(24, 5.45)];
    expect(next(readings, 24)).toEqual([30, 'near']);
    expect(next(readings, 24, { window: opensAt(25) })).toEqual([28, 'near']);
    expect(next(readings, 24, { window: opensAt(29) })).toEqual([29, 'near']);
  });

  it('otherwise in 6 to 12 h', () => {
    const readings = [meterPh(0, 5.8), meterPh(18, 5.65)];
    expect(next(readings, 18)).toEqual([30, 'usual']);
    expect(next(readings, 18, { window: opensAt(26) })).toEqual([26, 'usual']);
    expect(next(readings, 18, { window: opensAt(40) })).toEqual([30, 'usual']);
  });

  it('never later than half of what the degree-hours leave', () => {
    expect(next([meterPh(60, 5.7), meterPh(66, 5.68)], 66, { leftHours: 10 })).toEqual([71, 'before-limit']);
  });

  it('a strip at the target is to be confirmed at once; a believed reading ends it', () => {
    expect(next([{ ...meterPh(20, 5.2), method: 'strip' }], 21)).toEqual([21, 'confirm']);
    expect(next([meterPh(20, 5.3)], 21)).toBeNull();
    expect(next([meterPh(20, 5.3)], 21, { targetPh: 5.2 })).toEqual([26, 'near']);
  });

  it('an overdue reading stays due in the past', () => {
    expect(next([], 20)).toEqual([18, 'first']);
  });

  it('refuses a time that is not a number', () => {
    expect(() => next([], Number.NaN)).toThrow(RangeError);
  });
});
