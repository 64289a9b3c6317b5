/** What a loss makes of a batch's mix, by computation; and the published criteria, held against what was measured of it. */
import { type Dryness, drynessAt, lossForMprPct } from '#core/drying/dryness.ts';
import { type MixFractions, mixAw } from '#core/drying/water-activity.ts';
import {
  DRYING_CRITERIA,
  type DryingCriterion,
  type DryingMeasure,
  type DryingReading,
  judgeDrying,
} from '#core/rules/drying-criteria.ts';
import type { Finding } from '#core/rules/rule.ts';
import type { Batch } from './batch.ts';
import { mixOf } from './forecast-figures.ts';

export type DrynessRow = { readonly lossPct: number; readonly dryness: Dryness };
export type CriterionFound = {
  readonly criterion: DryingCriterion;
  readonly finding: Finding;
  /** For each alternative: the loss at which the computed mix comes to its moisture or water activity; null without one. */
  readonly nearLossPct: readonly (number | null)[];
};

const AROUND_PCT = [25, 30, 35, 40, 45];

/** The target and the usual losses around it, ascending; a loss that leaves hardly any water is left out. */
export function drynessRows(batch: Batch, lossesPct: readonly number[]): DrynessRow[] {
  const mix = mixOf(batch);
  const mostPct = 100 * mix.waterFraction - 2;
  return [...new Set([...AROUND_PCT, ...lossesPct])]
    .filter((lossPct) => lossPct >= 0 && lossPct < mostPct)
    .sort((a, b) => a - b)
    .map((lossPct) => ({ lossPct, dryness: drynessAt({ mix, lossPct }) }));
}

/** The last of each that was measured; never a computed one. A doubted pH, or one read by strip, is none. */
export function measuredReadings(batch: Batch): Partial<Record<DryingMeasure, DryingReading>> {
  const last = (measure: 'aw' | 'mpr') => batch.measured.findLast(({ body }) => body.measure === measure);
  const ph = batch.ph.filter(({ body }) => body.method === 'meter' && !body.doubted);
  const endMs = batch.fermentEnded?.atMs ?? Number.NEGATIVE_INFINITY;
  const found: [DryingMeasure, number | undefined][] = [
    ['aw', last('aw')?.body.value],
    ['mpr', last('mpr')?.body.value],
    // Only a piece read after the ferment speaks for the finished product.
    ['ph', ph.findLast(({ atMs, body }) => atMs > endMs && body.sample === 'piece')?.body.ph],
    ['ph-after-ferment', ph.findLast(({ atMs }) => atMs <= endMs)?.body.ph],
  ];
  return Object.fromEntries(
    found.flatMap(([measure, value]) => (value === undefined ? [] : [[measure, { value, measured: true }]])),
  );
}

/** Those of the batch's own rule set first. */
export function criteriaFound(batch: Batch): CriterionFound[] {
  const readings = measuredReadings(batch);
  const mix = mixOf(batch);
  const own = batch.opened.body.ruleSet;
  return DRYING_CRITERIA.toSorted((a, b) => Number(b.ruleSet === own) - Number(a.ruleSet === own)).map(
    (criterion) => ({
      criterion,
      finding: judgeDrying({ criterion, readings, stillDrying: batch.stage !== 'finished' }),
      nearLossPct: criterion.anyOf.map((limits) => {
        const losses = limits.flatMap(({ measure, value }) =>
          measure === 'mpr'
            ? [Math.max(0, lossForMprPct({ mix, mpr: value }))]
            : measure === 'aw'
              ? [lossForAwPct(mix, value)]
              : [],
        );
        return losses.length > 0 ? Math.max(...losses) : null;
      }),
    }),
  );
}

/** The loss at which the computed water activity falls to a value; 0 if it is there fresh. */
function lossForAwPct(mix: MixFractions, aw: number): number {
  let low = 0;
  let high = 100 * mix.waterFraction - 1;
  if (mixAw({ mix, lossPct: 0 }) <= aw) return 0;
  for (let halving = 0; halving < 40; halving++) {
    const middle = (low + high) / 2;
    if (mixAw({ mix, lossPct: middle }) > aw) low = middle;
    else high = middle;
  }
  return high;
}
