import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { timeLeft } from '#ui/time-left.ts';

const S = 1000;
const MIN = 60 * S;
const H = 60 * MIN;
const D = 24 * H;

describe('the time left', () => {
  it.each([
    [30 * MIN, '30:00'],
    [90 * S, '1:30'],
    [999, '0:00'],
    [H - 1, '59:59'],
    [H, '1 h 00 min'],
    [2 * H + 5 * MIN + 59 * S, '2 h 05 min'],
    [D - 1, '23 h 59 min'],
    [D, '1 d 0 h'],
    [2 * D + 7 * H + 59 * MIN, '2 d 7 h'],
  ])('%d ms before the end is %s', (leftMs, text) => {
    expect(timeLeft({ endMs: 5 * D, nowMs: 5 * D - leftMs })).toEqual({ over: false, text });
  });

  it('is over at the end itself, and counts on', () => {
    expect(timeLeft({ endMs: D, nowMs: D })).toEqual({ over: true, text: '0:00' });
    expect(timeLeft({ endMs: D, nowMs: D + 140 * S })).toEqual({ over: true, text: '2:20' });
  });

  it('never shows more than there is', () => {
    const shownMs = (text: string) => {
      const [one = 0, other = 0] = (text.match(/\d+/g) ?? []).map(Number);
      if (text.includes('d')) return one * D + other * H;
      return text.includes('h') ? one * H + other * MIN : one * MIN + other * S;
    };
    fc.assert(
      fc.property(fc.integer({ min: 1, max: 5_000_000 }), (tenths) => {
        const leftMs = tenths * 100;
        expect(shownMs(timeLeft({ endMs: leftMs, nowMs: 0 }).text)).toBeLessThanOrEqual(leftMs);
      }),
    );
  });
});
