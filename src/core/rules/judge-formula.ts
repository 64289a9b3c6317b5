import type { Figures } from '#core/formula/figures.ts';
import { type Finding, keepsLimit, type RuleSetId } from './rule.ts';
import { type FormulaRule, type Measure, RULE_SETS } from './rule-sets.ts';

/** Holds grams against one published limit on what goes in. Nitrite, nitrate and salt are all judged here. */

/**
 * What is judged. `upper` and `lower` are the same figures with every weighing at the end of its scale's error that
 * raises or lowers the shares (`scale-error.ts`); null where a scale is unknown.
 */
export type InJudged = {
  readonly ruleSet: RuleSetId;
  readonly kind: 'comminuted' | 'whole-muscle';
  /** `planned`: grams that are still to be weighed. `weighed`: all grams are readings. */
  readonly stage: 'planned' | 'weighed';
  readonly figures: Figures;
  readonly upper: Figures | null;
  readonly lower: Figures | null;
};

/** Enough to drop what binary fractions add to 156.25, and no more: a billionth of the figure. */
const DIGITS = 12;

function measured(figures: Figures, measure: Measure, worst: boolean): number {
  const { knownNitrite: nitrite, knownNitrate: nitrate } = figures;
  const of = (): number => {
    switch (measure) {
      case 'nitrite':
        return nitrite.mgPerKgMeat;
      case 'nitrate':
        return nitrate.mgPerKgMeat;
      case 'nitrite-and-nitrate':
        return nitrite.mgPerKgMeat + nitrate.mgPerKgMeat;
      case 'nitrite-ion':
        return worst ? nitrite.ionUpperMgPerKgMeat : nitrite.ionMgPerKgMeat;
      case 'nitrate-ion':
        return worst ? nitrate.ionUpperMgPerKgMeat : nitrate.ionMgPerKgMeat;
      case 'salt-of-mix':
        return figures.saltPctOfMix;
    }
  };
  return Number(of().toPrecision(DIGITS));
}

/** Salt of the mix needs every line; the agents need the cures alone. */
function lacks(figures: Figures, measure: Measure): readonly string[] {
  return figures.missing.filter((code) => measure === 'salt-of-mix' || code.startsWith('cure-'));
}

function judged({ rule, measure, limit }: FormulaRule, given: InJudged): Finding {
  const atMost = limit.relation === '<=' || limit.relation === '<';
  const missing = lacks(given.figures, measure);
  const value = measured(given.figures, measure, false);
  const answer = (verdict: Finding['verdict'], codes: readonly string[] = []): Finding => ({
    rule,
    verdict,
    value: missing.length > 0 && verdict !== 'deviation' ? null : value,
    limit,
    missing: codes,
  });
  const fails = !keepsLimit(value, limit);
  if (fails && (atMost || missing.length === 0)) return answer('deviation');
  if (given.stage === 'planned' && !missing.includes('cure-label'))
    return answer('pending', ['weighed-grams']);
  if (missing.length > 0) return answer('no-reading', missing);
  const end = atMost ? given.upper : given.lower;
  if (end === null) return answer('no-reading', ['scale-step']);
  return keepsLimit(measured(end, measure, true), limit)
    ? answer('within-limit')
    : answer('no-reading', ['finer-scale']);
}

/**
 * Every limit of a rule set on what goes in, held against planned or weighed grams.
 *
 * A plan is never within a limit, only pending or over. Weighed grams are within a limit only if the end of the
 * scale's error is as well: until then the answer is `no-reading` with `finer-scale`. What is already known to be in
 * can pass a maximum while another cure is still unknown. A measure that the rule set does not limit does not apply.
 *
 * Units: mg/kg or % as each limit says.
 * Source: each limit carries its own.
 * @example judgeFormula({ ruleSet: 'CA', kind: 'comminuted', stage: 'planned', figures: { saltPctOfMix: 2.4, knownNitrite: {}, knownNitrate: {}, missing: [] }, upper: null, lower: null }, ['salt-of-mix'])[0].verdict // => 'deviation'
 */
export function judgeFormula(given: InJudged, measures: readonly Measure[]): readonly Finding[] {
  return RULE_SETS[given.ruleSet].formula
    .filter(({ measure, kinds }) => measures.includes(measure) && kinds.includes(given.kind))
    .map((rule) => judged(rule, given));
}
