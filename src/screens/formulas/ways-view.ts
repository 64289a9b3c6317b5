import {
  type BenchMeat,
  batchFromStock,
  benchForFat,
  meatForMix,
  mixForFinishedG,
  mixForPiecesG,
} from '#core/formula/batch-size.ts';
import { pearsonSquare } from '#core/formula/fat.ts';
import { type Formula, isMeat, needsPieces } from '#core/formula/formula.ts';
import { exactGrams } from '#core/formula/weigh-out.ts';
import { massFromG } from '#core/units.ts';
import type { Place } from '#record/place.ts';
import type { Words } from '#words/en.ts';
import { joined, mass } from '#words/format.ts';
import { benchUnit } from './bench-input.ts';
import {
  type CalcField,
  type CalcFieldView,
  type CalcResult,
  type CalcView,
  readFields,
  type Texts,
} from './calc-view.ts';
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
  const stock = code === 'hand' ? stockOf(formula, texts, place, words) : NO_STOCK;
  const fields = [...views, ...stock.views];
  const countFirst = code !== 'pieces' && needsPieces(formula);
  const none = { fields, results: [], meat: null };
  if (countFirst) return { ...none, notes: [say.countFirst] };
  if (values === null || stock.wrong)
    return { ...none, notes: [code === 'hand' ? say.stockNeeds : words.formulaSheets.needs] };
  const found = solve(code, values, formula, stock.gramsById);
  if (found === null) return { ...none, notes: [say.cannot] };
  const result = (label: string, massG: number): CalcResult => ({
    label,
    value: joined(mass(massG, 1, place)),
  });
  return {
    fields,
    meat: { leanG: found.leanG, fatG: found.fatG, pieces: code === 'pieces' ? values.pieces : null },
    results: [
      ...(found.runsOut === null
        ? []
        : [{ label: say.runsOut, value: runsOutName(found.runsOut, formula, words) }]),
      ...(found.mixG === null ? [] : [result(say.mix, found.mixG)]),
      result(code === 'square' ? say.firstCut : say.lean, found.leanG),
      result(code === 'square' ? say.secondCut : say.fat, found.fatG),
      ...(found.leftLeanG > 0 ? [result(say.leftLean, found.leftLeanG)] : []),
      ...(found.leftFatG > 0 ? [result(say.leftFat, found.leftFatG)] : []),
      ...leftOfStock(found, stock.gramsById, formula, place, words),
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

type Stock = {
  readonly views: readonly CalcFieldView[];
  readonly gramsById: Readonly<Record<string, number>>;
  readonly wrong: boolean;
};
const NO_STOCK: Stock = { views: [], gramsById: {}, wrong: false };

/** What there is of each line; one that is left empty is taken as plenty. */
function stockOf(formula: Formula, texts: Texts, place: Place, words: Words): Stock {
  const unit = place.mass === 'metric' ? 'g' : 'oz';
  const read = formula.lines
    .filter(({ role }) => !isMeat(role))
    .map(({ id, name }) => {
      const key = `line ${id}`;
      const one = { key, label: name, unit, least: 0, most: MOST_G, first: '' } as const;
      const { views, values } = readFields([one], texts, place, words);
      return { id, views, massG: values?.[key] ?? null };
    });
  return {
    views: read.flatMap(({ views }) => views),
    gramsById: Object.fromEntries(read.flatMap(({ id, massG }) => (massG === null ? [] : [[id, massG]]))),
    wrong: read.some(({ views }) => views.some(({ problem }) => problem !== null)),
  };
}

function runsOutName(runsOut: string, { lines }: Formula, words: Words): string {
  const say = words.formulaSheets.ways;
  if (runsOut === 'lean' || runsOut === 'fat') return say[runsOut];
  return lines.find(({ id }) => id === runsOut)?.name ?? runsOut;
}

function leftOfStock(
  { leanG, fatG }: BenchMeat,
  gramsById: Stock['gramsById'],
  formula: Formula,
  place: Place,
  words: Words,
): CalcResult[] {
  const grams = exactGrams({ formula, leanG, fatG, pieces: 1 });
  return formula.lines.flatMap(({ id, name }, at) => {
    const leftG = (gramsById[id] ?? 0) - (grams[at] ?? 0);
    // What the search for the largest batch leaves of the line that runs out is noise.
    return leftG < 0.05
      ? []
      : [{ label: words.formulaSheets.ways.left(name), value: joined(mass(leftG, 0.1, place, 'down')) }];
  });
}

type Solved = BenchMeat & {
  /** `lean`, `fat` or the id of a line; null where nothing was held against what is at hand. */
  readonly runsOut: string | null;
  readonly mixG: number | null;
  readonly leftLeanG: number;
  readonly leftFatG: number;
};

function solve(
  code: WayCode,
  values: Readonly<Record<WayField, number>>,
  formula: Formula,
  gramsById: Stock['gramsById'],
): Solved | null {
  const nothingLeft = { leftLeanG: 0, leftFatG: 0, runsOut: null };
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
      const { leanG, fatG, leanLeftG, fatLeftG, runsOut } = batchFromStock({
        formula,
        leanG: values.leanG,
        fatG: values.fatG,
        pieces: null,
        stock: gramsById,
      });
      return leanG + fatG > 0
        ? { leanG, fatG, mixG: null, leftLeanG: leanLeftG, leftFatG: fatLeftG, runsOut }
        : null;
    }
    case 'square': {
      const cuts = pearsonSquare(values);
      return cuts && { leanG: cuts.firstG, fatG: cuts.secondG, ...nothingLeft, mixG: null };
    }
  }
}
