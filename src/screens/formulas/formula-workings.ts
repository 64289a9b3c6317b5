/** The working of each figure of a plan, from the very values that the figure was computed from. */
import { saltPctOfSlice } from '#core/formula/slice.ts';
import type { Source } from '#core/rules/rule.ts';
import type { FormulaRule, Measure } from '#core/rules/rule-sets.ts';
import { FSIS_7620_3 } from '#core/rules/sources.ts';
import type { WorkingRow, WorkingText } from '#ui/Working.tsx';
import { decimal, joined, mass } from '#words/format.ts';
import type { FormulaPlan, PlanFinding } from './formula-plan.ts';
import type { ViewGiven } from './formula-view.ts';

type Spoken = Pick<ViewGiven, 'place' | 'words'>;

/**
 * A figure beside its limit: with as many places as the limit has, rounded up against a maximum and down against a
 * minimum, so that 156.104 stands as 156.11 beside 156.25 and a figure never looks kinder than it is.
 */
export function limited(
  { finding, rule }: PlanFinding,
  place: Spoken['place'],
  words: Spoken['words'],
): { what: string; figure: string; limit: string } | null {
  if (finding.limit === null || finding.value === null || rule === null) return null;
  const { value, unit, relation } = finding.limit;
  return {
    what: words.formulas.measure[rule.measure],
    figure: `${beside(finding.value, finding.limit, place)}\u00a0${unit}`,
    limit:
      relation === '<='
        ? words.workings.exactly(value, place)
        : `${words.workings.exactly(value, place)}\u00a0${unit}`,
  };
}

function beside(value: number, limit: { value: number; relation: string }, place: Spoken['place']): string {
  return decimal(value, placesOf(limit), place, limit.relation.startsWith('<') ? 'up' : 'down');
}

export function findingWorking(
  each: PlanFinding,
  { measure, rule, limit }: FormulaRule,
  plan: FormulaPlan,
  given: ViewGiven,
): WorkingText {
  const { place, words } = given;
  const { finding, fromValue, toValue, unroundedValue } = each;
  const say = words.formulas.working;
  const titles: Readonly<Record<string, string>> = say.title;
  const shown = limited(each, place, words);
  const inUnit = (text: string) => `${text}\u00a0${limit.unit}`;
  const rows = measure === 'salt-of-mix' ? saltRows(plan, given, 'mix') : cureRows(measure, plan, given);
  if (unroundedValue !== null)
    rows.push({ label: say.unrounded, value: inUnit(words.workings.exactly(unroundedValue, place)) });
  if (fromValue !== null && toValue !== null)
    rows.push({
      label: say.ends,
      value: inUnit(say.endsText(beside(fromValue, limit, place), beside(toValue, limit, place))),
    });
  const failed = limit.relation === '>=' ? say.under : say.deviation;
  return {
    title: titles[rule] ?? rule,
    equation: say.equation[measure],
    rows,
    ...(shown ? { result: { label: shown.what, value: shown.figure } } : {}),
    limit: words.workings.limit(limit, place),
    caution: finding.verdict === 'deviation' ? failed : say.planned,
    sources: [limit.source, equationSource(measure, given)].map((each) => words.workings.source(each)),
    words: words.workings.words,
  };
}

/** Nitrite by weight of its salt is shown with the places of the limit on just that, so that a page shows one figure. */
export function nitritePlaces({ findings }: FormulaPlan): number {
  const rule = findings.find(
    ({ rule: each }) => each?.measure === 'nitrite' && each.limit.relation === '<=',
  )?.rule;
  return rule ? placesOf(rule.limit) : 1;
}

function placesOf({ value }: { value: number }): number {
  return Math.max(1, (String(value).split('.')[1] ?? '').length);
}

export function nitriteWorking(plan: FormulaPlan, given: ViewGiven): WorkingText {
  const { place, words } = given;
  const { working, figures } = words.formulas;
  return {
    title: figures.nitrite,
    equation: working.equation.nitrite,
    rows: cureRows('nitrite', plan, given),
    result: {
      label: words.formulas.measure.nitrite,
      value: `${decimal(plan.out.figures.knownNitrite.mgPerKgMeat, nitritePlaces(plan), place, 'up')}\u00a0mg/kg`,
    },
    caution: working.planned,
    sources: [words.workings.source(FSIS_7620_3)],
    words: words.workings.words,
  };
}

