import { type Amount, type FormulaLine, isMeat } from '#core/formula/formula.ts';
import type { WeighOut } from '#core/formula/weigh-out.ts';
import type { Finding } from '#core/rules/rule.ts';
import type { Batch } from '#record/batch.ts';
import { type FormulaFindings, formulaFindings } from '#record/formula-findings.ts';
import type { Lot, Place, Scale } from '#record/place.ts';
import type { SubjectId } from '#record/subject.ts';
import { plannedWeighOut } from '#record/weigh-out-figures.ts';
import type { Words } from '#words/en.ts';
import { decimal, joined, mass, type Quantity } from '#words/format.ts';
import type { Said } from '#words/said.ts';
import { type CountView, countView } from './count-view.ts';
import { type LastWeighing, lastWeighing } from './last-weighing.ts';
import { isOutside, lineNote, nitriteStepText } from './line-note.ts';
import { LOT_KINDS, lotChoices, lotsFor } from './lot-choices.ts';
import { type MeatView, meatView } from './meat-view.ts';
import { nitriteSentence, nitriteWorking, saltWorking } from './nitrite-view.ts';
import { doseWhy, packChoices, packNote } from './starter-view.ts';
import type { LotChoice, ToWeigh } from './weigh-sheet-view.ts';

export type LineView = {
  readonly id: string;
  readonly name: string;
  readonly base: string;
  readonly done: boolean;
  /** Weighed, and further from its target than the bench's tolerance. */
  readonly outside: boolean;
  /** Target while it is to be weighed, what the scale showed once it was. */
  readonly value: string;
  readonly unit: string;
  readonly note: string;
  readonly targetG: number;
  readonly target: Quantity;
  readonly stepG: number;
  readonly scale: SubjectId | null;
  readonly lots: readonly LotChoice[];
};

export type WeighOutView = {
  readonly line: string;
  readonly sentence: Said;
  readonly verdicts: readonly { key: string; verdict: Finding['verdict']; word: string }[];
  readonly meat: readonly MeatView[];
  readonly lines: readonly LineView[];
  readonly next: string | null;
  /** The line to weigh once this one is: the next that was not weighed, or none. */
  readonly following: (line: string) => string | null;
  readonly left: number;
  readonly figures: readonly {
    key: string;
    label: string;
    value: string;
    unit: string;
    note: string;
    about: boolean;
    working?: ReturnType<typeof saltWorking>;
  }[];
  readonly nitriteWorking: ReturnType<typeof nitriteWorking> | null;
  readonly noScale: boolean;
  /** The weighing that was written down last, to be struck at once if it was a slip; null before the first. */
  readonly last: LastWeighing | null;
  /** Names of lines that lie outside the bench's tolerance. */
  readonly outside: readonly string[];
  /** What was weighed is not what was planned: said, and while `open` nothing leads to the bench. */
  readonly count: CountView | null;
};

type Given = {
  batch: Batch;
  kit: { lots: readonly Lot[]; scales: readonly Scale[] };
  place: Place;
  nowMs: number;
  words: Words;
};

export function weighOutView({ batch, kit, place, nowMs, words }: Given): WeighOutView {
  const { weighOut } = words;
  const plan = plannedWeighOut(batch, kit.scales);
  const found = formulaFindings(batch, kit.scales);
  const { formula, lot } = batch.opened.body;
  const lines = plan ? lineViews({ batch, kit, place, nowMs, words }, plan) : [];
  const next = lines.find(({ done }) => !done)?.id ?? null;
  return {
    line: weighOut.line(formula.name, lot),
    sentence: sentenceOf(batch, found, { place, words }),
    verdicts: (found?.findings ?? []).map((finding) => ({
      key: finding.rule,
      verdict: finding.verdict,
      word: verdictWord(finding, words),
    })),
    meat: (['lean', 'fat'] as const).map((part) => meatView(part, { batch, kit, place, words })),
    lines,
    next,
    following: (line) => lines.find(({ id, done }) => !done && id !== line)?.id ?? null,
    left: lines.filter(({ done }) => !done).length,
    figures: found ? figureViews(batch, found, { place, words }) : [],
    nitriteWorking: found && nitriteWorking({ batch, found, place, words }),
    count: countView(batch, place, words),
    noScale: kit.scales.length === 0,
    last: lastWeighing(batch, place, words),
    outside: lines.filter(({ outside }) => outside).map(({ name }) => name),
  };
}

function sentenceOf(
  batch: Batch,
  found: FormulaFindings | null,
  { place, words }: Pick<Given, 'place' | 'words'>,
): Said {
  if (found) return nitriteSentence({ batch, found, place, words });
  return batch.leanG + batch.fatG > 0 ? words.weighOut.countPieces : words.weighOut.meatFirst;
}

