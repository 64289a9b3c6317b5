import { type Amount, amountG, type Bench } from './formula.ts';

/** The same grams said on another base. Switching what a line is counted on never changes what is weighed. */

/** The bases a maker can switch a line to. A share of a pack is not one: it takes a pack. */
export type ShownBasis =
  | 'pct-of-meat'
  | 'pct-of-lean'
  | 'pct-of-total'
  | 'g-per-kg-meat'
  | 'fixed'
  | 'at-least'
  | 'per-piece';

export type InEveryBasis = {
  readonly massG: number;
  readonly pctOfMeat: number;
  /** Null where there is no lean, or no count of pieces. */
  readonly pctOfLean: number | null;
  readonly pctOfTotal: number;
  readonly gPerKgMeat: number;
  readonly pieceG: number | null;
};

/**
 * One amount on all bases at once, for the batch at hand.
 *
 * Units: g, percent, g/kg of meat. Source: arithmetic (derived).
 * @throws RangeError if there is no meat.
 * @example inEveryBasis(50, { leanG: 750, fatG: 250, mixG: 1250, pieces: null }).pctOfTotal // => 4
 */
export function inEveryBasis(massG: number, { leanG, fatG, mixG, pieces }: Bench): InEveryBasis {
  const meatG = leanG + fatG;
  if (!(meatG > 0 && mixG > 0))
    throw new RangeError(`inEveryBasis: meatG requires meat above 0 g, got ${meatG}`);
  return {
    massG,
    pctOfMeat: (100 * massG) / meatG,
    pctOfLean: leanG > 0 ? (100 * massG) / leanG : null,
    pctOfTotal: (100 * massG) / mixG,
    gPerKgMeat: (1000 * massG) / meatG,
    pieceG: pieces !== null && pieces > 0 ? massG / pieces : null,
  };
}

/**
 * An amount restated on another base, with the same grams for this batch.
 *
 * Wrong tool: for a batch of another size; a fixed amount turned into a percentage grows with the meat from then on.
 *
 * Formula: grams by `amountG`, divided by the new base.
 * Units: as the amount. Source: arithmetic (derived).
 * @throws RangeError if the new base is nothing: no lean, no pieces.
 * @example rebase({ amount: { basis: 'pct-of-total', amountPct: 4 }, basis: 'pct-of-meat', bench: { leanG: 750, fatG: 250, mixG: 1250, pieces: null } }) // => { basis: 'pct-of-meat', amountPct: 5 }
 */
export function rebase({
  amount,
  basis,
  bench,
}: {
  amount: Amount;
  basis: ShownBasis;
  bench: Bench;
}): Amount {
  if (amount.basis === basis) return amount;
  const massG = amountG(amount, bench);
  const { pctOfMeat, pctOfLean, pctOfTotal, gPerKgMeat, pieceG } = inEveryBasis(massG, bench);
  switch (basis) {
    case 'pct-of-meat':
      return { basis, amountPct: pctOfMeat };
    case 'pct-of-lean':
      if (pctOfLean === null)
        throw new RangeError(`rebase: leanG requires lean above 0 g, got ${bench.leanG}`);
      return { basis, amountPct: pctOfLean };
    case 'pct-of-total':
      return { basis, amountPct: pctOfTotal };
    case 'g-per-kg-meat':
      return { basis, doseGPerKg: gPerKgMeat };
    case 'fixed':
      return { basis, amountG: massG };
    case 'at-least':
      return { basis, minimumG: 0, doseGPerKg: gPerKgMeat };
    case 'per-piece':
      if (pieceG === null)
        throw new RangeError(`rebase: pieces requires a count above 0, got ${bench.pieces}`);
      return { basis, pieceG };
  }
}
