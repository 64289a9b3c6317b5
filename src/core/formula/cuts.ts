import type { Source } from '#core/rules/rule.ts';

/** Raw pork cuts, per 100 g as the table prints them. */

export type Cut = {
  readonly ndb: string;
  readonly name: string;
  readonly waterPct: number;
  readonly proteinPct: number;
  readonly fatPct: number;
};

export const CUTS_SOURCE: Source = {
  body: 'USDA',
  title: 'National Nutrient Database for Standard Reference, release 26, file ABBREV',
  section: 'raw pork, per 100 g edible portion; rows by NDB number',
  standing: 'read',
};

export const CUTS: readonly Cut[] = [
  {
    ndb: '10002',
    name: 'leg, loin and shoulder, lean only',
    waterPct: 73.17,
    proteinPct: 21.2,
    fatPct: 4.86,
  },
  {
    ndb: '10003',
    name: 'composite of leg, loin, shoulder and spareribs, lean and fat (second row)',
    waterPct: 65.99,
    proteinPct: 18.22,
    fatPct: 14.79,
  },
  { ndb: '10004', name: 'back fat', waterPct: 7.69, proteinPct: 2.92, fatPct: 88.69 },
  { ndb: '10005', name: 'belly', waterPct: 36.74, proteinPct: 9.34, fatPct: 53.01 },
  { ndb: '10006', name: 'separable fat', waterPct: 24.76, proteinPct: 9.25, fatPct: 65.7 },
  { ndb: '10008', name: 'leg (ham) whole, lean and fat', waterPct: 62.47, proteinPct: 17.43, fatPct: 18.87 },
  { ndb: '10010', name: 'leg (ham) whole, lean only', waterPct: 72.9, proteinPct: 20.48, fatPct: 5.41 },
  { ndb: '10020', name: 'loin whole, lean and fat', waterPct: 66.92, proteinPct: 19.74, fatPct: 12.58 },
  { ndb: '10070', name: 'shoulder whole, lean and fat', waterPct: 64.02, proteinPct: 17.18, fatPct: 17.99 },
  { ndb: '10072', name: 'shoulder whole, lean only', waterPct: 72.63, proteinPct: 19.55, fatPct: 7.14 },
  {
    ndb: '10074',
    name: 'shoulder arm picnic, lean and fat',
    waterPct: 68.34,
    proteinPct: 18.71,
    fatPct: 12.51,
  },
  { ndb: '10077', name: 'shoulder arm picnic, lean only', waterPct: 75.51, proteinPct: 20.26, fatPct: 3.77 },
  {
    ndb: '10080',
    name: 'shoulder blade (Boston butt), lean and fat',
    waterPct: 69.18,
    proteinPct: 17.42,
    fatPct: 12.36,
  },
  {
    ndb: '10084',
    name: 'shoulder blade (Boston butt), lean only',
    waterPct: 74.31,
    proteinPct: 18.73,
    fatPct: 5.71,
  },
  { ndb: '10105', name: 'jowl', waterPct: 22.19, proteinPct: 6.38, fatPct: 69.61 },
  {
    ndb: '10187',
    name: 'composite of leg, loin, shoulder and spareribs, lean and fat',
    waterPct: 65.11,
    proteinPct: 18.95,
    fatPct: 14.95,
  },
  { ndb: '10219', name: 'ground pork', waterPct: 61.06, proteinPct: 16.88, fatPct: 21.19 },
];

/** Taken where a formula names no cut. */
export const USUAL_LEAN_NDB = '10002';
export const USUAL_FAT_NDB = '10004';

/**
 * A row of the table of cuts, or null if there is none of that number.
 *
 * Units: percent by weight.
 * Source: USDA, Standard Reference release 26 (read).
 * @example cutOf('10004')?.fatPct // => 88.69
 */
export function cutOf(ndb: string): Cut | null {
  return CUTS.find((cut) => cut.ndb === ndb) ?? null;
}

/** Of what is not fat, in raw lean pork cuts of that table: water 76.6 to 78.9 %, protein 19.9 to 22.6 % (computed). */
const WATER_OF_FAT_FREE = 0.775;
const PROTEIN_OF_FAT_FREE = 0.21;

/**
 * A cut known by its fat content alone.
 *
 * Wrong tool: for back fat, separable fat and jowl, whose fat-free part is drier (0.68 to 0.73 water); take their rows.
 *
 * Formula: water = 0.775 and protein = 0.21 of what is not fat.
 * Units: percent by weight.
 * Valid: raw pork cuts; the shares were seen from 0.766 to 0.789 and from 0.199 to 0.226.
 * Source: USDA, Standard Reference release 26, raw pork cuts (computed).
 * @throws RangeError if the fat is not between 0 and 100 %.
 * @example cutByFat({ fatPct: 20 }) // => { waterPct: 62, proteinPct: 16.8, fatPct: 20 }
 */
export function cutByFat({ fatPct }: { fatPct: number }): Omit<Cut, 'ndb' | 'name'> {
  if (!(fatPct >= 0 && fatPct <= 100))
    throw new RangeError(`cutByFat: fatPct requires 0 to 100 %, got ${fatPct}`);
  return {
    waterPct: WATER_OF_FAT_FREE * (100 - fatPct),
    proteinPct: PROTEIN_OF_FAT_FREE * (100 - fatPct),
    fatPct,
  };
}
