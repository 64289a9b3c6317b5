import { DEGREE_HOUR_RULES } from '#core/rules/degree-hours.ts';
import type { RuleSetId, Standing } from '#core/rules/rule.ts';
import { RULE_SETS } from '#core/rules/rule-sets.ts';
import type { Place } from '#record/place.ts';
import { PLACE } from '#record/subject.ts';
import type { Fact } from '#store/use-append.ts';
import type { ChoiceOption } from '#ui/Choice.tsx';
import type { Words } from '#words/en.ts';

/** What is chosen on the page so far; null where nothing is. */
export type BenchForm = {
  readonly mass: Place['mass'] | null;
  readonly temperature: Place['temperature'] | null;
  readonly decimal: Place['decimal'];
  readonly paper: Place['paper'];
  readonly initials: string;
  readonly ruleSet: RuleSetId | null;
};

export function formOf(place: Place): BenchForm {
  const { chosen, mass, temperature, decimal, paper, initials, ruleSet } = place;
  return {
    mass: chosen ? mass : null,
    temperature: chosen ? temperature : null,
    decimal,
    paper,
    initials,
    ruleSet,
  };
}

/** A kept form of this shape, or null: it may have been kept by another build. */
export function restoreForm(kept: unknown): BenchForm | null {
  if (typeof kept !== 'object' || kept === null) return null;
  const { mass, temperature, decimal, paper, initials, ruleSet } = kept as Partial<
    Record<keyof BenchForm, unknown>
  >;
  if (mass !== null && mass !== 'metric' && mass !== 'pounds') return null;
  if (temperature !== null && temperature !== 'C' && temperature !== 'F') return null;
  if (decimal !== '.' && decimal !== ',') return null;
  if (paper !== 'A4' && paper !== 'Letter') return null;
  if (typeof initials !== 'string') return null;
  if (ruleSet !== null && ruleSet !== 'US' && ruleSet !== 'CA' && ruleSet !== 'EU') return null;
  return { mass, temperature, decimal, paper, initials, ruleSet };
}

/** Who weighs in pounds mostly reads °F and prints on Letter: what was not chosen yet follows, and can be changed. */
export function withMass(form: BenchForm, mass: Place['mass']): BenchForm {
  if (form.mass !== null) return { ...form, mass };
  return mass === 'pounds'
    ? { ...form, mass, temperature: form.temperature ?? 'F', paper: 'Letter' }
    : { ...form, mass, temperature: form.temperature ?? 'C' };
}

export type BenchProblems = {
  readonly mass?: string;
  readonly temperature?: string;
  readonly ruleSet?: string;
};

export function benchProblems(form: BenchForm, words: Words): BenchProblems {
  const { bench } = words.kit;
  return {
    ...(form.mass === null ? { mass: bench.chooseMass } : {}),
    ...(form.temperature === null ? { temperature: bench.chooseTemperature } : {}),
    ...(form.ruleSet === null ? { ruleSet: bench.choose } : {}),
  };
}

/** One save: the bench, and the rule set where it is another one than before. Null while something is not chosen. */
export function benchFacts(form: BenchForm, place: Place): readonly Fact[] | null {
  const { mass, temperature, decimal, paper, initials, ruleSet } = form;
  if (mass === null || temperature === null || ruleSet === null) return null;
  const bench: Fact = {
    kind: 'bench-set-up',
    subject: PLACE,
    body: { mass, temperature, decimal, paper, initials: initials.trim() },
  };
  return ruleSet === place.ruleSet
    ? [bench]
    : [bench, { kind: 'rule-set-chosen', subject: PLACE, body: { ruleSet } }];
}

/** The rule sets with what each holds, how it is known, and when it was held against the official text. */
export function ruleSetOptions(words: Words, form: Pick<BenchForm, 'decimal'>): ChoiceOption<RuleSetId>[] {
  return (Object.keys(RULE_SETS) as RuleSetId[]).map((value) => ({
    value,
    label: words.verdicts.ruleSet[value],
    note: ruleSetNote(value, words, form),
  }));
}

function ruleSetNote(id: RuleSetId, words: Words, form: Pick<BenchForm, 'decimal'>): string {
  const { bench } = words.kit;
  const { formula, comparedWithOfficialTextOn: comparedOn } = RULE_SETS[id];
  const { classes, binds } = DEGREE_HOUR_RULES[id];
  const nitrite = formula.find(({ limit, kinds }) => limit.relation === '<=' && kinds.includes('comminuted'));
  const hours = classes.map(({ limit }) => words.workings.exactly(limit.value, form)).join(', ');
  const unit = words.limits.unit(classes[0]?.limit.unit ?? '');
  const standings = [...formula, ...(binds ? classes : [])].map(({ limit }) => limit.source.standing);
  return [
    ...(nitrite ? [bench.nitriteMost(words.workings.limit(nitrite.limit, form).value)] : []),
    binds ? bench.degreeHours(`${hours} ${unit}`) : bench.degreeHoursBorrowed,
    bench.known(standings.some(isMemory)),
    comparedOn === null ? bench.never : bench.comparedOn(words.limits.day(comparedOn)),
  ].join('; ');
}

function isMemory(standing: Standing): boolean {
  return standing === 'memory-high' || standing === 'memory-medium' || standing === 'memory-low';
}
