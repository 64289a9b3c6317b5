import { CUTS } from '#core/formula/cuts.ts';
import type { Basis, Role } from '#core/formula/formula.ts';
import { PURE_LABEL_PCT, WEAKEST_LABEL_PCT } from '#core/formula/guards.ts';
import type { ReadAmount } from '#core/formula/typed-amount.ts';
import { ALLERGENS } from '#core/rules/allergens.ts';
import type { Place } from '#record/place.ts';
import { readQuantity } from '#ui/quantity-input.ts';
import type { Words } from '#words/en.ts';
import { decimal } from '#words/format.ts';
import { amountText } from './amount-text.ts';
import {
  type AmountField,
  FIELDS_OF,
  fieldUnit,
  type LineDraft,
  OPTIONAL,
  plainNumber,
} from './line-draft.ts';
import { boundOf, readLineDraft } from './line-read.ts';

export type AmountFieldView = {
  readonly field: AmountField;
  readonly text: string;
  readonly label: string;
  readonly unit: string;
  readonly hint: string | null;
  readonly problem: string | null;
};

/** The fields that this amount is made of. An empty one is not called wrong while it is being filled in. */
export function amountFields(line: LineDraft, place: Place, words: Words): AmountFieldView[] {
  const say = words.formulaEdit.line;
  const read = readLineDraft(line, place);
  return FIELDS_OF[line.basis].map((field) => {
    const problem = read.ok ? undefined : read.problems[field];
    const { least, most } = boundOf(field, line.basis);
    return {
      field,
      text: line.amount[field],
      label: say.amount[field],
      unit: field === 'sharePct' ? say.basisOf[line.basis] : fieldUnit(field, place),
      hint: OPTIONAL.includes(field) ? say.optional : null,
      problem:
        problem === undefined || problem === 'empty'
          ? null
          : words.fields.problem(problem, {
              least: plainNumber(least, place, words),
              most: plainNumber(most, place, words),
            }),
    };
  });
}

const BASES: readonly Basis[] = [
  'pct-of-meat',
  'g-per-kg-meat',
  'pct-of-lean',
  'pct-of-total',
  'at-least',
  'pack-share',
  'fixed',
  'per-piece',
];

export function basesOf(words: Words): { value: Basis; label: string }[] {
  return BASES.map((value) => ({ value, label: words.formulaEdit.line.basisOf[value] }));
}

type MoreField = 'hiddenSugarPct' | 'sulphite' | 'ownFatPct';

export const MORE_FIELDS: readonly { field: MoreField; unit: string; roles: readonly Role[] }[] = [
  { field: 'ownFatPct', unit: '%', roles: ['lean', 'fat'] },
  { field: 'hiddenSugarPct', unit: '%', roles: ['liquid', 'spice', 'other'] },
  { field: 'sulphite', unit: 'mg/kg', roles: ['liquid', 'spice', 'other'] },
];

export const BRINGS_ALLERGENS: readonly Role[] = ['sugar', 'starter', 'spice', 'liquid', 'other'];

export function allergenOptions(words: Words): { value: string; label: string }[] {
  const names = words.formulaSheets.label.allergen;
  return ALLERGENS.map((value) => ({ value, label: names[value] ?? value }));
}

/** From here on a cut is rather fat than lean: belly and up. */
const FAT_CUT_PCT = 40;

/** Cuts of the table that this line may be, the fatter ones for fat; the empty choice is the usual one. */
export function cutOptions(
  role: 'lean' | 'fat',
  place: Place,
  words: Words,
): { value: string; label: string; note?: string }[] {
  const say = words.formulaEdit.line;
  return [
    { value: '', label: say.usualCut[role] },
    ...CUTS.filter(({ fatPct }) => fatPct >= FAT_CUT_PCT === (role === 'fat')).map(
      ({ ndb, name, fatPct }) => ({
        value: ndb,
        label: name,
        note: say.cutNote(ndb, decimal(fatPct, 1, place)),
      }),
    ),
  ];
}

/** What is wrong in a field outside the amount, in words; null while it is empty or right. */
export function fieldProblem(
  line: LineDraft,
  field: MoreField | 'nitritePct' | 'nitratePct',
  place: Place,
  words: Words,
): string | null {
  const most = field === 'sulphite' ? 1_000_000 : 100;
  const read = readQuantity({ text: line[field], unit: '', decimal: place.decimal, least: 0, most });
  if (!read.ok)
    return read.problem === 'empty'
      ? null
      : words.fields.problem(read.problem, { least: '0', most: plainNumber(most, place, words) });
  const whole = readLineDraft(line, place);
  return field === 'nitratePct' && !whole.ok && whole.problems.nitratePct !== undefined
    ? words.formulaEdit.line.overBag
    : null;
}

/** What looks wrong in what the bag is said to print, while it is being typed. */
export function labelCaution(line: LineDraft, place: Place, words: Words): string | null {
  const say = words.formulaEdit.line;
  const pct = (text: string) =>
    readQuantity({ text, unit: '%', decimal: place.decimal, least: 0, most: 100 });
  const nitrite = pct(line.nitritePct);
  const nitrate = pct(line.nitratePct);
  if (!nitrite.ok) return say.noLabel;
  if (nitrite.value + (nitrate.ok ? nitrate.value : 0) > PURE_LABEL_PCT) return say.pure;
  // Whoever types 0.0 is on the way to 0.0625 or to 0.05; a nought alone is a bag of nitrate.
  return nitrite.value > 0 && nitrite.value < WEAKEST_LABEL_PCT
    ? say.fraction(plainNumber(nitrite.value, place, words), plainNumber(100 * nitrite.value, place, words))
    : null;
}

export function saltOptions<T extends 'NaNO2' | 'KNO2' | 'NaNO3' | 'KNO3'>(
  salts: readonly T[],
  words: Words,
): { value: T; label: string }[] {
  return salts.map((value) => ({ value, label: words.formulaEdit.line.salt[value] }));
}

/** How a recipe's amount was read, or what has to be asked. */
export function recipeText(
  read: ReadAmount,
  place: Place,
  words: Words,
): { problem: string | null; said: string | null } {
  const say = words.formulaEdit.line;
  if (!read.ok) return { problem: say.recipeProblem[read.problem] || null, said: null };
  const amount = amountText(read.amount, place, words);
  return { problem: null, said: read.assumedMeat ? say.recipeAssumed(amount) : say.recipeRead(amount) };
}
