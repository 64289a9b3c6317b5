import { normalCdf, normalQuantile } from './normal.ts';

/** When the first of several pieces is at target, and when all are. */

/** Pieces of one batch hang in one air and are wrong together: this share of their doubt is common (own judgement). */
const COMMON_SHARE = 0.85;
const DRAWS = 24;
const LEAST_CHANCE = 1e-12;

/**
 * The chance that at least one, or that all of several pieces are there, at each of several instants.
 *
 * Each piece is there where sqrt(c) z + sqrt(1 - c) e <= its own normal quantile; z is common to all and summed over 24
 * equal parts of its distribution, e is its own: all = mean over z of the product, first = 1 - mean of the product of not.
 * Units: chances 0..1, one row a piece, one column an instant.
 * Source: one-factor normal copula; the common share of 0.85 is own judgement, between apart (0) and as one (1).
 * @throws RangeError if a chance is outside 0..1, or rows differ in length.
 * @example jointChances([[0, 1], [0, 1]]) // => { firstFraction: [0, 1], allFraction: [0, 1] }
 */
export function jointChances(chances: readonly (readonly number[])[]): {
  firstFraction: number[];
  allFraction: number[];
} {
  const count = chances[0]?.length ?? 0;
  for (const row of chances)
    if (row.length !== count || row.some((chance) => !(chance >= 0 && chance <= 1)))
      throw new RangeError(`jointChances: chances require rows of one length within 0..1, got ${row}`);
  const draws = Array.from({ length: DRAWS }, (_, draw) => quantile((draw + 0.5) / DRAWS));
  const own = Math.sqrt(1 - COMMON_SHARE);
  const given = (chance: number, z: number) =>
    chance === 0 || chance === 1 ? chance : normalCdf((quantile(chance) - Math.sqrt(COMMON_SHARE) * z) / own);
  const firstFraction: number[] = [];
  const allFraction: number[] = [];
  for (let at = 0; at < count; at++) {
    let none = 0;
    let every = 0;
    for (const z of draws) {
      const there = chances.map((row) => given(row[at] ?? 0, z));
      every += there.reduce((product, chance) => product * chance, 1) / DRAWS;
      none += there.reduce((product, chance) => product * (1 - chance), 1) / DRAWS;
    }
    firstFraction.push(1 - none);
    allFraction.push(every);
  }
  return { firstFraction, allFraction };
}

/** Nearer to certain than that is certain. */
function quantile(chance: number): number {
  return normalQuantile(Math.min(1 - LEAST_CHANCE, Math.max(LEAST_CHANCE, chance)));
}
