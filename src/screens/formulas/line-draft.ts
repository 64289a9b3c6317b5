/** One line of a formula while it is being typed: texts as they stand, plain JSON, so that it survives a reload. */
import type { Amount, Basis, CureLabel, FormulaLine, Role, SugarKind } from '#core/formula/formula.ts';
import { massFromG } from '#core/units.ts';
import type { Place } from '#record/place.ts';
import type { QuantityUnit } from '#ui/quantity-input.ts';
import type { Words } from '#words/en.ts';

/** Each number of an amount has one field; which of them count is said by the basis. */
export type AmountField = 'sharePct' | 'doseGPerKg' | 'massG' | 'leastG' | 'packG' | 'packPct';
export type LineField =
  | AmountField
  | 'name'
  | 'nitritePct'
  | 'nitratePct'
  | 'hiddenSugarPct'
  | 'sulphite'
  | 'ownFatPct';

export type LineDraft = {
  readonly id: string;
  readonly name: string;
  readonly role: Role;
  readonly basis: Basis;
  readonly amount: Readonly<Record<AmountField, string>>;
  /** The amount at full precision after its base was switched; typing drops it. Keeps the grams over any number of switches. */
  readonly exact: Amount | null;
  readonly nitritePct: string;
  readonly nitratePct: string;
  readonly nitriteSalt: CureLabel['nitriteSalt'];
  readonly nitrateSalt: CureLabel['nitrateSalt'];
  readonly sugarKind: SugarKind | null;
  readonly hiddenSugarPct: string;
  readonly sulphite: string;
  readonly allergens: readonly string[];
  readonly cutNdb: string | null;
  readonly ownFatPct: string;
  readonly note: string;
};

export const NO_AMOUNT: Readonly<Record<AmountField, string>> = {
  sharePct: '',
  doseGPerKg: '',
  massG: '',
  leastG: '',
  packG: '',
  packPct: '',
};

/** The fields that an amount on this basis is made of, in the order in which they are asked. */
export const FIELDS_OF: Readonly<Record<Basis, readonly AmountField[]>> = {
  'pct-of-meat': ['sharePct'],
  'pct-of-lean': ['sharePct'],
  'pct-of-total': ['sharePct'],
  'g-per-kg-meat': ['doseGPerKg'],
  fixed: ['massG'],
  'at-least': ['doseGPerKg', 'leastG'],
  'per-piece': ['massG'],
  'pack-share': ['doseGPerKg', 'packG', 'packPct', 'leastG'],
};

/** Fields that may stay empty: then the bound is not there. */
export const OPTIONAL: readonly AmountField[] = ['leastG'];

export function smallUnit(place: Place): 'g' | 'oz' {
  return place.mass === 'metric' ? 'g' : 'oz';
}

export function fieldUnit(field: AmountField, place: Place): QuantityUnit | 'g/kg' {
  if (field === 'sharePct' || field === 'packPct') return '%';
  return field === 'doseGPerKg' ? 'g/kg' : smallUnit(place);
}

export function newLine(id: string, role: Role, words: Words): LineDraft {
  return {
    id,
    name: capitalised(words.formulas.role[role]),
    role,
    basis: role === 'starter' ? 'pack-share' : 'pct-of-meat',
    amount: NO_AMOUNT,
    exact: null,
    nitritePct: '',
    nitratePct: '',
    nitriteSalt: 'NaNO2',
    nitrateSalt: 'NaNO3',
    sugarKind: role === 'sugar' ? 'dextrose' : null,
    hiddenSugarPct: '',
    sulphite: '',
    allergens: [],
    cutNdb: null,
    ownFatPct: '',
    note: '',
  };
}

function capitalised(text: string): string {
  return text.charAt(0).toUpperCase() + text.slice(1);
}

export function lineDraft(line: FormulaLine, place: Place, words: Words): LineDraft {
  const exactly = (value: number | undefined) =>
    value === undefined ? '' : plainNumber(value, place, words);
  return {
    ...newLine(line.id, line.role, words),
    name: line.name,
    basis: line.amount.basis,
    amount: amountTexts(line.amount, place, words),
    exact: line.amount,
    nitritePct: exactly(line.cure?.nitritePct),
    nitratePct: exactly(line.cure?.nitratePct),
    nitriteSalt: line.cure?.nitriteSalt ?? 'NaNO2',
    nitrateSalt: line.cure?.nitrateSalt ?? 'NaNO3',
    sugarKind: line.sugarKind ?? null,
    hiddenSugarPct: exactly(line.hiddenSugarPct),
    sulphite: exactly(line.sulphiteMgPerKg),
    allergens: line.allergens ?? [],
    cutNdb: line.cutNdb ?? null,
    ownFatPct: exactly(line.ownFatPct),
    note: line.note ?? '',
  };
}

export function amountTexts(amount: Amount, place: Place, words: Words): Record<AmountField, string> {
  const exactly = (value: number) => plainNumber(value, place, words);
  const mass = (massG: number) => (massG > 0 ? exactly(massFromG({ massG, unit: smallUnit(place) })) : '');
  switch (amount.basis) {
    case 'pct-of-meat':
    case 'pct-of-lean':
    case 'pct-of-total':
      return { ...NO_AMOUNT, sharePct: exactly(amount.amountPct) };
    case 'g-per-kg-meat':
      return { ...NO_AMOUNT, doseGPerKg: exactly(amount.doseGPerKg) };
    case 'fixed':
      return { ...NO_AMOUNT, massG: mass(amount.amountG) };
    case 'per-piece':
      return { ...NO_AMOUNT, massG: mass(amount.pieceG) };
    case 'at-least':
      return { ...NO_AMOUNT, doseGPerKg: exactly(amount.doseGPerKg), leastG: mass(amount.minimumG) };
    case 'pack-share':
      return {
        ...NO_AMOUNT,
        doseGPerKg: exactly(amount.doseGPerKg),
        packG: mass(amount.packG),
        packPct: exactly(100 * amount.packFraction),
        leastG: mass(amount.minimumG),
      };
  }
}

/** A number as it is typed: without the thin spaces between thousands. */
export function plainNumber(value: number, place: Place, words: Words): string {
  return words.workings.exactly(value, place).replaceAll('\u202f', '');
}

/** Typing in a field of the amount: what was kept at full precision no longer holds. */
export function typeAmount(line: LineDraft, field: AmountField, text: string): LineDraft {
  return { ...line, amount: { ...line.amount, [field]: text }, exact: null };
}

const ROLES: readonly Role[] = [
  'spice',
  'salt',
  'cure',
  'sugar',
  'starter',
  'liquid',
  'lean',
  'fat',
  'mould',
  'other',
];

export function roleOptions(words: Words): { value: Role; label: string }[] {
  return ROLES.map((value) => ({ value, label: words.formulaEdit.role[value] }));
}
