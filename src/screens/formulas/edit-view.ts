import { figuresFromGrams } from '#core/formula/figures.ts';
import type { Formula } from '#core/formula/formula.ts';
import { formulaProblems } from '#core/formula/problems.ts';
import { exactGrams } from '#core/formula/weigh-out.ts';
import type { Place } from '#record/place.ts';
import type { Words } from '#words/en.ts';
import { decimal } from '#words/format.ts';
import type { Said } from '#words/said.ts';
import { amountText, labelText } from './amount-text.ts';
import type { Unlikely } from './draft-edits.ts';
import { type FormulaDraft, HEAD_BOUNDS, type HeadField, readFormulaDraft } from './formula-draft.ts';
import { leavesRoom } from './formula-plan.ts';
import { readLineDraft } from './line-read.ts';

export type EditRow = {
  readonly id: string;
  readonly title: string;
  readonly note: string;
  readonly complete: boolean;
};

export type EditView = {
  readonly sentence: Said;
  readonly rows: readonly EditRow[];
  readonly problems: { readonly [Field in HeadField | 'name']?: string };
  /** What the formula says in two ways; it can be saved all the same. */
  readonly doubts: readonly string[];
  /** What keeps it from being saved, in words; null when nothing does. */
  readonly hindered: string | null;
  /** What comes of it for 1 kg of meat, as far as it can be read. */
  readonly sums: string | null;
};

export function editView({
  draft,
  number,
  tried,
  place,
  words,
}: {
  draft: FormulaDraft;
  /** The number that this version will have. */
  number: number;
  /** Empty fields are named only after the maker tried to save. */
  tried: boolean;
  place: Place;
  words: Words;
}): EditView {
  const say = words.formulaEdit;
  const read = readFormulaDraft(draft, place);
  const problems = read.ok ? null : read.problems;
  const wrong = Object.keys(problems?.lines ?? {}).length;
  return {
    sentence: number === 1 ? say.sentence.first : say.sentence.next(number),
    rows: draft.lines.map((line): EditRow => {
      const each = readLineDraft(line, place);
      return {
        id: line.id,
        title: line.name.trim() === '' ? say.role[line.role] : line.name,
        note: each.ok
          ? [
              amountText(each.line.amount, place, words),
              line.role !== 'cure'
                ? ''
                : each.line.cure
                  ? labelText(each.line.cure, place, words)
                  : words.formulas.noLabel,
            ]
              .filter(Boolean)
              .join(' · ')
          : say.incomplete,
        complete: each.ok,
      };
    }),
    problems: headProblems(problems?.head ?? {}, tried, words),
    hindered: problems?.whole ? say.whole[problems.whole] : tried && wrong > 0 ? say.lookAt(wrong) : null,
    doubts: read.ok ? doubtTexts(read.formula, place, words) : [],
    sums: sumsText(draft, place, words),
  };
}

function headProblems(
  head: Extract<ReturnType<typeof readFormulaDraft>, { ok: false }>['problems']['head'],
  tried: boolean,
  words: Words,
): EditView['problems'] {
  const texts = Object.entries(head).flatMap(([field, problem]) => {
    if (problem === 'empty' && !tried) return [];
    if (field === 'name') return [[field, words.fields.needed]];
    const { least, most } = HEAD_BOUNDS[field as HeadField];
    return [[field, words.fields.problem(problem, { least: String(least), most: String(most) })]];
  });
  return Object.fromEntries(texts);
}

function doubtTexts(formula: Formula, place: Place, words: Words): string[] {
  const say = words.formulaEdit.doubt;
  const exactly = (value: number) => words.workings.exactly(value, place);
  return formulaProblems(formula).flatMap((problem) => {
    if (problem.code === 'fat-lines-differ')
      return [say.fatLines(exactly(problem.linesPct), exactly(problem.fatPctOfMeat))];
    return problem.code === 'meat-lines-not-100' ? [say.meatLines(exactly(problem.linesPct))] : [];
  });
}

/** Total salt and nitrite of what can be read so far, before any rounding. */
function sumsText(draft: FormulaDraft, place: Place, words: Words): string | null {
  const lines = draft.lines.flatMap((line) => {
    const each = readLineDraft(line, place);
    return each.ok ? [each.line] : [];
  });
  const formula: Formula = { name: '', kind: draft.kind, species: [], fatPctOfMeat: 0, lines };
  if (lines.length === 0 || !leavesRoom(formula)) return null;
  const meat = { leanG: 1000, fatG: 0 };
  const grams = exactGrams({ formula, ...meat, pieces: 1 });
  const { saltPctOfMeat, nitrite } = figuresFromGrams({
    ...meat,
    lines: lines.map(({ role, cure }, at) => ({ role, cure, massG: grams[at] ?? 0 })),
  });
  return words.formulaEdit.sums(
    decimal(saltPctOfMeat, 2, place),
    nitrite === null || !(nitrite.massG > 0) ? null : decimal(nitrite.mgPerKgMeat, 2, place, 'up'),
  );
}

/** The question about something unlikely, in words. */
export function unlikelyText(
  { code, lineId }: Unlikely,
  formula: Formula,
  place: Place,
  words: Words,
): string {
  const line = formula.lines.find(({ id }) => id === lineId);
  if (!line) return '';
  const say = words.formulaEdit.unlikely;
  return code === 'bag'
    ? say.bag(line.name, line.cure ? labelText(line.cure, place, words) : '')
    : say[code](line.name, amountText(line.amount, place, words));
}
