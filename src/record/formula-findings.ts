/** What the rule set of the batch's day says of what goes in: actual grams where they were weighed, planned ones where not. */
import { type Figures, figuresFromGrams } from '#core/formula/figures.ts';
import { isMeat } from '#core/formula/formula.ts';
import { figureBounds, type LineGramsWithError, weighingErrorG } from '#core/formula/scale-error.ts';
import type { WeighOut } from '#core/formula/weigh-out.ts';
import { nitriteFindings } from '#core/rules/nitrite.ts';
import type { Finding } from '#core/rules/rule.ts';
import { saltFindings } from '#core/rules/salt.ts';
import type { Batch } from './batch.ts';
import type { Scale } from './place.ts';
import { NO_SCALE, plannedWeighOut } from './weigh-out-figures.ts';

export type FormulaFindings = {
  readonly stage: 'planned' | 'weighed';
  readonly figures: Figures;
  /** The same figures with every weighing at the end of its scale's error. */
  readonly upper: Figures;
  readonly lower: Figures;
  readonly meatErrorG: number;
  /** Step of the scale on which the cure is, or was, weighed. */
  readonly cureStepG: number;
  /** Actual grams where they were weighed, planned ones where not, by the id of the line. */
  readonly gramsByLine: ReadonlyMap<string, number>;
  readonly findings: readonly Finding[];
};

/** Null while no meat was weighed. */
export function formulaFindings(batch: Batch, scales: readonly Scale[]): FormulaFindings | null {
  const plan = plannedWeighOut(batch, scales);
  if (plan === null) return null;
  const { leanG, fatG } = batch;
  const { formula, ruleSet } = batch.opened.body;
  const lines = lineGrams(batch, plan, scales);
  const weighed = formula.lines.every(({ id, role }) => isMeat(role) || batch.weighedOut.has(id));
  const stage = weighed ? 'weighed' : 'planned';
  const figures = figuresFromGrams({ leanG, fatG, lines });
  const meatErrorG = batch.meat.reduce(
    (sumG, { body }) => sumG + weighingErrorG({ stepG: stepOf(scales, body.scale), portions: 1 }),
    0,
  );
  const { upper, lower } = figureBounds({ leanG, fatG, meatErrorG, lines });
  const given = { ruleSet, kind: formula.kind, stage, figures, upper, lower } as const;
  const cureStepG = lines.find(({ cure }) => cure !== undefined)?.stepG ?? NO_SCALE.stepG;
  const gramsByLine = new Map(lines.map(({ id, massG }) => [id, massG ?? 0]));
  return {
    stage,
    figures,
    upper,
    lower,
    meatErrorG,
    cureStepG,
    gramsByLine,
    findings: [...nitriteFindings(given), ...saltFindings(given)],
  };
}

type WeighedLine = LineGramsWithError & { readonly id: string; readonly stepG: number };

function lineGrams(batch: Batch, plan: WeighOut, scales: readonly Scale[]): WeighedLine[] {
  return batch.opened.body.formula.lines.flatMap(({ id, role, cure }, at) => {
    const planned = plan.lines[at];
    if (isMeat(role) || !planned) return [];
    const actual = batch.weighedOut.get(id)?.body;
    const stepG = actual ? stepOf(scales, actual.scale) : planned.stepG;
    const errorG = weighingErrorG({ stepG, portions: planned.portions });
    return [{ id, role, cure, massG: actual?.massG ?? planned.roundedG, errorG, stepG }];
  });
}

function stepOf(scales: readonly Scale[], id: string | undefined): number {
  return scales.find((scale) => scale.id === id)?.stepG ?? NO_SCALE.stepG;
}
