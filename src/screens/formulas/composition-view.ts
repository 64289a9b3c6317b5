/** What the mix is made of and what that becomes as it dries, with the cuts it was counted from. */
import { mixComposition } from '#core/formula/composition.ts';
import { CUTS_SOURCE, cutOf, USUAL_FAT_NDB, USUAL_LEAN_NDB } from '#core/formula/cuts.ts';
import type { Formula, FormulaLine } from '#core/formula/formula.ts';
import { sliceAfterLoss } from '#core/formula/slice.ts';
import type { Place } from '#record/place.ts';
import type { Words } from '#words/en.ts';
import { decimal } from '#words/format.ts';
import type { FormulaPlan } from './formula-plan.ts';

export type CompositionView = {
  readonly heads: readonly string[];
  /** Each part of the mix, and of the slice where a loss is aimed at that its water allows. */
  readonly rows: readonly { readonly label: string; readonly cells: readonly string[] }[];
  readonly cuts: readonly string[];
  readonly equation: string;
  readonly sources: readonly string[];
  readonly notes: readonly string[];
};

export function compositionView(
  formula: Formula,
  { out }: FormulaPlan,
  place: Place,
  words: Words,
): CompositionView {
  const say = words.formulaSheets.composition;
  const { composition, assumed } = mixComposition({
    ...{ formula, leanG: out.leanG, fatG: out.fatG },
    gramsByLine: out.lines.map(({ roundedG }) => roundedG),
  });
  const lossPct = formula.targetLossPct;
  const dries = lossPct !== undefined && lossPct < 100 * composition.waterFraction;
  const slice = dries ? sliceAfterLoss({ composition, lossPct }) : null;
  const pct = (value: number) => `~${decimal(value, 1, place)}\u00a0%`;
  const row = (label: string, fraction: number, inSlicePct: number | undefined) => ({
    label,
    cells: [pct(100 * fraction), ...(inSlicePct === undefined ? [] : [pct(inSlicePct)])],
  });
  const ratio = (value: number) => `~${decimal(value, 2, place)}`;
  const { waterFraction, proteinFraction } = composition;
  const labelMissing = out.figures.missing.includes('cure-label');
  return {
    heads: [say.mixed, ...(slice ? [say.sliced(words.workings.exactly(lossPct ?? 0, place))] : [])],
    rows: [
      row(say.water, waterFraction, slice?.moisturePct),
      row(say.protein, proteinFraction, slice?.proteinPct),
      row(say.fat, composition.fatFraction, slice?.fatPct),
      row(labelMissing ? say.saltAtLeast : say.salt, composition.saltFraction, slice?.saltPct),
      ...(proteinFraction > 0
        ? [
            {
              label: say.ratio,
              cells: [ratio(waterFraction / proteinFraction), ...(slice ? [ratio(slice.mpr)] : [])],
            },
          ]
        : []),
    ],
    cuts: cutTexts(formula, place, words),
    equation: say.equation,
    sources: [CUTS_SOURCE, MASS_BALANCE(words)].map((source) => {
      const { text, standing } = words.workings.source(source);
      return `${text} (${standing})`;
    }),
    notes: [
      ...(lossPct === undefined ? [say.noLoss] : dries ? [] : [say.tooMuch]),
      ...assumed.map((code) => say.assumed[code] ?? code),
      say.estimate,
    ],
  };
}

const MASS_BALANCE = ({ formulas }: Words) => ({
  body: '',
  title: formulas.working.massBalance,
  section: formulas.working.sliceSection,
  standing: 'derived' as const,
});

/** What each line of meat was taken for. */
function cutTexts({ lines }: Formula, place: Place, words: Words): string[] {
  const say = words.formulaSheets.composition;
  const text = ({ name, role, cutNdb, ownFatPct }: FormulaLine) => {
    if (ownFatPct !== undefined) return say.own(name, decimal(ownFatPct, 1, place));
    const usual = role === 'fat' ? USUAL_FAT_NDB : USUAL_LEAN_NDB;
    const cut = cutOf(cutNdb ?? usual) ?? cutOf(usual);
    return cut ? say.cut(name, cut.name, cut.ndb) : name;
  };
  return lines.filter(({ role }) => role === 'lean' || role === 'fat').map(text);
}
