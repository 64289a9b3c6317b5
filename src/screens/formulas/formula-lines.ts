import { type FormulaLine, isMeat } from '#core/formula/formula.ts';
import { inEveryBasis } from '#core/formula/rebase.ts';
import { lineError } from '#core/formula/scale-error.ts';
import { starterDose } from '#core/formula/starter.ts';
import type { WeighOutLine } from '#core/formula/weigh-out.ts';
import { decimal, mass, type Quantity } from '#words/format.ts';
import { amountText, labelText } from './amount-text.ts';
import { benchQuantity } from './bench-input.ts';
import type { FormulaPlan } from './formula-plan.ts';
import type { ViewGiven } from './formula-view.ts';

export type LineView = {
  readonly id: string;
  readonly name: string;
  readonly amount: string;
  /** Null while the bench is not known. */
  readonly mass: Quantity | null;
  readonly note: string;
};

/** A line before any meat is known: what was written, and no grams. */
export function plainLine(line: FormulaLine, given: ViewGiven): LineView {
  return { id: line.id, name: line.name, amount: written(line, given), mass: null, note: '' };
}

export function lineView(
  line: FormulaLine,
  weighed: WeighOutLine,
  plan: FormulaPlan,
  given: ViewGiven,
): LineView {
  const { place, words, scales } = given;
  const { roundedG, stepG, portions, rounding, scaleId } = weighed;
  const meatG = plan.out.leanG + plan.out.fatG;
  const say = words.formulas;
  // What tare and reading together leave open.
  const { weighingPct: off, nitriteMgPerKg: nitriteOff } = lineError({
    ...{ massG: roundedG, stepG, portions, meatG },
    nitritePct: line.cure?.nitritePct ?? null,
  });
  // With one scale on the bench there is nothing to choose.
  const scale = scales.length > 1 ? scales.find(({ id }) => id === scaleId) : undefined;
  const why = whyText(line, weighed, meatG, given);
  return {
    id: line.id,
    name: line.name,
    amount: [
      amountOn(line, weighed, plan, given),
      why,
      say.rounding[rounding],
      nitriteOff === null || nitriteOff === 0 ? '' : say.offNitrite(decimal(nitriteOff, 1, place, 'up')),
    ]
      .filter(Boolean)
      .join(' · '),
    // Meat stands as it was typed: it is cut, not weighed out.
    mass: isMeat(line.role) ? benchQuantity(weighed.exactG, place, words) : mass(roundedG, stepG, place),
    note: [
      portions > 1 ? say.portions(portions) : '',
      scale?.name ?? '',
      off === null || isMeat(line.role) ? '' : say.off(decimal(off, 1, place, 'up')),
    ]
      .filter(Boolean)
      .join(', '),
  };
}

function written(line: FormulaLine, { place, words }: ViewGiven): string {
  const amount = amountText(line.amount, place, words);
  if (line.role !== 'cure') return amount;
  return `${amount} · ${line.cure ? labelText(line.cure, place, words) : words.formulas.noLabel}`;
}

/** The exact amount on the base that is shown; what is rounded to the scale stands beside it. */
function amountOn(
  line: FormulaLine,
  { exactG }: WeighOutLine,
  { out }: FormulaPlan,
  given: ViewGiven,
): string {
  const { base, place, words } = given;
  if (base === 'written') return written(line, given);
  const { leanG, fatG, pieces } = out;
  const on = inEveryBasis(exactG, { leanG, fatG, mixG: out.exact.mixG, pieces });
  const say = words.formulas.amount;
  switch (base) {
    case 'pct-of-meat':
      return say[base](decimal(on.pctOfMeat, 3, place));
    case 'pct-of-total':
      return say[base](decimal(on.pctOfTotal, 3, place));
    case 'g-per-kg-meat':
      return say[base](decimal(on.gPerKgMeat, 2, place));
  }
}

/** Which of the bounds of an amount decided, where it has more than one. */
function whyText(
  { amount }: FormulaLine,
  { exactG }: WeighOutLine,
  meatG: number,
  { words }: ViewGiven,
): string {
  const { why } = words.formulas;
  if (amount.basis === 'pack-share')
    return why[starterDose({ meatG, amount, packLeftG: amount.packG }).reason];
  if (amount.basis !== 'at-least') return '';
  return exactG > amount.minimumG ? why['per-kg'] : why.minimum;
}
