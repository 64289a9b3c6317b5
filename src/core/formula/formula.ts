/**
 * What a formula is. It is kept in the record for ever, so it is plain JSON, flat, and every amount says what it
 * is a share of. Meat is lean plus fat as they lie trimmed on the bench, and meat is 100 %.
 */

/** Printed on the bag, in percent by weight; what is left is salt. A cure has no other name here. */
export type CureLabel = {
  readonly nitritePct: number;
  readonly nitratePct: number;
  readonly nitriteSalt: 'NaNO2' | 'KNO2';
  readonly nitrateSalt: 'NaNO3' | 'KNO3';
};

export type Role =
  | 'lean'
  | 'fat'
  | 'salt'
  | 'cure'
  | 'sugar'
  | 'starter'
  | 'spice'
  | 'liquid'
  | 'mould'
  | 'other';

/** An amount carries its base. Which grams it comes to is answered by `amountG` and nowhere else. */
export type Amount =
  | { readonly basis: 'pct-of-meat'; readonly amountPct: number }
  | { readonly basis: 'pct-of-lean'; readonly amountPct: number }
  /** Of the whole mix, this line included. */
  | { readonly basis: 'pct-of-total'; readonly amountPct: number }
  | { readonly basis: 'g-per-kg-meat'; readonly doseGPerKg: number }
  /** The same whatever the batch. */
  | { readonly basis: 'fixed'; readonly amountG: number }
  /** So much per kg of meat, but never less than `minimumG`. */
  | { readonly basis: 'at-least'; readonly minimumG: number; readonly doseGPerKg: number }
  | { readonly basis: 'per-piece'; readonly pieceG: number }
  /** The largest of: dose per kg of meat, that share of a pack, and the minimum. */
  | {
      readonly basis: 'pack-share';
      readonly packG: number;
      readonly packFraction: number;
      readonly doseGPerKg: number;
      readonly minimumG: number;
    };

export type Basis = Amount['basis'];

export type SugarKind = 'dextrose' | 'sucrose' | 'lactose' | 'fructose' | 'maltodextrin' | 'honey' | 'other';

export type Species =
  | 'pork'
  | 'beef'
  | 'lamb'
  | 'horse'
  | 'poultry'
  | 'wild-boar'
  | 'venison'
  | 'bear'
  | 'other';

export type FormulaLine = {
  readonly id: string;
  readonly name: string;
  readonly role: Role;
  readonly amount: Amount;
  /** A cure without it is a name, and a name says nothing: every nitrite figure is then unknown. */
  readonly cure?: CureLabel | undefined;
  readonly sugarKind?: SugarKind | undefined;
  /** Fermentable sugar hidden in a line that is not sugar (wine, must, paprika), percent of the line. */
  readonly hiddenSugarPct?: number | undefined;
  /** Sulphur dioxide of the line as printed or measured. Absent is unknown, not none. */
  readonly sulphiteMgPerKg?: number | undefined;
  /** Codes from `rules/allergens.ts`. */
  readonly allergens?: readonly string[] | undefined;
  /** For meat: which row of the table of cuts, and the fat content if it was measured. */
  readonly cutNdb?: string | undefined;
  readonly ownFatPct?: number | undefined;
  readonly note?: string | undefined;
};

export type Formula = {
  readonly name: string;
  readonly kind: 'comminuted' | 'whole-muscle';
  readonly species: readonly Species[];
  /** Wanted share of fat in the meat. Lines of role lean and fat only say what the lean and the fat are made of. */
  readonly fatPctOfMeat: number;
  readonly lines: readonly FormulaLine[];
  readonly diameterMm?: number | undefined;
  readonly pieceG?: number | undefined;
  readonly targetLossPct?: number | undefined;
  /** From stuffing to the end of drying, as planned. */
  readonly plannedDays?: number | undefined;
  readonly note?: string | undefined;
};

/**
 * Whether a line is mixed into the meat. The mould is sprayed on the casing and never counts as mix.
 *
 * @example isInMix('mould') // => false
 */
export function isInMix(role: Role): boolean {
  return role !== 'mould';
}

/**
 * Whether a line is one of the meats, whose grams come from the bench and not from its amount.
 *
 * @example isMeat('fat') // => true
 */
export function isMeat(role: Role): boolean {
  return role === 'lean' || role === 'fat';
}

/**
 * Whether a line carries nitrite or nitrate: by its role, or by a label, whatever role it was given. A nitrited salt
 * entered as salt must never lose its nitrite.
 *
 * @example isCure({ role: 'salt', cure: { nitritePct: 0.5, nitratePct: 0, nitriteSalt: 'NaNO2', nitrateSalt: 'NaNO3' } }) // => true
 */
export function isCure({ role, cure }: { role: Role; cure?: CureLabel | undefined }): boolean {
  return role === 'cure' || cure !== undefined;
}

/**
 * Whether a formula can only be weighed out once the number of pieces is known.
 *
 * @example needsPieces({ name: '', kind: 'comminuted', species: [], fatPctOfMeat: 25, lines: [] }) // => false
 */
export function needsPieces(formula: Formula): boolean {
  return formula.lines.some((line) => line.amount.basis === 'per-piece');
}

/** Grams, one for every line in the formula's own order. */
export type MassesG = readonly number[];

/** What the bench gives: the meat, the whole mix (for a percentage of it), and how many pieces. */
export type Bench = {
  readonly leanG: number;
  readonly fatG: number;
  readonly mixG: number;
  readonly pieces: number | null;
};

/**
 * The grams that an amount comes to.
 *
 * Formula: percentages and g/kg of their base; pack share = max(dose x meat, pack x share, minimum).
 * Units: g.
 * Source: arithmetic (derived).
 * @throws RangeError if the amount is counted per piece and the number of pieces is unknown.
 * @example amountG({ basis: 'at-least', minimumG: 6.25, doseGPerKg: 0.12 }, { leanG: 900, fatG: 300, mixG: 1250, pieces: null }) // => 6.25
 */
export function amountG(amount: Amount, { leanG, fatG, mixG, pieces }: Bench): number {
  const meatG = leanG + fatG;
  switch (amount.basis) {
    case 'pct-of-meat':
      return (meatG * amount.amountPct) / 100;
    case 'pct-of-lean':
      return (leanG * amount.amountPct) / 100;
    case 'pct-of-total':
      return (mixG * amount.amountPct) / 100;
    case 'g-per-kg-meat':
      return (meatG * amount.doseGPerKg) / 1000;
    case 'fixed':
      return amount.amountG;
    case 'at-least':
      return Math.max((meatG * amount.doseGPerKg) / 1000, amount.minimumG);
    case 'per-piece':
      if (pieces === null || !(pieces >= 0))
        throw new RangeError(`amountG: pieces requires a count of pieces, got ${pieces}`);
      return amount.pieceG * pieces;
    case 'pack-share':
      return Math.max(
        (meatG * amount.doseGPerKg) / 1000,
        amount.packG * amount.packFraction,
        amount.minimumG,
      );
  }
}
