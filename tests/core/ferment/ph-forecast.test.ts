import { readFileSync } from 'node:fs';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { degreeHoursBy } from '#core/ferment/ferment-ahead.ts';
import { fermentClock } from '#core/ferment/ferment-clock.ts';
import { forecastPh, type PhForecast, type PhForecastInput } from '#core/ferment/ph-forecast.ts';
import { phOnLine } from '#core/ferment/ph-line.ts';
import { phChance, phPosterior, phSpread } from '#core/ferment/ph-posterior.ts';
import { type CulturePace, phPrior } from '#core/ferment/ph-prior.ts';
import type { PhReading } from '#core/ferment/ph-reading.ts';
import { HOUR_MS, meterPh, roomC } from './hours.ts';

const published: {
  series: { rows: { hours: number; ph: number; roomC: number }[]; fermentPoints: number };
} = JSON.parse(readFileSync('fixtures/published/ferment-ph-curves.json', 'utf8'));

function room(deg: number, hours: number) {
  return roomC(...Array.from({ length: Math.floor(hours / 4) + 1 }, (_, at) => [at * 4, deg] as const));
}

function forecast(
  phReadings: readonly PhReading[],
  rest: Partial<PhForecastInput> & { nowHours: number; deg?: number },
): PhForecast {
  const { nowHours, deg = 24, ...given } = rest;
  const answer = forecastPh(
    {
      phReadings,
      roomReadings: room(deg, nowHours),
      stuffedAtMs: 0,
      nowMs: nowHours * HOUR_MS,
      culture: 'medium',
      dextroseGPerKg: 5,
      ...given,
    },
    [5.3, 5.2],
  );
  if (answer === null) throw new Error('no forecast');
  return answer;
}

const hoursOf = (atMs: number | null | undefined): number => (atMs ?? Number.POSITIVE_INFINITY) / HOUR_MS;

describe('before any reading', () => {
  // From memory, medium confidence: a medium starter at 22 to 24 °C reaches 5.3 in 20 to 36 h.
  it('a medium culture at 24 °C is expected at 5.3 between 20 and 36 h', () => {
    const likely = hoursOf(forecast([], { nowHours: 0 }).windows[0]?.likelyAtMs);
    expect(likely).toBeGreaterThan(20);
    expect(likely).toBeLessThan(36);
  });

  it('a fast one comes earlier, a slow one later, and an unknown one has the widest window of the three paces', () => {
    const of = (culture: CulturePace) => forecast([], { nowHours: 0, culture }).windows[0];
    expect(hoursOf(of('fast')?.likelyAtMs)).toBeLessThan(hoursOf(of('medium')?.likelyAtMs));
    expect(hoursOf(of('medium')?.likelyAtMs)).toBeLessThan(hoursOf(of('slow')?.likelyAtMs));
    expect(hoursOf(of('unknown')?.earliestAtMs)).toBeLessThan(hoursOf(of('medium')?.earliestAtMs));
  });

  it('a cooler room takes longer', () => {
    const at = (deg: number): number => hoursOf(forecast([], { nowHours: 0, deg }).windows[0]?.likelyAtMs);
    expect(at(20)).toBeGreaterThan(at(24));
    expect(at(24)).toBeGreaterThan(at(28));
  });

  it('too little sugar is not expected to get there', () => {
    const { windows, endPh } = forecast([], { nowHours: 0, dextroseGPerKg: 0.5 });
    expect(windows[0]?.latestAtMs).toBeNull();
    expect(windows[0]?.chance).toBeLessThan(0.5);
    expect(endPh.midPh).toBeGreaterThan(5.3);
  });

  it('says what it takes for granted', () => {
    expect(forecast([], { nowHours: 0, culture: 'unknown', dextroseGPerKg: undefined }).assumes).toEqual([
      'room-stays',
      'culture-unknown',
      'sugar-unknown',
    ]);
    expect(forecast([], { nowHours: 0, aheadC: 20 }).assumes).toEqual([]);
  });

  it('cannot be made without a room temperature', () => {
    expect(
      forecastPh({ phReadings: [], roomReadings: [], stuffedAtMs: 0, nowMs: 0, culture: 'fast' }, [5.3]),
    ).toBeNull();
  });
});

