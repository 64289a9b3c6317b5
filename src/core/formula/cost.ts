/** What a kilo of finished sausage has cost. Money is counted in hundredths of whatever the maker's money is. */

/** Hundredths of the maker's own money; whole or not. */
export type Cents = number;

export type Cost = { readonly id: string; readonly priceCents: Cents };

export type FinishedCost = {
  readonly totalCents: Cents;
  /** What can be eaten or sold: after drying, samples and dead loss. */
  readonly usableG: number;
  readonly centsPerKg: Cents;
  readonly centsPerPiece: Cents | null;
};

/**
 * Cost by usable finished weight.
 *
 * Wrong tool: while the loss is a plan: then it is an estimate as rough as that plan.
 *
 * Formula: all costs / (green x (1 - loss) x (1 - sampled)).
 * Units: hundredths of money, g, percent.
 * Source: arithmetic (derived).
 * @throws RangeError if nothing usable is left.
 * @example costOfFinished({ costs: [{ id: 'meat', priceCents: 4000 }, { id: 'rest', priceCents: 1400 }], greenG: 5400, lossPct: 0, sampledPct: 0, pieces: 10 }) // => { totalCents: 5400, usableG: 5400, centsPerKg: 1000, centsPerPiece: 540 }
 */
export function costOfFinished({
  costs,
  greenG,
  lossPct,
  sampledPct,
  pieces,
}: {
  costs: readonly Cost[];
  greenG: number;
  lossPct: number;
  sampledPct: number;
  pieces: number | null;
}): FinishedCost {
  const usableG = greenG * (1 - lossPct / 100) * (1 - sampledPct / 100);
  if (!(usableG > 0 && lossPct >= 0 && sampledPct >= 0))
    throw new RangeError(`costOfFinished: greenG requires something usable to be left, got ${usableG}`);
  const totalCents = costs.reduce((sum, { priceCents }) => sum + priceCents, 0);
  return {
    totalCents,
    usableG,
    centsPerKg: (1000 * totalCents) / usableG,
    centsPerPiece: pieces !== null && pieces > 0 ? totalCents / pieces : null,
  };
}
