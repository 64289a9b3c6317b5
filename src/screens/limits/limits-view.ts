import { COUNTED_UNTIL_PH } from '#core/ferment/ph-reading.ts';
import { DEGREE_HOUR_RULES } from '#core/rules/degree-hours.ts';
import type { RuleSetId } from '#core/rules/rule.ts';
import { RULE_SETS } from '#core/rules/rule-sets.ts';
import type { Place } from '#record/place.ts';
import type { Words } from '#words/en.ts';
import type { Said } from '#words/said.ts';
import { conflicts } from './conflicts.ts';
import { freezingLimits } from './freezing-limits.ts';
import { type LimitGroup, limitView, type SourceView, sourceView } from './limit-text.ts';
import { practiceLimits } from './practice-limits.ts';

export type RuleSetView = {
  readonly id: RuleSetId;
  readonly title: string;
  readonly inForce: boolean;
  /** How many limits it holds, and whether they were ever compared: to be read without opening it. */
  readonly summary: string;
  readonly lines: readonly string[];
  readonly groups: readonly LimitGroup[];
};
export type LimitsView = {
  readonly sentence: Said;
  readonly sets: readonly RuleSetView[];
  readonly practice: readonly LimitGroup[];
  readonly conflicts: readonly {
    readonly topic: string;
    readonly says: readonly { readonly text: string; readonly used: boolean; readonly source: SourceView }[];
  }[];
};

/** Every limit of every rule set, the one in force first; what is common practice; and where sources disagree. */
export function limitsView(words: Words, place: Place): LimitsView {
  const ids = (Object.keys(RULE_SETS) as RuleSetId[]).sort(
    (a, b) => Number(b === place.ruleSet) - Number(a === place.ruleSet),
  );
  const sets = ids.map((id) => ruleSetView(id, words, place));
  const count = sets.reduce((sum, { groups }) => sum + countOf(groups), 0);
  const compared = ids.filter((id) => RULE_SETS[id].comparedWithOfficialTextOn !== null).length;
  return {
    sentence: words.limits.sentence(count, compared),
    sets,
    practice: practiceLimits(words, place),
    conflicts: conflicts(words, place).map(({ topic, says }) => ({
      topic,
      says: says.map(({ text, used, source }) => ({ text, used, source: sourceView(source, words) })),
    })),
  };
}

/** How many limits; each row of a table is one. */
function countOf(groups: readonly LimitGroup[]): number {
  return groups.flatMap(({ limits }) => limits.flatMap(({ values }) => values)).length;
}

function ruleSetView(id: RuleSetId, words: Words, place: Place): RuleSetView {
  const { limits } = words;
  const { comparedWithOfficialTextOn: comparedOn, appliesFrom, formula, laboratory } = RULE_SETS[id];
  const groups: LimitGroup[] = [
    {
      title: limits.formula,
      note: null,
      limits: formula.map(({ rule, kinds, limit }) => {
        const of = kinds.length > 1 ? limits.kinds.both : limits.kinds[kinds[0] ?? 'comminuted'];
        return limitView({ title: limits.rule(rule), of, limit }, words, place);
      }),
    },
    degreeHourLimits(id, words, place),
    freezingLimits(id, words, place),
    {
      title: limits.laboratory,
      note: null,
      limits: laboratory.map(({ rule, limit }) =>
        limitView({ title: limits.rule(rule), limit }, words, place),
      ),
    },
  ];
  return {
    id,
    title: words.verdicts.ruleSet[id],
    inForce: id === place.ruleSet,
    summary: [
      limits.count(countOf(groups)),
      comparedOn === null ? limits.never : limits.comparedOn(limits.day(comparedOn)),
    ].join(' '),
    lines: appliesFrom === null ? [] : [limits.appliesFrom(limits.day(appliesFrom))],
    groups: groups.filter((group) => group.limits.length > 0),
  };
}

function degreeHourLimits(id: RuleSetId, words: Words, place: Place): LimitGroup {
  const { limits } = words;
  const hours = DEGREE_HOUR_RULES[id];
  const degrees = (deg: number) => `${words.workings.exactly(deg, place)}\u00a0°${hours.unit}`;
  return {
    title: limits.fermenting,
    note: hours.binds ? null : limits.borrowed,
    limits: [
      limitView({ title: limits.rule('degree-hours-base'), limit: hours.base }, words, place),
      limitView({ title: limits.rule('degree-hours-end'), limit: COUNTED_UNTIL_PH }, words, place),
      ...hours.classes.map(({ fromDeg, limit }, at) => {
        const next = hours.classes[at + 1];
        const of = !next
          ? limits.classes.above(degrees(fromDeg))
          : at === 0
            ? limits.classes.below(degrees(next.fromDeg))
            : limits.classes.between(degrees(fromDeg), degrees(next.fromDeg));
        return limitView({ title: limits.rule('degree-hours'), of, limit }, words, place);
      }),
    ],
  };
}
