import { keepsLimit, type Limit, type RuleSetId, type Source } from './rule.ts';
import { EU_1169_2011, US_FALCPA } from './sources.ts';

/** What has to be named on a label by law, by rule set, and what an ingredient may bring. */

export const ALLERGENS = [
  'wheat',
  'other-gluten',
  'crustaceans',
  'eggs',
  'fish',
  'peanuts',
  'soybeans',
  'milk',
  'nuts',
  'celery',
  'mustard',
  'sesame',
  'sulphites',
  'lupin',
  'molluscs',
] as const;

export type Allergen = (typeof ALLERGENS)[number];

/** One entry of a published list; a list may count several codes as one. */
export type AllergenEntry = { readonly entry: string; readonly codes: readonly Allergen[] };

export type AllergenList = {
  readonly source: Source;
  readonly comparedWithOfficialTextOn: string | null;
  readonly entries: readonly AllergenEntry[];
};

const alone = (...codes: Allergen[]): AllergenEntry[] =>
  codes.map((code) => ({ entry: code, codes: [code] }));
const GLUTEN: AllergenEntry = { entry: 'cereals-with-gluten', codes: ['wheat', 'other-gluten'] };

export const ALLERGEN_LISTS: Readonly<Record<RuleSetId, AllergenList>> = {
  EU: {
    source: EU_1169_2011,
    comparedWithOfficialTextOn: null,
    entries: [
      GLUTEN,
      ...alone('crustaceans', 'eggs', 'fish', 'peanuts', 'soybeans', 'milk', 'nuts', 'celery', 'mustard'),
      ...alone('sesame', 'sulphites', 'lupin', 'molluscs'),
    ],
  },
  US: {
    source: US_FALCPA,
    comparedWithOfficialTextOn: null,
    entries: alone('milk', 'eggs', 'fish', 'crustaceans', 'nuts', 'peanuts', 'wheat', 'soybeans', 'sesame'),
  },
  CA: {
    source: {
      body: 'Canada',
      title: 'Food and Drug Regulations, priority allergens, gluten and added sulphites',
      section: 'eleven with mustard',
      standing: 'memory-high',
    },
    comparedWithOfficialTextOn: null,
    entries: [
      ...alone('eggs', 'milk', 'mustard', 'peanuts'),
      { entry: 'crustaceans-and-molluscs', codes: ['crustaceans', 'molluscs'] },
      ...alone('fish', 'sesame', 'soybeans', 'sulphites', 'nuts'),
      GLUTEN,
    ],
  },
};

/** At and under it sulphites need no name (EU). The US names them from 10 ppm on by another rule, which was not read. */
export const SULPHITE_LIMIT: Limit = {
  value: 10,
  unit: 'mg/kg',
  relation: '<=',
  basis: 'finished-product-as-SO2',
  source: EU_1169_2011,
};

/** A line as a label sees it. */
export type LabelledLine = {
  readonly id: string;
  readonly massG: number;
  readonly allergens: readonly string[];
  readonly sulphiteMgPerKg: number | null;
};

export type Sulphites = {
  /** `unknown`: a line brings sulphites and nobody said how much. It is then to be named. */
  readonly state: 'none' | 'not-over' | 'over' | 'unknown';
  /** As if all of it stayed in the finished weight: the most it can be. */
  readonly mostMgPerKg: number | null;
};

export type AllergensFound = {
  readonly entries: readonly { readonly entry: string; readonly lineIds: readonly string[] }[];
  readonly sulphites: Sulphites;
};

/**
 * The sulphites of a batch as SO2, at the most, in the finished weight.
 *
 * Wrong tool: for what is left after a ferment; part of it is bound or lost, and only a laboratory knows how much.
 *
 * Formula: sum of grams x mg/kg / finished weight.
 * Units: mg/kg of finished product.
 * Source: Regulation (EU) No 1169/2011, Annex II, 12 (read); mass balance (derived).
 * @throws RangeError if there is no finished weight.
 * @example sulphitesIn({ lines: [{ id: 'wine', massG: 25, allergens: ['sulphites'], sulphiteMgPerKg: 150 }], finishedG: 625 }) // => { state: 'not-over', mostMgPerKg: 6 }
 */
