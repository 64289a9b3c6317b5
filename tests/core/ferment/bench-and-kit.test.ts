import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { BEFORE_STUFFING, backPlan } from '#core/ferment/back-plan.ts';
import { afterExceededLimit } from '#core/ferment/exceeded-limit.ts';
import { iceCheck, scaleCheck, wetSaltCheck } from '#core/ferment/instrument-check.ts';
import { stallOf } from '#core/ferment/stall.ts';
import { TEMPERATURE_GATES, temperatureGate } from '#core/ferment/temperature-gate.ts';

const HOUR_MS = 3_600_000;

describe('timers planned backwards', () => {
  it('stuffing at 15:00 starts mould at 10:00, casings at 13:00, culture at 14:30 (common practice)', () => {
    const plan = backPlan({ finishAtMs: 15 * HOUR_MS, tasks: BEFORE_STUFFING, nowMs: 0 });
    expect(plan.map(({ id, startAtMs }) => [id, startAtMs / HOUR_MS])).toEqual([
      ['mould', 10],
      ['casings', 13],
      ['culture', 14.5],
    ]);
  });

  it('says what can no longer be done in time, and by how much', () => {
    const plan = backPlan({ finishAtMs: 15 * HOUR_MS, tasks: BEFORE_STUFFING, nowMs: 13.5 * HOUR_MS });
    expect(plan.map(({ isLate, lateMinutes }) => [isLate, lateMinutes])).toEqual([
      [true, 210],
      [true, 30],
      [false, 0],
    ]);
  });

  it('refuses a duration that cannot be', () => {
    const tasks = [{ id: 'culture', durationMinutes: Number.NaN }];
    expect(() => backPlan({ finishAtMs: 0, tasks, nowMs: 0 })).toThrow(RangeError);
  });
});

describe('temperature gates (common practice)', () => {
  it.each([
    ['lean-before-grinding', 5.1, 'stop', 20],
    ['fat-before-grinding', 5.1, 'stop', 20],
    ['after-grinding', 5.1, 'stop', 20],
    ['after-mixing', 5.1, 'stop', 20],
    ['after-grinding', 4, 'mind', 0],
    ['after-grinding', 2, 'go', 0],
    ['received', 5.1, 'mind', 0],
    ['received', 7.1, 'stop', 20],
  ] as const)('%s at %d °C: %s, chill %d min', (stage, tempC, light, chillMinutes) => {
    expect(temperatureGate({ stage, tempC })).toMatchObject({ light, chillMinutes });
  });

  it('is marked as common practice at every stage', () => {
    for (const { go, stop } of Object.values(TEMPERATURE_GATES))
      expect([go.source.standing, stop.source.standing]).toEqual(['common-practice', 'common-practice']);
  });

  it('refuses a temperature that is not a number', () => {
    expect(() => temperatureGate({ stage: 'received', tempC: Number.NaN })).toThrow(RangeError);
  });
});

describe('instruments', () => {
  it('a hygrometer showing 80 over wet salt has an offset of -5', () => {
    expect(wetSaltCheck({ shownRhPct: 80, restedHours: 12 })).toMatchObject({
      offsetRhPct: -5,
      finding: { verdict: 'within-limit' },
    });
    expect(wetSaltCheck({ shownRhPct: 80.1, restedHours: 12 }).finding.verdict).toBe('deviation');
  });

  it('less than 8 h over salt is no reading', () => {
    expect(wetSaltCheck({ shownRhPct: 75, restedHours: 7.9 }).finding).toMatchObject({
      verdict: 'no-reading',
      missing: ['rest-over-salt'],
    });
  });

  it('a thermometer showing 1.4 °C in melting ice is off by more than a degree', () => {
    expect(iceCheck({ shownC: 1.4 })).toMatchObject({ offsetC: -1.4, finding: { verdict: 'deviation' } });
    expect(iceCheck({ shownC: -1 })).toMatchObject({ offsetC: 1, finding: { verdict: 'within-limit' } });
  });

  it('a scale off by one of its steps under a known weight passes, by two it fails (common practice)', () => {
    const off = (shownG: number) => scaleCheck({ weightG: 200, shownG, stepG: 0.1 }).finding.verdict;
    expect([199.9, 200, 200.1].map(off)).toEqual(['within-limit', 'within-limit', 'within-limit']);
    expect([199.8, 200.2].map(off)).toEqual(['deviation', 'deviation']);
    expect(scaleCheck({ weightG: 200, shownG: 200.1 }).finding).toMatchObject({
      verdict: 'no-reading',
      missing: ['scale-step'],
    });
  });

  it('a scale off by whole steps passes up to one, at any step and weight', () => {
    fc.assert(
      fc.property(
        fc.constantFrom(0.01, 0.1, 1, 2, 5),
        fc.integer({ min: 20, max: 5000 }),
        fc.integer({ min: -9, max: 9 }),
        (stepG, steps, offSteps) => {
          const check = scaleCheck({ weightG: steps * stepG, shownG: (steps + offSteps) * stepG, stepG });
          expect(check.finding.verdict).toBe(Math.abs(offSteps) <= 1 ? 'within-limit' : 'deviation');
        },
      ),
    );
  });

  it('refuses what cannot be', () => {
    expect(() => scaleCheck({ weightG: 0, shownG: 1, stepG: 1 })).toThrow(RangeError);
    expect(() => scaleCheck({ weightG: 1, shownG: Number.NaN, stepG: 1 })).toThrow(RangeError);
    expect(() => scaleCheck({ weightG: 1, shownG: 1, stepG: 0 })).toThrow(RangeError);
    expect(() => iceCheck({ shownC: Number.NaN })).toThrow(RangeError);
    expect(() => wetSaltCheck({ shownRhPct: 101, restedHours: 9 })).toThrow(RangeError);
    expect(() => wetSaltCheck({ shownRhPct: 75, restedHours: Number.NaN })).toThrow(RangeError);
  });
});

