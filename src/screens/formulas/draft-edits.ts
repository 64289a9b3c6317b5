/** What a thumb does to a formula that is being typed, and what is asked about before it is kept. */
import { figuresFromGrams } from '#core/formula/figures.ts';
import { amountG, type Bench, type Formula, isInMix, isMeat, type Role } from '#core/formula/formula.ts';
import { exactGrams } from '#core/formula/weigh-out.ts';
import type { Place } from '#record/place.ts';
import { readQuantity } from '#ui/quantity-input.ts';
import type { Words } from '#words/en.ts';
import { type FormulaDraft, HEAD_BOUNDS } from './formula-draft.ts';
import { leavesRoom } from './formula-plan.ts';
import { amountTexts, type LineDraft, plainNumber, typeAmount } from './line-draft.ts';
import { readLineDraft } from './line-read.ts';

/** What a formula is looked at for while it is typed: 1 kg of meat. */
const NOMINAL_MEAT_G = 1000;

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
