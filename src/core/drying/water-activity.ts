/** Water activity of brine and of a drying sausage, from what is in it. An estimate, never a reading. */

/** kg per mol. */
const WATER_KG_PER_MOL = 0.0180153;
const SALT_KG_PER_MOL = 0.0584428;
const DEXTROSE_KG_PER_MOL = 0.18016;
/** Saturated brine, 25 °C: the reach of the fit, and where salt starts to stay undissolved. */
const SATURATED_MOL_PER_KG = 6.144;
/** Lean meat's own salts, acids and amino acids: fresh lean stands at about aw 0.99 (from memory, medium confidence). */
const OSMOL_PER_KG_WATER = 0.6;

/** What the drying core needs to know of a mix: parts of its green mass, 0..1, meat, cure and everything else together. */
export type MixFractions = {
  readonly waterFraction: number;
  readonly proteinFraction: number;
  /** All the salt, with what the cure carries. */
  readonly saltFraction: number;
  /** Fermentable sugar, as dextrose: the culture turns one mole into two of lactic acid. */
  readonly sugarFraction: number;
};

/**
 * Water activity of a sodium chloride brine.
 *
 * ln aw = -2 phi m Mw; phi - 1 = -A sqrt(m) / (1 + 1.2 sqrt(m)) + m (B0 + B1 exp(-2 sqrt(m))) + m² C.
 * Units: mol salt per kg water; result 0..1.
 * Valid: 0 to 6.144 mol/kg (saturation), 25 °C; between 0 and 30 °C the change is below 0.003.
 * Source: Pitzer, K. S. & Mayorga, G., J. Phys. Chem. 77 (1973) 2300, parameters from memory, high confidence; within
 * 5e-4 of Robinson & Stokes' osmotic coefficients.
 * @throws RangeError outside the valid range.
 * @example naclAw({ molalityMolPerKg: 0 }) // => 1
 */
export function naclAw({ molalityMolPerKg }: { molalityMolPerKg: number }): number {
  if (!(molalityMolPerKg >= 0 && molalityMolPerKg <= SATURATED_MOL_PER_KG))
    throw new RangeError(
      `naclAw: molalityMolPerKg requires 0..${SATURATED_MOL_PER_KG}, got ${molalityMolPerKg}`,
    );
  const root = Math.sqrt(molalityMolPerKg);
  const osmotic =
    1 -
    (0.3915 * root) / (1 + 1.2 * root) +
    molalityMolPerKg * (0.0765 + 0.2664 * Math.exp(-2 * root)) +
    molalityMolPerKg * molalityMolPerKg * 0.00127;
  return Math.exp(-2 * osmotic * molalityMolPerKg * WATER_KG_PER_MOL);
}

/**
 * Water activity that the protein alone allows at a given moisture: the GAB isotherm solved for aw, 1 once it is swollen.
 *
 * X = Xm C K a / ((1 - K a)(1 - K a + C K a)), Xm 0.065, C 12, K 0.94.
 * Units: kg water per kg protein; result 0..1.
 * Source: form from memory, high confidence; parameters an engineering default from memory, medium confidence (no
 * published set for dry sausage could be read). Above aw 0.75 salt decides, not this term.
 * @throws RangeError unless above zero.
 * @example proteinAw({ waterKgPerKg: 3 }) // => 1
 */
export function proteinAw({ waterKgPerKg }: { waterKgPerKg: number }): number {
  if (!(waterKgPerKg > 0 && waterKgPerKg < Infinity))
    throw new RangeError(`proteinAw: waterKgPerKg requires a value above 0, got ${waterKgPerKg}`);
  const linear = 10 * waterKgPerKg - 0.065 * 12;
  const bound =
    (linear + Math.sqrt(linear * linear + 44 * waterKgPerKg * waterKgPerKg)) / (22 * waterKgPerKg);
  return Math.min(1, bound / 0.94);
}

/**
 * Water activity of the mix after a loss of weight: brine, other solutes and protein, each as if in all the water.
 * The wrong tool for a verdict: it is good to about ±0.02 (one sd), and a meter reading always comes before it.
 *
 * aw = aw_brine · exp(-Mw n / (w - L)) · aw_protein; n = 0.6 w + 2 sugar / 0.18016 osmol per kg of green mix; past
 * saturation the brine stays saturated.
 * Units: parts of green mass 0..1, loss in % of green mass; result 0..1.
 * Source: Ross, K. D., J. Food Sci. 40 (1975), multiplicative rule, from memory, high confidence; parts as above.
 * @throws RangeError if the mix is not one, or the loss leaves no water.
 * @example mixAw({ mix: { waterFraction: 0.6, proteinFraction: 0.16, saltFraction: 0, sugarFraction: 0 }, lossPct: 0 }) // => 0.9892490292658762
 */
export function mixAw({ mix, lossPct }: { mix: MixFractions; lossPct: number }): number {
  requireMix('mixAw', mix);
  const waterFraction = mix.waterFraction - lossPct / 100;
  if (!(waterFraction > 0))
    throw new RangeError(`mixAw: lossPct requires less than the mix's water, got ${lossPct}`);
  const molalityMolPerKg = mix.saltFraction / (SALT_KG_PER_MOL * waterFraction);
  const osmolPerKg = OSMOL_PER_KG_WATER * mix.waterFraction + (2 * mix.sugarFraction) / DEXTROSE_KG_PER_MOL;
  return (
    naclAw({ molalityMolPerKg: Math.min(molalityMolPerKg, SATURATED_MOL_PER_KG) }) *
    Math.exp((-WATER_KG_PER_MOL * osmolPerKg) / waterFraction) *
    proteinAw({ waterKgPerKg: waterFraction / mix.proteinFraction })
  );
}

/**
 * Stops at what cannot be a sausage mix.
 *
 * @throws RangeError unless the parts are of one mass.
 * @example requireMix('here', { waterFraction: 0.6, proteinFraction: 0.16, saltFraction: 0.03, sugarFraction: 0 }) // => undefined
 */
export function requireMix(functionName: string, mix: MixFractions): void {
  const { waterFraction, proteinFraction, saltFraction, sugarFraction } = mix;
  const sum = waterFraction + proteinFraction + saltFraction + sugarFraction;
  if (
    !(waterFraction > 0 && proteinFraction > 0 && saltFraction >= 0 && sugarFraction >= 0 && sum <= 1 + 1e-9)
  )
    throw new RangeError(`${functionName}: mix requires parts of one mass, 0..1, got ${JSON.stringify(mix)}`);
}
