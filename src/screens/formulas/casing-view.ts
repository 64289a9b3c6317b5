import { casingPlan, flatToDiameterMm } from '#core/formula/casing.ts';
import { type CasingKind, fillsFor } from '#core/formula/casing-tables.ts';
import type { Formula } from '#core/formula/formula.ts';
import type { OwnFill } from '#record/own-figures.ts';
import type { Place } from '#record/place.ts';
import type { Words } from '#words/en.ts';
import { decimal, joined, mass } from '#words/format.ts';
import { benchText, benchUnit } from './bench-input.ts';
import { type CalcField, type CalcView, readFields, type Texts } from './calc-view.ts';

type CasingField = keyof Words['formulaSheets']['casing']['field'];
const KINDS: readonly CasingKind[] = ['hog', 'beef-middle', 'beef-round', 'sheep', 'collagen', 'fibrous'];

export function casingOptions(words: Words): { value: CasingKind; label: string }[] {
  return KINDS.map((value) => ({ value, label: words.formulaSheets.casing.kinds[value] }));
}

export function casingView({
  casing,
  texts,
  formula,
  mixG,
  own,
  place,
  words,
}: {
  casing: CasingKind | null;
  texts: Texts;
  formula: Formula;
  /** Of the batch on the bench; null while that is not known. */
  mixG: number | null;
  own: readonly OwnFill[];
  place: Place;
  words: Words;
}): CalcView & { readonly printed: readonly string[]; readonly own: readonly string[] } {
  const say = words.formulaSheets.casing;
  const unit = benchUnit(place);
  const shown = (massG: number) => benchText(massG, place, words);
  const massField = (key: CasingField, least: number, first: string): CalcField<CasingField> => ({
    key,
    label: say.field[key],
    unit,
    least,
    most: 500_000,
    first,
  });
  const { views, values } = readFields(
    [
      massField('mixG', 1, mixG === null ? '' : shown(mixG)),
      massField('keptG', 0, '0'),
      massField('pieceG', 1, formula.pieceG === undefined ? '' : shown(formula.pieceG)),
      { ...massField('fillGPerM', 10, own[0] ? shown(own[0].fillGPerM) : ''), most: 50_000 },
      { key: 'endsMm', label: say.field.endsMm, unit: 'mm', least: 0, most: 1000, first: '100' },
    ],
    texts,
    place,
    words,
  );
  const flat = readFields(
    [{ key: 'flatMm', label: say.field.flatMm, unit: 'mm', least: 1, most: 500, first: '' }],
    texts,
    place,
    words,
  );
  const plan = values === null ? null : casingPlan(values);
  const length = (metres: number) => `~${decimal(metres, 1, place, 'up')}\u00a0m`;
  return {
    fields: [...views, ...flat.views],
    own: own.map((fill) => say.own(fill.casing, joined(mass(fill.fillGPerM, 10, place)), fill.batches)),
    printed: printedFills(casing, formula.diameterMm, place, words),
    results: [
      ...(plan
        ? [
            { label: say.metres, value: length(plan.casingM) },
            { label: say.pieces, value: String(plan.pieces) },
            { label: say.length, value: `~${decimal(plan.pieceMm / 10, 0, place)}\u00a0cm` },
            { label: say.leftover, value: joined(mass(plan.leftoverG, 1, place)) },
          ]
        : []),
      ...(flat.values
        ? [
            {
              label: say.diameter,
              value: `${decimal(flatToDiameterMm(flat.values.flatMm), 1, place)}\u00a0mm`,
            },
          ]
        : []),
    ],
    notes: [...(plan ? [say.estimate] : []), own[0] ? say.ownHint : say.fillHint],
  };
}

/** Every table that was read for this casing and diameter, with where it stands: none is chosen for the maker. */
function printedFills(
  casing: CasingKind | null,
  diameterMm: number | undefined,
  place: Place,
  words: Words,
): string[] {
  const say = words.formulaSheets.casing;
  if (casing === null || diameterMm === undefined) return [];
  const rows = fillsFor({ casing, diameterMm });
  if (rows.length === 0) return [say.noRow];
  return rows.map(({ lowGPerM, highGPerM, source }) =>
    say.printed(
      mass(lowGPerM, 10, place).value,
      joined(mass(highGPerM, 10, place)),
      words.verdicts.source(source),
    ),
  );
}
