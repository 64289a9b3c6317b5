import type { Formula, Role, Species } from '#core/formula/formula.ts';
import type { Place } from '#record/place.ts';
import { type QuantityProblem, readQuantity } from '#ui/quantity-input.ts';
import type { Words } from '#words/en.ts';
import { leavesRoom } from './formula-plan.ts';
import { type LineDraft, lineDraft, newLine, plainNumber } from './line-draft.ts';
import { type LineProblems, readLineDraft } from './line-read.ts';

/** The numbers of the whole formula, each in its own field; all but the fat may stay empty. */
export type HeadField = 'fatPctOfMeat' | 'diameterMm' | 'targetLossPct' | 'plannedDays';

export type FormulaDraft = {
  readonly name: string;
  readonly kind: Formula['kind'];
  readonly species: readonly Species[];
  readonly numbers: Readonly<Record<HeadField, string>>;
  readonly note: string;
  /** What changed, kept with the version. */
  readonly versionNote: string;
  /** The version that this one began from; empty for a first one. */
  readonly from: string;
  readonly lines: readonly LineDraft[];
};

export const HEAD_BOUNDS: Readonly<Record<HeadField, { least: number; most: number }>> = {
  fatPctOfMeat: { least: 0, most: 100 },
  diameterMm: { least: 5, most: 300 },
  targetLossPct: { least: 1, most: 80 },
  plannedDays: { least: 0, most: 1000 },
};
const HEAD_FIELDS: readonly HeadField[] = ['fatPctOfMeat', 'diameterMm', 'targetLossPct', 'plannedDays'];
const MOST_LINES = 60;

export function emptyDraft(ids: (count: number) => string, words: Words): FormulaDraft {
  const roles: Role[] = ['lean', 'fat', 'salt', 'cure'];
  return {
    name: '',
    kind: 'comminuted',
    species: [],
    numbers: { fatPctOfMeat: '', diameterMm: '', targetLossPct: '', plannedDays: '' },
    note: '',
    versionNote: '',
    from: '',
    lines: roles.map((role, at) => newLine(ids(at), role, words)),
  };
}

export function formulaDraft(
  { formula, from }: { formula: Formula; from: string },
  place: Place,
  words: Words,
): FormulaDraft {
  const text = (value: number | undefined) => (value === undefined ? '' : plainNumber(value, place, words));
  return {
    name: formula.name,
    kind: formula.kind,
    species: formula.species,
    numbers: {
      fatPctOfMeat: text(formula.fatPctOfMeat),
      diameterMm: text(formula.diameterMm),
      targetLossPct: text(formula.targetLossPct),
      plannedDays: text(formula.plannedDays),
    },
    note: formula.note ?? '',
    versionNote: '',
    from,
    lines: formula.lines.map((line) => lineDraft(line, place, words)),
  };
}

/** A kept draft, if it has the shape that this build writes. */
export function restoreDraft(kept: unknown): FormulaDraft | null {
  if (!isRecord(kept)) return null;
  const { name, kind, species, numbers, note, versionNote, from, lines } = kept;
  const texts = [name, kind, note, versionNote, from].every((each) => typeof each === 'string');
  const known = isRecord(numbers) && HEAD_FIELDS.every((field) => typeof numbers[field] === 'string');
  const listed =
    Array.isArray(lines) &&
    lines.every((line) => isRecord(line) && typeof line.id === 'string' && isRecord(line.amount));
  return texts && known && listed && Array.isArray(species) ? (kept as FormulaDraft) : null;
}

function isRecord(value: unknown): value is Readonly<Record<string, unknown>> {
  return typeof value === 'object' && value !== null;
}

export type DraftProblems = {
  readonly head: { readonly [Field in HeadField | 'name']?: QuantityProblem };
  readonly lines: Readonly<Record<string, LineProblems>>;
  readonly whole: 'no-lines' | 'no-room' | 'too-many-lines' | null;
};

export type ReadFormulaDraft =
  | { readonly ok: true; readonly formula: Formula }
  | { readonly ok: false; readonly problems: DraftProblems };

export function readFormulaDraft(draft: FormulaDraft, place: Place): ReadFormulaDraft {
  const head: { [Field in HeadField | 'name']?: QuantityProblem } = {};
  if (draft.name.trim() === '') head.name = 'empty';
  const numbers = new Map<HeadField, number>();
  for (const field of HEAD_FIELDS) {
    const unit = field === 'diameterMm' ? 'mm' : field === 'plannedDays' ? 'd' : '%';
    const read = readQuantity({
      text: draft.numbers[field],
      unit,
      decimal: place.decimal,
      ...HEAD_BOUNDS[field],
    });
    if (read.ok) numbers.set(field, read.value);
    else if (read.problem !== 'empty') head[field] = read.problem;
  }
  const whole = draft.kind === 'whole-muscle';
  const fatPctOfMeat = whole ? 0 : numbers.get('fatPctOfMeat');
  if (fatPctOfMeat === undefined && head.fatPctOfMeat === undefined) head.fatPctOfMeat = 'empty';
  const reads = draft.lines.map((line) => ({ id: line.id, read: readLineDraft(line, place) }));
  const lines = reads.flatMap(({ read }) => (read.ok ? [read.line] : []));
  const wrong = reads.flatMap(({ id, read }) => (read.ok ? [] : [[id, read.problems] as const]));
  const optional = (field: Exclude<HeadField, 'fatPctOfMeat'>) => {
    const value = numbers.get(field);
    return value === undefined ? {} : { [field]: value };
  };
  const formula: Formula = {
    name: draft.name.trim(),
    kind: draft.kind,
    species: [...draft.species],
    fatPctOfMeat: fatPctOfMeat ?? 0,
    lines,
    ...optional('diameterMm'),
    ...optional('targetLossPct'),
    ...optional('plannedDays'),
    ...(draft.note.trim() === '' ? {} : { note: draft.note.trim() }),
  };
  const problem =
    draft.lines.length === 0
      ? 'no-lines'
      : draft.lines.length > MOST_LINES
        ? 'too-many-lines'
        : leavesRoom(formula)
          ? null
          : 'no-room';
  if (Object.keys(head).length > 0 || wrong.length > 0 || problem !== null)
    return { ok: false, problems: { head, lines: Object.fromEntries(wrong), whole: problem } };
  return { ok: true, formula };
}

export function kindOptions(words: Words): { value: Formula['kind']; label: string }[] {
  const kinds = ['comminuted', 'whole-muscle'] as const;
  return kinds.map((value) => ({ value, label: words.formulas.kind[value] }));
}

const SPECIES: readonly Species[] = [
  'pork',
  'beef',
  'lamb',
  'horse',
  'poultry',
  'wild-boar',
  'venison',
  'bear',
  'other',
];

export function speciesOptions(words: Words): { value: Species; label: string }[] {
  return SPECIES.map((value) => ({ value, label: words.formulas.species[value] }));
}
