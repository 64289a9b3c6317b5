import { casingPlan, flatToDiameterMm } from '#core/formula/casing.ts';
import { type CasingKind, fillsFor } from '#core/formula/casing-tables.ts';
import type { Formula } from '#core/formula/formula.ts';
import { lengthFromMm, lengthToMm } from '#core/units.ts';
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
  const long = casingLength(place);
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
      {
        ...massField('fillGPerM', 1, own[0] ? shown(own[0].fillGPerM * long.metres) : ''),
        label: say.fill[long.unit],
        most: 50_000,
      },
      { key: 'endsMm', label: say.field.endsMm, unit: long.short, least: 0, most: 1000, first: long.ends },
    ],
    texts,
    place,
    words,
  );
  const { diameterMm } = formula;
  const first = diameterMm === undefined ? '' : words.workings.exactly(diameterMm, place);
  const mm = { unit: 'mm', least: 5, most: 500 } as const;
  const calibre = readFields(
    [{ ...mm, key: 'diameterMm', label: say.field.diameterMm, first }],
    texts,
    place,
    words,
  );
  const flat = readFields(
    [{ ...mm, key: 'flatMm', label: say.field.flatMm, first: '' }],
    texts,
    place,
    words,
  );
  const roundMm = flat.values ? flatToDiameterMm(flat.values.flatMm) : null;
  const plan = values && casingPlan({ ...values, fillGPerM: values.fillGPerM / long.metres });
  const length = (lengthMm: number) =>
    `~${decimal(lengthFromMm({ lengthMm, unit: long.unit }), 1, place, 'up')}\u00a0${long.unit}`;
  const pieceLength = (lengthMm: number) =>
    long.unit === 'ft'
      ? `~${decimal(lengthFromMm({ lengthMm, unit: 'in' }), 0, place)}\u00a0in`
      : `~${decimal(lengthMm / 10, 0, place)}\u00a0cm`;
  return {
    fields: [...views, ...calibre.views, ...flat.views],
    own: own.map((fill) =>
      say.own[long.unit](fill.casing, joined(mass(fill.fillGPerM * long.metres, 10, place)), fill.batches),
    ),
    printed: printedFills(casing, roundMm ?? calibre.values?.diameterMm, place, words),
    results: [
      ...(plan
        ? [
            { label: say.metres, value: length(1000 * plan.casingM) },
            { label: say.pieces, value: String(plan.pieces) },
            { label: say.length, value: pieceLength(plan.pieceMm) },
            { label: say.leftover, value: joined(mass(plan.leftoverG, 1, place)) },
          ]
        : []),
      ...(roundMm === null ? [] : [{ label: say.diameter, value: `${decimal(roundMm, 1, place)}\u00a0mm` }]),
    ],
    notes: [...(plan ? [say.estimate] : []), own[0] ? say.ownHint : say.fillHint],
  };
}

/** Casing is sold and cut by the metre or by the foot; its calibre is in millimetres everywhere (common practice). */
function casingLength({ mass: system }: Place) {
  return system === 'metric'
    ? ({ unit: 'm', short: 'mm', ends: '100', metres: 1 } as const)
    : ({ unit: 'ft', short: 'in', ends: '4', metres: lengthToMm({ value: 1, unit: 'ft' }) / 1000 } as const);
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
  const long = casingLength(place);
  const mm = (value: number) => words.workings.exactly(value, place);
  return rows.map(({ fromMm, toMm, lowGPerM, highGPerM, source }) =>
    say.printed[long.unit](
      mm(fromMm),
      mm(toMm),
      mass(lowGPerM * long.metres, 10, place).value,
      joined(mass(highGPerM * long.metres, 10, place)),
      words.verdicts.source(source),
    ),
  );
}
