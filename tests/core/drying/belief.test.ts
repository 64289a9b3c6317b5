import { describe, expect, it } from 'vitest';
import { afterEvidence, evidenceTogether, likelihoodOf, offsetBelief } from '#core/drying/belief.ts';
import { diagonal, inverse, times } from '#core/drying/matrix.ts';

describe('what pieces, batches and a chamber share', () => {
  it('is the mean of equals: two readings of one number halve its variance', () => {
    const one = { precision: [[1]], pull: [3] };
    const two = { precision: [[2]], pull: [8] };
    const flat = { mean: [0], covariance: [[1e9]] };
    expect(afterEvidence(flat, one).mean[0]).toBeCloseTo(3, 6);
    expect(afterEvidence(flat, two)).toMatchObject({ covariance: [[expect.closeTo(0.5, 6)]] });
    expect(afterEvidence(flat, two).mean[0]).toBeCloseTo(4, 6);
  });

  it('leaves alone what is known for sure', () => {
    const believed = { mean: [1, 2], covariance: diagonal([1, 0]) };
    const after = afterEvidence(believed, {
      precision: [
        [1, 1],
        [1, 1],
      ],
      pull: [9, 9],
    });
    expect(after.mean[1]).toBe(2);
    expect(after.covariance[1]).toEqual([0, 0]);
    // One number left: y = a + 2 with precision 1 and pull 9 says a = 7; with a ~ N(1, 1) that is 4.
    expect(after.mean[0]).toBeCloseTo(4, 9);
  });

  it('never lets a batch say more than a batch can, nor a piece more than a piece', () => {
    const spread = { chamber: [[1]], batch: [[2]], piece: [[4]] };
    const sure = { precision: [[1e9]], pull: [5e9] };
    expect(evidenceTogether([sure], [[4]])).toMatchObject({ precision: [[expect.closeTo(0.25, 6)]] });
    const variance = (earlierBatches: (typeof sure)[], siblings: (typeof sure)[]) =>
      offsetBelief({ spread, siblings, earlierBatches }).covariance[0]?.[0] ?? Number.NaN;
    expect(variance([], [])).toBe(7);
    expect(variance(new Array(1000).fill(sure), [])).toBeGreaterThan(2 + 4);
    // All siblings count as half a piece: of the 3 that they share, 1 / (1/3 + 0.5 · 1/4) is left.
    expect(variance([], new Array(20).fill(sure))).toBeCloseTo(4 + 1 / (1 / 3 + 0.5 / 4), 6);
  });

  it('fits an offset best where it pulls', () => {
    const likelihood = likelihoodOf({ precision: [[4]], pull: [8] }, [[0]]);
    expect(likelihood([2])).toBeGreaterThan(likelihood([1.5]));
    expect(likelihood([2])).toBeGreaterThan(likelihood([2.5]));
  });
});

describe('small matrices', () => {
  it('times their inverse are one, with rows that must change places', () => {
    const matrix = [
      [0, 2, 1],
      [1, 1, 0],
      [3, 0, 1],
    ];
    const product = times(matrix, inverse(matrix));
    for (const [i, row] of product.entries())
      for (const [j, value] of row.entries()) expect(value).toBeCloseTo(i === j ? 1 : 0, 12);
    expect(() =>
      inverse([
        [1, 1],
        [1, 1],
      ]),
    ).toThrow(RangeError);
  });
});
