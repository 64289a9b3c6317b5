import type { Figures } from '#core/formula/figures.ts';
import type { Formula } from '#core/formula/formula.ts';
import { formulaProblems } from '#core/formula/problems.ts';
import { type BenchScale, chooseScale } from '#core/formula/scale.ts';
import { figureBounds, lineError, weighingErrorG } from '#core/formula/scale-error.ts';
import { type WeighOut, weighOut } from '#core/formula/weigh-out.ts';
import { mostCure, nitriteFindings } from '#core/rules/nitrite.ts';
import type { Finding, RuleSetId } from '#core/rules/rule.ts';
import { type FormulaRule, RULE_SETS } from '#core/rules/rule-sets.ts';
import { saltFindings } from '#core/rules/salt.ts';
import type { BenchRead } from './bench-input.ts';

/** One answer of the rule set on the plan, with the same figure at both ends of the scales' steps. */
export type PlanFinding = {
  readonly finding: Finding;
  readonly rule: FormulaRule | null;
  readonly fromValue: number | null;
  readonly toValue: number | null;
  readonly unroundedValue: number | null;
};

export type FormulaPlan = {
  readonly out: WeighOut;
  readonly upper: Figures;
  readonly lower: Figures;
  /** Empty while no rule set is chosen. */
  readonly findings: readonly PlanFinding[];
  /** How far the scale leaves the curing salt open, percent of it; null without one. */
  readonly cureOffPct: number | null;
  /** The curing salt that keeps every maximum even at the end of the scales' steps, where the plan does not. */
  readonly saferCureG: number | null;
};

/** A formula planned for the meat on the bench: its grams, and what the rule set says of them. */
export function formulaPlan({
  formula,
  bench: { leanG, fatG, pieces },
  scales,
  ruleSet,
}: {
  formula: Formula;
  bench: BenchRead;
  scales: readonly BenchScale[];
  ruleSet: RuleSetId | null;
}): FormulaPlan {
  const out = weighOut({ formula, leanG, fatG, pieces, scales });
  const meatErrorG = [leanG, fatG]
    .filter((massG) => massG > 0)
    .reduce((sumG, massG) => {
      const { scale, portions } = chooseScale({ massG, scales });
      return sumG + weighingErrorG({ stepG: scale.stepG, portions });
    }, 0);
  const { upper, lower } = figureBounds({
    leanG,
    fatG,
    meatErrorG,
    lines: out.lines.map(({ role, roundedG, stepG, portions }, at) => ({
      role,
      massG: roundedG,
      cure: formula.lines[at]?.cure,
      errorG: weighingErrorG({ stepG, portions }),
    })),
  });
  const judge = (figures: Figures, stage: 'planned' | 'weighed' = 'planned') => {
    if (ruleSet === null) return [];
    const given = { ruleSet, kind: formula.kind, stage, figures, upper, lower };
    return [...nitriteFindings(given), ...saltFindings(given)];
  };
  const lows = judge(lower);
  const highs = judge(upper);
  const unrounded = judge(out.exact);
  const findings = judge(out.figures).map(
    (finding, at): PlanFinding => ({
      finding,
      rule: ruleSet === null ? null : ruleOf(finding, ruleSet, formula.kind),
      fromValue: lows[at]?.value ?? null,
      toValue: highs[at]?.value ?? null,
      unroundedValue: unrounded[at]?.value ?? null,
    }),
  );
  const cures = out.lines.filter(({ role }) => role === 'cure');
  const cure = cures.length === 1 ? cures[0] : undefined;
  const label = formula.lines.find(({ id }) => id === cure?.lineId)?.cure;
  const unsure = judge(out.figures, 'weighed').some(
    ({ verdict, limit, missing }) =>
      limit?.relation === '<=' &&
      (verdict === 'deviation' || (verdict === 'no-reading' && missing.includes('finer-scale'))),
  );
  const safer =
    unsure && cure && label && ruleSet !== null && leanG + fatG > meatErrorG
      ? mostCure({ ruleSet, kind: formula.kind, label, meatG: leanG + fatG, meatErrorG, stepG: cure.stepG })
      : null;
  return {
    out,
    upper,
    lower,
    findings,
    cureOffPct: cure
      ? lineError({
          massG: cure.roundedG,
          stepG: cure.stepG,
          portions: cure.portions,
          meatG: leanG + fatG,
          nitritePct: null,
        }).weighingPct
      : null,
    saferCureG: safer?.cureG ?? null,
  };
}

function ruleOf(finding: Finding, ruleSet: RuleSetId, kind: Formula['kind']): FormulaRule | null {
  return (
    RULE_SETS[ruleSet].formula.find(
      ({ rule, limit, kinds }) => rule === finding.rule && limit === finding.limit && kinds.includes(kind),
    ) ?? null
  );
}

/** Whether the percentages of the whole mix leave room for meat; a formula from elsewhere may not. */
export function leavesRoom(formula: Formula): boolean {
  return formulaProblems(formula).every(({ code }) => code !== 'mix-is-all-shares');
}
