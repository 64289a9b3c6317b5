import type { Limit, RuleSetId } from './rule.ts';
import { CA_CURING, CFIA_4_16, CFR_172_170, CFR_424_21, EU_2023_2108, FSIS_7620_3 } from './sources.ts';

/**
 * What each rule set says of a formula. None was compared with its official text; each says so. A value known only
 * from memory below high confidence (EU residues, EU traditional products) is not here and makes no verdict.
 */

/** What a limit is held against: nitrite or nitrate by weight of its salt, both together, or as ion; salt of the mix. */
export type Measure =
  | 'nitrite'
  | 'nitrate'
  | 'nitrite-and-nitrate'
  | 'nitrite-ion'
  | 'nitrate-ion'
  | 'salt-of-mix';

export type FormulaRule = {
  readonly rule: string;
  readonly measure: Measure;
  readonly kinds: readonly ('comminuted' | 'whole-muscle')[];
  readonly limit: Limit;
};

export type RuleSet = {
  readonly id: RuleSetId;
  /** Calendar day on which a person compared these figures with the official text; null: never. */
  readonly comparedWithOfficialTextOn: string | null;
  /** First day on which the figures apply, where the text names one. */
  readonly appliesFrom: string | null;
  readonly formula: readonly FormulaRule[];
  /** What the same texts limit and no weighing can answer: it takes a laboratory. */
  readonly laboratory: readonly { readonly rule: string; readonly limit: Limit }[];
};

const BOTH = ['comminuted', 'whole-muscle'] as const;

/** Ounces of the regulation in 100 lb of meat, in mg/kg. */
const ounces = (perHundredPounds: number): Limit => ({
  value: (perHundredPounds / 1600) * 1e6,
  unit: 'mg/kg',
  relation: '<=',
  basis: 'green-meat',
  source: CFR_424_21,
});

export const RULE_SETS: Readonly<Record<RuleSetId, RuleSet>> = {
  US: {
    id: 'US',
    comparedWithOfficialTextOn: null,
    appliesFrom: null,
    formula: [
      { rule: 'nitrite-in-most', measure: 'nitrite', kinds: ['comminuted'], limit: ounces(0.25) },
      { rule: 'nitrate-in-most', measure: 'nitrate', kinds: ['comminuted'], limit: ounces(2.75) },
      { rule: 'nitrite-in-most', measure: 'nitrite', kinds: ['whole-muscle'], limit: ounces(1) },
      { rule: 'nitrate-in-most', measure: 'nitrate', kinds: ['whole-muscle'], limit: ounces(3.5) },
      {
        rule: 'nitrite-in-least',
        measure: 'nitrite',
        kinds: BOTH,
        limit: { value: 40, unit: 'mg/kg', relation: '>=', basis: 'green-meat', source: FSIS_7620_3 },
      },
    ],
    laboratory: [
      {
        rule: 'nitrite-left-most',
        limit: { value: 200, unit: 'mg/kg', relation: '<=', basis: 'finished-product', source: CFR_172_170 },
      },
      {
        rule: 'nitrate-left-most',
        limit: { value: 500, unit: 'mg/kg', relation: '<=', basis: 'finished-product', source: CFR_172_170 },
      },
    ],
  },
  CA: {
    id: 'CA',
    comparedWithOfficialTextOn: null,
    appliesFrom: null,
    formula: [
      {
        rule: 'cure-in-most',
        measure: 'nitrite-and-nitrate',
        kinds: BOTH,
        limit: { value: 200, unit: 'mg/kg', relation: '<=', basis: 'green-meat', source: CA_CURING },
      },
      {
        rule: 'cure-in-least',
        measure: 'nitrite-and-nitrate',
        kinds: BOTH,
        limit: { value: 100, unit: 'mg/kg', relation: '>=', basis: 'green-meat', source: CA_CURING },
      },
      {
        rule: 'salt-in-least',
        measure: 'salt-of-mix',
        kinds: ['comminuted'],
        limit: { value: 2.5, unit: '%', relation: '>=', basis: 'total-mix', source: CFIA_4_16 },
      },
    ],
    laboratory: [],
  },
  EU: {
    id: 'EU',
    comparedWithOfficialTextOn: null,
    appliesFrom: '2025-10-09',
    formula: [
      {
        rule: 'nitrite-in-most',
        measure: 'nitrite-ion',
        kinds: BOTH,
        limit: { value: 80, unit: 'mg/kg', relation: '<=', basis: 'green-meat-as-ion', source: EU_2023_2108 },
      },
      {
        rule: 'nitrate-in-most',
        measure: 'nitrate-ion',
        kinds: BOTH,
        limit: { value: 90, unit: 'mg/kg', relation: '<=', basis: 'green-meat-as-ion', source: EU_2023_2108 },
      },
    ],
    laboratory: [],
  },
};
