import { type Formula, needsPieces } from '#core/formula/formula.ts';
import type { BenchScale } from '#core/formula/scale.ts';
import { BAG_DAYS } from '#core/formula/whole-muscle.ts';
import { RULE_SETS } from '#core/rules/rule-sets.ts';
import type { Place, Scale } from '#record/place.ts';
import type { VerdictShape } from '#ui/VerdictMark.tsx';
import type { WorkingText } from '#ui/Working.tsx';
import type { Words } from '#words/en.ts';
import { decimal } from '#words/format.ts';
import type { Said } from '#words/said.ts';
import { type BenchRead, benchMass } from './bench-input.ts';
import { type FigureView, figureViews } from './formula-figures.ts';
import { type LineView, lineView, plainLine } from './formula-lines.ts';
import { type FormulaPlan, formulaPlan, leavesRoom, type PlanFinding } from './formula-plan.ts';
import { cureSaid, scaleSaid } from './formula-sentence.ts';
import { findingWorking } from './formula-workings.ts';
import { type GuardView, guardViews } from './guards-view.ts';
import { premixTexts } from './premix-view.ts';

/** How amounts are shown: as written, or all counted on one base. The grams stay the same. */
export type ShownBase = 'written' | 'pct-of-meat' | 'pct-of-total' | 'g-per-kg-meat';

const BASES: readonly ShownBase[] = ['written', 'pct-of-meat', 'pct-of-total', 'g-per-kg-meat'];

export function shownBases(words: Words): { value: ShownBase; label: string }[] {
  return BASES.map((value) => ({ value, label: words.formulas.base[value] }));
}

export type FindingView = {
  readonly key: string;
  readonly verdict: VerdictShape;
  readonly word: string;
  readonly working: WorkingText | null;
};

export type FormulaView = {
  readonly sentence: Said;
  readonly linesHeading: string;
  readonly sums: readonly string[];
  readonly lines: readonly LineView[];
  readonly findings: readonly FindingView[];
  readonly ruleSet: string | null;
  readonly guards: readonly GuardView[];
  readonly premixes: readonly string[];
  readonly figures: readonly FigureView[];
  /** Null while the meat, the pieces or the formula leave the grams open. */
  readonly plan: FormulaPlan | null;
};

export type ViewGiven = {
  readonly formula: Formula;
  readonly bench: BenchRead | null;
  readonly scales: readonly Scale[];
  readonly benchScales: readonly BenchScale[];
  readonly base: ShownBase;
  readonly place: Place;
  readonly words: Words;
};

export function formulaView(given: ViewGiven): FormulaView {
  const { formula, bench, place, words, benchScales: scales } = given;
  const say = words.formulas;
  const ruleSet =
    place.ruleSet === null
      ? null
      : say.ruleSet(
          words.verdicts.ruleSet[place.ruleSet],
          RULE_SETS[place.ruleSet].comparedWithOfficialTextOn,
        );
  const open = !leavesRoom(formula)
    ? 'no-room'
    : bench === null
      ? 'no-meat'
      : bench.pieces === null && needsPieces(formula)
        ? 'no-pieces'
        : null;
  if (open !== null || bench === null)
    return {
      sentence: say.cure({ case: open ?? 'no-meat' }, { case: 'fine' }),
      linesHeading: say.linesNoMeat,
      sums: [],
      lines: formula.lines.map((line) => plainLine(line, given)),
      findings: [],
      ruleSet,
      guards: [],
      premixes: [],
      figures: [],
      plan: null,
    };
  const plan = formulaPlan({ formula, bench, scales, ruleSet: place.ruleSet });
  const inMass = (massG: number) => benchMass(massG, place, words);
  return {
    sentence: say.cure(cureSaid(given, plan), scaleSaid(given, plan)),
    linesHeading: say.lines(inMass(bench.leanG + bench.fatG)),
    sums:
      formula.kind === 'whole-muscle'
        ? [say.bagDays(String(BAG_DAYS.low), String(BAG_DAYS.high))]
        : [
            say.mix(inMass(plan.out.figures.mixG)),
            say.fatIs(
              decimal(plan.out.figures.fatPctOfMeat, 1, place),
              words.workings.exactly(formula.fatPctOfMeat, place),
            ),
          ],
    lines: formula.lines.flatMap((line, at) => {
      const weighed = plan.out.lines[at];
      return weighed ? [lineView(line, weighed, plan, given)] : [];
    }),
    findings: findingViews(given, plan),
    ruleSet,
    guards: guardViews(formula, plan.out.figures, place, words),
    premixes: premixTexts(given, plan),
    figures: figureViews(given, plan),
    plan,
  };
}

function findingViews(given: ViewGiven, plan: FormulaPlan): FindingView[] {
  const { place, words } = given;
  const say = words.formulas;
  if (place.ruleSet === null)
    return [
      {
        key: 'rule-set',
        verdict: 'no-reading',
        word: say.finding(words.verdicts.verdict('no-reading'), say.chooseRuleSet),
        working: null,
      },
    ];
  return plan.findings.map((each) => ({
    key: `${each.finding.rule} ${each.rule?.measure}`,
    verdict: each.finding.verdict,
    word: say.finding(words.verdicts.verdict(each.finding.verdict), aboutText(each, words)),
    working: each.rule ? findingWorking(each, each.rule, plan, given) : null,
  }));
}

function aboutText({ finding: { rule, missing, verdict } }: PlanFinding, words: Words): string {
  const about: Readonly<Record<string, string>> = words.formulas.about;
  const lacks: Readonly<Record<string, string>> = words.formulas.missing;
  const waits = verdict === 'pending' || verdict === 'no-reading' ? missing : [];
  return [about[rule] ?? rule, ...waits.map((code) => lacks[code] ?? code)].filter(Boolean).join(', ');
}
