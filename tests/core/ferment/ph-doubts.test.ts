import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { likelyDropAtMostPh, type PhDoubtInput, phDoubts } from '#core/ferment/ph-doubts.ts';

const HOUR_MS = 3_600_000;
const freshCheck = { atMs: 0, hasFailed: false };

function codes(ph: number, hours: number, rest: Partial<PhDoubtInput> = {}): string[] {
  return phDoubts({
    reading: { atMs: hours * HOUR_MS, ph, method: 'meter' },
    lastCheck: freshCheck,
    roomC: 24,
    ...rest,
  }).map(({ code }) => code);
}
const start = { previous: { atMs: 0, ph: 5.8 } };

describe('doubts about speed and step', () => {
  it('5.8 to 5.0 in 7 h at 24 °C is too fast to be believed at once', () => {
    expect(codes(5, 7, start)).toEqual(['too-fast']);
  });

  it.each([
    // Published and reported drops that were real.
    ['Brazilian salami at 30 °C, 4 to 8 h (Costa 2021)', 6.7, 6.4867, 4, 30],
    ['Brazilian salami at 30 °C, 8 to 16 h (Costa 2021)', 6.4867, 6.1267, 8, 30],
    ['a fast concentrate, 5.9 to 5.5 in 7 h (Acton & Keller 1974)', 5.9, 5.5, 7, 32],
    ['a fast concentrate, 5.9 to 4.6 in 19 h (Acton & Keller 1974)', 5.9, 4.6, 19, 32],
    ['common practice, 5.8 to 5.2 in 18 h at 24 °C', 5.8, 5.2, 18, 24],
  ])('%s is not doubted', (_name, from, to, hours, roomC) => {
    expect(codes(to, hours, { previous: { atMs: 0, ph: from }, roomC })).toEqual([]);
  });

  it('a jump up is asked about, and looks like fat between 6.3 and 6.9', () => {
    expect(codes(6.2, 6, start)).toEqual(['jumped-up']);
    expect(codes(6.5, 6, start)).toEqual(['may-be-fat']);
    expect(codes(6.5, 6)).toEqual(['may-be-fat']);
  });

  it('a small rise is only asked about on an old sample', () => {
    const last = {
      previous: { atMs: 40 * HOUR_MS, ph: 5 },
      lastCheck: { atMs: 55 * HOUR_MS, hasFailed: false },
    };
    expect(codes(5.15, 60, last)).toEqual([]);
    expect(codes(5.15, 60, { ...last, sampleMadeAtMs: 0 })).toEqual(['rising-old-sample']);
    expect(codes(5.08, 60, { ...last, sampleMadeAtMs: 0 })).toEqual([]);
  });

  it('a warmer room and more hours never make a drop less likely', () => {
    fc.assert(
      fc.property(fc.nat(450), fc.nat(100), fc.nat(960), fc.nat(100), (tenths, warmer, quarters, longer) => {
        const at = (t: number, q: number): number =>
          likelyDropAtMostPh({ roomC: t / 10, durationHours: q / 4 });
        expect(at(tenths + warmer, quarters + longer)).toBeGreaterThanOrEqual(at(tenths, quarters));
      }),
    );
  });
});

describe('doubts about sample and meter', () => {
  it('a 20 mm sample beside a 65 mm product at 5.19 is asked about', () => {
    expect(codes(5.19, 18, { sampleMm: 20, productMm: 65 })).toEqual(['sample-thinner']);
    expect(codes(5.19, 18, { sampleMm: 60, productMm: 65 })).toEqual([]);
  });

  it('a check that is missing, failed or over a day old is asked about; a strip needs none', () => {
    expect(codes(5.5, 12, { lastCheck: undefined })).toEqual(['calibration-none']);
    expect(codes(5.5, 12, { lastCheck: { atMs: 0, hasFailed: true } })).toEqual(['calibration-failed']);
    expect(codes(5.5, 24)).toEqual([]);
    expect(codes(5.5, 25)).toEqual(['calibration-old']);
    expect(phDoubts({ reading: { atMs: 0, ph: 5.5, method: 'strip' } })).toEqual([]);
  });

  it('the end of a strip, and what no sausage shows, is off the scale', () => {
    const strip = { stripRange: { lowPh: 3, highPh: 6 } };
    const at = (ph: number): string[] =>
      phDoubts({ reading: { atMs: 0, ph, method: 'strip' }, ...strip }).map(({ code }) => code);
    expect(at(6)).toEqual(['off-scale']);
    expect(at(5.9)).toEqual([]);
    expect(codes(3.2, 1)).toContain('off-scale');
    expect(codes(45, 1)).toContain('off-scale');
  });

  it('refuses a pH that is not a number', () => {
    expect(() => codes(Number.NaN, 1)).toThrow(RangeError);
  });
});
