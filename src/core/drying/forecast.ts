import { grow, growth, hazardOf } from './course.ts';
import { normalCdf, risingRoot } from './normal.ts';
import type { DryingPosterior } from './posterior.ts';
import type { DryingNode } from './posterior-grid.ts';

/** Loss that the piece is below with a chance of 10, 50 and 90 %. */
export type LossBand = { readonly p10Pct: number; readonly p50Pct: number; readonly p90Pct: number };

/**
 * Where the loss should stand on one day: the band of a fan chart.
 *
 * P(loss <= x) = sum over the grid of share · P(final <= x / (1 - exp(-(t / tau)^shape))).
 * Units: days on the reference clock; result % of green weight.
 * Source: the model of `prior.ts`; days to a target made from it held against a finer grid computed elsewhere, within 1 %.
 * @throws RangeError if the day lies before the start.
 * @example lossBand({ nodes: [], course: [], model: { weighingSdPct: 0.75, repeatShare: 0.2, tailHazard: 1.5 }, waterPct: 60 }, { thetaDays: 0 }) // => { p10Pct: 0, p50Pct: 0, p90Pct: 0 }
 */
export function lossBand(posterior: DryingPosterior, { thetaDays }: { thetaDays: number }): LossBand {
  if (!(thetaDays >= 0 && thetaDays < Infinity))
    throw new RangeError(`lossBand: thetaDays requires 0 or more, got ${thetaDays}`);
  if (thetaDays === 0) return { p10Pct: 0, p50Pct: 0, p90Pct: 0 };
  const { waterPct } = posterior;
  const lnDays = Math.log(thetaDays);
  // What does not hang on the loss is worked out once, not at every step of three searches.
  const nodes = posterior.nodes.map((node) => ({ node, grown: grownBy(posterior, node, lnDays) }));
  const below = (lossPct: number) => {
    let reached = 0;
    for (const { node, grown } of nodes) reached += node.share * reaches(node, lossPct / grown, waterPct);
    return 1 - reached;
  };
  const quantile = (chance: number) =>
    risingRoot(below, { level: chance, low: 0, high: waterPct, tolerance: 1e-6 }) ?? waterPct;
  return { p10Pct: quantile(0.1), p50Pct: quantile(0.5), p90Pct: quantile(0.9) };
}

/**
 * The chance that a piece has lost at least so much by one day.
 *
 * Units: reference days, % of green weight.
 * Source: as `lossBand`.
 * @throws RangeError if the day lies before the start or the loss is not a number.
 * @example lossChance({ nodes: [], course: [], model: { weighingSdPct: 0.75, repeatShare: 0.2, tailHazard: 1.5 }, waterPct: 60 }, { thetaDays: 1, lossPct: 0 }) // => 0
 */
export function lossChance(
  posterior: DryingPosterior,
  { thetaDays, lossPct }: { thetaDays: number; lossPct: number },
): number {
  if (!(thetaDays > 0 && Number.isFinite(lossPct)))
    throw new RangeError(
      `lossChance: thetaDays requires a day after the start, got ${thetaDays}, ${lossPct}`,
    );
  const lnDays = Math.log(thetaDays);
  const { waterPct } = posterior;
  return mixture(posterior, (node) => reaches(node, lossPct / grownBy(posterior, node, lnDays), waterPct));
}

function mixture(posterior: DryingPosterior, chance: (node: DryingNode) => number): number {
  let sum = 0;
  for (const node of posterior.nodes) sum += node.share * chance(node);
  return sum;
}

/** How much of its final loss the curve has grown to by then. */
function grownBy(
  { course, model: { tailHazard } }: DryingPosterior,
  node: DryingNode,
  lnDays: number,
): number {
  const { lnTau, shape } = node;
  const thetaDays = Math.exp(lnDays);
  const hazard = hazardOf({ lnTau, shape, thetaDays, tailHazard });
  if (hazard >= node.hazard) return grow(node, hazard, 1).grown;
  return growth({ course, lnTau, shape, thetaDays, tailHazard });
}

/** P(final >= level), the normal distribution cut to 0..water. */
function reaches(node: DryingNode, level: number, waterPct: number): number {
  if (level <= 0) return 1;
  if (!(level < waterPct)) return 0;
  const belowLevel = normalCdf((level - node.finalPct) / node.finalSdPct) - node.belowShare;
  return Math.min(1, Math.max(0, 1 - belowLevel / node.kept));
}
