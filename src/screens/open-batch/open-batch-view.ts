import { figuresFromGrams } from '#core/formula/figures.ts';
import type { Formula } from '#core/formula/formula.ts';
import { formulaGuards, type Guard } from '#core/formula/guards.ts';
import { formulaProblems } from '#core/formula/problems.ts';
import { exactGrams } from '#core/formula/weigh-out.ts';
import { nitriteFindings } from '#core/rules/nitrite.ts';
import type { RuleSetId } from '#core/rules/rule.ts';
import { RULE_SETS } from '#core/rules/rule-sets.ts';
import { saltFindings } from '#core/rules/salt.ts';
import type { EntryOf } from '#record/entry.ts';
import type { Place } from '#record/place.ts';
import type { Words } from '#words/en.ts';
import { wallClock } from '#words/format.ts';
import type { Said } from '#words/said.ts';
import type { MeatTexts } from './meat-input.ts';
import {
  fieldsOf,
  PLAN_FIELDS,
  type PlanField,
  type PlanRead,
  type PlanTexts,
  type Question,
  unitText,
  usualText,
} from './plan-input.ts';

/** What is typed on this page; the plan's fields by name. `ruleSet` only where none is chosen in Kit. */
export type OpenDraft = {
  readonly lot: string;
  readonly plan: PlanTexts;
  readonly ruleSet: RuleSetId | null;
  readonly ready: MeatTexts;
  readonly note: string;
};

export type PlanFieldView = {
  readonly field: PlanField;
  readonly label: string;
  readonly text: string;
  readonly unit: string;
  readonly hint: string;
  readonly problem: string | null;
};

export type OpenBatchView = {
  readonly sentence: Said;
  readonly lotProblem: string | null;
  readonly groups: readonly { key: string; label: string; fields: readonly PlanFieldView[] }[];
  readonly planLine: string;
  readonly ruleSet: Said | null;
  readonly compared: string | null;
  readonly ruleSetProblem: string | null;
  readonly against: Against | null;
};

const GROUPS: readonly { key: 'ferment' | 'ph' | 'dry' | 'piece'; fields: readonly PlanField[] }[] = [
  { key: 'ferment', fields: ['fermentC'] },
  { key: 'ph', fields: ['phLow', 'phHigh'] },
  { key: 'dry', fields: ['dryC', 'dryRhPct'] },
  { key: 'piece', fields: ['diameterMm', 'targetLossPct'] },
];

/** Year, month and day, then a letter where that lot is taken: 261125, 261125-B. */
export function suggestedLot(nowMs: number, zone: string, taken: readonly string[]): string {
  const day = wallClock(nowMs, zone).toISOString().slice(2, 10).replaceAll('-', '');
  const tries = [day, ...[...'BCDEFGHIJKLMNOPQRSTUVWXYZ'].map((letter) => `${day}-${letter}`)];
  return tries.find((each) => !taken.includes(each)) ?? `${day}-${taken.length + 1}`;
}

export function openBatchView({
  version,
  number,
  draft,
  read,
  lots,
  tried,
  place,
  words,
}: {
  version: EntryOf<'formula-saved'>;
  number: number;
  draft: OpenDraft;
  read: PlanRead;
  lots: readonly string[];
  tried: boolean;
  place: Place;
  words: Words;
}): OpenBatchView {
  const say = words.openBatch;
  const { formula } = version.body;
  const ruleSet = place.ruleSet ?? draft.ruleSet;
  const problems = read.ok ? {} : read.problems;
  const lot = draft.lot.trim();
  const asked = fieldsOf(formula);
  return {
    sentence: say.sentence(formula.name, number),
    lotProblem: lot === '' ? words.fields.needed : lots.includes(lot) ? say.lotTaken : null,
    groups: GROUPS.filter(({ fields }) => fields.every((field) => asked.includes(field))).map(
      ({ key, fields }) => ({
        key,
        label: say.group[key],
        fields: fields.map((field) => ({
          field,
          label: say.field[field],
          text: draft.plan[field],
          unit: unitText(field, place),
          hint: usualText(field, place, words),
          problem: problems[field] ?? null,
        })),
      }),
    ),
    planLine: formula.kind === 'comminuted' ? say.planLine : say.planLineMuscle,
    ruleSet: place.ruleSet === null ? null : say.ruleSetIs(words.verdicts.ruleSet[place.ruleSet]),
    compared: ruleSet === null ? null : say.compared(RULE_SETS[ruleSet].comparedWithOfficialTextOn),
    ruleSetProblem: tried && ruleSet === null ? words.fields.choose : null,
    against: ruleSet === null ? null : against(formula, ruleSet, place, words),
  };
}

