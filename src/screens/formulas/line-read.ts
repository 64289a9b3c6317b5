/** From what was typed in a line to the line as the record keeps it, or what is wrong with it. */
import type { Amount, Basis, FormulaLine } from '#core/formula/formula.ts';
import type { Place } from '#record/place.ts';
import { type QuantityProblem, readQuantity } from '#ui/quantity-input.ts';
import {
  type AmountField,
  FIELDS_OF,
  fieldUnit,
  type LineDraft,
  type LineField,
  OPTIONAL,
} from './line-draft.ts';

export type Bound = { readonly least: number; readonly most: number };

/** What cannot be; what the record would refuse. A share of the whole mix leaves room for the meat. */
export function boundOf(field: AmountField, basis: Basis): Bound {
  switch (field) {
    case 'sharePct':
      return { least: 0, most: basis === 'pct-of-total' ? 90 : 100 };
    case 'packPct':
      return { least: 0, most: 100 };
    case 'doseGPerKg':
      return { least: 0, most: 1000 };
    default:
      return { least: 0, most: 1_000_000 };
  }
}

export type LineProblems = { readonly [Field in LineField]?: QuantityProblem };

export type ReadLineDraft =
  | { readonly ok: true; readonly line: FormulaLine }
  | { readonly ok: false; readonly problems: LineProblems };

/** The line as the record keeps it, or what is wrong, field by field. A cure may stay without its label; then it is unknown. */
export function readLineDraft(draft: LineDraft, place: Place): ReadLineDraft {
  const problems: { [Field in LineField]?: QuantityProblem } = {};
  const pct = (field: 'nitritePct' | 'nitratePct' | 'hiddenSugarPct') => {
    const read = readQuantity({
      text: draft[field],
      unit: '%',
      decimal: place.decimal,
      least: 0,
      most: 100,
    });
    if (read.ok) return read.value;
    if (read.problem !== 'empty') problems[field] = read.problem;
    return null;
  };
  if (draft.name.trim() === '') problems.name = 'empty';
  const amount = readDraftAmount(draft, place, problems);
  const nitritePct = pct('nitritePct');
  const nitratePct = pct('nitratePct');
  const isCure = draft.role === 'cure';
  if (isCure && nitritePct !== null && nitritePct + (nitratePct ?? 0) > 100)
    problems.nitratePct = 'too-large';
  const hiddenSugarPct = pct('hiddenSugarPct');
  const sulphite = readQuantity({
    text: draft.sulphite,
    unit: '',
    decimal: place.decimal,
    least: 0,
    most: 1_000_000,
  });
  if (!sulphite.ok && sulphite.problem !== 'empty') problems.sulphite = sulphite.problem;
  const ownFat = readQuantity({
    text: draft.ownFatPct,
    unit: '%',
    decimal: place.decimal,
    least: 0,
    most: 100,
  });
  if (!ownFat.ok && ownFat.problem !== 'empty') problems.ownFatPct = ownFat.problem;
  if (amount === null || Object.keys(problems).length > 0) return { ok: false, problems };
  return {
    ok: true,
    line: {
      id: draft.id,
      name: draft.name.trim(),
      role: draft.role,
      amount,
      ...(isCure && nitritePct !== null
        ? {
            cure: {
              nitritePct,
              nitratePct: nitratePct ?? 0,
              nitriteSalt: draft.nitriteSalt,
              nitrateSalt: draft.nitrateSalt,
            },
          }
        : {}),
      ...(draft.role === 'sugar' && draft.sugarKind ? { sugarKind: draft.sugarKind } : {}),
      ...(hiddenSugarPct === null ? {} : { hiddenSugarPct }),
      ...(sulphite.ok ? { sulphiteMgPerKg: sulphite.value } : {}),
      ...(draft.allergens.length > 0 ? { allergens: [...draft.allergens] } : {}),
      ...(draft.cutNdb ? { cutNdb: draft.cutNdb } : {}),
      ...(ownFat.ok ? { ownFatPct: ownFat.value } : {}),
      ...(draft.note.trim() === '' ? {} : { note: draft.note.trim() }),
    },
  };
}

/** The amount at full precision where its base was only switched, else as typed; null where a field is wrong. */
function readDraftAmount(
  { basis, amount, exact }: LineDraft,
  place: Place,
  problems: { [Field in LineField]?: QuantityProblem },
): Amount | null {
  if (exact !== null && exact.basis === basis) return exact;
  const values = new Map<AmountField, number>();
  for (const field of FIELDS_OF[basis]) {
    const unit = fieldUnit(field, place);
    const read = readQuantity({
      text: amount[field],
      unit: unit === 'g/kg' ? '' : unit,
      decimal: place.decimal,
      ...boundOf(field, basis),
    });
    if (read.ok) values.set(field, read.value);
    else if (read.problem === 'empty' && OPTIONAL.includes(field)) values.set(field, 0);
    else problems[field] = read.problem;
  }
  if (FIELDS_OF[basis].some((field) => !values.has(field))) return null;
  const value = (field: AmountField) => values.get(field) ?? 0;
  switch (basis) {
    case 'pct-of-meat':
    case 'pct-of-lean':
    case 'pct-of-total':
      return { basis, amountPct: value('sharePct') };
    case 'g-per-kg-meat':
      return { basis, doseGPerKg: value('doseGPerKg') };
    case 'fixed':
      return { basis, amountG: value('massG') };
    case 'per-piece':
      return { basis, pieceG: value('massG') };
    case 'at-least':
      return { basis, doseGPerKg: value('doseGPerKg'), minimumG: value('leastG') };
    case 'pack-share':
      return {
        basis,
        doseGPerKg: value('doseGPerKg'),
        packG: value('packG'),
        packFraction: value('packPct') / 100,
        minimumG: value('leastG'),
      };
  }
}
