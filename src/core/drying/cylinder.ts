import { risingRoot } from './normal.ts';

/** Diffusion out of a long cylinder of unchanging size: the exact answer that the radial model is held against. */

/**
 * Bessel function of the first kind, order 0 or 1.
 *
 * The mean of cos(n a - x sin a) over a half turn, by midpoints: exact to rounding once they outnumber x.
 * Units: none.
 * Valid: |x| up to 1,000.
 * Source: Bessel's integral (Abramowitz & Stegun, eq. 9.1.21, from memory, high confidence).
 * @throws RangeError outside the valid range.
 * @example besselJ({ order: 0, x: 0 }) // => 1
 */
export function besselJ({ order, x }: { order: 0 | 1; x: number }): number {
  if (!(Math.abs(x) <= 1000)) throw new RangeError(`besselJ: x requires -1000..1000, got ${x}`);
  const points = 32 + Math.ceil(Math.abs(x));
  let sum = 0;
  for (let k = 0; k < points; k++) {
    const angle = (Math.PI * (k + 0.5)) / points;
    sum += Math.cos(order * angle - x * Math.sin(angle));
  }
  return sum / points;
}

/**
 * The first roots of beta J1(beta) = Bi J0(beta); with Bi infinite, of J0(beta) = 0.
 *
 * Root k lies between zero k - 1 of J1 (0 for the first) and zero k of J0, and is found by halving.
 * Units: none.
 * Valid: up to 300 roots.
 * Source: Crank, J., The Mathematics of Diffusion, 2nd ed. (1975), eq. 5.50, number from memory, medium confidence.
 * @throws RangeError unless the Biot number is above zero.
 * @example Math.round(cylinderRoots({ biot: Infinity, count: 1 })[0] * 1e9) // => 2404825558
 */
export function cylinderRoots({ biot, count }: { biot: number; count: number }): number[] {
  if (!(biot > 0)) throw new RangeError(`cylinderRoots: biot requires a value above 0, got ${biot}`);
  if (!(Number.isInteger(count) && count >= 1 && count <= 300))
    throw new RangeError(`cylinderRoots: count requires a whole number within 1..300, got ${count}`);
  // Zeros of J0 and J1 lie near these (McMahon), with the next of their kind pi away.
  const zero = (order: 0 | 1, near: number) =>
    crossing((x) => besselJ({ order, x }), near - Math.PI / 4, near + Math.PI / 4);
  return Array.from({ length: count }, (_, k) => {
    const high = zero(0, (k + 0.75) * Math.PI);
    if (biot === Infinity) return high;
    const low = k === 0 ? 0 : zero(1, (k + 0.25) * Math.PI);
    return crossing((x) => x * besselJ({ order: 1, x }) - biot * besselJ({ order: 0, x }), low, high);
  });
}

/**
 * Part of the water that is still to leave: 1 at the start, 0 at rest with the air.
 *
 * E = sum 4 Bi² / (beta² (beta² + Bi²)) exp(-beta² Fo), Fo = D t / R²; with Bi infinite sum 4 / beta² exp(-beta² Fo),
 * and below Fo = 5e-5 there 1 - 4/sqrt(pi) sqrt(Fo) + Fo + Fo^1.5 / (3 sqrt(pi)).
 * Units: Fourier and Biot number; result 0..1.
 * Valid: any Fo for Bi infinite; Fo = 0 or from 5e-5 otherwise; within 1e-9. Shorter than 6 diameters it is too slow.
 * Source: Crank (1975), eqs 5.23 and 5.49, numbers from memory, medium confidence.
 * @throws RangeError outside the valid range.
 * @example cylinderRemaining({ fourier: 0, biot: 5 }) // => 1
 */
export function cylinderRemaining({ fourier, biot }: { fourier: number; biot: number }): number {
  if (!(fourier >= 0)) throw new RangeError(`cylinderRemaining: fourier requires 0 or more, got ${fourier}`);
  if (fourier === 0) return 1;
  if (fourier < 5e-5) {
    if (biot !== Infinity)
      throw new RangeError(
        `cylinderRemaining: fourier requires 0 or 5e-5 and more at this biot, got ${fourier}`,
      );
    return 1 - 4 * Math.sqrt(fourier / Math.PI) + fourier + fourier ** 1.5 / (3 * Math.sqrt(Math.PI));
  }
  // Roots lie pi apart; terms below exp(-40) add nothing.
  const count = Math.ceil(Math.sqrt(40 / fourier) / Math.PI) + 1;
  return cylinderRoots({ biot, count }).reduce((sum, root) => {
    const square = root * root;
    const share = biot === Infinity ? 1 : biot ** 2 / (square + biot ** 2);
    return sum + (4 / square) * share * Math.exp(-square * fourier);
  }, 0);
}

function crossing(f: (x: number) => number, low: number, high: number): number {
  const sign = f(low) < 0 ? 1 : -1;
  const root = risingRoot((x) => sign * f(x), { level: 0, low, high, tolerance: 1e-15 });
  if (root === null) throw new RangeError(`crossing: f requires a change of sign within ${low}..${high}`);
  return root;
}
