import { type Formula, type FormulaLine, isMeat, needsPieces } from '#core/formula/formula.ts';
import type { BenchScale } from '#core/formula/scale.ts';
import { BENCH_TOLERANCE_PCT, lineError } from '#core/formula/scale-error.ts';
import { saltPctOfSlice } from '#core/formula/slice.ts';
import type { WeighOutLine } from '#core/formula/weigh-out.ts';
import type { Place, Scale } from '#record/place.ts';
import type { VerdictShape } from '#ui/VerdictMark.tsx';
import type { WorkingText } from '#ui/Working.tsx';
import type { CureSaid, ScaleSaid } from '#words/en/formulas.ts';
import type { Words } from '#words/en.ts';
import { decimal, joined, mass, type Quantity } from '#words/format.ts';
import type { Said } from '#words/said.ts';
import { amountText, labelText } from './amount-text.ts';
import type { BenchRead } from './bench-input.ts';
import { type FormulaPlan, formulaPlan, leavesRoom, type PlanFinding } from './formula-plan.ts';
import { findingWorking, limited, nitriteWorking, saltWorking, sliceWorking } from './formula-workings.ts';

/** How amounts are shown: as written, or all counted on one base. The grams stay the same. */
export type ShownBase = 'written' | 'pct-of-meat' | 'pct-of-total' | 'g-per-kg-meat';

const BASES: readonly ShownBase[] = ['written', 'pct-of-meat', 'pct-of-total', 'g-per-kg-meat'];

export function shownBases(words: Words): { value: ShownBase; label: string }[] {
  return BASES.map((value) => ({ value, label: words.formulas.base[value] }));
}

export type LineView = {
  readonly id: string;
  readonly name: string;
  readonly amount: string;
  /** Null while the bench is not known. */
  readonly mass: Quantity | null;
  readonly note: string;
};

export type FindingView = {
  readonly key: string;
  readonly verdict: VerdictShape;
  readonly word: string;
  readonly working: WorkingText | null;
};

export type FigureView = {
  readonly label: string;
  readonly value: string;
  readonly unit: string;
  readonly about: boolean;
  readonly note: string;
  readonly working: WorkingText;
};

export type FormulaView = {
  readonly sentence: Said;
  readonly linesHeading: string;
  readonly mix: string | null;
  readonly fat: string | null;
  readonly lines: readonly LineView[];
  readonly findings: readonly FindingView[];
  readonly ruleSet: string | null;
  readonly figures: readonly FigureView[];
  readonly cautions: readonly string[];
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
  const { formula, bench, place, words } = given;
  const said = words.formulas;
  const room = leavesRoom(formula);
  const counted = bench !== null && (bench.pieces !== null || !needsPieces(formula));
  const plan =
    bench && counted && room
      ? formulaPlan({ formula, bench, scales: given.benchScales, ruleSet: place.ruleSet })
      : null;
  if (plan === null || bench === null)
    return {
      sentence: said.cure(
        { case: !room ? 'no-room' : bench === null ? 'no-meat' : 'no-pieces' },
        { case: 'fine' },
      ),
      linesHeading: said.linesNoMeat,
      mix: null,
      fat: null,
      lines: formula.lines.map((line) => ({
        id: line.id,
        name: line.name,
        amount: written(line, given),
        mass: null,
        note: '',
      })),
      findings: [],
      ruleSet: ruleSetText(given),
      figures: [],
      cautions: said.usual,
    };
  const meat = joined(mass(bench.leanG + bench.fatG, coarsest(plan), place));
  return {
    sentence: said.cure(cureSaid(given, plan), scaleSaid(given, plan)),
    linesHeading: said.lines(meat),
    mix: said.mix(joined(mass(plan.out.figures.mixG, coarsest(plan), place))),
    fat:
      formula.kind === 'whole-muscle'
        ? null
        : said.fatIs(
            decimal(plan.out.figures.fatPctOfMeat, 1, place),
            words.workings.exactly(formula.fatPctOfMeat, place),
          ),
    lines: formula.lines.flatMap((line, at) => {
      const weighed = plan.out.lines[at];
      return weighed ? [lineView(line, weighed, plan, given)] : [];
    }),
    findings: findingViews(given, plan),
    ruleSet: ruleSetText(given),
    figures: figureViews(given, plan),
    cautions: said.usual,
  };
}

function coarsest(plan: FormulaPlan): number {
  return Math.max(...plan.out.lines.filter(({ role }) => isMeat(role)).map(({ stepG }) => stepG), 1);
}

function written(line: FormulaLine, { place, words }: ViewGiven): string {
  const amount = amountText(line.amount, place, words);
  if (line.role !== 'cure') return amount;
  const label = line.cure ? labelText(line.cure, place, words) : words.formulas.noLabel;
  return `${amount} · ${label}`;
}

function lineView(
  line: FormulaLine,
  weighed: WeighOutLine,
  { out }: FormulaPlan,
  given: ViewGiven,
): LineView {
  const { base, place, words, scales } = given;
  const { exactG, roundedG, stepG, portions } = weighed;
  const meatG = out.leanG + out.fatG;
  const say = words.formulas;
  const off = lineError({ massG: roundedG, stepG, portions, meatG, nitritePct: null }).weighingPct;
  const scale = scales.find(({ id }) => id === weighed.scaleId);
  const converted = {
    'pct-of-meat': () => say.amount['pct-of-meat'](decimal((100 * exactG) / meatG, 3, place)),
    'pct-of-total': () => say.amount['pct-of-total'](decimal((100 * exactG) / out.exact.mixG, 3, place)),
    'g-per-kg-meat': () => say.amount['g-per-kg-meat'](decimal((1000 * exactG) / meatG, 2, place)),
  };
  return {
    id: line.id,
    name: line.name,
    amount: base === 'written' ? written(line, given) : converted[base](),
    mass: mass(roundedG, stepG, place),
    note: [
      whyText(line, weighed, meatG, words),
      say.rounding[weighed.rounding],
      portions > 1 ? say.portions(portions) : '',
      scale && scales.length > 1 && off !== null && !isMeat(line.role)
        ? say.onScale(scale.name, decimal(off, 1, place, 'up'))
        : '',
    ]
      .filter(Boolean)
      .join(', '),
  };
}

