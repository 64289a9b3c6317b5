/** Asks about percentages that are unlikely on a bag of curing salt. Pure; a question never blocks, the maker may keep what was typed. */

export type CureQuestion =
  | { readonly code: 'fraction' | 'tenfold'; readonly meantPct: number }
  | { readonly code: 'none' | 'nitrate-only' | 'pure' | 'unusual' | 'nitrate-high' };

/**
 * Nitrite that bags have been seen to hold: 0.4 to 0.6 % (nitrited salts), 5.67 to 6.25 % (cures to be mixed with salt).
 * From labels quoted by sellers and makers (read second-hand); used for a question only, never for a verdict.
 */
export const SEEN_NITRITE_PCT = [
  { fromPct: 0.4, toPct: 0.6 },
  { fromPct: 5.67, toPct: 6.25 },
] as const;

/** Labels were seen with 1 to 4 % (read second-hand). */
const MOST_SEEN_NITRATE_PCT = 5;
const NEARLY_PURE_PCT = 20;
/** 5.67 is printed 5.7 by some, 6.25 is 6.3: no question about a rounding. */
const ROUNDING_FRACTION = 0.01;

function seen(nitritePct: number): boolean {
  return SEEN_NITRITE_PCT.some(
    ({ fromPct, toPct }) =>
      nitritePct >= fromPct * (1 - ROUNDING_FRACTION) && nitritePct <= toPct * (1 + ROUNDING_FRACTION),
  );
}

export function cureQuestion({
  nitritePct,
  nitratePct,
}: {
  nitritePct: number;
  nitratePct: number;
}): CureQuestion | null {
  if (nitritePct === 0) return { code: nitratePct === 0 ? 'none' : 'nitrate-only' };
  if (!seen(nitritePct)) {
    const slips = [
      { code: 'fraction', meantPct: nitritePct * 100 },
      { code: 'tenfold', meantPct: nitritePct / 10 },
      { code: 'tenfold', meantPct: nitritePct * 10 },
    ] as const;
    const slip = slips.find(({ meantPct }) => seen(meantPct));
    if (slip) return { code: slip.code, meantPct: Number(slip.meantPct.toPrecision(6)) };
    return { code: nitritePct >= NEARLY_PURE_PCT ? 'pure' : 'unusual' };
  }
  return nitratePct > MOST_SEEN_NITRATE_PCT ? { code: 'nitrate-high' } : null;
}
