import { DEGREE_HOUR_RULES } from '#core/rules/degree-hours.ts';
import type { Limit, RuleSetId } from '#core/rules/rule.ts';
import { RULE_SETS } from '#core/rules/rule-sets.ts';
import type { Place } from '#record/place.ts';
import type { Words } from '#words/en.ts';
import type { Said } from '#words/said.ts';
import { conflicts } from './conflicts.ts';

type SourceView = { readonly text: string; readonly standing: string };
export type LimitView = {
  readonly title: string;
  /** What the limit is for, where one name has several. */
  readonly of: string | null;
  readonly value: string;
  readonly basis: string;
  readonly source: SourceView;
};
export type RuleSetView = {
  readonly id: RuleSetId;
  readonly title: string;
  readonly inForce: boolean;
  readonly lines: readonly string[];
  readonly groups: readonly {
    readonly title: string;
    readonly note: string | null;
    readonly limits: readonly LimitView[];
  }[];
};
export type LimitsView = {
  readonly sentence: Said;
  readonly sets: readonly RuleSetView[];
  readonly conflicts: readonly {
    readonly topic: string;
    readonly says: readonly { readonly text: string; readonly used: boolean; readonly source: SourceView }[];
  }[];
};

/** Every limit of every rule set, the one in force first, and where sources disagree. */
export function limitsView(words: Words, place: Place): LimitsView {
  const ids = (Object.keys(RULE_SETS) as RuleSetId[]).sort(
    (a, b) => Number(b === place.ruleSet) - Number(a === place.ruleSet),
  );
  const sets = ids.map((id) => ruleSetView(id, words, place));
  const count = sets.flatMap(({ groups }) => groups.flatMap(({ limits }) => limits)).length;
  const compared = ids.filter((id) => RULE_SETS[id].comparedWithOfficialTextOn !== null).length;
  return {
    sentence: words.limits.sentence(count, compared),
    sets,
    conflicts: conflicts(words, place).map(({ topic, says }) => ({
      topic,
      says: says.map(({ text, used, source }) => ({ text, used, source: words.workings.source(source) })),
    })),
  };
}

function ruleSetView(id: RuleSetId, words: Words, place: Place): RuleSetView {
  const { limits } = words;
  const { comparedWithOfficialTextOn: comparedOn, appliesFrom, formula, laboratory } = RULE_SETS[id];
  const hours = DEGREE_HOUR_RULES[id];
  const view = (title: string, of: string | null, limit: Limit): LimitView => ({
    title,
    of,
    ...shown(limit, words, place),
    source: words.workings.source(limit.source),
  });
  const degrees = (deg: number) => `${words.workings.exactly(deg, place)}\u00a0°${hours.unit}`;
  const groups = [
    {
      title: limits.formula,
      note: null,
      limits: formula.map(({ rule, kinds, limit }) =>
        view(
          limits.rule(rule),
          kinds.length > 1 ? limits.kinds.both : limits.kinds[kinds[0] ?? 'comminuted'],
          limit,
        ),
      ),
    },
    {
      title: limits.fermenting,
      note: hours.binds ? null : limits.borrowed,
      limits: [
        view(limits.rule('degree-hours-base'), null, hours.base),
        ...hours.classes.map(({ fromDeg, limit }, at) => {
          const next = hours.classes[at + 1];
          const of = !next
            ? limits.classes.above(degrees(fromDeg))
            : at === 0
              ? limits.classes.below(degrees(next.fromDeg))
              : limits.classes.between(degrees(fromDeg), degrees(next.fromDeg));
          return view(limits.rule('degree-hours'), of, limit);
        }),
      ],
    },
    {
      title: limits.laboratory,
      note: null,
      limits: laboratory.map(({ rule, limit }) => view(limits.rule(rule), null, limit)),
    },
  ];
  return {
    id,
    title: words.verdicts.ruleSet[id],
    inForce: id === place.ruleSet,
    lines: [
      comparedOn === null ? limits.never : limits.comparedOn(limits.day(comparedOn)),
      ...(appliesFrom === null ? [] : [limits.appliesFrom(limits.day(appliesFrom))]),
    ],
    groups: groups.filter((group) => group.limits.length > 0),
  };
}

function shown(limit: Limit, words: Words, place: Place): { value: string; basis: string } {
  const { label, value } = words.workings.limit({ ...limit, unit: words.limits.unit(limit.unit) }, place);
  return { basis: label, value };
}
