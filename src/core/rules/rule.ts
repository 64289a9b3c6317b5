/** What a published limit is, and the five answers a rule can give. Numbers and codes only; sentences are made in `words/`. */

/** How a value came to be known: it travels with the value to the screen. `memory-low` never makes a limit. */
export type Standing =
  | 'read'
  | 'read-second-hand'
  | 'memory-high'
  | 'memory-medium'
  | 'memory-low'
  | 'derived'
  | 'computed'
  | 'common-practice';

/** Where a number was published. `section` names the table, equation or paragraph. */
export type Source = {
  readonly body: string;
  readonly title: string;
  readonly section: string;
  readonly standing: Standing;
};

export type Relation = '<' | '<=' | '>' | '>=';

/** A number never travels without its relation, its base and its source. */
export type Limit = {
  readonly value: number;
  readonly unit: string;
  readonly relation: Relation;
  /** What the number is counted on: a code that `words/` spells out, such as `green-meat`, `total-mix`, `room-temperature`. */
  readonly basis: string;
  readonly source: Source;
};

/**
 * `within-limit`: everything was read, the exposure is over, the limit held. `pending`: still running, not passed.
 * `deviation`: passed, or equal where the source says less than. `no-reading`: something it needs is missing or doubted.
 */
export type Verdict = 'within-limit' | 'pending' | 'deviation' | 'no-reading' | 'does-not-apply';

/** A rule's answer. `missing` holds codes of what to measure and is empty unless the verdict is `no-reading` or `pending`. */
export type Finding = {
  readonly rule: string;
  readonly verdict: Verdict;
  readonly value: number | null;
  readonly limit: Limit | null;
  readonly missing: readonly string[];
};

/** The rule sets a maker can choose. What each holds, and when it was last compared with the official text, stands in its file. */
export type RuleSetId = 'US' | 'CA' | 'EU';

/**
 * Whether a value keeps a limit, at full precision and NaN-proof: equality counts against the maker where the relation is strict.
 *
 * Units: `value` in the limit's own unit.
 * @throws RangeError if the value is not a finite number.
 * @example keepsLimit(156.1, { value: 156.25, unit: 'mg/kg', relation: '<=', basis: 'green-meat', source: { body: '', title: '', section: '', standing: 'derived' } }) // => true
 * @example keepsLimit(1200, { value: 1200, unit: 'degree-hours F', relation: '<', basis: 'room-temperature', source: { body: '', title: '', section: '', standing: 'derived' } }) // => false
 */
export function keepsLimit(value: number, limit: Limit): boolean {
  if (!Number.isFinite(value))
    throw new RangeError(`keepsLimit: value requires a finite number, got ${value}`);
  switch (limit.relation) {
    case '<':
      return value < limit.value;
    case '<=':
      return value <= limit.value;
    case '>':
      return value > limit.value;
    case '>=':
      return value >= limit.value;
  }
}
