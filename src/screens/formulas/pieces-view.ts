/** A whole muscle is salted piece by piece: the grams of every line for each piece by its own weight. */
import type { Formula } from '#core/formula/formula.ts';
import type { BenchScale } from '#core/formula/scale.ts';
import type { Place } from '#record/place.ts';
import { readQuantity } from '#ui/quantity-input.ts';
import type { Words } from '#words/en.ts';
import { decimal, joined, mass } from '#words/format.ts';
import { benchMass, benchUnit } from './bench-input.ts';
import { formulaPlan, leavesRoom } from './formula-plan.ts';

export type PiecesView = {
  readonly pieces: readonly {
    readonly key: string;
    readonly title: string;
    readonly grams: readonly string[];
    readonly note: string;
    readonly over: boolean;
  }[];
  readonly problem: string | null;
  readonly note: string | null;
};

const MOST_PIECE_G = 50_000;

/** `text`: weights one after the other, with a space or on a line of its own between them. */
export function piecesView({
  text,
  formula,
  scales,
  place,
  words,
}: {
  text: string;
  formula: Formula;
  scales: readonly BenchScale[];
  place: Place;
  words: Words;
}): PiecesView {
  const say = words.formulaSheets.pieces;
  const unit = benchUnit(place);
  const read = text
    .split(/[\s;]+/)
    .filter(Boolean)
    .map((word) => ({
      word,
      ...readQuantity({ text: word, unit, decimal: place.decimal, least: 1, most: MOST_PIECE_G }),
    }));
  const wrong = read.find(({ ok }) => !ok);
  if (wrong) return { pieces: [], problem: say.wrong(wrong.word), note: null };
  if (!leavesRoom(formula)) return { pieces: [], problem: words.formulaEdit.whole['no-room'], note: null };
  const pieces = read.flatMap((each, at) => {
    if (!each.ok) return [];
    const { out, findings } = formulaPlan({
      ...{ formula, scales, ruleSet: place.ruleSet },
      bench: { leanG: each.value, fatG: 0, pieces: 1 },
    });
    const { nitrite, saltPctOfMeat } = out.figures;
    const salt = `${decimal(saltPctOfMeat, 2, place)}\u00a0%`;
    return [
      {
        key: String(at),
        title: say.piece(at + 1, benchMass(each.value, place, words)),
        grams: out.lines.flatMap(({ role, roundedG, stepG }, line) =>
          role === 'lean' || role === 'fat'
            ? []
            : [`${formula.lines[line]?.name ?? ''} ${joined(mass(roundedG, stepG, place))}`],
        ),
        note: nitrite ? say.figures(salt, decimal(nitrite.mgPerKgMeat, 1, place, 'up')) : say.saltOnly(salt),
        over: findings.some(({ finding }) => finding.verdict === 'deviation'),
      },
    ];
  });
  return { pieces, problem: null, note: pieces.length > 0 ? say.own : null };
}
