import { type Formula, needsPieces } from '#core/formula/formula.ts';
import { massFromG } from '#core/units.ts';
import type { Place } from '#record/place.ts';
import { readQuantity } from '#ui/quantity-input.ts';
import type { Words } from '#words/en.ts';
import { joined, type Quantity } from '#words/format.ts';
import { plainNumber } from './line-draft.ts';

/** The fields above the lines: the meat as it lies on the bench, and the pieces where a line counts by them. */
export type BenchTexts = { readonly lean: string; readonly fat: string; readonly pieces: string };

export type BenchRead = {
  readonly leanG: number;
  readonly fatG: number;
  readonly pieces: number | null;
};

export type BenchProblems = { readonly [Field in keyof BenchTexts]?: string };

const MOST_G = 500_000;
/** A round amount to begin with: 1 kg, or 10 lb. */
const FIRST_G = { metric: 1000, pounds: 4535.9237 };

export function benchUnit(place: Place): 'g' | 'lb' {
  return place.mass === 'metric' ? 'g' : 'lb';
}

/** What stands in the fields before anything was typed: a round amount in the formula's own proportion. */
export function firstBench(formula: Formula, place: Place, words: Words): BenchTexts {
  const fatPct = formula.kind === 'whole-muscle' ? 0 : formula.fatPctOfMeat;
  const part = (pct: number) => benchText((FIRST_G[place.mass] * pct) / 100, place, words);
  return { lean: part(100 - fatPct), fat: part(fatPct), pieces: '' };
}

/** Null while a field cannot be read, so that no gram of an older weight stays on the screen. */
export function readBench({
  texts,
  formula,
  place,
  words,
}: {
  texts: BenchTexts;
  formula: Formula;
  place: Place;
  words: Words;
}): { bench: BenchRead | null; problems: BenchProblems } {
  const unit = benchUnit(place);
  const most = `${words.workings.exactly(massFromG({ massG: MOST_G, unit }), place)}\u00a0${unit}`;
  const lean = readQuantity({ text: texts.lean, unit, decimal: place.decimal, least: 0, most: MOST_G });
  const fat =
    formula.kind === 'whole-muscle'
      ? ({ ok: true, value: 0 } as const)
      : readQuantity({ text: texts.fat, unit, decimal: place.decimal, least: 0, most: MOST_G });
  const counted = needsPieces(formula);
  const pieces = readQuantity({ text: texts.pieces, unit: '', decimal: place.decimal, least: 1, most: 999 });
  const say = (read: typeof lean | typeof fat, bounds: { least: string; most: string }) =>
    read.ok || read.problem === 'empty' ? undefined : words.fields.problem(read.problem, bounds);
  const problems = {
    lean: say(lean, { least: '0', most }),
    fat: say(fat, { least: '0', most }),
    pieces: counted ? say(pieces, { least: '1', most: '999' }) : undefined,
  };
  const known: BenchProblems = Object.fromEntries(Object.entries(problems).filter(([, text]) => text));
  if (!lean.ok || !fat.ok || !(lean.value + fat.value > 0)) return { bench: null, problems: known };
  return {
    bench: { leanG: lean.value, fatG: fat.value, pieces: pieces.ok ? Math.floor(pieces.value) : null },
    problems: known,
  };
}

/** What was typed here before, if it still has this shape. */
export function restoreBench(kept: unknown): BenchTexts | null {
  if (typeof kept !== 'object' || kept === null) return null;
  const { lean, fat, pieces } = kept as Readonly<Record<string, unknown>>;
  return typeof lean === 'string' && typeof fat === 'string' && typeof pieces === 'string'
    ? { lean, fat, pieces }
    : null;
}

/** A mass as it would be typed on the bench: whole grams, or thousandths of a pound. */
export function benchText(massG: number, place: Place, words: Words): string {
  return plainNumber(benchValue(massG, place), place, words);
}

function benchValue(massG: number, place: Place): number {
  const unit = benchUnit(place);
  const value = massFromG({ massG, unit });
  return unit === 'g' ? Math.round(value) : Math.round(value * 1000) / 1000;
}

/** A mass of the bench in a sentence. */
export function benchMass(massG: number, place: Place, words: Words): string {
  return joined(benchQuantity(massG, place, words));
}

export function benchQuantity(massG: number, place: Place, words: Words): Quantity {
  return { value: words.workings.exactly(benchValue(massG, place), place), unit: benchUnit(place) };
}

/** Meat that was worked out elsewhere, written into the fields. */
export function meatTexts(
  { leanG, fatG, pieces }: BenchRead,
  before: BenchTexts,
  place: Place,
  words: Words,
): BenchTexts {
  return {
    lean: benchText(leanG, place, words),
    fat: benchText(fatG, place, words),
    pieces: pieces === null ? before.pieces : String(pieces),
  };
}
