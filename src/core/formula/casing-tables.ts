import type { Source } from '#core/rules/rule.ts';

/** What published tables say goes into a metre of casing. They differ by a third; they are all kept, and all are shown. */

export type CasingKind = 'sheep' | 'hog' | 'beef-round' | 'beef-middle' | 'collagen' | 'fibrous';

export type CasingRow = {
  readonly casing: CasingKind;
  readonly fromMm: number;
  readonly toMm: number;
  readonly lowGPerM: number;
  readonly highGPerM: number;
  readonly source: Source;
};

const INSCA: Source = {
  body: 'International Natural Sausage Casing Association',
  title: 'Natural casings, beef',
  section: 'capacity by calibre',
  standing: 'read',
};
const CATALOGUE: Source = {
  body: 'casing trade catalogue',
  title: 'Casing capacity by calibre',
  section: 'kg per metre',
  standing: 'read',
};
const HANK: Source = {
  body: 'casing trade',
  title: 'Hog and sheep casings by hank of 91 m',
  section: 'capacity by calibre',
  standing: 'read',
};
const SELLERS: Source = {
  body: 'casing sellers',
  title: 'Capacity stated with the product',
  section: 'pounds for a length',
  standing: 'read',
};

type Printed = readonly [fromMm: number, toMm: number, lowKg: number, highKg: number];

/** Rows as printed: calibre from and to, kg from and to, for one length. */
function rows(casing: CasingKind, source: Source, lengthM: number, printed: readonly Printed[]): CasingRow[] {
  return printed.map(([fromMm, toMm, lowKg, highKg]) => ({
    casing,
    fromMm,
    toMm,
    lowGPerM: (1000 * lowKg) / lengthM,
    highGPerM: (1000 * highKg) / lengthM,
    source,
  }));
}

export const CASING_ROWS: readonly CasingRow[] = [
  ...rows('beef-round', INSCA, 30, [
    [35, 38, 30, 30],
    [38, 40, 33, 34],
    [40, 43, 36, 37],
    [43, 46, 39, 40],
  ]),
  ...rows('beef-middle', INSCA, 18, [
    [45, 50, 29, 32],
    [50, 55, 32, 36],
    [55, 60, 36, 41],
    [60, 65, 41, 45],
  ]),
  ...rows('beef-round', CATALOGUE, 1, [[40, 43, 1.2, 1.25]]),
  ...rows('beef-middle', CATALOGUE, 1, [
    [45, 50, 1.1, 1.3],
    [50, 55, 1.3, 1.5],
    [55, 60, 1.5, 1.7],
    [60, 65, 1.7, 1.9],
  ]),
  ...rows('hog', CATALOGUE, 1, [
    [30, 32, 0.45, 0.49],
    [32, 34, 0.49, 0.52],
    [34, 36, 0.52, 0.57],
    [36, 38, 0.57, 0.62],
    [38, 40, 0.62, 0.64],
    [40, 42, 0.64, 0.66],
  ]),
  ...rows('sheep', CATALOGUE, 1, [[22, 24, 0.27, 0.3]]),
  ...rows('hog', HANK, 91, [
    [30, 32, 41, 45],
    [32, 34, 45, 48],
    [34, 36, 48, 52],
    [36, 38, 52, 57],
    [38, 40, 57, 61],
    [40, 42, 59, 63],
    [42, 44, 61, 64],
  ]),
  ...rows('sheep', HANK, 91, [
    [16, 18, 15, 16],
    [18, 20, 17, 18],
    [20, 22, 21, 23],
    [22, 24, 25, 27],
    [24, 26, 27, 29],
    [26, 28, 29, 31],
  ]),
  ...rows('collagen', SELLERS, 1, [
    [45, 45, 1.49, 1.49],
    [60, 60, 1.6, 1.83],
  ]),
  ...rows('fibrous', SELLERS, 1, [
    [41, 41, 1.49, 1.49],
    [60, 60, 2.18, 2.18],
  ]),
];

/**
 * Every published row for one casing and diameter. None is chosen: the maker's own fill replaces them all. A diameter
 * on an edge belongs to both rows.
 *
 * Wrong tool: for dry sausage stuffed firm; most of these tables speak of linked fresh sausage and run low.
 *
 * Units: mm, g per metre.
 * Source: each row carries its own (read).
 * @example fillsFor({ casing: 'hog', diameterMm: 35 }).map(({ lowGPerM }) => Math.round(lowGPerM)) // => [520, 527]
 */
export function fillsFor({
  casing,
  diameterMm,
}: {
  casing: CasingKind;
  diameterMm: number;
}): readonly CasingRow[] {
  return CASING_ROWS.filter(
    (row) => row.casing === casing && row.fromMm <= diameterMm && diameterMm <= row.toMm,
  );
}
