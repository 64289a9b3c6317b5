import { describe, expect, it } from 'vitest';
import { lowerRoot, type Matrix, times } from '#core/drying/matrix.ts';

describe('the lower root of a covariance', () => {
  const squared = (root: Matrix) =>
    times(
      root,
      root.map((_, column) => root.map((row) => row[column] ?? 0)),
    );

  it('is worth the covariance again', () => {
    const covariance = [
      [4, 1.2, -0.6],
      [1.2, 2, 0.3],
      [-0.6, 0.3, 1],
    ];
    for (const [i, row] of squared(lowerRoot(covariance)).entries())
      for (const [j, value] of row.entries()) expect(value).toBeCloseTo(covariance[i]?.[j] ?? 0, 12);
  });

  it('has nothing of what is known for sure, and breaks at no pair that says the same', () => {
    expect(
      lowerRoot([
        [1, 0, 0],
        [0, 0, 0],
        [0, 0, 4],
      ]),
    ).toEqual([
      [1, 0, 0],
      [0, 0, 0],
      [0, 0, 2],
    ]);
    expect(
      lowerRoot([
        [1, 1],
        [1, 1],
      ]),
    ).toEqual([
      [1, 0],
      [1, 0],
    ]);
  });
});
