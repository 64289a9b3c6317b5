import type { Formula, FormulaLine } from '#core/formula/formula.ts';
import type { Place } from '#record/place.ts';
import type { Words } from '#words/en.ts';
import type { Said } from '#words/said.ts';
import { amountText, labelText, smallMass } from './amount-text.ts';

export type Change = 'same' | 'changed' | 'added' | 'removed';

/** One row of two versions side by side. `details` names what differs, where it is more than the two texts show. */
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

/** Two versions line by line. Lines are the same line by their id, whatever they are called. */
export function compareView(left: Formula, right: Formula, spoken: Spoken): CompareView {
  const say = spoken.words.formulas.history;
  const rows = [...headRows(left, right, spoken), ...lineRows(left, right, spoken)];
  const count = rows.filter(({ change }) => change !== 'same').length;
  return { sentence: count === 0 ? say.same : say.differ(count), rows };
}

const FIELDS = [
  'name',
  'kind',
  'species',
  'fatPctOfMeat',
  'diameterMm',
  'pieceG',
  'targetLossPct',
  'plannedDays',
  'note',
] as const;

/** Fields of the whole formula: only those that differ. */
function headRows(left: Formula, right: Formula, spoken: Spoken): CompareRow[] {
  const say = spoken.words.formulas.history;
  return FIELDS.flatMap((field) => {
    const [before, after] = [fieldText(left, field, spoken), fieldText(right, field, spoken)];
    return before === after
      ? []
      : [row({ key: field, title: say.field[field], left: before, right: after, details: '', spoken })];
  });
}

function fieldText(formula: Formula, field: (typeof FIELDS)[number], { place, words }: Spoken): string {
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
    case 'note':
      return formula.note ?? '';
  }
}

/** Lines in the order of the right side; those that were left out stand where they stood. */
function lineRows(left: Formula, right: Formula, spoken: Spoken): CompareRow[] {
  const rightIds = new Set(right.lines.map(({ id }) => id));
  const before = new Map(left.lines.map((line) => [line.id, line]));
  const ordered: { id: string; old: FormulaLine | undefined; now: FormulaLine | undefined }[] =
    right.lines.map((now) => ({ id: now.id, old: before.get(now.id), now }));
  left.lines.forEach((old, at) => {
    if (!rightIds.has(old.id))
      ordered.splice(Math.min(at, ordered.length), 0, { id: old.id, old, now: undefined });
  });
  const moved = movedIds(left, right);
  return ordered.map(({ id, old, now }) => {
    const details = old && now ? lineDetails(old, now, moved.has(id), spoken) : [];
    return row({
      key: `line ${id}`,
      title: now?.name ?? old?.name ?? id,
      left: old ? lineText(old, spoken) : '',
      right: now ? lineText(now, spoken) : '',
      details: details.join(', '),
      spoken,
    });
  });
}

/** Of the lines on both sides, those that stand after another one than before. */
function movedIds(left: Formula, right: Formula): ReadonlySet<string> {
  const common = new Set(
    left.lines.map(({ id }) => id).filter((id) => right.lines.some((line) => line.id === id)),
  );
  const order = (formula: Formula) => formula.lines.map(({ id }) => id).filter((id) => common.has(id));
  const before = order(left);
  return new Set(order(right).filter((id, at) => before[at] !== id));
}

function lineText(line: FormulaLine, { place, words }: Spoken): string {
  const amount = amountText(line.amount, place, words);
  return line.cure ? `${amount} · ${labelText(line.cure, place, words)}` : amount;
}

function lineDetails(old: FormulaLine, now: FormulaLine, moved: boolean, { words }: Spoken): string[] {
  const say = words.formulas.history;
  const differs = (of: (line: FormulaLine) => unknown) => JSON.stringify(of(old)) !== JSON.stringify(of(now));
  return [
    differs((line) => line.name) ? `${say.lineField.name}: ${old.name}` : '',
    differs((line) => line.role) ? say.lineField.role : '',
    differs((line) => line.amount) ? say.lineField.amount : '',
    differs((line) => line.cure) ? say.lineField.cure : '',
    differs((line) => line.sugarKind) ? say.lineField.sugarKind : '',
    differs((line) => line.hiddenSugarPct) ? say.lineField.hiddenSugarPct : '',
    differs((line) => line.sulphiteMgPerKg) ? say.lineField.sulphiteMgPerKg : '',
    differs((line) => line.allergens) ? say.lineField.allergens : '',
    differs((line) => [line.cutNdb, line.ownFatPct]) ? say.lineField.meat : '',
    differs((line) => line.note) ? say.lineField.note : '',
    moved ? say.moved : '',
  ].filter((each) => each !== '');
}

function row({
  key,
  title,
  left,
  right,
  details,
  spoken: { words },
}: {
  key: string;
  title: string;
  left: string;
  right: string;
  details: string;
  spoken: Spoken;
}): CompareRow {
  const say = words.formulas.history;
  const change: Change =
    left === '' ? 'added' : right === '' ? 'removed' : left === right && details === '' ? 'same' : 'changed';
  return {
    key,
    title,
    change,
    word: change === 'same' ? say.unchanged : say[change],
    left: left === '' ? say.absent : left,
    right: right === '' ? say.absent : right,
    details,
  };
}
