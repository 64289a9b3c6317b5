import type { Figures } from '#core/formula/figures.ts';
import type { Finding } from '#core/rules/rule.ts';
import type { Batch } from '#record/batch.ts';
import type { FormulaFindings } from '#record/formula-findings.ts';
import type { Place } from '#record/place.ts';
import type { Words } from '#words/en.ts';
import { decimal, joined, mass } from '#words/format.ts';
import { type Said, said } from '#words/said.ts';

type Given = { batch: Batch; found: FormulaFindings; place: Place; words: Words };

/** The measure that a rule holds against its limit, so that the sentence speaks of the number the verdict rests on. */
function measureOf(rule: string, ruleSet: string, { knownNitrite, knownNitrate }: Figures): number {
  if (rule.startsWith('cure-')) return knownNitrite.mgPerKgMeat + knownNitrate.mgPerKgMeat;
  return ruleSet === 'EU' ? knownNitrite.ionMgPerKgMeat : knownNitrite.mgPerKgMeat;
}

const MOST = ['nitrite-in-most', 'cure-in-most'];
const LEAST = ['nitrite-in-least', 'cure-in-least'];

const perKg = (value: string) => `${value}\u00a0mg/kg`;

export function nitriteSentence({ batch, found, place, words }: Given): Said {
  const say = words.weighOut.nitrite;
  const cure = batch.opened.body.formula.lines.some((line) => line.role === 'cure' && line.cure);
  if (!cure) return say.none;
  const most = found.findings.find(({ rule }) => MOST.includes(rule));
  const least = found.findings.find(({ rule }) => LEAST.includes(rule));
  const { ruleSet } = batch.opened.body;
  const value = (finding: Finding, figures: Figures, rounding: 'up' | 'down') =>
    perKg(decimal(measureOf(finding.rule, ruleSet, figures), 2, place, rounding));
  const limit = (finding: Finding) => perKg(words.workings.exactly(finding.limit?.value ?? 0, place));
  if (!most?.limit) return say.unlimited(perKg(decimal(found.figures.knownNitrite.mgPerKgMeat, 1, place)));
  if (most.verdict === 'deviation') return say.over(value(most, found.figures, 'up'), limit(most));
  if (least?.limit && least.verdict === 'deviation')
    return say.low(value(least, found.figures, 'down'), limit(least));
  const stands = say[found.stage](value(most, found.figures, 'up'), limit(most));
  const tooCoarse = measureOf(most.rule, ruleSet, found.upper) > most.limit.value;
  return tooCoarse
    ? said(...stands, ...say.scale(value(most, found.lower, 'down'), value(most, found.upper, 'up')))
    : stands;
}

export function nitriteWorking({ batch, found, place, words }: Given) {
  const { work } = words.weighOut;
  const most = found.findings.find(({ rule }) => MOST.includes(rule));
  const cures = batch.opened.body.formula.lines.filter((line) => line.role === 'cure' && line.cure);
  if (cures.length === 0) return null;
  const { figures, lower, upper } = found;
  const shown = (of: Figures, rounding: 'up' | 'down') =>
    decimal(of.knownNitrite.mgPerKgMeat, 2, place, rounding);
  return {
    title: work.nitrite.title,
    equation: work.nitrite.equation,
    rows: [
      { label: work.nitrite.meat, value: joined(mass(figures.meatG, 1, place)) },
      ...cures.map((line) => ({
        label: line.name,
        value: `${words.workings.exactly(line.cure?.nitritePct ?? 0, place)}\u00a0%`,
        note: work.nitrite.label,
      })),
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
