import { nitriteMgPerKg } from './cure.ts';

/** What can still be put right before the mix is stuffed. */

/**
 * Meat that brings a cure weighed too heavily back to the dose. Every other line has to grow with it.
 *
 * Wrong tool: once the mix is stuffed, or where the cure lies in the mix unevenly; then the batch is a deviation.
 *
 * Formula: cure x meat / wanted cure - meat.
 * Units: g.
 * Source: mass balance (derived).
 * @throws RangeError if the wanted cure or the meat is not above zero.
 * @example meatToDiluteG({ cureG: 10, wantedCureG: 8, meatG: 3200 }) // => 800
 */
export function meatToDiluteG({
  cureG,
  wantedCureG,
  meatG,
}: {
  cureG: number;
  wantedCureG: number;
  meatG: number;
}): number {
  if (!(wantedCureG > 0 && meatG > 0))
    throw new RangeError(
      `meatToDiluteG: wantedCureG and meatG require more than 0 g, got ${wantedCureG} and ${meatG}`,
    );
  return Math.max(0, (cureG * meatG) / wantedCureG - meatG);
}

export type Shortfall = {
  readonly missingG: number;
  readonly missingPct: number;
  /** What is in now, of nitrite, by weight of its salt on green meat; null if the line is no labelled cure. */
  readonly nitriteMgPerKg: number | null;
};

/**
 * How far a line was weighed short, and what has to be added while that is still possible.
 *
 * Units: g, percent of the target, mg/kg.
 * Source: mass balance (derived).
 * @throws RangeError if the target or the meat is not above zero.
 * @example shortfall({ targetG: 8, weighedG: 6, meatG: 3200, nitritePct: 6.25 }) // => { missingG: 2, missingPct: 25, nitriteMgPerKg: 117.1875 }
 */
export function shortfall({
  targetG,
  weighedG,
  meatG,
  nitritePct,
}: {
  targetG: number;
  weighedG: number;
  meatG: number;
  nitritePct: number | null;
}): Shortfall {
  if (!(targetG > 0)) throw new RangeError(`shortfall: targetG requires more than 0 g, got ${targetG}`);
  const missingG = Math.max(0, targetG - weighedG);
  return {
    missingG,
    missingPct: (100 * missingG) / targetG,
    nitriteMgPerKg: nitritePct === null ? null : nitriteMgPerKg({ cureG: weighedG, nitritePct, meatG }),
  };
}