/** Which of the bounds of an amount decided, where it has more than one. */
function whyText({ amount }: FormulaLine, { exactG }: WeighOutLine, meatG: number, words: Words): string {
  const { why } = words.formulas;
  if (amount.basis !== 'at-least' && amount.basis !== 'pack-share') return '';
  if ((meatG * amount.doseGPerKg) / 1000 >= exactG) return why.dose;
  return amount.basis === 'pack-share' && amount.packG * amount.packFraction >= exactG ? why.pack : why.least;
}

function cureSaid({ formula, place, words }: ViewGiven, plan: FormulaPlan): CureSaid {
  if (!formula.lines.some(({ role }) => role === 'cure')) return { case: 'no-cure' };
  const nitrite = plan.findings.filter(({ rule }) => rule !== null && rule.measure !== 'salt-of-mix');
  const worst =
    nitrite.find(({ finding }) => finding.verdict === 'deviation') ??
    nitrite.find(({ finding }) => finding.limit?.relation === '<=');
  const quoted = worst ? limited(worst, place, words) : null;
  if (worst?.finding.verdict === 'deviation' && quoted)
    return { case: worst.finding.limit?.relation === '>=' ? 'under' : 'over', ...quoted };
  const figure = plan.out.figures.nitrite;
  if (figure === null) return { case: 'no-label' };
  const alone = `${decimal(figure.mgPerKgMeat, 1, place, 'up')}\u00a0mg/kg`;
  if (place.ruleSet === null) return { case: 'no-rule-set', figure: alone };
  return quoted ? { case: 'keeps', ...quoted } : { case: 'no-limit', figure: alone };
}

function scaleSaid(given: ViewGiven, plan: FormulaPlan): ScaleSaid {
  const { place, scales, words } = given;
  const main = plan.findings.find(
    ({ finding, rule }) => finding.limit?.relation === '<=' && rule?.measure !== 'salt-of-mix',
  );
  const cure = plan.out.lines.find(({ role }) => role === 'cure');
  if (!main || !cure || main.finding.verdict !== 'pending' || plan.cureOffPct === null)
    return { case: 'fine' };
  if (plan.cureOffPct > BENCH_TOLERANCE_PCT.cure && main.fromValue !== null && main.toValue !== null)
    return {
      case: 'coarse',
      scale: scales.find(({ id }) => id === cure.scaleId)?.name ?? words.formulas.kitchenScale,
      from: decimal(main.fromValue, 0, place, 'down'),
      to: decimal(main.toValue, 0, place, 'up'),
    };
  if (plan.saferCureG === null) return { case: 'fine' };
  return { case: 'edge', massText: joined(mass(plan.saferCureG, cure.stepG, place, 'down')) };
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
    working: each.rule ? findingWorking(each, plan, given) : null,
  }));
}

function aboutText({ finding: { rule, missing, verdict } }: PlanFinding, words: Words): string {
  const about: Readonly<Record<string, string>> = words.formulas.about;
  const lacks: Readonly<Record<string, string>> = words.formulas.missing;
  const waits =
    verdict === 'pending' || verdict === 'no-reading' ? missing.map((code) => lacks[code] ?? code) : [];
  return [about[rule] ?? rule, ...waits].join(', ');
}

function ruleSetText({ place, words }: ViewGiven): string | null {
  return place.ruleSet === null ? null : words.formulas.ruleSet(words.verdicts.ruleSet[place.ruleSet]);
}

function figureViews(given: ViewGiven, plan: FormulaPlan): FigureView[] {
  const { formula, place, words } = given;
  const { figures } = plan.out;
  const say = words.formulas.figures;
  const views: FigureView[] = [
    {
      label: say.totalSalt,
      value: decimal(figures.saltPctOfMeat, 2, place),
      unit: say.ofMeat,
      about: false,
      note:
        figures.cureSaltG > 0
          ? say.saltNote(`${decimal((100 * figures.cureSaltG) / figures.meatG, 2, place)}\u00a0%`)
          : '',
      working: saltWorking(plan, given),
    },
  ];
  if (formula.targetLossPct !== undefined) {
    const lossPct = formula.targetLossPct;
    views.push({
      label: say.slice,
      value: decimal(saltPctOfSlice({ saltPctOfMix: figures.saltPctOfMix, lossPct }), 1, place),
      unit: '%',
      about: true,
      note: say.sliceNote(words.workings.exactly(lossPct, place)),
      working: sliceWorking(plan, lossPct, given),
    });
  }
  if (figures.nitrite !== null && figures.nitrite.massG > 0)
    views.push({
      label: say.nitrite,
      value: decimal(figures.nitrite.mgPerKgMeat, 2, place, 'up'),
      unit: 'mg/kg',
      about: false,
      note: say.nitriteNote(decimal(figures.nitrite.ionUpperMgPerKgMeat, 1, place, 'up')),
      working: nitriteWorking(plan, given),
    });
  return views;
}
