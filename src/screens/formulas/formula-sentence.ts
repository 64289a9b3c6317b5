/** What the sentence at the top says of a plan: what goes in against its limit, and what the scale does to it. */
import { BENCH_TOLERANCE_PCT } from '#core/formula/scale-error.ts';
import type { CureSaid, ScaleSaid } from '#words/en/formulas.ts';
import { decimal, joined, mass } from '#words/format.ts';
import type { FormulaPlan, PlanFinding } from './formula-plan.ts';
import type { ViewGiven } from './formula-view.ts';
import { limited, nitritePlaces } from './formula-workings.ts';

const ofCure = ({ rule }: PlanFinding) => rule !== null && rule.measure !== 'salt-of-mix';

export function cureSaid({ formula, place, words }: ViewGiven, plan: FormulaPlan): CureSaid {
  if (!formula.lines.some(({ role }) => role === 'cure')) return { case: 'no-cure' };
  const found = plan.findings.filter(ofCure);
  const quoted =
    found.find(({ finding }) => finding.verdict === 'deviation') ??
    found.find(({ finding }) => finding.limit?.relation === '<=');
  const said = quoted ? limited(quoted, place, words) : null;
  if (quoted?.finding.verdict === 'deviation' && said)
    return { case: quoted.finding.limit?.relation === '>=' ? 'under' : 'over', ...said };
  const { nitrite } = plan.out.figures;
  if (nitrite === null) return { case: 'no-label' };
  const figure = `${decimal(nitrite.mgPerKgMeat, nitritePlaces(plan), place, 'up')}\u00a0mg/kg`;
  if (place.ruleSet === null) return { case: 'no-rule-set', figure };
  return said ? { case: 'keeps', ...said } : { case: 'no-limit', figure };
}

export function scaleSaid({ place, scales, words }: ViewGiven, plan: FormulaPlan): ScaleSaid {
  const main = plan.findings.find((each) => ofCure(each) && each.finding.limit?.relation === '<=');
  const cure = plan.out.lines.find(({ role }) => role === 'cure');
  if (!main || !cure || main.finding.verdict !== 'pending' || plan.cureOffPct === null)
    return { case: 'fine' };
  if (plan.cureOffPct > BENCH_TOLERANCE_PCT.cure && main.fromValue !== null && main.toValue !== null)
    return {
      case: 'coarse',
      scale: scales.find(({ id }) => id === cure.scaleId)?.name ?? words.formulas.kitchenScale,
      from: decimal(main.fromValue, 0, place, 'down'),
      to: decimal(main.toValue, 0, place, 'up'),
    };
  if (plan.saferCureG === null) return { case: 'fine' };
  return { case: 'edge', massText: joined(mass(plan.saferCureG, cure.stepG, place, 'down')) };
}
