import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { jointChances } from '#core/drying/batch-window.ts';
import { passes } from '#core/drying/passes.ts';

const chance = fc.integer({ min: 0, max: 1000 }).map((permille) => permille / 1000);

describe('several pieces together', () => {
  it('are first no later than any one, and all no sooner than any one', () => {
    fc.assert(
      fc.property(fc.array(chance, { minLength: 1, maxLength: 8 }), (own) => {
        const { firstFraction, allFraction } = jointChances(own.map((each) => [each]));
        expect(firstFraction[0]).toBeGreaterThan(Math.max(...own) - 0.02);
        expect(allFraction[0]).toBeLessThan(Math.min(...own) + 0.02);
        // Never further apart than pieces that have nothing in common would be.
        expect(allFraction[0]).toBeGreaterThan(own.reduce((product, each) => product * each, 1) - 0.02);
      }),
    );
  });

  it('are as one piece where there is one', () => {
    const { firstFraction, allFraction } = jointChances([[0.1, 0.5, 0.93]]);
    for (const [at, own] of [0.1, 0.5, 0.93].entries()) {
      expect(firstFraction[at]).toBeCloseTo(own, 1);
      expect(allFraction[at]).toBeCloseTo(own, 1);
    }
  });

  it('cannot be told from what is no chance', () => {
    expect(() => jointChances([[1.2]])).toThrow(RangeError);
    expect(() => jointChances([[0.2], [0.1, 0.4]])).toThrow(RangeError);
  });

  it('pass a level between two instants, at the first at once, or never', () => {
    const at = (level: number) => passes({ x: [0, 10, 20], values: [0.2, 0.4, 0.8], level });
    expect([at(0.1), at(0.9)]).toEqual([0, null]);
    expect(at(0.3)).toBeCloseTo(5, 9);
    expect(at(0.6)).toBeCloseTo(15, 9);
  });
});
