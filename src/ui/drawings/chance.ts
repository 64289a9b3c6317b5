/**
 * Numbers from 0 up to 1 that only look like chance: the same seed gives the same ones, so that a piece keeps its
 * flecks. A 32-bit mixing step on a Weyl sequence; good enough to look at, for nothing else.
 */
export function chanceFrom(seed: number): () => number {
  let state = seed >>> 0;
  return () => {
    state = (state + 0x9e3779b9) >>> 0;
    let mixed = Math.imul(state ^ (state >>> 16), 0x21f0aaad);
    mixed = Math.imul(mixed ^ (mixed >>> 15), 0x735a2d97);
    return ((mixed ^ (mixed >>> 15)) >>> 0) / 2 ** 32;
  };
}
