/** The normal distribution, and the one root finder that the drying core needs. */

/**
 * Standard normal distribution function, P(Z <= z).
 *
 * A rational function up to |z| = 7.07, a continued fraction beyond.
 * Units: none.
 * Valid: any z; within 1e-15 of the true value.
 * Source: Hart, J. F. et al., Computer Approximations (Wiley, 1968), algorithm 5666, in the form given by West, G.,
 * "Better approximations to cumulative normal functions" (2005); coefficients from memory, high confidence, held in
 * the tests against Abramowitz & Stegun, table 26.1.
 * @example normalCdf(0) // => 0.5
 */
export function normalCdf(z: number): number {
  const x = Math.abs(z);
  let tail = 0;
  if (x < 7.07106781186547) {
    let above = 3.52624965998911e-2 * x + 0.700383064443688;
    above = above * x + 6.37396220353165;
    above = above * x + 33.912866078383;
    above = above * x + 112.079291497871;
    above = above * x + 221.213596169931;
    above = above * x + 220.206867912376;
    let below = 8.83883476483184e-2 * x + 1.75566716318264;
    below = below * x + 16.064177579207;
    below = below * x + 86.7807322029461;
    below = below * x + 296.564248779674;
    below = below * x + 637.333633378831;
    below = below * x + 793.826512519948;
    below = below * x + 440.413735824752;
    tail = (Math.exp((-x * x) / 2) * above) / below;
  } else if (x < 38) {
    const fraction = x + 1 / (x + 2 / (x + 3 / (x + 4 / (x + 0.65))));
    tail = Math.exp((-x * x) / 2) / fraction / 2.506628274631;
  }
  return z > 0 ? 1 - tail : tail;
}

/** 80 % of a normal distribution lies within this many standard deviations of its mean (Abramowitz & Stegun, table 26.1). */
export const NORMAL_90_SD = 1.2815515655446004;

/**
 * Where a function that never falls crosses a level, by false position with the Illinois correction.
 * `null` where it lies above the level at the left end or below it at the right end.
 *
 * Units: those of the function.
 * Source: Dowell, M. & Jarratt, P., BIT 11 (1971) 168, from memory, high confidence.
 * @example risingRoot((x) => x, { level: 2, low: 0, high: 8, tolerance: 1e-12 }) // => 2
 */
export function risingRoot(
  rising: (x: number) => number,
  { level, low, high, tolerance }: { level: number; low: number; high: number; tolerance: number },
): number | null {
  let left = low;
  let right = high;
  let leftGap = rising(left) - level;
  let rightGap = rising(right) - level;
  if (!(leftGap <= 0 && rightGap >= 0)) return null;
  let kept = 0;
  for (let round = 0; round < 200 && right - left > tolerance; round++) {
    // Bisect whenever false position crawls: the curves here are flat at both ends.
    const crawls = Math.abs(kept) > 2 || rightGap - leftGap === 0;
    const middle = crawls ? (left + right) / 2 : right - (rightGap * (right - left)) / (rightGap - leftGap);
    const gap = rising(middle) - level;
    if (gap === 0) return middle;
    if (gap < 0) {
      left = middle;
      leftGap = gap;
      if (kept < 0) rightGap /= 2;
      kept = Math.min(kept, 0) - 1;
    } else {
      right = middle;
      rightGap = gap;
      if (kept > 0) leftGap /= 2;
      kept = Math.max(kept, 0) + 1;
    }
    if (crawls) kept = 0;
  }
  return (left + right) / 2;
}

const FURTHEST_SD = 8;

/**
 * The value below which a normal number lies with a given chance.
 *
 * Source: the inverse of `normalCdf`, found by `risingRoot`.
 * @throws RangeError unless the chance lies between 1e-12 and 1 - 1e-12.
 * @example normalQuantile(0.5) // => 0
 */
export function normalQuantile(chance: number): number {
  const z =
    chance >= 1e-12 && chance <= 1 - 1e-12
      ? risingRoot(normalCdf, { level: chance, low: -FURTHEST_SD, high: FURTHEST_SD, tolerance: 1e-12 })
      : null;
  if (z === null) throw new RangeError(`normalQuantile: chance requires 1e-12 to 1 - 1e-12, got ${chance}`);
  return z;
}

/**
 * Vectors of normal numbers, spread as evenly as so few can be, the same each time.
 *
 * Each axis in steps of a power of the root of x^(dimensions + 1) = x + 1, a golden section of so many axes.
 * Source: Roberts (2018), from memory.
 * @example evenNormals(2, 1)[1]?.[0]?.toFixed(3) // => '0.631'
 */
export function evenNormals(count: number, dimensions: number): number[][] {
  let root = 1;
  for (let round = 0; round < 60; round++) root = (1 + root) ** (1 / (dimensions + 1));
  return Array.from({ length: count }, (_, draw) =>
    Array.from({ length: dimensions }, (_, axis) =>
      normalQuantile((0.5 + (draw + 1) / root ** (axis + 1)) % 1),
    ),
  );
}
