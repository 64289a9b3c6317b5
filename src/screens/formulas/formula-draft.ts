/** A formula while it is being typed, and what the record would keep of it. */
import { figuresFromGrams } from '#core/formula/figures.ts';
import {
  amountG,
  type Bench,
  type Formula,
  isInMix,
  isMeat,
  type Role,
  type Species,
} from '#core/formula/formula.ts';
import { exactGrams } from '#core/formula/weigh-out.ts';
import type { Place } from '#record/place.ts';
import { type QuantityProblem, readQuantity } from '#ui/quantity-input.ts';
import type { Words } from '#words/en.ts';
import { leavesRoom } from './formula-plan.ts';
import { amountTexts, type LineDraft, lineDraft, newLine, plainNumber, typeAmount } from './line-draft.ts';
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
/** What a formula is looked at for while it is typed: 1 kg of meat. */
const NOMINAL_MEAT_G = 1000;

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

/** Unlikely, not impossible: asked about once, each by its code. */
export type Unlikely = {
  readonly code: 'salt' | 'bag' | 'much';
  readonly lineId: string;
};

/** Shares of meat above which a line is asked about, percent (common practice of the trade, generously). */
const UNUSUAL_PCT: Readonly<Partial<Record<Role, number>>> = {
  salt: 4,
  cure: 4,
  sugar: 2,
  starter: 2,
  spice: 4,
  liquid: 15,
};
/** A bag that prints more nitrite than this is hardly a curing salt. */
const UNUSUAL_NITRITE_PCT = 10;

export function unlikely(formula: Formula): Unlikely[] {
  const fatG = (NOMINAL_MEAT_G * formula.fatPctOfMeat) / 100;
  const grams = exactGrams({ formula, leanG: NOMINAL_MEAT_G - fatG, fatG, pieces: 1 });
  return formula.lines.flatMap(({ id, role, cure, amount }, at): Unlikely[] => {
    const sharePct = (100 * (grams[at] ?? 0)) / NOMINAL_MEAT_G;
    const mostPct = UNUSUAL_PCT[role];
    const scales = amount.basis !== 'fixed' && amount.basis !== 'at-least' && amount.basis !== 'pack-share';
    return [
      ...(cure && cure.nitritePct > UNUSUAL_NITRITE_PCT ? [{ code: 'bag', lineId: id } as const] : []),
      ...(scales && mostPct !== undefined && sharePct > mostPct
        ? [{ code: role === 'salt' ? 'salt' : 'much', lineId: id } as const]
        : []),
    ];
  });
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

export function setLine(draft: FormulaDraft, line: LineDraft): FormulaDraft {
  return { ...draft, lines: draft.lines.map((each) => (each.id === line.id ? line : each)) };
}

export function addLine(draft: FormulaDraft, line: LineDraft): FormulaDraft {
  return { ...draft, lines: [...draft.lines, line] };
}

export function removeLine(draft: FormulaDraft, id: string): FormulaDraft {
  return { ...draft, lines: draft.lines.filter((line) => line.id !== id) };
}

/** The fat wanted; a single line of lean and of fat follow it, so that both never say two things. */
export function typeFat(draft: FormulaDraft, text: string, place: Place, words: Words): FormulaDraft {
  const numbers = { ...draft.numbers, fatPctOfMeat: text };
  const read = readQuantity({ text, unit: '%', decimal: place.decimal, ...HEAD_BOUNDS.fatPctOfMeat });
  if (!read.ok) return { ...draft, numbers };
  const alone = (role: Role) => draft.lines.filter((line) => line.role === role).length === 1;
  const lines = draft.lines.map((line) => {
    if (!isMeat(line.role) || !alone(line.role)) return line;
    const sharePct = line.role === 'fat' ? read.value : 100 - read.value;
    return typeAmount({ ...line, basis: 'pct-of-meat' }, 'sharePct', plainNumber(sharePct, place, words));
  });
  return { ...draft, numbers, lines };
}

/** The amount of the one salt line so that all salt together, that in the curing salt with it, is this much of the meat. */
export function typeTotalSalt(
  draft: FormulaDraft,
  line: LineDraft,
  text: string,
  place: Place,
  words: Words,
): LineDraft | null {
  const read = readQuantity({ text, unit: '%', decimal: place.decimal, least: 0, most: 100 });
  const bench = draftBench(draft, place);
  if (!read.ok || bench === null) return null;
  const meatG = bench.leanG + bench.fatG;
  const others = draft.lines.flatMap((each) => {
    const one = readLineDraft(each, place);
    return one.ok && each.id !== line.id ? [one.line] : [];
  });
  const elsewhereG = figuresFromGrams({
    leanG: bench.leanG,
    fatG: bench.fatG,
    lines: others.map(({ role, cure, amount }) => ({
      role,
      cure,
      massG: amount.basis === 'per-piece' ? 0 : amountG(amount, bench),
    })),
  }).saltG;
  const amountPct = read.value - (100 * elsewhereG) / meatG;
  if (!(amountPct >= 0)) return null;
  const amount = { basis: 'pct-of-meat', amountPct } as const;
  return { ...line, basis: amount.basis, amount: amountTexts(amount, place, words), exact: amount };
}

/** One place earlier or later; at an end it stays. */
export function moveLine(draft: FormulaDraft, id: string, by: 1 | -1): FormulaDraft {
  const from = draft.lines.findIndex((line) => line.id === id);
  const to = from + by;
  const moved = draft.lines[from];
  const other = draft.lines[to];
  if (!moved || !other) return draft;
  return {
    ...draft,
    lines: draft.lines.map((line, at) => (at === from ? other : at === to ? moved : line)),
  };
}

/** 1 kg of meat with the lines that can be read: what a switched base keeps its grams for. */
export function draftBench(draft: FormulaDraft, place: Place): Bench | null {
  const read = readQuantity({
    text: draft.kind === 'whole-muscle' ? '0' : draft.numbers.fatPctOfMeat,
    unit: '%',
    decimal: place.decimal,
    ...HEAD_BOUNDS.fatPctOfMeat,
  });
  const fatPct = read.ok ? read.value : 0;
  const fatG = (NOMINAL_MEAT_G * fatPct) / 100;
  const meat = { leanG: NOMINAL_MEAT_G - fatG, fatG };
  const lines = draft.lines.flatMap((line) => {
    const each = readLineDraft(line, place);
    return each.ok && each.line.amount.basis !== 'per-piece' ? [each.line] : [];
  });
  const formula: Formula = { name: '', kind: draft.kind, species: [], fatPctOfMeat: fatPct, lines };
  if (!leavesRoom(formula)) return null;
  const grams = exactGrams({ formula, ...meat, pieces: null });
  const mixG = lines.reduce(
    (sumG, { role }, at) => (isInMix(role) && !isMeat(role) ? sumG + (grams[at] ?? 0) : sumG),
    NOMINAL_MEAT_G,
  );
  return { ...meat, mixG, pieces: null };
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
