import { type Finding, keepsLimit, type Limit, type RuleSetId, type Source } from './rule.ts';
import { CFIA_4_16 } from './sources.ts';

/** Published criteria that a finished dry sausage is held against. Readings only: an estimate never meets one. */

const FSIS_LABELS: Source = {
  body: 'USDA FSIS',
  title: 'Food Standards and Labeling Policy Book, moisture to protein ratios',
  section: 'as quoted in a textbook fragment: a label class, not by itself a sign of stability',
  standing: 'read-second-hand',
};
const EU_2073_2005: Source = {
  body: 'European Commission',
  title: 'Regulation (EC) No 2073/2005, Annex I, chapter 1, ready-to-eat foods and Listeria monocytogenes',
  section: 'note 8, as quoted by others; the number of the note from memory',
  standing: 'read-second-hand',
};
const CFIA_SHELF: Source = {
  body: CFIA_4_16.body,
  title: CFIA_4_16.title,
  section: '4.16.2.1, shelf stable fermented products: pairs of pH and water activity',
  standing: 'memory-high',
};

/** What can be read of a finished product. */
export type DryingMeasure = 'ph' | 'aw' | 'mpr' | 'ph-after-ferment';
export type MeasuredLimit = Limit & { readonly measure: DryingMeasure };

export type DryingCriterion = {
  readonly rule: string;
  readonly ruleSet: RuleSetId;
  /** Met by any one of these, each by all that it lists. */
  readonly anyOf: readonly (readonly MeasuredLimit[])[];
  /** Other rules that must hold as well, by name; they are answered elsewhere. */
  readonly alongside: readonly string[];
};

const finished = (measure: DryingMeasure, value: number, source: Source): MeasuredLimit => ({
  measure,
  value,
  unit: measure === 'aw' ? 'aw' : measure === 'mpr' ? 'MPR' : 'pH',
  relation: '<=',
  basis: measure === 'ph-after-ferment' ? 'end-of-fermentation' : 'finished-product',
  source,
});

/** None was compared with its official text. */
export const DRYING_CRITERIA: readonly DryingCriterion[] = [
  {
    rule: 'dry-sausage-shelf-stable',
    ruleSet: 'US',
    anyOf: [[finished('mpr', 1.9, FSIS_LABELS)]],
    alongside: [],
  },
  {
    rule: 'semi-dry-sausage-shelf-stable',
    ruleSet: 'US',
    anyOf: [[finished('mpr', 3.1, FSIS_LABELS), finished('ph', 5, FSIS_LABELS)]],
    alongside: [],
  },
  { rule: 'pepperoni', ruleSet: 'US', anyOf: [[finished('mpr', 1.6, FSIS_LABELS)]], alongside: [] },
  {
    rule: 'listeria-no-growth',
    ruleSet: 'EU',
    anyOf: [
      [finished('ph', 4.4, EU_2073_2005)],
      [finished('aw', 0.92, EU_2073_2005)],
      [finished('ph', 5, EU_2073_2005), finished('aw', 0.94, EU_2073_2005)],
    ],
    alongside: [],
  },
  {
    rule: 'shelf-stable',
    ruleSet: 'CA',
    anyOf: [
      [finished('ph', 4.6, CFIA_SHELF)],
      [finished('aw', 0.85, CFIA_SHELF)],
      [finished('ph-after-ferment', 5.3, CFIA_SHELF), finished('aw', 0.9, CFIA_SHELF)],
    ],
    alongside: ['cure-in-least', 'salt-in-least', 'degree-hours'],
  },
];

/** `measured` false: computed, guessed or read off a curve. Such a value never meets a limit and never breaks one. */
export type DryingReading = { readonly value: number; readonly measured: boolean };

/**
 * One criterion against what was read. The wrong tool for a release: it speaks of one criterion, and the rules in
 * `alongside` are answered elsewhere.
 *
 * Within the limit if any alternative is met by readings of the finished product; a deviation only if every one is
 * broken by a reading; otherwise it says what to measure. While the product still dries it is pending, met or not,
 * since pH can rise again.
 * Units: pH, aw 0..1, moisture to protein.
 * Source: each limit carries its own.
 * @throws RangeError if a reading is not a finite number.
 * @example judgeDrying({ criterion: DRYING_CRITERIA[3], readings: { aw: { value: 0.9, measured: false } }, stillDrying: false }).verdict // => 'no-reading'
 * @example judgeDrying({ criterion: DRYING_CRITERIA[3], readings: { aw: { value: 0.92, measured: true } }, stillDrying: false }).verdict // => 'within-limit'
 */
export function judgeDrying({
  criterion,
  readings,
  stillDrying,
}: {
  criterion: DryingCriterion;
  readings: Readonly<Partial<Record<DryingMeasure, DryingReading>>>;
  stillDrying: boolean;
}): Finding {
  const held = (limit: MeasuredLimit): boolean | null => {
    const reading = readings[limit.measure];
    if (reading === undefined) return null;
    const keeps = keepsLimit(reading.value, limit);
    return reading.measured ? keeps : null;
  };
  const answers = criterion.anyOf.map((limits) => limits.map((limit) => ({ limit, held: held(limit) })));
  const met = answers.find((parts) => parts.every((part) => part.held === true));
  const open = answers.filter((parts) => parts.every((part) => part.held !== false));
  const missing = [
    ...new Set(
      open.flatMap((parts) => parts.filter((part) => part.held === null)).map(({ limit }) => limit.measure),
    ),
  ];
  const broken = answers.flat().find((part) => part.held === false);
  const decisive = (met?.[0] ?? (open.length === 0 ? broken : open[0]?.[0]))?.limit ?? null;
  const reading = decisive && readings[decisive.measure];
  const finding = { rule: criterion.rule, value: reading?.measured ? reading.value : null, limit: decisive };
  if (stillDrying) return { ...finding, verdict: 'pending', missing };
  if (met) return { ...finding, verdict: 'within-limit', missing: [] };
  if (open.length === 0) return { ...finding, verdict: 'deviation', missing: [] };
  return { ...finding, verdict: 'no-reading', missing };
}