/** Verdict first; why it is open only where it is more than that the scale has not been read yet. */
function verdictWord(finding: Finding, words: Words): string {
  const { rule, missing } = words.weighOut;
  const why = finding.missing
    .filter((code) => code !== 'weighed-grams')
    .map((code) => missing[code] ?? code)
    .join(', ');
  const word = `${words.verdicts.verdict(finding.verdict)}: ${rule[finding.rule] ?? finding.rule}`;
  return why === '' ? word : `${word}, ${why}`;
}

function lineViews({ batch, kit, place, nowMs, words }: Given, plan: WeighOut): LineView[] {
  const meatG = batch.leanG + batch.fatG;
  return batch.opened.body.formula.lines.flatMap((line, at) => {
    const planned = plan.lines[at];
    if (isMeat(line.role) || !planned) return [];
    const actual = batch.weighedOut.get(line.id)?.body;
    const shown = mass(actual?.massG ?? planned.roundedG, planned.stepG, place);
    const scale = kit.scales.find(({ id }) => id === planned.scaleId) ?? null;
    const lots = lotsFor(kit.lots, LOT_KINDS[line.role] ?? ['other', 'spice']);
    const living = line.role === 'starter' || line.role === 'mould';
    const actualG = actual?.massG ?? null;
    const beside = { line, planned, actualG, scale, meatG, place, words };
    return [
      {
        id: line.id,
        name: line.name,
        base: [
          doseWhy(line.amount, meatG, place, words) ?? baseText(line.amount, place, words),
          cureText(line, place, words),
          words.weighOut.rounded[planned.rounding],
          nitriteStepText(beside),
        ]
          .filter(Boolean)
          .join(', '),
        done: actual !== undefined,
        outside: isOutside(beside),
        ...shown,
        note: [lineNote(beside), living ? packNote(lots, actual?.lot, nowMs, words) : '']
          .filter(Boolean)
          .join(', '),
        targetG: planned.roundedG,
        target: mass(planned.roundedG, planned.stepG, place),
        stepG: planned.stepG,
        scale: scale?.id ?? null,
        lots: living ? packChoices(lotChoices(lots), lots, nowMs, words) : lotChoices(lots),
      },
    ];
  });
}

function baseText(amount: Amount, place: Place, words: Words): string {
  const { base } = words.weighOut;
  const { exactly } = words.workings;
  switch (amount.basis) {
    case 'pct-of-meat':
    case 'pct-of-lean':
    case 'pct-of-total':
      return base[amount.basis](exactly(amount.amountPct, place));
    case 'g-per-kg-meat':
      return base['g-per-kg-meat'](exactly(amount.doseGPerKg, place));
    case 'fixed':
      return base.fixed();
    case 'at-least':
      return base['at-least'](joined(mass(amount.minimumG, 0.01, place)));
    case 'per-piece':
      return base['per-piece'](joined(mass(amount.pieceG, 0.1, place)));
    case 'pack-share':
      return base['pack-share']();
  }
}

function cureText({ cure }: FormulaLine, place: Place, words: Words): string {
  if (!cure) return '';
  const { exactly } = words.workings;
  const nitrate = cure.nitratePct > 0 ? exactly(cure.nitratePct, place) : null;
  return words.weighOut.cureLabel(exactly(cure.nitritePct, place), nitrate);
}

function figureViews(
  batch: Batch,
  found: FormulaFindings,
  { place, words }: Pick<Given, 'place' | 'words'>,
): WeighOutView['figures'] {
  const { figures } = words.weighOut;
  const lossPct = batch.plan.targetLossPct;
  const sliceSaltPct = found.figures.saltPctOfMix / (1 - lossPct / 100);
  return [
    {
      key: 'salt',
      label: figures.salt,
      value: decimal(found.figures.saltPctOfMeat, 2, place),
      unit: '%',
      note: figures.saltNote,
      about: false,
      working: saltWorking({ found, place, words }),
    },
    {
      key: 'slice',
      label: figures.slice,
      value: decimal(sliceSaltPct, 1, place),
      unit: '%',
      note: figures.sliceNote(decimal(lossPct, 0, place)),
      about: true,
    },
    { key: 'mix', label: figures.mix, ...mass(found.figures.mixG, 1, place), note: '', about: false },
  ];
}

/** What the sheet asks for: a line by its id, or lean or fat as it comes. */
export function toWeigh(open: string | null, view: WeighOutView): ToWeigh | null {
  const line = view.lines.find(({ id }) => id === open);
  if (line)
    return {
      key: line.id,
      name: line.name,
      note: [line.base, line.note].filter(Boolean).join(', '),
      targetG: line.targetG,
      target: { value: line.target.value.replaceAll('\u202f', ''), text: joined(line.target) },
      before: line.done ? joined({ value: line.value, unit: line.unit }) : null,
      scale: line.scale,
      meat: null,
      lots: line.lots,
    };
  const meat = view.meat.find(({ part }) => part === open);
  if (!meat) return null;
  const { part: key, label: name, lots } = meat;
  const soFar = { part: key, ...meat.soFar };
  return {
    ...{ key, name, note: meat.hint, targetG: null, target: null, before: null, scale: null },
    ...{ meat: soFar, lots },
  };
}