/** What stands against opening a batch: a deviation as written, mistakes that stop it, questions for a person to pass. */
export type Against = {
  readonly over: boolean;
  readonly stops: readonly string[];
  readonly asks: readonly { readonly code: Guard['code']; readonly text: string }[];
};

/** Held against the limits and the guards as written, for 1 kg of meat and before any rounding to a scale. */
export function against(formula: Formula, ruleSet: RuleSetId, place: Place, words: Words): Against {
  if (formulaProblems(formula).some(({ code }) => code === 'mix-is-all-shares'))
    return { over: false, stops: [words.openBatch.noRoom], asks: [] };
  const fatG = 10 * formula.fatPctOfMeat;
  const leanG = 1000 - fatG;
  const grams = exactGrams({ formula, leanG, fatG, pieces: 1 });
  const figures = figuresFromGrams({
    leanG,
    fatG,
    lines: formula.lines.map(({ role, cure }, at) => ({ role, cure, massG: grams[at] ?? 0 })),
  });
  const given = { ruleSet, kind: formula.kind, stage: 'planned', figures, upper: null, lower: null } as const;
  const found = [...nitriteFindings(given), ...saltFindings(given)];
  const guards = formulaGuards({ formula, figures, ruleSet });
  const text = (guard: Guard) => words.guards.text(guard, formula, place);
  return {
    over: found.some(({ verdict }) => verdict === 'deviation'),
    stops: guards.filter(({ asks }) => asks === 'stop').map(text),
    asks: guards
      .filter(({ asks }) => asks === 'confirm')
      .map((guard) => ({ code: guard.code, text: text(guard) })),
  };
}

/** Guards that a person may pass, asked one by one. */
export function guardQuestions(found: Against | null, words: Words): Question[] {
  return (found?.asks ?? []).map(({ code, text }) => ({
    code,
    about: 'formula',
    text: words.openBatch.askGuard(text),
  }));
}

export function ruleSetOptions(words: Words): { value: RuleSetId; label: string; note: string }[] {
  return (['US', 'CA', 'EU'] as const).map((value) => ({
    value,
    label: words.verdicts.ruleSet[value],
    note: words.openBatch.compared(RULE_SETS[value].comparedWithOfficialTextOn),
  }));
}

/** What was typed here before, if it still has this shape. */
export function restoreOpen(kept: unknown): OpenDraft | null {
  if (typeof kept !== 'object' || kept === null) return null;
  const { lot, plan, ruleSet, ready, note } = kept as Readonly<Record<string, unknown>>;
  const meat =
    typeof ready === 'object' && ready !== null ? (ready as Readonly<Record<string, unknown>>) : {};
  const texts = typeof plan === 'object' && plan !== null ? (plan as Readonly<Record<string, unknown>>) : {};
  const whole =
    typeof lot === 'string' &&
    typeof note === 'string' &&
    typeof meat.meat === 'string' &&
    typeof meat.trays === 'string' &&
    PLAN_FIELDS.every((field) => typeof texts[field] === 'string') &&
    (ruleSet === null || ruleSet === 'US' || ruleSet === 'CA' || ruleSet === 'EU');
  return whole ? (kept as OpenDraft) : null;
}
