/** The grid under `posterior.ts`: where it is drawn, and what each of its points is worth. */
import type { Grown } from './course.ts';
import { normalCdf } from './normal.ts';
import type { DryingPrior } from './prior.ts';

/** One point of the grid: its share of the belief, and final loss there as a normal distribution cut to 0..water. */
export type DryingNode = Grown & {
  readonly share: number;
  readonly lnTau: number;
  readonly shape: number;
  readonly finalPct: number;
  readonly finalSdPct: number;
  /** P(final < 0) and P(0 < final < water) of the uncut normal distribution. */
  readonly belowShare: number;
  readonly kept: number;
};

/** Of ln tau, of shape. */
export type Steps = readonly [number, number];
const REACH_SD = 4.5;
const SHAPE_LOW = 0.4;
const SHAPE_HIGH = 1.4;
/** Points of the grid whose share lies this far (in ln) below the best are left out: together under 1e-4. */
const NEGLIGIBLE_LN = 14;

type Range = readonly [number, number];
/** Where the grid is drawn: ln tau runs along the ridge `lnTau = across + tilt · shape`. */
type Box = { across: Range; shape: Range; tilt: number };
type Scored = Omit<DryingNode, 'share'> & { lnShare: number };
/** Ends of course steps and weighings in one line of time. Precision 0: the end of a step. */
export type Knots = {
  readonly lnTheta: Float64Array;
  readonly thetaDays: Float64Array;
  readonly finalRatio: Float64Array;
  readonly precision: Float64Array;
  readonly lossPct: Float64Array;
  /** Knots of the course itself; the rest are weighings after it. */
  readonly count: number;
};

/**
 * The grid over all that the prior holds for likely.
 *
 * @example priorBox({ tauDays: 1, shape: 0.9, finalLossPct: 45, covariance: [[0.25, 0, 0], [0, 0.04, 0], [0, 0, 16]], waterPct: 60 }).tilt // => 0
 */
export function priorBox({ tauDays, shape, covariance }: DryingPrior): Box {
  const [[tauVariance = NaN, joint = NaN] = [], [, shapeVariance = NaN] = []] = covariance;
  const tilt = joint / shapeVariance;
  const across = Math.log(tauDays) - tilt * shape;
  const reach = REACH_SD * Math.sqrt(tauVariance - tilt * joint);
  const shapeReach = REACH_SD * Math.sqrt(shapeVariance);
  return {
    across: [across - reach, across + reach],
    shape: [Math.max(SHAPE_LOW, shape - shapeReach), Math.min(SHAPE_HIGH, shape + shapeReach)],
    tilt,
  };
}

/** The middle of one of so many equal parts of a range. */
function part([low, high]: Range, here: number, count: number): number {
  return low + ((here + 0.5) / count) * (high - low);
}

/** The prior seen from one point of the grid: how many sd it lies out, and final loss given (ln tau, shape). */
function conditional(prior: DryingPrior) {
  // What is missing in it is caught below: no comparison holds for NaN.
  const [[a = NaN, b = NaN, c = NaN] = [], [, d = NaN, e = NaN] = [], [, , f = NaN] = []] = prior.covariance;
  const determinant = a * d - b * b;
  const byTau = (c * d - e * b) / determinant;
  const byShape = (e * a - c * b) / determinant;
  const variance = f - byTau * c - byShape * e;
  const priorLnTau = Math.log(prior.tauDays);
  if (
    !(
      determinant > 0 &&
      variance > 0 &&
      prior.waterPct > 0 &&
      Number.isFinite(priorLnTau + prior.finalLossPct)
    )
  )
    throw new RangeError(
      `dryingPosterior: prior requires a normal distribution, got ${JSON.stringify(prior)}`,
    );
  return {
    precision: 1 / variance,
    at(lnTau: number, shape: number): { z: number; finalPct: number } {
      const x = lnTau - priorLnTau;
      const y = shape - prior.shape;
      return {
        z: Math.sqrt((d * x * x - 2 * b * x * y + a * y * y) / determinant),
        finalPct: prior.finalLossPct + byTau * x + byShape * y,
      };
    },
  };
}

/**
 * Every point of a grid with the weight of its belief, in ln, and final loss there given the weighings.
 *
 * Source: conjugate normal regression of the loss on its growth, cut to 0..water (derived).
 * @throws RangeError if the prior is not a normal distribution.
 * @example scoreGrid({ box: { across: [0, 1], shape: [0.8, 1], tilt: 0 }, prior: { tauDays: 1, shape: 0.9, finalLossPct: 45, covariance: [[0.25, 0, 0], [0, 0.04, 0], [0, 0, 16]], waterPct: 60 }, knots: { lnTheta: [], thetaDays: [], finalRatio: [], precision: [], lossPct: [], count: 0 }, tailHazard: 1.5, steps: [2, 2] }).length // => 4
 */
