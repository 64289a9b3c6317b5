import { figuresFromGrams } from '#core/formula/figures.ts';
import type { Formula } from '#core/formula/formula.ts';
import { exactGrams } from '#core/formula/weigh-out.ts';
import type { Place } from '#record/place.ts';
import type { Words } from '#words/en.ts';
import { amountText, labelText } from './amount-text.ts';
import { leavesRoom } from './formula-plan.ts';
import { type GuardView, guardViews } from './guards-view.ts';

export type ArrivedView = {
  readonly guards: readonly GuardView[];
  readonly lines: readonly { key: string; title: string; note: string }[];
  readonly facts: readonly string[];
};

export function arrivedView(formula: Formula, place: Place, words: Words): ArrivedView {
  const say = words.formulas;
  const label = (line: Formula['lines'][number]) =>
    line.cure ? labelText(line.cure, place, words) : say.noLabel;
  return {
    guards: leavesRoom(formula) ? guardsOfOneKilo(formula, place, words) : [],
    lines: formula.lines.map((line) => ({
      key: line.id,
      title: line.name,
      note:
        line.role === 'cure'
          ? `${amountText(line.amount, place, words)} · ${label(line)}`
          : amountText(line.amount, place, words),
    })),
    facts: [
      say.kind[formula.kind],
      formula.note ?? '',
      ...(leavesRoom(formula) ? [] : [words.formulaEdit.whole['no-room']]),
    ].filter(Boolean),
  };
}

function guardsOfOneKilo(formula: Formula, place: Place, words: Words): GuardView[] {
  const fatG = 10 * formula.fatPctOfMeat;
  const leanG = 1000 - fatG;
  const grams = exactGrams({ formula, leanG, fatG, pieces: 1 });
  const figures = figuresFromGrams({
    leanG,
    fatG,
    lines: formula.lines.map(({ role, cure }, at) => ({ role, cure, massG: grams[at] ?? 0 })),
  });
  return guardViews(formula, figures, place, words);
}