describe('with readings', () => {
  const line = { shape: 'logistic', startPh: 5.8, dropPh: 0.95, lagHours: 10, halfHours: 9 } as const;
  const read = (...hours: number[]): PhReading[] => hours.map((at) => meterPh(at, phOnLine(line, at)));

  it('the window closes in on the truth as they come', () => {
    const few = forecast(read(0, 14), { nowHours: 14 }).windows[0];
    const many = forecast(read(0, 6, 10, 14, 17, 19), { nowHours: 19 }).windows[0];
    const width = (window: PhForecast['windows'][number] | undefined): number =>
      hoursOf(window?.latestAtMs) - hoursOf(window?.earliestAtMs);
    expect(width(many)).toBeLessThan(width(few));
    // The line is still above 5.3 at 19.5 h, and below it at 19.7 h.
    expect(phOnLine(line, 19.5)).toBeGreaterThan(5.3);
    expect(phOnLine(line, 19.7)).toBeLessThan(5.3);
    expect(hoursOf(many?.earliestAtMs)).toBeLessThan(19.7);
    expect(hoursOf(many?.latestAtMs)).toBeGreaterThan(19.5);
  });

  it('leaves out doubted readings and those of a failed meter, and lets a strip count for little', () => {
    const base = forecast(read(0, 14), { nowHours: 20 });
    const wild = { ...meterPh(18, 4.6), doubted: true };
    expect(forecast([...read(0, 14), wild], { nowHours: 20 })).toEqual(base);
    expect(
      forecast([...read(0, 14), { ...wild, doubted: false, meterFailed: true }], { nowHours: 20 }),
    ).toEqual(base);
    const likelyWith = (reading: PhReading): number =>
      hoursOf(forecast([...read(0, 14), reading], { nowHours: 20 }).windows[0]?.likelyAtMs);
    const baseHours = hoursOf(base.windows[0]?.likelyAtMs);
    const strip = likelyWith({ ...meterPh(18, 5.75), method: 'strip' });
    const meter = likelyWith(meterPh(18, 5.75));
    expect(strip).toBeGreaterThan(baseHours);
    expect(meter).toBeGreaterThan(strip);
  });

  it('the lower target comes later, the bands are in order, and the end is lowest', () => {
    const { windows, curve, endPh } = forecast(read(0, 14), { nowHours: 14 });
    expect(hoursOf(windows[1]?.likelyAtMs)).toBeGreaterThan(hoursOf(windows[0]?.likelyAtMs));
    for (const { lowPh, midPh, highPh } of [...curve, endPh]) {
      expect(lowPh).toBeLessThan(midPh);
      expect(midPh).toBeLessThan(highPh);
    }
    expect(curve.length).toBe(33);
    expect(endPh.midPh).toBeLessThan(curve.at(-1)?.midPh ?? Number.NaN);
  });

  it('a published ferment at 30 °C: 5.3 was not read in 66 h, and is not expected within 20 h of its 16 h', () => {
    const { rows } = published.series;
    const readings = rows.slice(0, 4).map(({ hours, ph }) => meterPh(hours, ph));
    const { windows } = forecast(readings, {
      nowHours: 16,
      deg: 30,
      culture: 'unknown',
      dextroseGPerKg: undefined,
    });
    expect(hoursOf(windows[0]?.likelyAtMs)).toBeGreaterThan(36);
  });

  it('gives the degree-hours that the window would come to', () => {
    const clock = fermentClock({
      roomReadings: room(24, 16),
      phReadings: read(0, 14),
      stuffedAtMs: 0,
      ruleSet: 'CA',
      nowMs: 16 * HOUR_MS,
    });
    if (clock.sum === null) throw new Error('no sum');
    const by = (hours: number): number =>
      degreeHoursBy({ ruleSet: 'CA', sum: clock.sum ?? raise(), atMs: hours * HOUR_MS });
    expect(by(30)).toBeCloseTo(30 * 8.4, 6);
    expect(by(10)).toBeCloseTo(10 * 8.4, 6);
    expect(by(-1)).toBe(0);
  });

  it('a maker’s own ferments move the expectation towards them', () => {
    const own = [1, 2, 3, 4].map(() => ({ shape: 'logistic' as const, lagHours: 24, halfHours: 20 }));
    expect(phPrior({ culture: 'medium', own }).halfHours).toBeGreaterThan(
      phPrior({ culture: 'medium' }).halfHours,
    );
    expect(phPrior({ culture: 'medium', own }).lagHours).toBeLessThan(24);
    expect(hoursOf(forecast([], { nowHours: 0, own }).windows[0]?.likelyAtMs)).toBeGreaterThan(36);
  });
});

function raise(): never {
  throw new Error('no sum');
}

describe('laws of the posterior', () => {
  const prior = phPrior({ culture: 'medium', dextroseGPerKg: 4 });
  const samples = fc
    .array(fc.record({ hours: fc.nat(60), hundredths: fc.integer({ min: 480, max: 600 }) }), { maxLength: 6 })
    .map((rows) =>
      rows.map(({ hours, hundredths }) => ({
        warmHours: hours,
        ph: hundredths / 100,
        method: 'meter' as const,
      })),
    );

  it('the weights add up to one, and the order of readings changes nothing', () => {
    fc.assert(
      fc.property(samples, (readings) => {
        const posterior = phPosterior({ prior, readings });
        expect(posterior.reduce((sum, node) => sum + node.chance, 0)).toBeCloseTo(1, 9);
        const turned = phPosterior({ prior, readings: [...readings].reverse() });
        expect(phChance(phSpread(turned, 20), 5.3)).toBeCloseTo(phChance(phSpread(posterior, 20), 5.3), 9);
      }),
      { numRuns: 15 },
    );
  });

  it('a lower reading never lowers the chance to be at or below a value there', () => {
    fc.assert(
      fc.property(samples, fc.nat(60), fc.integer({ min: 500, max: 580 }), (readings, hours, hundredths) => {
        const at = (ph: number): number => {
          const posterior = phPosterior({
            prior,
            readings: [...readings, { warmHours: hours, ph, method: 'meter' }],
          });
          return phChance(phSpread(posterior, hours), 5.3);
        };
        expect(at(hundredths / 100 - 0.05)).toBeGreaterThanOrEqual(at(hundredths / 100) - 1e-6);
      }),
      { numRuns: 15 },
    );
  });

  it('refuses readings that are not numbers', () => {
    expect(() =>
      phPosterior({ prior, readings: [{ warmHours: 1, ph: Number.NaN, method: 'meter' }] }),
    ).toThrow(RangeError);
  });
});
