/** Lean and fat: how much to add, and in which proportion two cuts meet a wanted share of fat. */

/**
 * Fat to add to the lean at hand, where fat counts as all fat and lean as none.
 *
 * Wrong tool: when the fat content of the cuts is known; then `cutToAddG`.
 *
 * Formula: lean x wanted / (100 - wanted); a share of the mix, not of the lean.
 * Units: g, percent of the meat.
 * Source: mass balance (derived).
 * @throws RangeError if the wanted share is not between 0 and 100 %.
 * @example fatToAddG({ leanG: 4536, fatPct: 30 }) // => 1944
 */
export function fatToAddG({ leanG, fatPct }: { leanG: number; fatPct: number }): number {
  if (!(fatPct >= 0 && fatPct < 100))
    throw new RangeError(`fatToAddG: fatPct requires a share of 0 to below 100 %, got ${fatPct}`);
  return (leanG * fatPct) / (100 - fatPct);
}

/**
 * The share of fat that lies on the bench.
 *
 * Units: percent of the meat. Source: arithmetic (derived).
 * @throws RangeError if there is no meat.
 * @example fatPctOfMeat({ leanG: 3000, fatG: 1000 }) // => 25
 */
export function fatPctOfMeat({ leanG, fatG }: { leanG: number; fatG: number }): number {
  if (!(leanG >= 0 && fatG >= 0 && leanG + fatG > 0))
    throw new RangeError(`fatPctOfMeat: leanG and fatG require meat above 0 g, got ${leanG} and ${fatG}`);
  return (100 * fatG) / (leanG + fatG);
}

/**
 * How much of each of two cuts makes so much meat with so much fat (Pearson square). Null if the wanted share lies
 * outside the two.
 *
 * Formula: first = meat x (second - wanted) / (second - first).
 * Units: g, percent of chemical fat.
 * Source: mass balance of two parts, in the trade called the Pearson square (common-practice).
 * @example pearsonSquare({ firstFatPct: 5, secondFatPct: 85, wantedFatPct: 25, meatG: 4000 }) // => { firstG: 3000, secondG: 1000 }
 */
export function pearsonSquare({
  firstFatPct,
  secondFatPct,
  wantedFatPct,
  meatG,
}: {
  firstFatPct: number;
  secondFatPct: number;
  wantedFatPct: number;
  meatG: number;
}): { firstG: number; secondG: number } | null {
  const span = secondFatPct - firstFatPct;
  const share = (secondFatPct - wantedFatPct) / span;
  if (!(span !== 0 && share >= 0 && share <= 1)) return null;
  return { firstG: meatG * share, secondG: meatG * (1 - share) };
}

/**
 * How much of a second cut brings the first to the wanted share of fat. Null if it never can.
 *
 * Formula: have x (wanted - have%) / (add% - wanted).
 * Units: g, percent of chemical fat.
 * Source: mass balance (derived).
 * @example cutToAddG({ haveG: 3000, haveFatPct: 5, addFatPct: 85, wantedFatPct: 25 }) // => 1000
 */
export function cutToAddG({
  haveG,
  haveFatPct,
  addFatPct,
  wantedFatPct,
}: {
  haveG: number;
  haveFatPct: number;
  addFatPct: number;
  wantedFatPct: number;
}): number | null {
  if (wantedFatPct === haveFatPct) return 0;
  const massG = (haveG * (wantedFatPct - haveFatPct)) / (addFatPct - wantedFatPct);
  return massG > 0 && Number.isFinite(massG) ? massG : null;
}
