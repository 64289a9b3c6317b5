import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { PhReading } from '#core/ferment/ph-reading.ts';
import { phBandAnswer, USUAL_PH_BAND } from '#core/rules/ph-band.ts';

function meter(...values: readonly number[]): PhReading[] {
  return values.map((ph, index) => ({ atMs: index, ph, method: 'meter', doubted: false }));
}
const answer = (readings: readonly PhReading[]) => phBandAnswer({ readings, band: USUAL_PH_BAND });

describe('the target band of 4.9 to 5.2 (common practice)', () => {
  it.each([
    // pH, verdict, position
    [5.25, 'pending', 'above'],
    [5.2, 'within-limit', 'inside'],
    [4.9, 'within-limit', 'inside'],
    [4.89, 'deviation', 'below'],
  ] as const)('%d is %s: %s the band', (ph, verdict, position) => {
    expect(answer(meter(5.8, ph))).toMatchObject({ finding: { verdict }, position });
  });

  it('says when it was first reached, and a slow rise later does not undo it', () => {
    const risen = answer(meter(5.8, 5.1, 5.0, 5.25));
    expect(risen).toMatchObject({
      finding: { verdict: 'within-limit' },
      position: 'above',
      reachedAtMs: 1,
    });
  });

  it('having gone below the band stays on the answer when the pH rises back into it', () => {
    expect(answer(meter(5.8, 4.8, 4.95))).toMatchObject({
      finding: { verdict: 'deviation', value: 4.8 },
      position: 'inside',
    });
  });

  it('a strip alone is no reading, and asks for a meter', () => {
    expect(answer([{ atMs: 0, ph: 5, method: 'strip', doubted: false }])).toMatchObject({
      finding: { verdict: 'no-reading', missing: ['ph-confirm-by-meter'] },
      position: null,
    });
    expect(answer([]).finding.missing).toEqual(['ph']);
  });

  it('shows its edges as the maker’s own, never as a published limit', () => {
    expect(answer(meter(5)).finding.limit).toMatchObject({
      basis: 'own-target',
      source: { standing: 'common-practice' },
    });
  });

  it('refuses a band upside down, NaN included', () => {
    expect(() => phBandAnswer({ readings: [], band: { lowPh: 5.2, highPh: 4.9 } })).toThrow(RangeError);
    expect(() => phBandAnswer({ readings: [], band: { lowPh: Number.NaN, highPh: 5 } })).toThrow(RangeError);
  });

  it('is never within the band unless a believed reading lay in it', () => {
    const sample = fc.record({ hundredths: fc.integer({ min: 450, max: 600 }), doubted: fc.boolean() });
    fc.assert(
      fc.property(fc.array(sample, { maxLength: 8 }), (samples) => {
        const readings = samples.map(
          ({ hundredths, doubted }, index): PhReading => ({
            atMs: index,
            ph: hundredths / 100,
            method: 'meter',
            doubted,
          }),
        );
        if (answer(readings).finding.verdict !== 'within-limit') return;
        const inBand = readings.some(({ ph, doubted }) => !doubted && ph >= 4.9 && ph <= 5.2);
        expect(inBand).toBe(true);
      }),
    );
  });
});
