import { describe, expect, it } from 'vitest';
import { backSchedule } from '#core/drying/back-schedule.ts';
import { freezingTable } from '#core/rules/freezing.ts';
import { daysAfter, daysBefore, daysBetween, isCalendarDay } from '#words/days.ts';

const DATE = '2026-12-24';
/** Six weeks less a few days, seven weeks and a half, ten weeks and a half: invented, about those of a 60 mm piece. */
const DRYING = { p10Days: 38, p50Days: 52, p90Days: 74 };

describe('back from 24 December, 60 mm, freezing at -15 °C', () => {
  const freezeDays =
    (freezingTable({ ruleSet: 'US', method: 'room', thicknessMm: 100 })?.rows[0]?.hours ?? 0) / 24;
  const { early, likely, last } = backSchedule(
    { freezeDays, thawDays: 2, fermentDays: 2, equaliseDays: 7 },
    DRYING,
  );
  const day = (days: number | undefined) => daysBefore(DATE, days ?? Number.NaN);

  it('freezes for twenty days, as the table says for -15 °C', () => {
    expect(freezeDays).toBe(20);
  });

  it('by hand: down 17 December, hung 26 October, stuffed 24, out of the freezer 22, in on 2 October', () => {
    expect(day(likely?.downDay)).toBe('2026-12-17');
    expect(day(likely?.hangDay)).toBe('2026-10-26');
    expect(day(likely?.stuffDay)).toBe('2026-10-24');
    expect(day(likely?.thawDay)).toBe('2026-10-22');
    expect(day(likely?.freezeDay)).toBe('2026-10-02');
  });

  it('by hand: to be nearly sure, into the freezer on 10 September; the last chance is 16 October', () => {
    expect(day(early?.hangDay)).toBe('2026-10-04');
    expect(day(early?.freezeDay)).toBe('2026-09-10');
    expect(day(last?.hangDay)).toBe('2026-11-09');
    expect(day(last?.freezeDay)).toBe('2026-10-16');
  });
});

describe('a back-schedule', () => {
  const none = { freezeDays: 0, thawDays: 0, fermentDays: 0, equaliseDays: 0 };

  it('has no date where the target is unlikely ever to be reached', () => {
    const { early, last } = backSchedule(none, { p10Days: 30.2, p50Days: null, p90Days: null });
    expect(early).toBe(null);
    expect(last?.hangDay).toBe(31);
  });

  it('takes no stage that cannot be', () => {
    expect(() => backSchedule({ ...none, thawDays: Number.NaN }, DRYING)).toThrow(RangeError);
  });
});

describe('calendar days', () => {
  it('by hand: across a leap day, a year, and the night the clocks change', () => {
    expect(daysBefore('2024-03-01', 1)).toBe('2024-02-29');
    expect(daysAfter('2026-12-31', 1)).toBe('2027-01-01');
    expect(daysBefore('2026-10-26', 1)).toBe('2026-10-25');
    expect(daysBetween('2026-10-02', '2026-12-24')).toBe(83);
  });

  it('are real days only', () => {
    expect(isCalendarDay('2026-02-29')).toBe(false);
    expect(isCalendarDay('2026-12-24')).toBe(true);
    expect(isCalendarDay('')).toBe(false);
  });
});
