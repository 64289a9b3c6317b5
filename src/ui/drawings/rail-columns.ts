/**
 * How many pieces hang side by side where at most so many fit: as even as can be, so that no piece hangs alone on the
 * last rail.
 *
 * @example railColumns({ count: 8, most: 7 }) // => 4
 */
export function railColumns({ count, most }: { count: number; most: number }): number {
  return Math.ceil(count / Math.max(1, Math.ceil(count / most)));
}
