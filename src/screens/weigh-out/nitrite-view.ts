import type { Figures } from '#core/formula/figures.ts';
import type { FormulaLine } from '#core/formula/formula.ts';
import { mostCure } from '#core/rules/nitrite.ts';
import type { Finding } from '#core/rules/rule.ts';
import type { Batch } from '#record/batch.ts';
import type { FormulaFindings } from '#record/formula-findings.ts';
import type { Place } from '#record/place.ts';
import type { Words } from '#words/en.ts';
import { decimal, joined, mass } from '#words/format.ts';
import { type Said, said } from '#words/said.ts';

type Given = { batch: Batch; found: FormulaFindings; place: Place; words: Words };

type Agent = 'nitrite' | 'nitrite-ion' | 'nitrite-and-nitrate';

/** What the rule set in force counts: the sentence and the working speak of the number that the verdict rests on. */
function agentOf({ rule }: Finding, ruleSet: string): Agent {
  if (rule.startsWith('cure-')) return 'nitrite-and-nitrate';
  return ruleSet === 'EU' ? 'nitrite-ion' : 'nitrite';
}

function amountOf(agent: Agent, { knownNitrite, knownNitrate }: Figures): number {
  switch (agent) {
    case 'nitrite':
      return knownNitrite.mgPerKgMeat;
    case 'nitrite-ion':
      return knownNitrite.ionMgPerKgMeat;
    case 'nitrite-and-nitrate':
      return knownNitrite.mgPerKgMeat + knownNitrate.mgPerKgMeat;
  }
}

const MOST = ['nitrite-in-most', 'cure-in-most'];
const LEAST = ['nitrite-in-least', 'cure-in-least'];

const perKg = (value: string) => `${value}\u00a0mg/kg`;

function curesOf(batch: Batch): FormulaLine[] {
  return batch.opened.body.formula.lines.filter(({ cure }) => cure !== undefined);
}

export function nitriteSentence({ batch, found, place, words }: Given): Said {
  const say = words.weighOut.nitrite;
  if (curesOf(batch).length === 0) return say.none;
  const { ruleSet } = batch.opened.body;
  const most = found.findings.find(({ rule }) => MOST.includes(rule));
  const least = found.findings.find(({ rule }) => LEAST.includes(rule));
  if (!most?.limit) return say.unlimited(perKg(decimal(amountOf('nitrite', found.figures), 1, place)));
  const agent = agentOf(most, ruleSet);
  const shown = (figures: Figures, rounding: 'up' | 'down') =>
    perKg(decimal(amountOf(agent, figures), 2, place, rounding));
  const limit = (finding: Finding) => perKg(words.workings.exactly(finding.limit?.value ?? 0, place));
  if (most.verdict === 'deviation') return say.over(agent, shown(found.figures, 'up'), limit(most));
  if (least?.verdict === 'deviation') return say.low(agent, shown(found.figures, 'down'), limit(least));
  const stands = say[found.stage](agent, shown(found.figures, 'up'), limit(most));
  if (amountOf(agent, found.upper) <= most.limit.value) return stands;
  return said(
    ...stands,
    ...say.scale(shown(found.lower, 'down'), shown(found.upper, 'up')),
    ...say.orAtMost(mostText({ batch, found, place, words })),
  );
}

/** The most of the cure that this scale can prove to be under every limit. */
function mostText({ batch, found, place }: Given): string {
  const { formula, ruleSet } = batch.opened.body;
  const cure = curesOf(batch)[0];
  const most =
    cure?.cure &&
    mostCure({
      ruleSet,
      kind: formula.kind,
      label: cure.cure,
      meatG: found.figures.meatG,
      meatErrorG: found.meatErrorG,
      stepG: found.cureStepG,
    });
  return joined(mass(most?.cureG ?? 0, found.cureStepG, place, 'down'));
}

export function nitriteWorking({ batch, found, place, words }: Given) {
  const { work } = words.weighOut;
  const cures = curesOf(batch);
  const most = found.findings.find(({ rule }) => MOST.includes(rule));
  if (cures.length === 0) return null;
  const agent = most ? agentOf(most, batch.opened.body.ruleSet) : 'nitrite';
  const { figures, lower, upper } = found;
  const shown = (of: Figures, rounding: 'up' | 'down') => decimal(amountOf(agent, of), 2, place, rounding);
  const percent = (value: number) => `${words.workings.exactly(value, place)}\u00a0%`;
  return {
    title: work.nitrite.title,
    equation: work.nitrite.equation[agent],
    rows: [
      { label: work.nitrite.meat, value: joined(mass(figures.meatG, 1, place)) },
      ...cures.flatMap(({ id, name, cure }) => [
        { label: name, value: joined(mass(found.gramsByLine.get(id) ?? 0, found.cureStepG, place)) },
        { label: work.nitrite.label(name), value: percent(cure?.nitritePct ?? 0) },
        ...(agent === 'nitrite-and-nitrate' && cure && cure.nitratePct > 0
          ? [{ label: work.nitrite.nitrateLabel(name), value: percent(cure.nitratePct) }]
          : []),
      ]),
      {
        label: work.nitrite.error,
        value: work.nitrite.range(shown(lower, 'down'), perKg(shown(upper, 'up'))),
      },
    ],
    result: { label: work.nitrite.result, value: perKg(shown(figures, 'up')), note: work.nitrite.up },
    ...(most?.limit ? { limit: words.workings.limit(most.limit, place) } : {}),
    caution: work.nitrite.caution,
    sources: most?.limit ? [words.workings.source(most.limit.source)] : [],
    words: words.workings.words,
  };
}

export function saltWorking({ found, place, words }: Omit<Given, 'batch'>) {
  const { salt } = words.weighOut.work;
  const { figures } = found;
  const grams = (massG: number) => joined(mass(massG, 0.01, place));
  const least = found.findings.find(({ rule }) => rule === 'salt-in-least');
  return {
    title: salt.title,
    equation: salt.equation,
    rows: [
      { label: salt.salt, value: grams(figures.addedSaltG) },
      { label: salt.inCure, value: grams(figures.cureSaltG) },
      { label: salt.meat, value: joined(mass(figures.meatG, 1, place)) },
    ],
    result: { label: salt.result, value: `${decimal(figures.saltPctOfMeat, 2, place, 'down')}\u00a0%` },
    ...(least?.limit ? { limit: words.workings.limit(least.limit, place) } : {}),
    sources: least?.limit ? [words.workings.source(least.limit.source)] : [],
    words: words.workings.words,
  };
}
