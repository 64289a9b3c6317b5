import { describe, expect, it } from 'vitest';
import { dates } from '#words/en/dates.ts';

const ZONE = '+01:00';
const NOW_MS = Date.UTC(2026, 0, 8, 7);
const on = (year: number, month: number, day: number) => Date.UTC(year, month - 1, day, 11);

describe('a day as a maker says it', () => {
  it('has no year in this year', () => {
    expect(dates.day(on(2026, 12, 24), ZONE, NOW_MS)).toBe('24 December');
    expect(dates.between(on(2026, 3, 4), on(2026, 3, 9), ZONE, NOW_MS)).toBe('between 4 and 9 March');
  });

  it('has its year in any other', () => {
    // 629 days ahead.
    const far = NOW_MS + 629 * 24 * 3_600_000;
    expect(dates.day(far, ZONE, NOW_MS)).toBe('29 September 2027');
    expect(dates.shortDay(far, ZONE, NOW_MS)).toMatch(/^29 Sept? 2027$/);
    expect(dates.near(far, NOW_MS, ZONE)).toBe('29 September 2027, 08:00');
    expect(dates.between(on(2027, 3, 4), on(2027, 3, 9), ZONE, NOW_MS)).toBe('between 4 and 9 March 2027');
    expect(dates.between(on(2027, 3, 4), on(2027, 5, 9), ZONE, NOW_MS)).toBe(
      'between 4 March and 9 May 2027',
    );
    expect(dates.between(on(2026, 12, 28), on(2027, 1, 3), ZONE, NOW_MS)).toBe(
      'between 28 December 2026 and 3 January 2027',
    );
    expect(dates.between(far, far, ZONE, NOW_MS)).toBe('about 29 September 2027');
  });

  it('turns with the year of the wall, not of UTC', () => {
    const lateMs = Date.UTC(2026, 11, 31, 23, 30);
    expect(dates.day(lateMs, ZONE, NOW_MS)).toBe('1 January 2027');
    expect(dates.day(lateMs, '+00:00', NOW_MS)).toBe('31 December');
  });
});
