import { formulaDiff, type LineChange } from '#core/formula/diff.ts';
import type { Formula, FormulaLine } from '#core/formula/formula.ts';
import type { Place } from '#record/place.ts';
import type { Words } from '#words/en.ts';
import type { Said } from '#words/said.ts';
import { amountText, labelText, smallMass } from './amount-text.ts';

export type Change = 'same' | 'changed' | 'added' | 'removed';

/** One row of two versions side by side. `details` names what differs where the two texts do not show it. */
export type CompareRow = {
  readonly key: string;
  readonly title: string;
  readonly change: Change;
  readonly word: string;
  readonly left: string;
  readonly right: string;
  readonly details: string;
};

export type CompareView = { readonly sentence: Said; readonly rows: readonly CompareRow[] };

type Spoken = { readonly place: Place; readonly words: Words };

/** Two versions line by line: what differs in the whole formula first, then every line in the order of the right side. */
export function compareView(left: Formula, right: Formula, spoken: Spoken): CompareView {
  const { fields, lines } = formulaDiff(left, right);
  const say = spoken.words.formulas.history;
  const head = fields.map(({ field }) => {
    const texts = { left: fieldText(left, field, spoken), right: fieldText(right, field, spoken) };
    const change = texts.left === '' ? 'added' : texts.right === '' ? 'removed' : 'changed';
    return row({ key: field, title: fieldName(field, spoken), change, ...texts, details: '' }, spoken);
  });
  const rows = [...head, ...lineRows(left, right, lines, spoken)];
  const count = fields.length + lines.length;
  return { sentence: count === 0 ? say.same : say.differ(count), rows };
}

function lineRows(
  left: Formula,
  right: Formula,
  changes: readonly LineChange[],
  spoken: Spoken,
): CompareRow[] {
  const rows = right.lines.map((line) => {
    const found = changes.find((each) => each.change !== 'removed' && each.after === line);
    const before = found === undefined ? line : found.change === 'changed' ? found.before : null;
    return row(
      {
        key: `line ${line.id}`,
        title: line.name,
        change: found?.change ?? 'same',
        left: before ? lineText(before, spoken) : '',
        right: lineText(line, spoken),
        details: found?.change === 'changed' ? detailsText(found, line, spoken) : '',
      },
      spoken,
    );
  });
  for (const each of changes) {
    if (each.change !== 'removed') continue;
    const { id, name } = each.before;
    const gone = {
      key: `gone ${id}`,
      title: name,
      change: 'removed',
      left: lineText(each.before, spoken),
    } as const;
    rows.splice(left.lines.indexOf(each.before), 0, row({ ...gone, right: '', details: '' }, spoken));
  }
  return rows;
}

function lineText(line: FormulaLine, { place, words }: Spoken): string {
  const amount = amountText(line.amount, place, words);
  return line.cure ? `${amount} · ${labelText(line.cure, place, words)}` : amount;
}

/** What differs and is not seen in the two texts. */
function detailsText(
  { before, fields }: Extract<LineChange, { change: 'changed' }>,
  after: FormulaLine,
  spoken: Spoken,
): string {
  const names: Readonly<Record<string, string>> = spoken.words.formulas.history.lineField;
  const seen = lineText(before, spoken) === lineText(after, spoken) ? [] : ['amount', 'cure'];
  return fields
    .filter(({ field }) => !seen.includes(field))
    .map(({ field }) => (field === 'name' ? `${names[field]}: ${before.name}` : (names[field] ?? field)))
    .join(', ');
}

function fieldName(field: string, { words }: Spoken): string {
  const names: Readonly<Record<string, string>> = words.formulas.history.field;
  return names[field] ?? field;
}

function fieldText(formula: Formula, field: string, { place, words }: Spoken): string {
  const number = (value: number | undefined, unit: string) =>
    value === undefined ? '' : `${words.workings.exactly(value, place)}\u00a0${unit}`;
  switch (field) {
    case 'name':
      return formula.name;
    case 'kind':
      return words.formulas.kind[formula.kind];
    case 'species':
      return formula.species.map((each) => words.formulas.species[each]).join(', ');
    case 'fatPctOfMeat':
      return number(formula.fatPctOfMeat, '%');
    case 'diameterMm':
      return number(formula.diameterMm, 'mm');
    case 'pieceG':
      return formula.pieceG === undefined ? '' : smallMass(formula.pieceG, place, words);
    case 'targetLossPct':
      return number(formula.targetLossPct, '%');
    case 'plannedDays':
      return number(formula.plannedDays, words.formulas.history.days);
    default:
      return formula.note ?? '';
  }
}

function row(given: Omit<CompareRow, 'word'>, { words }: Spoken): CompareRow {
  const say = words.formulas.history;
  return {
    ...given,
    word: given.change === 'same' ? say.unchanged : say[given.change],
    left: given.left === '' ? say.absent : given.left,
    right: given.right === '' ? say.absent : given.right,
  };
}
