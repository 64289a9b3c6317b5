import { ionUpperMgPerKg } from '#core/formula/cure.ts';
import type { CureLabel } from '#core/formula/formula.ts';
import { roundToStep } from '#core/formula/scale.ts';
import { weighingErrorG } from '#core/formula/scale-error.ts';
import { type InJudged, judgeFormula } from './judge-formula.ts';
import type { Finding, Limit, RuleSetId } from './rule.ts';
import { type Measure, RULE_SETS } from './rule-sets.ts';

/** Nitrite and nitrate that go in, against the limits of the rule set chosen. What is left at the end takes a laboratory. */

const AGENTS: readonly Measure[] = [
  'nitrite',
  'nitrate',
  'nitrite-and-nitrate',
  'nitrite-ion',
  'nitrate-ion',
];

/**
 * The answers on nitrite and nitrate going in, most and least, one a limit.
 *
 * Wrong tool: for what is left in the finished piece. It does not make food safe, and a plan is never within a limit.
 *
 * Units: mg/kg of green meat, by weight of the salt (US, CA) or as ion (EU).
 * Source: each limit carries its own.
 * @example nitriteFindings({ ruleSet: 'EU', kind: 'comminuted', stage: 'planned', figures: { knownNitrite: { ionMgPerKgMeat: 104.7 }, knownNitrate: { ionMgPerKgMeat: 0 }, missing: [] }, upper: null, lower: null }).map(({ verdict }) => verdict) // => ['deviation', 'pending']
 */
export function nitriteFindings(given: InJudged): readonly Finding[] {
  return judgeFormula(given, AGENTS);
}

/** mg/kg in the limit's own measure that one gram of the cure brings into one kg of meat, counted against the maker. */
function perGram(measure: Measure, { nitritePct, nitratePct, nitriteSalt, nitrateSalt }: CureLabel): number {
  const nitriteMgPerG = nitritePct * 10;
  const nitrateMgPerG = nitratePct * 10;
  switch (measure) {
    case 'nitrite':
      return nitriteMgPerG;
    case 'nitrate':
      return nitrateMgPerG;
    case 'nitrite-and-nitrate':
      return nitriteMgPerG + nitrateMgPerG;
    case 'nitrite-ion':
      return ionUpperMgPerKg({ mgPerKg: nitriteMgPerG, salt: nitriteSalt });
    case 'nitrate-ion':
      return ionUpperMgPerKg({ mgPerKg: nitrateMgPerG, salt: nitrateSalt });
    case 'salt-of-mix':
      return 0;
  }
}

/**
 * The most of one cure that keeps every maximum even at the upper end of the scales' error: at or below this reading
 * the answer will be within the limit. Null if nothing in the bag is limited.
 *
 * Wrong tool: with a second cure in the mix; the two add up.
 *
 * Formula: min over limits of limit x (meat - error) / mg per g, less the scale's error, in whole steps.
 * Units: g.
 * Source: each limit carries its own; interval arithmetic (derived).
 * @throws RangeError if there is no meat or no step.
 * @example mostCure({ ruleSet: 'US', kind: 'comminuted', label: { nitritePct: 6.25, nitratePct: 0, nitriteSalt: 'NaNO2', nitrateSalt: 'NaNO3' }, meatG: 3215, meatErrorG: 0, stepG: 0.01 })?.cureG // => 8.02
 */
export function mostCure({
  ruleSet,
  kind,
  label,
  meatG,
  meatErrorG,
  stepG,
}: {
  ruleSet: RuleSetId;
  kind: InJudged['kind'];
  label: CureLabel;
  meatG: number;
  meatErrorG: number;
  stepG: number;
}): { cureG: number; limit: Limit } | null {
  if (!(meatG - meatErrorG > 0))
    throw new RangeError(`mostCure: meatG requires meat above its error, got ${meatG}`);
  const least = RULE_SETS[ruleSet].formula
    .filter(({ kinds, limit }) => kinds.includes(kind) && limit.relation === '<=')
    .map(({ measure, limit }) => ({ limit, mgPerG: perGram(measure, label) }))
    .filter(({ mgPerG }) => mgPerG > 0)
    .map(({ limit, mgPerG }) => ({ limit, massG: (limit.value * (meatG - meatErrorG)) / (1000 * mgPerG) }))
    .toSorted((one, other) => one.massG - other.massG)[0];
  if (!least) return null;
  const massG = Math.max(0, least.massG - weighingErrorG({ stepG, portions: 1 }));
  return { cureG: roundToStep({ massG, stepG, rounding: 'down' }), limit: least.limit };
}
