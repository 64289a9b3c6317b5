import { readFileSync } from 'node:fs';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  type BufferName,
  type BufferReading,
  bufferPh,
  correctedPh,
  METER_LIMITS,
  type MeterCheck,
  meterCheck,
  nernstMvPerPh,
} from '#core/ferment/meter-check.ts';
import type { Verdict } from '#core/rules/rule.ts';

type Published = {
  buffers: { rows: { buffer: BufferName; bufferC: number; ph: number }[] };
  phthalate: { rows: { bufferC: number; ph: number }[] };
  nernst: { rows: { tempC: number; mvPerPh: number }[] };
  examples: {
    rows: { mvNear7: number; mvNear4: number; offsetMv: number; slopePct: number; verdict: Verdict }[];
  };
  limits: { offsetMv: [number, number]; slopePct: [number, number] };
};
const published: Published = JSON.parse(readFileSync('fixtures/published/ferment-ph-meter.json', 'utf8'));

function two(unit: 'mV' | 'pH', nearSeven: number, nearFour: number, bufferC = 25): MeterCheck {
  const readings: BufferReading[] = [
    { buffer: '7.00', bufferC, value: nearSeven, unit },
    { buffer: '4.00', bufferC, value: nearFour, unit },
  ];
  return meterCheck({ readings, atMs: 0 });
}

describe('buffers and the ideal slope', () => {
  it.each(published.buffers.rows)('$buffer at $bufferC °C is $ph', ({ buffer, bufferC, ph }) => {
    expect(bufferPh({ buffer, bufferC })).toBeCloseTo(ph, 9);
  });

  it.each(published.phthalate.rows)(
    'the 4.01 buffer at $bufferC °C is $ph by the formula of phthalate, within a hundredth of the table',
    ({ bufferC, ph }) => {
      expect(Math.abs(bufferPh({ buffer: '4.01', bufferC }) - ph)).toBeLessThan(0.01);
    },
  );

  it.each(published.nernst.rows)(
    'at $tempC °C the ideal slope is $mvPerPh mV, as the source rounds it',
    (row) => {
      expect(Math.abs(nernstMvPerPh(row.tempC) - row.mvPerPh)).toBeLessThan(0.5);
    },
  );

  it('between two rows a buffer lies between them, and outside 0 to 50 °C it is refused', () => {
    expect(bufferPh({ buffer: '7.00', bufferC: 12.5 })).toBeCloseTo(7.05, 9);
    expect(() => bufferPh({ buffer: '7.00', bufferC: 51 })).toThrow(RangeError);
    expect(() => bufferPh({ buffer: '7.00', bufferC: Number.NaN })).toThrow(RangeError);
  });
});

describe('a check in two buffers', () => {
  it.each(published.examples.rows)(
    '$mvNear7 and $mvNear4 mV: offset $offsetMv mV, slope $slopePct %, $verdict',
    (row) => {
      const check = two('mV', row.mvNear7, row.mvNear4);
      expect(check.offsetMv).toBeCloseTo(row.offsetMv, 6);
      expect(check.slopePct).toBeCloseTo(row.slopePct, 1);
      expect(check.finding.verdict).toBe(row.verdict);
      expect(check.hasFailed).toBe(row.verdict === 'deviation');
    },
  );

  it('the limits are the published ones', () => {
    expect([METER_LIMITS.offsetLow.value, METER_LIMITS.offsetHigh.value]).toEqual(published.limits.offsetMv);
    expect([METER_LIMITS.slopeLow.value, METER_LIMITS.slopeHigh.value]).toEqual(published.limits.slopePct);
  });

  it('7.05 and 4.20 shown is flagged and gives the correction', () => {
    const check = two('pH', 7.05, 4.2);
    expect(check.hasFailed).toBe(true);
    expect(check.finding).toMatchObject({ verdict: 'deviation', value: 0.2, limit: { value: 0.1 } });
    expect(check.slopePct).toBeCloseTo(95, 9);
    expect(check.offsetMv).toBeCloseTo(-0.05 * 59.16, 2);
    const { correction } = check;
    if (correction === null) throw new Error('no correction');
    expect(correctedPh({ ph: 7.05, correction })).toBeCloseTo(7, 9);
    expect(correctedPh({ ph: 4.2, correction })).toBeCloseTo(4, 9);
    expect(correctedPh({ ph: 5.3, correction })).toBeCloseTo(4 + (1.1 * 3) / 2.85, 9);
  });

  it('7.02 in a buffer of 20 °C is no error at all', () => {
    expect(two('pH', 7.02, 4, 20).buffers.map(({ errorPh }) => errorPh)).toEqual([0, 0]);
  });

  it('one buffer alone is no reading and asks for the other, unless it already failed', () => {
    const one = (shown: number): MeterCheck =>
      meterCheck({ readings: [{ buffer: '7.00', bufferC: 25, value: shown, unit: 'pH' }], atMs: 0 });
    expect(one(7.02).finding).toMatchObject({ verdict: 'no-reading', missing: ['buffer-near-4'] });
    expect(one(7.4).finding).toMatchObject({ verdict: 'deviation', missing: [] });
  });

  it('buffers swapped by mistake fail', () => {
    expect(two('mV', 175, 0).hasFailed).toBe(true);
  });

  it('a slope under 95 % is called worn, without failing', () => {
    expect(two('mV', 0, 0.92 * 3 * 59.16)).toMatchObject({ isWorn: true, hasFailed: false });
    expect(two('mV', 0, 0.97 * 3 * 59.16)).toMatchObject({ isWorn: false, hasFailed: false });
  });

  it('is due again a day later', () => {
    expect(two('mV', 0, 177).nextDueMs).toBe(24 * 3_600_000);
  });

  it('refuses two units, and what is not a number', () => {
    const mixed: BufferReading[] = [
      { buffer: '7.00', bufferC: 25, value: 0, unit: 'mV' },
      { buffer: '4.00', bufferC: 25, value: 4, unit: 'pH' },
    ];
    expect(() => meterCheck({ readings: mixed, atMs: 0 })).toThrow('requires one unit');
    expect(() => two('pH', Number.NaN, 4)).toThrow(RangeError);
  });

  it('a meter that follows offset and slope gives both back, at any temperature and buffer', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: -400, max: 400 }),
        fc.integer({ min: 600, max: 1200 }),
        fc.integer({ min: 0, max: 500 }),
        fc.constantFrom<[BufferName, BufferName]>(['7.00', '4.00'], ['6.86', '4.01']),
        (offset, slope, tenths, [seven, four]) => {
          const [offsetMv, slopePct, bufferC] = [offset / 10, slope / 10, tenths / 10];
          const shown = (buffer: BufferName): number =>
            offsetMv - (slopePct / 100) * nernstMvPerPh(bufferC) * (bufferPh({ buffer, bufferC }) - 7);
          const readings = [seven, four].map(
            (buffer): BufferReading => ({ buffer, bufferC, value: shown(buffer), unit: 'mV' }),
          );
          const check = meterCheck({ readings, atMs: 0 });
          expect(check.offsetMv).toBeCloseTo(offsetMv, 6);
          expect(check.slopePct).toBeCloseTo(slopePct, 6);
        },
      ),
    );
  });
});
