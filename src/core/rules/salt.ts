import { type InJudged, judgeFormula } from './judge-formula.ts';
import type { Finding } from './rule.ts';

/** Salt that goes in, against the least that the rule set asks for. */

/**
 * The answer on salt: all of it, the salt in the cure as well, in percent of the whole mix. Where the text does not
 * say what the percentage counts on, the whole mix is the less favourable base.
 *
 * Wrong tool: for the trichinella treatments, which have their own table.
 *
 * Units: percent of the mix.
 * Source: CFIA, Meat Hygiene Manual, chapter 4, 4.16 (read-second-hand) for Canada; the US and EU sets ask for none.
 * @example saltFindings({ ruleSet: 'US', kind: 'comminuted', stage: 'planned', figures: { missing: [] }, upper: null, lower: null })[0].verdict // => 'does-not-apply'
 */
export function saltFindings(given: InJudged): readonly Finding[] {
  const found = judgeFormula(given, ['salt-of-mix']);
  return found.length > 0
    ? found
    : [{ rule: 'salt-in-least', verdict: 'does-not-apply', value: null, limit: null, missing: [] }];
}