export function scoreGrid({
  box,
  prior,
  knots: { lnTheta, thetaDays, finalRatio, precision: weights, lossPct, count },
  tailHazard,
  steps,
}: {
  box: Box;
  prior: DryingPrior;
  knots: Knots;
  tailHazard: number;
  steps: Steps;
}): Scored[] {
  const known = conditional(prior);
  const [tauSteps, shapeSteps] = steps;
  const scored: Scored[] = [];
  for (let row = 0; row < shapeSteps; row++) {
    const shape = part(box.shape, row, shapeSteps);
    const hazards = lnTheta.map((ln) => Math.exp(shape * ln));
    for (let column = 0; column < tauSteps; column++) {
      const lnTau = part(box.across, column, tauSteps) + box.tilt * shape;
      const scale = Math.exp(-shape * lnTau);
      const tailScale = Math.exp(-lnTau - Math.log(tailHazard) / shape);
      let squares = 0;
      let products = 0;
      let grown = 0;
      let hazard = 0;
      let end: Grown = { grown, hazard };
      for (let i = 0; i < hazards.length; i++) {
        // As `hazardOf` and `grow` in course.ts, spelled out: this runs 50,000 times a forecast.
        const early = (hazards[i] ?? 0) * scale;
        const later =
          early <= tailHazard ? early : tailHazard * (1 + shape * ((thetaDays[i] ?? 0) * tailScale - 1));
        const ratio = finalRatio[i] ?? 1;
        grown = Math.max(grown, ratio + (grown - ratio) * Math.exp(hazard - later));
        hazard = later;
        const weight = weights[i] ?? 0;
        squares += weight * grown * grown;
        products += weight * grown * (lossPct[i] ?? 0);
        if (i + 1 === count) end = { grown, hazard };
      }
      const before = known.at(lnTau, shape);
      const precision = known.precision + squares;
      const finalPct = (known.precision * before.finalPct + products) / precision;
      const finalSdPct = 1 / Math.sqrt(precision);
      const belowShare = normalCdf(-finalPct / finalSdPct);
      const kept = Math.max(
        normalCdf((prior.waterPct - finalPct) / finalSdPct) - belowShare,
        Number.MIN_VALUE,
      );
      const lnShare =
        0.5 *
          (precision * finalPct * finalPct -
            known.precision * before.finalPct * before.finalPct -
            Math.log(precision) -
            before.z ** 2) +
        Math.log(kept);
      scored.push({ lnShare, lnTau, shape, finalPct, finalSdPct, belowShare, kept, ...end });
    }
  }
  return scored;
}

/**
 * The grid along the ridge of the belief, over every point that counts, with a step to spare on each side.
 *
 * @example boxAround([{ lnShare: 0, lnTau: 1, shape: 1, finalPct: 45, finalSdPct: 4, belowShare: 0, kept: 1, grown: 0, hazard: 0 }], { box: { across: [0, 2], shape: [0.5, 1.5], tilt: 0 }, steps: [2, 2] }).across // => [0, 2]
 */
export function boxAround(scored: readonly Scored[], { box, steps }: { box: Box; steps: Steps }): Box {
  const nodes = shares(scored);
  const middle = mean(nodes, ({ shape }) => shape);
  const lnTau = mean(nodes, (node) => node.lnTau);
  const variance = mean(nodes, ({ shape }) => (shape - middle) ** 2);
  const joint = mean(nodes, (node) => (node.shape - middle) * (node.lnTau - lnTau));
  const shapeStep = (box.shape[1] - box.shape[0]) / steps[1];
  const tilt = joint / (variance + shapeStep ** 2);
  const spare = (box.across[1] - box.across[0]) / steps[0] + Math.abs(tilt - box.tilt) * shapeStep;
  const across = nodes.map((node) => node.lnTau - tilt * node.shape);
  const shapes = nodes.map(({ shape }) => shape);
  return {
    across: [Math.min(...across) - spare, Math.max(...across) + spare],
    shape: [
      Math.max(box.shape[0], Math.min(...shapes) - shapeStep),
      Math.min(box.shape[1], Math.max(...shapes) + shapeStep),
    ],
    tilt,
  };
}

function mean(nodes: readonly DryingNode[], of: (node: DryingNode) => number): number {
  return nodes.reduce((sum, node) => sum + node.share * of(node), 0);
}

/**
 * Weights in ln as shares that add up to 1; what does not count is left out.
 *
 * @example shares([{ lnShare: 0, lnTau: 0, shape: 1, finalPct: 45, finalSdPct: 4, belowShare: 0, kept: 1, grown: 0, hazard: 0 }])[0].share // => 1
 */
export function shares(scored: readonly Scored[]): DryingNode[] {
  const best = scored.reduce((top, { lnShare }) => Math.max(top, lnShare), -Infinity);
  const held = scored.filter(({ lnShare }) => lnShare > best - NEGLIGIBLE_LN);
  const total = held.reduce((sum, { lnShare }) => sum + Math.exp(lnShare - best), 0);
  return held.map(({ lnShare, ...node }) => ({ share: Math.exp(lnShare - best) / total, ...node }));
}
