import { type MixFractions, mixAw, requireMix } from './water-activity.ts';

/**
 * The loss at which a piece comes to rest in air of one humidity: the air's ceiling on any target.
 * 0 where the air is as wet as the piece or wetter: such air dries nothing.
 * The wrong tool for a date: it says where drying ends, not when.
 *
 * The loss L at which mixAw(L) = RH, found by halving; L = w0 - We(RH).
 * Units: parts of green mass 0..1, % relative humidity; result % of green weight.
 * Source: the sorption model of `mixAw`; checked against a table computed elsewhere from the same model.
 * @throws RangeError if the humidity is not within 0..100, or the mix is not one.
 * @example equilibriumLossPct({ mix: { waterFraction: 0.6, proteinFraction: 0.16, saltFraction: 0.027, sugarFraction: 0.005 }, humidityPct: 99 }) // => 0
 */
export function equilibriumLossPct({ mix, humidityPct }: { mix: MixFractions; humidityPct: number }): number {
  requireMix('equilibriumLossPct', mix);
  if (!(humidityPct >= 0 && humidityPct <= 100))
    throw new RangeError(`equilibriumLossPct: humidityPct requires 0..100, got ${humidityPct}`);
  if (mixAw({ mix, lossPct: 0 }) <= humidityPct / 100) return 0;
  let dryEnoughPct = 0;
  let tooDryPct = 100 * mix.waterFraction;
  for (let halving = 0; halving < 50; halving++) {
    const middlePct = (dryEnoughPct + tooDryPct) / 2;
    if (middlePct === dryEnoughPct || middlePct === tooDryPct) break;
    if (mixAw({ mix, lossPct: middlePct }) > humidityPct / 100) dryEnoughPct = middlePct;
    else tooDryPct = middlePct;
  }
  return (dryEnoughPct + tooDryPct) / 2;
}

/**
 * A mix told by its fat alone: what is not fat, salt or sugar is lean with 77.5 % water and 21 % protein.
 * The wrong tool where the cuts are known: then their own water and protein are better.
 *
 * Units: parts of green mass 0..1.
 * Valid: raw pork; cuts lie within 0.766..0.789 water and 0.199..0.226 protein of their fat-free part.
 * Source: USDA, National Nutrient Database for Standard Reference (release 26), raw pork cuts, computed from it.
 * @throws RangeError if the parts leave no lean.
 * @example mixFromFat({ fatFraction: 0.2, saltFraction: 0, sugarFraction: 0 }) // => { waterFraction: 0.62, proteinFraction: 0.168, saltFraction: 0, sugarFraction: 0 }
 */
export function mixFromFat({
  fatFraction,
  saltFraction,
  sugarFraction,
}: {
  fatFraction: number;
  saltFraction: number;
  sugarFraction: number;
}): MixFractions {
  const leanFraction = 1 - fatFraction - saltFraction - sugarFraction;
  if (!(fatFraction >= 0 && saltFraction >= 0 && sugarFraction >= 0 && leanFraction > 0))
    throw new RangeError(
      `mixFromFat: parts require 0..1 with lean left, got ${fatFraction}, ${saltFraction}, ${sugarFraction}`,
    );
  return {
    waterFraction: 0.775 * leanFraction,
    proteinFraction: 0.21 * leanFraction,
    saltFraction,
    sugarFraction,
  };
}
