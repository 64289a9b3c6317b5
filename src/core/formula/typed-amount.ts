import { type MassUnit, massToG } from '#core/units.ts';
import type { Amount } from './formula.ts';
import { readNumber } from './typed-number.ts';

/**
 * Reads an amount as recipes print it: "5 % of total", "1.5 oz for 10 lb", "at least 2.5 g, 0.12 g/kg". What a recipe
 * leaves open is asked back by name and never guessed.
 */

export type AmountProblem =
  | 'empty'
  | 'not-understood'
  | 'unit-missing'
  /** A bare percentage: of meat, of lean or of the whole mix? */
  | 'percent-of-what'
  | 'over-100-percent'
  /** mg/kg or ppm of an agent is no amount of a cure: that takes the label. */
  | 'agent-not-cure'
  /** Two sets of spoons differ by a quarter. */
  | 'spoons'
  | 'volume'
  /** "1,250" with a decimal point, or "1.250" with a decimal comma. */
  | 'ambiguous-number';

export type ReadAmount =
  | {
      readonly ok: true;
      readonly amount: Amount;
      /** True where the recipe did not say what "per kg" is counted on and meat was taken, as the trade does. */
      readonly assumedMeat: boolean;
    }
  | { readonly ok: false; readonly problem: AmountProblem };

const MASS_UNITS: Readonly<Record<string, MassUnit>> = {
  g: 'g',
  gr: 'g',
  gram: 'g',
  grams: 'g',
  kg: 'kg',
  kilo: 'kg',
  kilos: 'kg',
  oz: 'oz',
  ounce: 'oz',
  ounces: 'oz',
  lb: 'lb',
  lbs: 'lb',
  pound: 'lb',
  pounds: 'lb',
};
const NUMBER = String.raw`(\d+ \d+\/\d+|\d+\/\d+|\d*[.,]?\d+(?:[.,]\d+)*)`;
const UNIT = `(${Object.keys(MASS_UNITS).join('|')})`;
const MASS = String.raw`${NUMBER} ?${UNIT}\b`;
const PER = String.raw`(?:\/|per|for|to|in|on|each)`;
const OF = '(?:of |of the )?';
const MEAT = `${OF}(?:the )?(meat block|meat and fat|meat \\+ fat|meat|lean|total mix|total|mix|batter|batch)`;

const PERCENT = new RegExp(`^${NUMBER} ?(?:%|percent|per cent)(?: ${MEAT})?$`);
const PER_MASS = new RegExp(`^${MASS} ?${PER} ?(?:${NUMBER} ?)?${UNIT}\\b(?: ${MEAT})?$`);
const PER_PIECE = new RegExp(`^${MASS} ?(?:\\/|per|for each|each) ?(?:piece|sausage|link)?$`);
const AT_LEAST = new RegExp(
  `^(?:(.+?),? ?(?:but )?(?:at least|min|minimum) ${MASS}|at least ${MASS},? ?(.+))$`,
);
const PACK = new RegExp(`^${NUMBER} (?:of )?(?:a |the )?(?:pack|packet|sachet) of ${MASS}$`);
const FIXED = new RegExp(`^${MASS}$`);
const HALVES: Readonly<Record<string, string>> = {
  '½': '1/2',
  '¼': '1/4',
  '¾': '3/4',
  '⅓': '1/3',
  '⅛': '1/8',
};

/**
 * A recipe's amount, or the name of what has to be asked.
 *
 * Wrong tool: for the grams on a scale; a weighing has its own keys.
 *
 * Units: pounds and ounces become g/kg; `decimal` is the maker's own mark and settles "1,250".
 * Source: 1 lb = 453.59237 g (memory-high); the two sets of spoons: forum report (read).
 * @example readAmount('1.5 oz for 10 lb', '.') // => { ok: true, amount: { basis: 'g-per-kg-meat', doseGPerKg: 9.375 }, assumedMeat: true }
 * @example readAmount('5 % of total', '.') // => { ok: true, amount: { basis: 'pct-of-total', amountPct: 5 }, assumedMeat: false }
 * @example readAmount('2 tsp', '.') // => { ok: false, problem: 'spoons' }
 */