export function saltWorking(plan: FormulaPlan, given: ViewGiven): WorkingText {
  const { place, words } = given;
  const { working, figures } = words.formulas;
  return {
    title: figures.totalSalt,
    equation: working.equation['salt-of-meat'],
    rows: saltRows(plan, given, 'meat'),
    result: {
      label: figures.totalSalt,
      value: `${decimal(plan.out.figures.saltPctOfMeat, 2, place)}\u00a0%`,
    },
    sources: [words.workings.source(equationSource('salt-of-mix', given))],
    words: words.workings.words,
  };
}

export function sliceWorking(plan: FormulaPlan, lossPct: number, given: ViewGiven): WorkingText {
  const { place, words } = given;
  const { working, figures } = words.formulas;
  return {
    title: figures.slice,
    equation: working.equation.slice,
    rows: [
      ...saltRows(plan, given, 'mix'),
      { label: working.loss, value: `${words.workings.exactly(lossPct, place)}\u00a0%` },
    ],
    result: {
      label: figures.slice,
      value: `~${decimal(saltPctOfSlice({ saltPctOfMix: plan.out.figures.saltPctOfMix, lossPct }), 1, place)}\u00a0%`,
    },
    caution: working.estimate,
    sources: [
      words.workings.source({
        body: '',
        title: working.massBalance,
        section: working.sliceSection,
        standing: 'derived',
      }),
    ],
    words: words.workings.words,
  };
}

function equationSource(measure: Measure, { words }: Spoken): Source {
  if (measure !== 'salt-of-mix') return FSIS_7620_3;
  const { massBalance, massBalanceSection } = words.formulas.working;
  return { body: '', title: massBalance, section: massBalanceSection, standing: 'derived' };
}

function cureRows(measure: Measure, plan: FormulaPlan, given: ViewGiven): WorkingRow[] {
  const { formula, place, words } = given;
  const say = words.formulas.working;
  const pct = (value: number) => `${words.workings.exactly(value, place)}\u00a0%`;
  const rows = formula.lines.flatMap((line, at): WorkingRow[] => {
    const weighed = plan.out.lines[at];
    if (line.role !== 'cure' || !weighed) return [];
    const grams = {
      label: line.name,
      value: joined(mass(weighed.roundedG, weighed.stepG, place)),
      note: say.cureGrams,
    };
    if (!line.cure)
      return [grams, { label: words.formulas.noLabel, value: words.verdicts.verdict('no-reading') }];
    const { nitritePct, nitratePct } = line.cure;
    return [
      grams,
      ...(measure.startsWith('nitrate') ? [] : [{ label: say.nitriteOnBag, value: pct(nitritePct) }]),
      ...(measure.startsWith('nitrite') && measure !== 'nitrite-and-nitrate'
        ? []
        : [{ label: say.nitrateOnBag, value: pct(nitratePct) }]),
    ];
  });
  const { meatG, knownNitrite, knownNitrate } = plan.out.figures;
  rows.push({ label: say.meat, value: joined(mass(meatG, 1, place)) });
  if (measure === 'nitrite-ion' || measure === 'nitrate-ion') {
    const agent = measure === 'nitrite-ion' ? knownNitrite : knownNitrate;
    const share = agent.mgPerKgMeat > 0 ? agent.ionMgPerKgMeat / agent.mgPerKgMeat : null;
    if (share !== null)
      rows.push({ label: say.ionShare, value: decimal(share, 2, place), note: say.ionNote });
  }
  return rows;
}

function saltRows({ out }: FormulaPlan, { place, words }: ViewGiven, base: 'meat' | 'mix'): WorkingRow[] {
  const say = words.formulas.working;
  const salt = out.lines.find(({ role }) => role === 'salt');
  const stepG = salt?.stepG ?? 0.1;
  return [
    { label: say.salt, value: joined(mass(out.figures.addedSaltG, stepG, place)) },
    {
      label: say.saltInCure,
      value: joined(mass(out.figures.cureSaltG, Math.min(stepG, 0.01), place)),
      note: say.saltInCureNote,
    },
    base === 'meat'
      ? { label: say.meat, value: joined(mass(out.figures.meatG, 1, place)) }
      : { label: say.mix, value: joined(mass(out.figures.mixG, 1, place)) },
  ];
}
