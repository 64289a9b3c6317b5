import { type Formula, isMeat } from './formula.ts';

/** What keeps a formula from being weighed out, or from meaning one thing. A draft may have any of these. */

export type FormulaProblem =
  | { readonly code: 'mix-is-all-shares'; readonly sharePct: number }
  | { readonly code: 'same-id-twice'; readonly lineId: string }
  | { readonly code: 'label-over-100'; readonly lineId: string }
  /** The fat lines say another share of fat than the formula does. */
  | { readonly code: 'fat-lines-differ'; readonly linesPct: number; readonly fatPctOfMeat: number }
  /** Lines of lean and fat are there, and do not add up to all the meat. */
  | { readonly code: 'meat-lines-not-100'; readonly linesPct: number };

/** A hundredth of a percent: less is rounding in somebody's spreadsheet. */
const TOLERANCE_PCT = 0.01;

function meatPct(formula: Formula, role: 'lean' | 'fat'): number | null {
  const lines = formula.lines.filter((line) => line.role === role);
  if (lines.length === 0 || lines.some(({ amount }) => amount.basis !== 'pct-of-meat')) return null;
  return lines.reduce((sum, { amount }) => sum + (amount.basis === 'pct-of-meat' ? amount.amountPct : 0), 0);
}

/**
 * The problems of a formula, in the order in which they stop a weigh-out.
 *
 * Units: percent. Source: arithmetic (derived).
 * @example formulaProblems({ name: '', kind: 'comminuted', species: [], fatPctOfMeat: 25, lines: [] }) // => []
 */
export function formulaProblems(formula: Formula): readonly FormulaProblem[] {
  const found: FormulaProblem[] = [];
  const sharePct = formula.lines.reduce(
    (sum, { role, amount }) =>
      amount.basis === 'pct-of-total' && !isMeat(role) && role !== 'mould' ? sum + amount.amountPct : sum,
    0,
  );
  if (sharePct >= 100) found.push({ code: 'mix-is-all-shares', sharePct });
  const ids = formula.lines.map(({ id }) => id);
  for (const lineId of new Set(ids.filter((id, at) => ids.indexOf(id) !== at)))
    found.push({ code: 'same-id-twice', lineId });
  for (const { id: lineId, cure } of formula.lines)
    if (cure && cure.nitritePct + cure.nitratePct > 100) found.push({ code: 'label-over-100', lineId });
  const leanPct = meatPct(formula, 'lean');
  const fatPct = meatPct(formula, 'fat');
  const { fatPctOfMeat } = formula;
  if (fatPct !== null && Math.abs(fatPct - fatPctOfMeat) > TOLERANCE_PCT)
    found.push({ code: 'fat-lines-differ', linesPct: fatPct, fatPctOfMeat });
  if (leanPct !== null && fatPct !== null && Math.abs(leanPct + fatPct - 100) > TOLERANCE_PCT)
    found.push({ code: 'meat-lines-not-100', linesPct: leanPct + fatPct });
  return found;
}