export function readAmount(typed: string, decimal: '.' | ','): ReadAmount {
  const text = typed
    .trim()
    .toLowerCase()
    .replaceAll(/(\d)([½¼¾⅓⅛])/g, '$1 $2')
    .replaceAll(/[½¼¾⅓⅛]/g, (half) => HALVES[half] ?? half)
    .replaceAll(/\s+/g, ' ');
  if (text === '') return { ok: false, problem: 'empty' };
  if (/\b(tsp|tbsp|teaspoons?|tablespoons?|cups?)\b/.test(text)) return { ok: false, problem: 'spoons' };
  if (/\d ?(ml|cl|l|litres?|liters?|fl ?oz|pints?)\b/.test(text)) return { ok: false, problem: 'volume' };
  if (/\bppm\b|mg ?(\/|per) ?kg/.test(text)) return { ok: false, problem: 'agent-not-cure' };
  return read(text, decimal);
}

function read(text: string, decimal: '.' | ','): ReadAmount {
  const failed = (problem: AmountProblem): ReadAmount => ({ ok: false, problem });
  const made = (amount: Amount, assumedMeat = false): ReadAmount => ({ ok: true, amount, assumedMeat });
  const number = (digits: string | undefined) => readNumber(digits ?? '', decimal);
  const grams = (digits: string | undefined, unit: string | undefined): number | null => {
    const value = number(digits);
    const known = MASS_UNITS[unit ?? ''];
    return value === null || !known ? null : massToG({ value, unit: known });
  };

  const percent = PERCENT.exec(text);
  if (percent) {
    const [, digits, of] = percent;
    const amountPct = number(digits);
    if (amountPct === null) return failed('ambiguous-number');
    if (amountPct > 100) return failed('over-100-percent');
    if (of === undefined) return failed('percent-of-what');
    if (of === 'lean') return made({ basis: 'pct-of-lean', amountPct });
    return made({ basis: of.startsWith('meat') ? 'pct-of-meat' : 'pct-of-total', amountPct });
  }

  const perMass = PER_MASS.exec(text);
  if (perMass) {
    const [, digits, unit, perDigits, perUnit, of] = perMass;
    const massG = grams(digits, unit);
    const perG = grams(perDigits ?? '1', perUnit);
    if (massG === null || perG === null) return failed('ambiguous-number');
    if (!(massG >= 0 && perG > 0)) return failed('not-understood');
    const fraction = massG / perG;
    if (of === undefined || of.startsWith('meat'))
      return made({ basis: 'g-per-kg-meat', doseGPerKg: 1000 * fraction }, of === undefined);
    if (fraction > 1) return failed('over-100-percent');
    return made({ basis: of === 'lean' ? 'pct-of-lean' : 'pct-of-total', amountPct: 100 * fraction });
  }

  const atLeast = AT_LEAST.exec(text);
  if (atLeast) {
    const [, before, digits, unit, firstDigits, firstUnit, after] = atLeast;
    const minimumG = grams(digits ?? firstDigits, unit ?? firstUnit);
    if (minimumG === null) return failed('ambiguous-number');
    const dose = read(before ?? after ?? '', decimal);
    if (!dose.ok) return dose;
    if (dose.amount.basis !== 'g-per-kg-meat') return failed('not-understood');
    return made({ basis: 'at-least', minimumG, doseGPerKg: dose.amount.doseGPerKg }, dose.assumedMeat);
  }

  const pack = PACK.exec(text);
  if (pack) {
    const [, digits, massDigits, unit] = pack;
    const packFraction = number(digits);
    const packG = grams(massDigits, unit);
    if (packFraction === null || packG === null) return failed('ambiguous-number');
    if (!(packFraction >= 0 && packFraction <= 1)) return failed('not-understood');
    return made({ basis: 'pack-share', packG, packFraction, doseGPerKg: 0, minimumG: 0 });
  }

  const piece = PER_PIECE.exec(text);
  const fixed = piece ?? FIXED.exec(text);
  if (fixed) {
    const massG = grams(fixed[1], fixed[2]);
    if (massG === null) return failed('ambiguous-number');
    return piece ? made({ basis: 'per-piece', pieceG: massG }) : made({ basis: 'fixed', amountG: massG });
  }
  return failed(new RegExp(`^${NUMBER}$`).test(text) ? 'unit-missing' : 'not-understood');
}
