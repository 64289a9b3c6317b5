import { fatToAddG } from './fat.ts';
import type { Formula } from './formula.ts';
import { exactGrams } from './weigh-out.ts';

/** How large the batch is: by the meat at hand, by pieces and casing, by finished weight, or by the fat wanted. */

export type BenchMeat = { readonly leanG: number; readonly fatG: number };

/** Halvings until binary numbers have no finer step between two guesses. */
const HALVINGS = 200;

/** The meat of a formula in its own proportion of lean and fat. */
function meatOf(formula: Formula, meatG: number): BenchMeat {
  const fatG = (meatG * formula.fatPctOfMeat) / 100;
  return { leanG: meatG - fatG, fatG };
}

/** The largest meat at which a rising quantity is still within bounds. */
function mostMeatG(upToG: number, fits: (meatG: number) => boolean): number {
  if (upToG > 0 && fits(upToG)) return upToG;
  let low = 0;
  let high = upToG;
  for (let halving = 0; halving < HALVINGS; halving++) {
    const middle = (low + high) / 2;
    if (middle === low || middle === high) break;
    if (fits(middle)) low = middle;
    else high = middle;
  }
  return low;
}

function mixOf(formula: Formula, meatG: number, pieces: number | null): number {
  const grams = exactGrams({ formula, ...meatOf(formula, meatG), pieces });
  return formula.lines.reduce((sum, { role }, at) => {
    return role === 'lean' || role === 'fat' || role === 'mould' ? sum : sum + (grams[at] ?? 0);
  }, meatG);
}

export type RunsOut = {
  readonly leanG: number;
  readonly fatG: number;
  /** `lean`, `fat`, or the id of the line that is used up first. */
  readonly runsOut: string;
  readonly leanLeftG: number;
  readonly fatLeftG: number;
};

/**
 * The largest batch from what is at hand in the formula's proportion of lean and fat, and what runs out first.
 * `stock` holds grams at hand by line id; a line that is not in it is taken as plenty.
 *
 * Formula: the largest meat at which lean, fat and every stocked line suffice.
 * Units: g.
 * Source: mass balance (derived).
 * @throws RangeError as `exactGrams`.
 * @example batchFromStock({ formula: { name: '', kind: 'comminuted', species: [], fatPctOfMeat: 25, lines: [] }, leanG: 3000, fatG: 1300, pieces: null, stock: {} }) // => { leanG: 3000, fatG: 1000, runsOut: 'lean', leanLeftG: 0, fatLeftG: 300 }
 */
export function batchFromStock({
  formula,
  leanG,
  fatG,
  pieces,
  stock,
}: {
  formula: Formula;
  leanG: number;
  fatG: number;
  pieces: number | null;
  stock: Readonly<Record<string, number>>;
}): RunsOut {
  const share = formula.fatPctOfMeat / 100;
  const byLeanG = share < 1 ? leanG / (1 - share) : Number.POSITIVE_INFINITY;
  const byFatG = share > 0 ? fatG / share : Number.POSITIVE_INFINITY;
  const meatsG = Math.min(byLeanG, byFatG);
  let best = { meatG: meatsG, runsOut: byLeanG <= byFatG ? 'lean' : 'fat' };
  formula.lines.forEach(({ id, role }, at) => {
    const atHandG = stock[id];
    if (atHandG === undefined || role === 'lean' || role === 'fat') return;
    const needG = (meatG: number) => exactGrams({ formula, ...meatOf(formula, meatG), pieces })[at] ?? 0;
    const meatG = mostMeatG(meatsG, (some) => needG(some) <= atHandG);
    if (meatG < best.meatG) best = { meatG, runsOut: id };
  });
  const used = meatOf(formula, best.meatG);
  return {
    ...used,
    runsOut: best.runsOut,
    leanLeftG: leanG - used.leanG,
    fatLeftG: fatG - used.fatG,
  };
}

/**
 * The meat that makes so much green mix. Null if the lines that do not scale are already more than that.
 *
 * Units: g. Source: mass balance (derived).
 * @throws RangeError as `exactGrams`.
 * @example meatForMix({ formula: { name: '', kind: 'comminuted', species: [], fatPctOfMeat: 25, lines: [{ id: 'w', name: '', role: 'liquid', amount: { basis: 'pct-of-total', amountPct: 20 } }] }, mixG: 1000, pieces: null }) // => { leanG: 600, fatG: 200 }
 */
export function meatForMix({
  formula,
  mixG,
  pieces,
}: {
  formula: Formula;
  mixG: number;
  pieces: number | null;
}): BenchMeat | null {
  if (!(mixG > 0)) throw new RangeError(`meatForMix: mixG requires a mix above 0 g, got ${mixG}`);
  const meatG = mostMeatG(mixG, (some) => mixOf(formula, some, pieces) <= mixG);
  return meatG > 0 ? meatOf(formula, meatG) : null;
}

/**
 * Green mix for so many pieces of one green weight, with what stays in the stuffer.
 *
 * Units: g. Source: arithmetic (derived).
 * @example mixForPiecesG({ pieces: 12, pieceG: 500, leftoverG: 150 }) // => 6150
 */
export function mixForPiecesG({
  pieces,
  pieceG,
  leftoverG,
}: {
  pieces: number;
  pieceG: number;
  leftoverG: number;
}): number {
  return pieces * pieceG + leftoverG;
}

/**
 * Green mix for so much finished sausage, with the loss expected and the share cut for samples or lost.
 *
 * Wrong tool: as a promise; the loss is a plan until the pieces are weighed.
 *
 * Formula: finished / (1 - loss) / (1 - sampled).
 * Units: g, percent.
 * Source: mass balance (derived).
 * @throws RangeError if nothing would be left.
 * @example mixForFinishedG({ finishedG: 620, lossPct: 38, sampledPct: 0 }) // => 1000
 */
export function mixForFinishedG({
  finishedG,
  lossPct,
  sampledPct,
}: {
  finishedG: number;
  lossPct: number;
  sampledPct: number;
}): number {
  if (!(lossPct >= 0 && lossPct < 100 && sampledPct >= 0 && sampledPct < 100))
    throw new RangeError(
      `mixForFinishedG: lossPct and sampledPct require 0 to below 100 %, got ${lossPct} and ${sampledPct}`,
    );
  return finishedG / (1 - lossPct / 100) / (1 - sampledPct / 100);
}

/**
 * All the lean at hand with the fat that the wanted share asks for.
 *
 * Units: g, percent of the meat. Source: mass balance (derived).
 * @throws RangeError if the wanted share is not between 0 and 100 %.
 * @example benchForFat({ leanG: 4536, fatPct: 30 }) // => { leanG: 4536, fatG: 1944 }
 */
export function benchForFat({ leanG, fatPct }: { leanG: number; fatPct: number }): BenchMeat {
  return { leanG, fatG: fatToAddG({ leanG, fatPct }) };
}
