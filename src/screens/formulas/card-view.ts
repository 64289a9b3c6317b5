/** A formula on paper: every line with its base, grams for a kilo of meat, grams for the meat on this bench. */
import {
  type Formula,
  type FormulaLine,
  isCure,
  isInMix,
  isMeat,
  needsPieces,
} from '#core/formula/formula.ts';
import { exactGrams } from '#core/formula/weigh-out.ts';
import type { Place } from '#record/place.ts';
import type { Words } from '#words/en.ts';
import { decimal, mass } from '#words/format.ts';
import { amountText, labelText } from './amount-text.ts';
import { type BenchRead, benchMass } from './bench-input.ts';
import { leavesRoom } from './formula-plan.ts';

export type CardView = {
  readonly title: string;
  readonly facts: readonly string[];
  readonly heads: readonly string[];
  readonly rows: readonly {
    readonly key: string;
    readonly name: string;
    readonly cells: readonly string[];
  }[];
  readonly notes: readonly string[];
  readonly cautions: readonly string[];
};

/** Grams grow with the meat and with nothing else: so much for each kilo holds for any batch. */
const BY_MEAT: readonly FormulaLine['amount']['basis'][] = ['pct-of-meat', 'pct-of-lean', 'g-per-kg-meat'];
const NONE = '–';

export function cardView({
  formula,
  line,
  bench,
  place,
  words,
}: {
  formula: Formula;
  /** Which version it is, and when it was saved. */
  line: string;
  bench: BenchRead | null;
  place: Place;
  words: Words;
}): CardView {
  const say = words.formulaSheets.card;
  const { exactly } = words.workings;
  const fatG = formula.kind === 'whole-muscle' ? 0 : 10 * formula.fatPctOfMeat;
  const counted = needsPieces(formula);
  const room = leavesRoom(formula);
  const kilo = room && !counted ? exactGrams({ formula, leanG: 1000 - fatG, fatG, pieces: null }) : null;
  const here =
    room && bench && !(counted && bench.pieces === null) ? exactGrams({ formula, ...bench }) : null;
  const byMeat = (one: FormulaLine) => BY_MEAT.includes(one.amount.basis);
  const allByMeat = formula.lines.every(
    (one) => byMeat(one) || one.amount.basis === 'pct-of-total' || isMeat(one.role) || !isInMix(one.role),
  );
  const scales = (one: FormulaLine) =>
    isMeat(one.role) || byMeat(one) || (allByMeat && one.amount.basis === 'pct-of-total');
  const grams = (one: FormulaLine, massG: number | undefined) => {
    if (massG === undefined) return NONE;
    const { value, unit } = mass(massG, massG < 20 ? 0.01 : 0.1, place, isCure(one) ? 'down' : 'nearest');
    return `${value}\u00a0${unit}`;
  };
  return {
    title: formula.name,
    facts: [
      line,
      words.formulas.kind[formula.kind],
      formula.species.map((each) => words.formulas.species[each]).join(', '),
      formula.kind === 'comminuted' ? say.fat(exactly(formula.fatPctOfMeat, place)) : '',
      formula.diameterMm === undefined ? '' : say.diameter(exactly(formula.diameterMm, place)),
      formula.targetLossPct === undefined ? '' : say.loss(exactly(formula.targetLossPct, place)),
    ].filter(Boolean),
    heads: [
      say.line,
      say.amount,
      say.perKilo,
      ...(bench && here ? [say.here(benchMass(bench.leanG + bench.fatG, place, words))] : []),
    ],
    rows: formula.lines.map((one, at) => ({
      key: one.id,
      name: one.name,
      cells: [
        [
          isMeat(one.role) ? '' : amountText(one.amount, place, words),
          one.cure ? labelText(one.cure, place, words) : isCure(one) ? words.formulas.noLabel : '',
        ]
          .filter(Boolean)
          .join(' · '),
        scales(one) ? grams(one, kilo?.[at]) : NONE,
        ...(here ? [grams(one, here[at])] : []),
      ],
    })),
    notes: [
      say.scale(decimal(formula.fatPctOfMeat, 0, place)),
      ...(formula.lines.every(scales) ? [] : [say.notByMeat]),
      ...(formula.note ? [formula.note] : []),
    ],
    cautions: [...words.formulas.usual, say.bag],
  };
}
