import type { Figures } from '#core/formula/figures.ts';
import type { Formula } from '#core/formula/formula.ts';
import { formulaGuards, type Guard } from '#core/formula/guards.ts';
import type { Place } from '#record/place.ts';
import type { Words } from '#words/en.ts';

export type GuardView = {
  readonly key: string;
  readonly asks: Guard['asks'];
  readonly text: string;
  readonly standing: string;
};

/** Codes that speak of a rule set's own figures: left out while none is chosen. */
const OF_A_RULE_SET: readonly Guard['code'][] = ['ten-times-over', 'belly-has-its-own-limit'];

/** What a careful colleague would ask, in plain sentences, the gravest first. */
export function guardViews(formula: Formula, figures: Figures, place: Place, words: Words): GuardView[] {
  return formulaGuards({ formula, figures, ruleSet: place.ruleSet ?? 'US' })
    .filter(({ code }) => place.ruleSet !== null || !OF_A_RULE_SET.includes(code))
    .map((guard) => ({
      key: `${guard.code} ${guard.lineId ?? ''}`,
      asks: guard.asks,
      text: words.guards.text(guard, formula, place),
      standing: words.verdicts.standing(guard.standing),
    }));
}
