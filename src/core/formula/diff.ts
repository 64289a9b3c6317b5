import type { Formula, FormulaLine } from './formula.ts';
import { exactGrams } from './weigh-out.ts';

/** Two formulas side by side, as data: what was added, taken out or changed, and what it means in grams. */

export type FieldChange = {
  readonly field: string;
  readonly before: unknown;
  readonly after: unknown;
};

export type LineChange =
  | { readonly change: 'added'; readonly after: FormulaLine }
  | { readonly change: 'removed'; readonly before: FormulaLine }
  | {
      readonly change: 'changed';
      readonly before: FormulaLine;
      readonly after: FormulaLine;
      readonly fields: readonly FieldChange[];
    };

export type FormulaDiff = {
  readonly fields: readonly FieldChange[];
  readonly lines: readonly LineChange[];
};

/** Same plain JSON, whatever the order of its keys; absent and undefined are the same. */
function same(one: unknown, other: unknown): boolean {
  if (Object.is(one, other)) return true;
  if (typeof one !== 'object' || typeof other !== 'object' || one === null || other === null) return false;
  if (Array.isArray(one) !== Array.isArray(other)) return false;
  const left: Record<string, unknown> = { ...one };
  const right: Record<string, unknown> = { ...other };
  return [...new Set([...Object.keys(left), ...Object.keys(right)])].every((key) =>
    same(left[key], right[key]),
  );
}

function changed(before: object, after: object, leaveOut: readonly string[]): FieldChange[] {
  const left: Record<string, unknown> = { ...before };
  const right: Record<string, unknown> = { ...after };
  return [...new Set([...Object.keys(left), ...Object.keys(right)])]
    .filter((field) => !leaveOut.includes(field) && !same(left[field], right[field]))
    .map((field) => ({ field, before: left[field] ?? null, after: right[field] ?? null }));
}

/** Lines belong together by id; of two formulas that never had a common one, by role and name. */
function pairs(before: Formula, after: Formula): [FormulaLine | null, FormulaLine | null][] {
  const left = new Set(before.lines);
  const laterIds = new Set(after.lines.map(({ id }) => id));
  const partner = (line: FormulaLine): FormulaLine | null => {
    const byId = [...left].find(({ id }) => id === line.id);
    const byName = [...left].find(
      ({ id, role, name }) =>
        !laterIds.has(id) &&
        role === line.role &&
        name.trim().toLowerCase() === line.name.trim().toLowerCase(),
    );
    const found = byId ?? byName ?? null;
    if (found) left.delete(found);
    return found;
  };
  const kept = after.lines.map((line): [FormulaLine | null, FormulaLine | null] => [partner(line), line]);
  return [...kept, ...[...left].map((line): [FormulaLine, null] => [line, null])];
}

/**
 * What changed from one formula to another, field by field and line by line. The order of lines is no change.
 *
 * @example formulaDiff({ name: 'a', kind: 'comminuted', species: [], fatPctOfMeat: 25, lines: [] }, { name: 'a', kind: 'comminuted', species: [], fatPctOfMeat: 30, lines: [] }) // => { fields: [{ field: 'fatPctOfMeat', before: 25, after: 30 }], lines: [] }
 */
export function formulaDiff(before: Formula, after: Formula): FormulaDiff {
  const lines = pairs(before, after).flatMap(([one, other]): LineChange[] => {
    if (one === null) return other === null ? [] : [{ change: 'added', after: other }];
    if (other === null) return [{ change: 'removed', before: one }];
    const fields = changed(one, other, ['id']);
    return fields.length > 0 ? [{ change: 'changed', before: one, after: other, fields }] : [];
  });
  return { fields: changed(before, after, ['lines']), lines };
}

export type LineComparison = {
  readonly name: string;
  readonly role: FormulaLine['role'];
  /** Null where that formula has no such line. */
  readonly beforeGPerKg: number | null;
  readonly afterGPerKg: number | null;
};

/**
 * Every line of both formulas in g per kg of meat for a batch of this size, whatever base each was written on.
 *
 * Wrong tool: at another size; fixed and least amounts weigh more in a small batch.
 *
 * Units: g, g/kg of meat. Source: arithmetic (derived).
 * @throws RangeError as `exactGrams`.
 * @example compareGrams({ before: { name: '', kind: 'comminuted', species: [], fatPctOfMeat: 25, lines: [] }, after: { name: '', kind: 'comminuted', species: [], fatPctOfMeat: 25, lines: [{ id: 's', name: 'salt', role: 'salt', amount: { basis: 'fixed', amountG: 56 } }] }, meatG: 2000, pieces: null }) // => [{ name: 'salt', role: 'salt', beforeGPerKg: null, afterGPerKg: 28 }]
 */
export function compareGrams({
  before,
  after,
  meatG,
  pieces,
}: {
  before: Formula;
  after: Formula;
  meatG: number;
  pieces: number | null;
}): readonly LineComparison[] {
  const gPerKg = (formula: Formula) => {
    const fatG = (meatG * formula.fatPctOfMeat) / 100;
    const grams = exactGrams({ formula, leanG: meatG - fatG, fatG, pieces });
    return new Map(formula.lines.map((line, at) => [line, ((grams[at] ?? 0) * 1000) / meatG]));
  };
  const one = gPerKg(before);
  const other = gPerKg(after);
  return pairs(before, after).flatMap(([left, right]) => {
    const shown = right ?? left;
    if (shown === null) return [];
    return [
      {
        name: shown.name,
        role: shown.role,
        beforeGPerKg: left === null ? null : (one.get(left) ?? null),
        afterGPerKg: right === null ? null : (other.get(right) ?? null),
      },
    ];
  });
}
