import {
  type BenchMeat,
  batchFromStock,
  benchForFat,
  meatForMix,
  mixForFinishedG,
  mixForPiecesG,
} from '#core/formula/batch-size.ts';
import { pearsonSquare } from '#core/formula/fat.ts';
import { type Formula, needsPieces } from '#core/formula/formula.ts';
import { massFromG } from '#core/units.ts';
import type { Place } from '#record/place.ts';
import type { Words } from '#words/en.ts';
import { joined, mass } from '#words/format.ts';
import { benchUnit } from './bench-input.ts';
import { type CalcField, type CalcResult, type CalcView, readFields, type Texts } from './calc-view.ts';
import { plainNumber } from './line-draft.ts';

export type WayCode = 'finished' | 'pieces' | 'lean' | 'hand' | 'square';
type WayField = keyof Words['formulaSheets']['ways']['field'];

const FIELDS: Readonly<Record<WayCode, readonly WayField[]>> = {
  finished: ['finishedG', 'lossPct', 'sampledPct'],
  pieces: ['pieces', 'pieceG', 'leftoverG'],
  lean: ['leanG'],
  hand: ['leanG', 'fatG'],
  square: ['firstFatPct', 'secondFatPct', 'wantedFatPct', 'meatG'],
};
const WAYS: readonly WayCode[] = ['finished', 'pieces', 'lean', 'hand', 'square'];
const MOST_G = 500_000;

export type WaysView = CalcView & {
  /** What goes into the fields of the bench. */
  readonly meat: (BenchMeat & { readonly pieces: number | null }) | null;
};

export function wayOptions(words: Words): { value: WayCode; label: string }[] {
  return WAYS.map((value) => ({ value, label: words.formulaSheets.ways.code[value] }));
}

export function waysView({
  code,
  texts,
  formula,
  place,
  words,
}: {
  code: WayCode;
  texts: Texts;
  formula: Formula;
  place: Place;
  words: Words;
}): WaysView {
  const say = words.formulaSheets.ways;
  const { views, values } = readFields(
    FIELDS[code].map((key) => field(key, formula, place, words)),
    texts,
    place,
    words,
  );
  const countFirst = code !== 'pieces' && needsPieces(formula);
  const none = { fields: views, results: [], meat: null };
  if (countFirst) return { ...none, notes: [say.countFirst] };
  if (values === null) return { ...none, notes: [words.formulaSheets.needs] };
  const found = solve(code, values, formula);
  if (found === null) return { ...none, notes: [say.cannot] };
  const result = (label: string, massG: number): CalcResult => ({
    label,
    value: joined(mass(massG, 1, place)),
  });
  return {
    fields: views,
    meat: { leanG: found.leanG, fatG: found.fatG, pieces: code === 'pieces' ? values.pieces : null },
    results: [
      ...(found.mixG === null ? [] : [result(say.mix, found.mixG)]),
      result(code === 'square' ? say.firstCut : say.lean, found.leanG),
      result(code === 'square' ? say.secondCut : say.fat, found.fatG),
      ...(found.leftLeanG > 0 ? [result(say.leftLean, found.leftLeanG)] : []),
      ...(found.leftFatG > 0 ? [result(say.leftFat, found.leftFatG)] : []),
    ],
    notes: code === 'finished' ? [say.about] : code === 'square' ? [say.squareNote, say.countsAsLean] : [],
  };
}

function field(key: WayField, formula: Formula, place: Place, words: Words): CalcField<WayField> {
  const say = words.formulaSheets.ways;
  const shown = (value: number) => plainNumber(value, place, words);
  const base = { key, label: say.field[key] };
  if (key === 'pieces') return { ...base, unit: '', least: 1, most: 999, first: '' };
  if (key.endsWith('Pct')) {
    const first =
      key === 'lossPct'
        ? (formula.targetLossPct ?? null)
        : key === 'sampledPct'
          ? 0
          : key === 'wantedFatPct'
            ? formula.fatPctOfMeat
            : null;
    return { ...base, unit: '%', least: 0, most: 95, first: first === null ? '' : shown(first) };
  }
  const unit = benchUnit(place);
  const first =
    key === 'leftoverG'
      ? '0'
      : key === 'pieceG' && formula.pieceG !== undefined
        ? shown(massFromG({ massG: formula.pieceG, unit }))
        : '';
  return { ...base, unit, least: key === 'leftoverG' || key === 'fatG' ? 0 : 1, most: MOST_G, first };
}

type Solved = BenchMeat & {
  readonly mixG: number | null;
  readonly leftLeanG: number;
  readonly leftFatG: number;
};

function solve(code: WayCode, values: Readonly<Record<WayField, number>>, formula: Formula): Solved | null {
  const nothingLeft = { leftLeanG: 0, leftFatG: 0 };
  const ofMix = (mixG: number, pieces: number | null): Solved | null => {
    const meat = meatForMix({ formula, mixG, pieces });
    return meat && { ...meat, ...nothingLeft, mixG };
  };
  switch (code) {
    case 'finished':
      return ofMix(mixForFinishedG(values), null);
    case 'pieces':
      return ofMix(mixForPiecesG(values), Math.floor(values.pieces));
    case 'lean':
      return formula.fatPctOfMeat < 100
        ? {
            ...benchForFat({ leanG: values.leanG, fatPct: formula.fatPctOfMeat }),
            ...nothingLeft,
            mixG: null,
          }
        : null;
    case 'hand': {
      const { leanG, fatG, leanLeftG, fatLeftG } = batchFromStock({
        formula,
        leanG: values.leanG,
        fatG: values.fatG,
        pieces: null,
        stock: {},
      });
      return leanG + fatG > 0 ? { leanG, fatG, mixG: null, leftLeanG: leanLeftG, leftFatG: fatLeftG } : null;
    }
    case 'square': {
      const cuts = pearsonSquare(values);
      return cuts && { leanG: cuts.firstG, fatG: cuts.secondG, ...nothingLeft, mixG: null };
    }
  }
}
