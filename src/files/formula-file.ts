/** A formula as a file: a small envelope of JSON. Nothing in it is used before all of it was checked. */
import type { Formula } from '#core/formula/formula.ts';
import { formulaSchema } from '#record/formula-schema.ts';
import { plain } from '#record/plain.ts';
import { isSubject, type SubjectId, subjectId } from '#record/subject.ts';
import { hasPlainTexts } from './plain-text.ts';

export const FORMULA_FORMAT = 'greenweight-formula';
export const FORMULA_VERSION = 1;
export const MOST_FORMULA_CHARS = 256 * 1024;
const MOST_NOTE_CHARS = 400;
const MOST_ENTRY_CHARS = 36;

/** Which formula, and which version of it, this one was made from. */
export type FormulaParent = { readonly formula: SubjectId; readonly entry: string };

export type FormulaProblem =
  | { readonly code: 'too-large' | 'not-json' | 'forbidden-key' | 'odd-text' | 'not-ours' | 'newer-format' }
  /** The dotted path of the first field that the check refused; empty when it was the formula as a whole. */
  | { readonly code: 'bad-formula' | 'bad-envelope'; readonly field: string };

export type ReadFormula = { ok: true; formula: Formula } | { ok: false; problem: FormulaProblem };

export type FormulaFile = {
  readonly formula: Formula;
  readonly note: string;
  readonly from?: FormulaParent | undefined;
};

export type ReadFormulaFile = ({ ok: true } & FormulaFile) | { ok: false; problem: FormulaProblem };

export function writeFormulaFile({ formula, note, from }: FormulaFile): string {
  const file = { format: FORMULA_FORMAT, version: FORMULA_VERSION, formula, note, ...(from ? { from } : {}) };
  return `${JSON.stringify(file, null, 2)}\n`;
}

export function readFormulaFile(text: string): ReadFormulaFile {
  const read = readUntrusted(text.startsWith('\uFEFF') ? text.slice(1) : text);
  if (!read.ok) return read;
  const file = read.value;
  if (!isRecord(file) || file.format !== FORMULA_FORMAT) return refused({ code: 'not-ours' });
  if (typeof file.version === 'number' && file.version > FORMULA_VERSION)
    return refused({ code: 'newer-format' });
  const field = badField(file);
  if (field !== null) return refused({ code: 'bad-envelope', field });
  const checked = checkFormula(file.formula);
  if (!checked.ok) return checked;
  const from = parentOf(file.from);
  return { ok: true, formula: checked.formula, note: String(file.note), ...(from ? { from } : {}) };
}

export type ReadUntrusted = { ok: true; value: unknown } | { ok: false; problem: FormulaProblem };

/** JSON from a stranger: short, shallow, without keys that reach a prototype, and its texts plain. */
export function readUntrusted(text: string): ReadUntrusted {
  if (text.length > MOST_FORMULA_CHARS) return refused({ code: 'too-large' });
  let value: unknown;
  try {
    value = JSON.parse(text);
  } catch {
    return refused({ code: 'not-json' });
  }
  if (!plain(value)) return refused({ code: 'forbidden-key' });
  return hasPlainTexts(value) ? { ok: true, value } : refused({ code: 'odd-text' });
}

/** The schema, and what no schema says: weighings are kept by the id of their line, so that no two lines may share one. */
export function checkFormula(value: unknown): ReadFormula {
  const checked = formulaSchema.safeParse(value);
  if (!checked.success)
    return refused({ code: 'bad-formula', field: checked.error.issues[0]?.path.map(String).join('.') ?? '' });
  const { lines } = checked.data;
  const twice = lines.findIndex(({ id }, at) => lines.findIndex((other) => other.id === id) < at);
  if (twice >= 0) return refused({ code: 'bad-formula', field: `lines.${twice}.id` });
  return { ok: true, formula: checked.data };
}

export function isRecord(value: unknown): value is Record<string, unknown> {
  return typeof value === 'object' && value !== null && !Array.isArray(value);
}

function badField(file: Record<string, unknown>): string | null {
  const known = ['format', 'version', 'formula', 'note', 'from'];
  const strange = Object.keys(file).find((key) => !known.includes(key));
  if (strange !== undefined) return strange.slice(0, MOST_NOTE_CHARS);
  if (file.version !== FORMULA_VERSION) return 'version';
  if (typeof file.note !== 'string' || file.note.length > MOST_NOTE_CHARS) return 'note';
  return file.from === undefined || parentOf(file.from) ? null : 'from';
}

function parentOf(value: unknown): FormulaParent | null {
  if (!isRecord(value) || Object.keys(value).length !== 2 || typeof value.entry !== 'string') return null;
  const formula = subjectId.safeParse(value.formula);
  if (!formula.success || !isSubject(formula.data, 'formula') || value.entry.length > MOST_ENTRY_CHARS)
    return null;
  return { formula: formula.data, entry: value.entry };
}

function refused(problem: FormulaProblem): { ok: false; problem: FormulaProblem } {
  return { ok: false, problem };
}
