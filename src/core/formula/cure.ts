import type { CureLabel } from './formula.ts';

/** From a label and grams to milligrams of nitrite and nitrate, as the salt on the label, as sodium salt and as ion. */

export type CureSalt = CureLabel['nitriteSalt'] | CureLabel['nitrateSalt'];

/** g/mol from the elements' atomic weights (computed). */
const MOLAR_G_PER_MOL: Readonly<Record<CureSalt | 'NO2' | 'NO3', number>> = {
  NaNO2: 68.9953,
  KNO2: 85.1038,
  NaNO3: 84.9947,
  KNO3: 101.1032,
  NO2: 46.0055,
  NO3: 62.0049,
};

/**
 * Published with Regulation (EU) 2023/2108 by two trade information services (read): 0.67, 0.73, 0.61.
 * None was published for potassium nitrite; its factor is the molar one (derived).
 */
const PUBLISHED_ION_FACTOR: Readonly<Record<CureSalt, number>> = {
  NaNO2: 0.67,
  NaNO3: 0.73,
  KNO3: 0.61,
  KNO2: 46.0055 / 85.1038,
};

/**
 * Share of the ion in one of the four salts, from molar masses.
 *
 * Formula: M(ion) / M(salt). Units: fraction. Source: atomic weights (derived).
 * @example molarIonFraction('KNO2') // => 46.0055 / 85.1038
 */
export function molarIonFraction(salt: CureSalt): number {
  return (salt.endsWith('NO2') ? MOLAR_G_PER_MOL.NO2 : MOLAR_G_PER_MOL.NO3) / MOLAR_G_PER_MOL[salt];
}

/**
 * The ion in so many mg/kg of a salt, by the factors published for the EU limits.
 *
 * Wrong tool: for potassium nitrate the published factor is lower than the molar one, so the upper end of a figure
 * takes `ionUpperMgPerKg`.
 *
 * Units: mg/kg.
 * Source: AGRINFO, summary of Regulation (EU) 2023/2108, conversion factors (read).
 * @example ionMgPerKg({ mgPerKg: 150, salt: 'NaNO2' }) // => 100.5
 */
export function ionMgPerKg({ mgPerKg, salt }: { mgPerKg: number; salt: CureSalt }): number {
  return mgPerKg * PUBLISHED_ION_FACTOR[salt];
}

/**
 * The ion counted against the maker: the larger of the published and the molar factor.
 *
 * Units: mg/kg.
 * @example ionUpperMgPerKg({ mgPerKg: 100, salt: 'NaNO3' }) // => 73
 */
export function ionUpperMgPerKg({ mgPerKg, salt }: { mgPerKg: number; salt: CureSalt }): number {
  return mgPerKg * Math.max(PUBLISHED_ION_FACTOR[salt], molarIonFraction(salt));
}

/**
 * The same nitrite or nitrate, stated as the sodium salt.
 *
 * Formula: x M(sodium salt) / M(salt). Units: mg/kg. Source: atomic weights (derived).
 * @example asSodiumMgPerKg({ mgPerKg: 156.25, salt: 'NaNO2' }) // => 156.25
 */
export function asSodiumMgPerKg({ mgPerKg, salt }: { mgPerKg: number; salt: CureSalt }): number {
  const sodium = salt.endsWith('NO2') ? MOLAR_G_PER_MOL.NaNO2 : MOLAR_G_PER_MOL.NaNO3;
  return (mgPerKg * sodium) / MOLAR_G_PER_MOL[salt];
}

/**
 * What is salt in a cure: all that is neither nitrite nor nitrate. Anti-caking agent counts as salt here.
 *
 * Units: percent of the cure.
 * @throws RangeError if the two shares are not between 0 and 100 together.
 * @example saltPctOfCure({ nitritePct: 6.25, nitratePct: 4, nitriteSalt: 'NaNO2', nitrateSalt: 'NaNO3' }) // => 89.75
 */
export function saltPctOfCure({ nitritePct, nitratePct }: CureLabel): number {
  if (!(nitritePct >= 0 && nitratePct >= 0 && nitritePct + nitratePct <= 100))
    throw new RangeError(
      `saltPctOfCure: label requires shares of 0 to 100 %, got ${nitritePct} and ${nitratePct}`,
    );
  return 100 - nitritePct - nitratePct;
}

/**
 * Ingoing nitrite of one cure.
 *
 * Formula: cure x nitrite share x 1 000 000 / green weight of meat. The share is a fraction: 6.25 % is 0.0625.
 * Units: mg/kg of the salt on the label, on the green weight of meat.
 * Source: USDA FSIS, Directive 7620.3 Processing Inspectors' Calculations Handbook (1995), chapter 3, p. 15 (read-second-hand).
 * @throws RangeError if there is no meat.
 * @example nitriteMgPerKg({ cureG: 2.5, nitritePct: 6.25, meatG: 1000 }) // => 156.25
 */
export function nitriteMgPerKg({
  cureG,
  nitritePct,
  meatG,
}: {
  cureG: number;
  nitritePct: number;
  meatG: number;
}): number {
  if (!(meatG > 0)) throw new RangeError(`nitriteMgPerKg: meatG requires meat above 0 g, got ${meatG}`);
  return (cureG * nitritePct * 10000) / meatG;
}

/**
 * The cure that carries so much nitrite: the same dose from another bag.
 *
 * Formula: meat x mg/kg / (share x 10 000). Units: g.
 * Source: USDA FSIS, Directive 7620.3 (1995), chapter 3, inverse (derived).
 * @throws RangeError if the bag holds no nitrite.
 * @example cureForNitriteG({ nitriteMgPerKg: 156, nitritePct: 0.6, meatG: 1000 }) // => 26
 */
export function cureForNitriteG({
  nitriteMgPerKg: wantedMgPerKg,
  nitritePct,
  meatG,
}: {
  nitriteMgPerKg: number;
  nitritePct: number;
  meatG: number;
}): number {
  if (!(nitritePct > 0))
    throw new RangeError(`cureForNitriteG: nitritePct requires a share above 0 %, got ${nitritePct}`);
  return (wantedMgPerKg * meatG) / (nitritePct * 10000);
}
