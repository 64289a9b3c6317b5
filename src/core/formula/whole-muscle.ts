import { nitriteMgPerKg, saltPctOfCure } from './cure.ts';
import type { CureLabel } from './formula.ts';

/** A whole muscle cured to equilibrium: each piece gets its own salt, by its own weight. */

export type PieceCure = {
  readonly pieceG: number;
  readonly saltG: number;
  readonly cureG: number;
  readonly totalSaltG: number;
  /** By weight of the salt on the label, on the green piece; what of it is taken up is another matter. */
  readonly nitriteMgPerKg: number;
};

/** Days in the bag that were read from makers, least and most; no rule by weight or thickness was agreed (read). */
export const BAG_DAYS = { low: 7, high: 21 } as const;

/**
 * Salt and cure for one piece so that all its salt, the cure's with it, is the percentage wanted. Null if the cure
 * alone already carries more salt than that.
 *
 * Wrong tool: for a mix, or for a brine. A muscle is limited by another figure than a mix, and belly by a lower one.
 *
 * Formula: cure = piece x cure%; salt = piece x salt% - cure x its share of salt.
 * Units: g, percent of the green piece.
 * Source: mass balance (derived); equilibrium cure by green weight: common practice.
 * @throws RangeError if the piece is not above zero.
 * @example equilibriumCure({ pieceG: 1000, totalSaltPct: 3, curePct: 0.25, label: { nitritePct: 6.25, nitratePct: 4, nitriteSalt: 'NaNO2', nitrateSalt: 'NaNO3' } }) // => { pieceG: 1000, saltG: 27.75625, cureG: 2.5, totalSaltG: 30, nitriteMgPerKg: 156.25 }
 */
export function equilibriumCure({
  pieceG,
  totalSaltPct,
  curePct,
  label,
}: {
  pieceG: number;
  totalSaltPct: number;
  curePct: number;
  label: CureLabel;
}): PieceCure | null {
  if (!(pieceG > 0)) throw new RangeError(`equilibriumCure: pieceG requires more than 0 g, got ${pieceG}`);
  const totalSaltG = (pieceG * totalSaltPct) / 100;
  const cureG = (pieceG * curePct) / 100;
  const saltG = totalSaltG - (cureG * saltPctOfCure(label)) / 100;
  if (!(saltG >= 0)) return null;
  return {
    pieceG,
    saltG,
    cureG,
    totalSaltG,
    nitriteMgPerKg: nitriteMgPerKg({ cureG, nitritePct: label.nitritePct, meatG: pieceG }),
  };
}