export function sulphitesIn({
  lines,
  finishedG,
}: {
  lines: readonly LabelledLine[];
  finishedG: number;
}): Sulphites {
  if (!(finishedG > 0))
    throw new RangeError(`sulphitesIn: finishedG requires more than 0 g, got ${finishedG}`);
  const bringing = lines.filter(
    ({ allergens, sulphiteMgPerKg }) => allergens.includes('sulphites') || (sulphiteMgPerKg ?? 0) > 0,
  );
  if (bringing.length === 0) return { state: 'none', mostMgPerKg: 0 };
  if (bringing.some(({ sulphiteMgPerKg }) => sulphiteMgPerKg === null))
    return { state: 'unknown', mostMgPerKg: null };
  const mostMgPerKg = bringing.reduce(
    (sum, { massG, sulphiteMgPerKg }) => sum + (massG * (sulphiteMgPerKg ?? 0)) / finishedG,
    0,
  );
  return { state: keepsLimit(mostMgPerKg, SULPHITE_LIMIT) ? 'not-over' : 'over', mostMgPerKg };
}

/**
 * The allergens of a batch that a rule set wants named, with the lines that bring them, in the list's order.
 *
 * Wrong tool: for traces from a shared bench, and without the labels of bought spice mixes.
 *
 * Source: each list carries its own.
 * @throws RangeError as `sulphitesIn`.
 * @example allergensIn({ lines: [{ id: 'm', massG: 5, allergens: ['mustard'], sulphiteMgPerKg: null }], finishedG: 600, ruleSet: 'EU' }).entries // => [{ entry: 'mustard', lineIds: ['m'] }]
 * @example allergensIn({ lines: [{ id: 'm', massG: 5, allergens: ['mustard'], sulphiteMgPerKg: null }], finishedG: 600, ruleSet: 'US' }).entries // => []
 */
export function allergensIn({
  lines,
  finishedG,
  ruleSet,
}: {
  lines: readonly LabelledLine[];
  finishedG: number;
  ruleSet: RuleSetId;
}): AllergensFound {
  const sulphites = sulphitesIn({ lines, finishedG });
  const named = sulphites.state === 'over' || sulphites.state === 'unknown';
  const brings = (line: LabelledLine, code: Allergen): boolean =>
    code === 'sulphites'
      ? named && (line.allergens.includes(code) || (line.sulphiteMgPerKg ?? 0) > 0)
      : line.allergens.includes(code);
  const entries = ALLERGEN_LISTS[ruleSet].entries.flatMap(({ entry, codes }) => {
    const lineIds = lines.filter((line) => codes.some((code) => brings(line, code))).map(({ id }) => id);
    return lineIds.length > 0 ? [{ entry, lineIds }] : [];
  });
  return { entries, sulphites };
}

/** Words in an ingredient's English name and what to ask about (common practice; a hint, never an answer). */
const HINTS: readonly (readonly [RegExp, Allergen])[] = [
  [/\b(wine|vermouth|must|sherry|port|cider|vinegar|dried fruit|raisins?)\b/, 'sulphites'],
  [/\bmustard\b/, 'mustard'],
  [/\b(milk|whey|cheese|cream|butter|lactose|casein)/, 'milk'],
  [/\b(celery|celeriac)\b/, 'celery'],
  [/\b(pistachio|walnut|hazelnut|almond|cashew|pecan)/, 'nuts'],
  [/\b(soya?|tofu)\b/, 'soybeans'],
  [/\b(beer|barley|rye|oats?|malt)\b/, 'other-gluten'],
  [/\b(wheat|bread|flour|rusk|semolina)\b/, 'wheat'],
  [/\bsesame\b/, 'sesame'],
  [/\b(egg|eggs)\b/, 'eggs'],
  [/\b(anchov|fish)/, 'fish'],
  [/\bpeanuts?\b/, 'peanuts'],
  [/\blupin/, 'lupin'],
];

/**
 * What to ask about an ingredient by its name. Nothing found is not "free of".
 *
 * Source: common practice.
 * @example allergensToAsk('Red wine') // => ['sulphites']
 */
export function allergensToAsk(name: string): readonly Allergen[] {
  const lower = name.toLowerCase();
  return HINTS.filter(([pattern]) => pattern.test(lower)).map(([, allergen]) => allergen);
}
