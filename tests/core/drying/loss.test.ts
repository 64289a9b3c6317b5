import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { gramsToGoG, lossPct, lossSpread, netG, targetG } from '#core/drying/loss.ts';

// common practice: a maker's worked figure, 1,391 g hung, 40 % wanted.
describe('loss against green weight', () => {
  it('takes a piece of 1,391 g to 834.6 g for 40 %', () => {
    expect(targetG({ greenG: 1391, targetLossPct: 40 })).toBeCloseTo(834.6, 9);
  });

  it('moves the target when the maker settles for 38 %', () => {
    expect(targetG({ greenG: 1391, targetLossPct: 38 })).toBeCloseTo(862.42, 9);
  });

  it('shows on the scale what the piece and its hook weigh together', () => {
    expect(targetG({ greenG: 1391, targetLossPct: 40, tareG: 12 })).toBeCloseTo(846.6, 9);
    expect(netG({ grossG: 846.6, tareG: 12 })).toBeCloseTo(834.6, 9);
  });

  it('goes below zero past the target, and below zero loss when a piece gained', () => {
    expect(gramsToGoG({ greenG: 1000, nowG: 590, targetLossPct: 40 })).toBeCloseTo(-10, 9);
    expect(lossPct({ greenG: 1000, nowG: 1004 })).toBeCloseTo(-0.4, 9);
  });

  it('finds the middle of an odd and an even number of pieces, and of none says so', () => {
    expect(lossSpread([40, 20, 30])?.medianPct).toBe(30);
    expect(lossSpread([20, 30])?.medianPct).toBe(25);
    expect(lossSpread([])).toBeNull();
  });

  it('refuses weights that cannot be', () => {
    for (const bad of [0, -1, Number.NaN, Infinity]) {
      expect(() => lossPct({ greenG: bad, nowG: 1 })).toThrow(RangeError);
      expect(() => lossPct({ greenG: 1, nowG: bad })).toThrow(RangeError);
      expect(() => targetG({ greenG: bad, targetLossPct: 40 })).toThrow(RangeError);
    }
    for (const bad of [0, 100, -5, Number.NaN])
      expect(() => targetG({ greenG: 1000, targetLossPct: bad })).toThrow(RangeError);
    expect(() => targetG({ greenG: 1000, targetLossPct: 40, tareG: -1 })).toThrow(RangeError);
    expect(() => netG({ grossG: 10, tareG: 10 })).toThrow(RangeError);
    expect(() => netG({ grossG: 10, tareG: Number.NaN })).toThrow(RangeError);
    expect(() => lossSpread([1, Number.NaN])).toThrow(RangeError);
  });

  it('has no grams to go exactly at the target weight, whatever the piece', () => {
    fc.assert(
      fc.property(fc.integer({ min: 1, max: 50_000 }), fc.integer({ min: 1, max: 999 }), (dg, permille) => {
        const greenG = dg / 10;
        const targetLossPct = permille / 10;
        const nowG = targetG({ greenG, targetLossPct });
        expect(gramsToGoG({ greenG, nowG, targetLossPct })).toBeCloseTo(0, 9);
        expect(lossPct({ greenG, nowG })).toBeCloseTo(targetLossPct, 8);
      }),
    );
  });
});