describe('after the degree-hour limit', () => {
  it.each(['US', 'CA', 'EU'] as const)(
    '%s: hold first, record last, never longer and never cooked',
    (ruleSet) => {
      const { steps, never } = afterExceededLimit(ruleSet);
      const codes = steps.map(({ code }) => code);
      expect(codes[0]).toBe('hold');
      expect(codes.at(-1)).toBe('record');
      expect(codes).toContain('test-staphylococcus-and-toxin');
      expect(codes).toContain('decide-with-authority');
      expect(never.map(({ code }) => code)).toEqual(['ferment-longer', 'cook']);
      for (const { source } of [...steps, ...never]) expect(source.section).not.toBe('');
    },
  );

  it('Canada wants to be notified of each case', () => {
    expect(afterExceededLimit('CA').steps.map(({ code }) => code)).toContain('notify-authority');
  });
});

describe('a stall', () => {
  it('72 h at 20 °C without a drop has stalled, and only what was not logged is asked', () => {
    const answer = stallOf({
      elapsedHours: 72,
      roomC: 20,
      startPh: 5.8,
      lastPh: 5.75,
      cultureGPerKg: 0.12,
      cultureDoseGPerKg: 0.25,
      cultureOpenedDays: 120,
      dextrosePct: 0.3,
    });
    expect(answer.isStalled).toBe(true);
    expect(answer.ask).toEqual(['meter-check', 'salt']);
    expect(answer.likely).toEqual(['culture-under-dosed', 'culture-old']);
  });

  it('is not called early, nor where the pH fell', () => {
    expect(stallOf({ elapsedHours: 12, roomC: 22, startPh: 5.8, lastPh: 5.75 }).isStalled).toBe(false);
    expect(stallOf({ elapsedHours: 30, roomC: 22, startPh: 5.8, lastPh: 5.4 }).isStalled).toBe(false);
    expect(stallOf({ elapsedHours: 30, roomC: 14, startPh: 5.8, lastPh: 5.75 }).isStalled).toBe(false);
  });

  it('cannot be told without both readings, and names what is known to be wrong', () => {
    const answer = stallOf({
      elapsedHours: 72,
      roomC: 15,
      meterCheckedOk: false,
      saltPct: 4,
      dextrosePct: 0.1,
    });
    expect(answer.isStalled).toBeNull();
    expect(answer.ask).toEqual(['start-ph', 'last-ph', 'culture-dose', 'culture-age']);
    expect(answer.likely).toEqual(['meter-failed', 'room-cool', 'sugar-low', 'salt-high']);
  });

  it('a strip, a probe in fat and a formula without culture are named before the rest', () => {
    const base = { elapsedHours: 72, roomC: 22, startPh: 6.5 };
    const strip = stallOf({ ...base, lastPh: 6.4, lastMethod: 'strip' });
    expect(strip.likely[0]).toBe('strip-only');
    expect(strip.ask).not.toContain('meter-check');
    expect(stallOf({ ...base, lastPh: 6.4, lastMethod: 'meter' }).likely).toEqual(['probe-in-fat']);
    const wild = stallOf({ ...base, lastPh: 5.8, hasCulture: false });
    expect(wild.likely).toEqual(['no-culture']);
    expect(wild.ask).not.toContain('culture-dose');
  });

  it('always asks for a second reading and the hours, holds what is wrong in the mix, and never waits', () => {
    const codes = fc.record({
      roomC: fc.integer({ min: 4, max: 40 }),
      hours: fc.integer({ min: 0, max: 200 }),
      meterCheckedOk: fc.option(fc.boolean(), { nil: undefined }),
      hasCulture: fc.boolean(),
      opened: fc.option(fc.integer({ min: 0, max: 400 }), { nil: undefined }),
      saltTenths: fc.option(fc.integer({ min: 10, max: 60 }), { nil: undefined }),
    });
    fc.assert(
      fc.property(codes, ({ roomC, hours, meterCheckedOk, hasCulture, opened, saltTenths }) => {
        const { steps, likely, never } = stallOf({
          elapsedHours: hours,
          roomC,
          meterCheckedOk,
          hasCulture,
          cultureOpenedDays: opened,
          saltPct: saltTenths === undefined ? undefined : saltTenths / 10,
        });
        expect(steps).toEqual(expect.arrayContaining(['read-again-in-lean', 'mind-the-hours']));
        const isOfTheMix = !hasCulture || likely.includes('culture-old') || likely.includes('salt-high');
        expect(steps.includes('hold')).toBe(isOfTheMix);
        expect(steps.includes('check-meter')).toBe(meterCheckedOk !== true);
        expect(never).toContain('dry-anyway');
      }),
    );
  });

  it('refuses a room in which nothing grows, NaN included', () => {
    expect(() => stallOf({ elapsedHours: 1, roomC: 3 })).toThrow(RangeError);
    expect(() => stallOf({ elapsedHours: Number.NaN, roomC: 20 })).toThrow(RangeError);
  });
});
