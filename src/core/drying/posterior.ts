import { type CourseStep, type Grown, TAIL_FROM } from './course.ts';
import { normalCdf } from './normal.ts';
import type { DryingPrior } from './prior.ts';

/** One weighing of a piece, on the reference clock. `scaleSdPct`: what a coarse scale adds to its error. */
export type DryingWeighIn = {
  readonly thetaDays: number;
  readonly lossPct: number;
  readonly scaleSdPct?: number;
};

/** One point of the grid: its share of the belief, and final loss there as a normal distribution cut to 0..water. */
export type DryingNode = Grown & {
  readonly share: number;
  readonly lnTau: number;
  readonly shape: number;
  readonly finalPct: number;
  readonly finalSdPct: number;
  /** P(final < 0) and P(0 < final < water) of the uncut normal distribution. */
  readonly cutBelow: number;
  readonly kept: number;
};

/** What is believed about a piece once its weighings are counted in. Shares add up to 1. */
export type DryingPosterior = {
  readonly nodes: readonly DryingNode[];
  readonly course: readonly CourseStep[];
  readonly tailFrom: number;
  readonly waterPct: number;
};

type Steps = { readonly tau: number; readonly shape: number };
const LOOK_STEPS: Steps = { tau: 25, shape: 13 };
const FINE_STEPS: Steps = { tau: 41, shape: 21 };
const REACH_SD = 4.5;
const SHAPE_LOW = 0.4;
const SHAPE_HIGH = 1.4;
/** Points of the grid whose share lies this far (in ln) below the best are left out: together under 1e-4. */
const NEGLIGIBLE_LN = 14;

/** Where the grid is drawn: ln tau runs along the ridge `lnTau = across + tilt (shape - middle)`. */
type Box = {
  acrossLow: number;
  acrossHigh: number;
  shapeLow: number;
  shapeHigh: number;
  tilt: number;
  middle: number;
};
type Scored = Omit<DryingNode, 'share'> & { lnShare: number };
/** Ends of course steps and weighings in one line of time. Precision 0: the end of a step. */
type Knots = {
  readonly lnTheta: Float64Array;
  readonly thetaDays: Float64Array;
  readonly finalRatio: Float64Array;
  readonly precision: Float64Array;
  readonly lossPct: Float64Array;
  readonly courseEnd: number;
};

/**
 * What the weighings of one piece say about how it dries. Works from no weighing at all: then it is the prior.
 *
 * A grid over (ln tau, shape); final loss, in which the model is linear, is summed out in closed form at each point as
 * a normal distribution cut to 0..water. The grid is drawn over the prior first, then again over where the belief lies.
 * Units: reference days, %.
 * Source: Bayes' rule; conjugate normal regression, truncated. Weighing error sd 0.8 points, what the model leaves over
 * included: set on simulated makers for weighings of one piece. For series in which each point is another piece, as
 * in published tables, 1.8 (computed, in-sample, on 15 series).
 * @throws RangeError if a weighing is not a number, lies before the start or the error is not above zero.
 * @example dryingPosterior({ prior: { tauDays: 20, shape: 0.88, finalLossPct: 45, covariance: [[0.25, 0, 0], [0, 0.0144, 0], [0, 0, 12]], waterPct: 60 }, weighIns: [] }).waterPct // => 60
 */
export function dryingPosterior({
  prior,
  weighIns,
  course = [],
  weighingSdPct = 0.8,
  tailFrom = TAIL_FROM,
}: {
  prior: DryingPrior;
  weighIns: readonly DryingWeighIn[];
  course?: readonly CourseStep[];
  weighingSdPct?: number;
  tailFrom?: number;
}): DryingPosterior {
  if (!(weighingSdPct > 0 && weighingSdPct < Infinity))
    throw new RangeError(`dryingPosterior: weighingSdPct requires a value above 0, got ${weighingSdPct}`);
  for (const { thetaDays, lossPct, scaleSdPct = 0 } of weighIns)
    if (!(thetaDays >= 0 && thetaDays < Infinity && Number.isFinite(lossPct) && scaleSdPct >= 0))
      throw new RangeError(
        `dryingPosterior: weighIns require thetaDays >= 0 and a finite lossPct, got ${thetaDays}, ${lossPct}`,
      );
  const knots = lineUp({ course, weighIns, weighingSdPct });
  let box = priorBox(prior);
  if (weighIns.length > 0)
    for (let look = 0; look < 2; look++)
      box = boxAround(scoreGrid({ box, prior, knots, tailFrom, steps: LOOK_STEPS }), {
        box,
        steps: LOOK_STEPS,
      });
  const nodes = shares(scoreGrid({ box, prior, knots, tailFrom, steps: FINE_STEPS }));
  return { nodes, course, tailFrom, waterPct: prior.waterPct };
}

function lineUp({
  course,
  weighIns,
  weighingSdPct,
}: {
  course: readonly CourseStep[];
  weighIns: readonly DryingWeighIn[];
  weighingSdPct: number;
}): Knots {
  const ratioAt = (thetaDays: number) =>
    course.find(({ untilThetaDays }) => untilThetaDays >= thetaDays)?.finalRatio ?? 1;
  const ends = course.map(({ untilThetaDays }) => ({ thetaDays: untilThetaDays, lossPct: 0, precision: 0 }));
  const weighed = weighIns.map(({ thetaDays, lossPct, scaleSdPct = 0 }) => ({
    thetaDays,
    lossPct,
    precision: 1 / (weighingSdPct ** 2 + scaleSdPct ** 2),
  }));
  const line = [...ends, ...weighed].sort((a, b) => a.thetaDays - b.thetaDays);
  return {
    lnTheta: Float64Array.from(line, ({ thetaDays }) => Math.log(thetaDays)),
    thetaDays: Float64Array.from(line, ({ thetaDays }) => thetaDays),
    finalRatio: Float64Array.from(line, ({ thetaDays }) => ratioAt(thetaDays)),
    precision: Float64Array.from(line, ({ precision }) => precision),
    lossPct: Float64Array.from(line, ({ lossPct }) => lossPct),
    courseEnd: line.findLastIndex(({ precision }) => precision === 0),
  };
}

function priorBox({ tauDays, shape, covariance }: DryingPrior): Box {
  const [[tauVariance, joint], [, shapeVariance]] = covariance;
  const tilt = joint / shapeVariance;
  const reach = REACH_SD * Math.sqrt(tauVariance - tilt * joint);
  const shapeReach = REACH_SD * Math.sqrt(shapeVariance);
  return {
    acrossLow: Math.log(tauDays) - reach,
    acrossHigh: Math.log(tauDays) + reach,
    shapeLow: Math.max(SHAPE_LOW, shape - shapeReach),
    shapeHigh: Math.min(SHAPE_HIGH, shape + shapeReach),
    tilt,
    middle: shape,
  };
}

/** The prior seen from one point of the grid: its own weight, and final loss given (ln tau, shape). */
function conditional(prior: DryingPrior) {
  const [[a, b, c], [, d, e], [, , f]] = prior.covariance;
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
    at(lnTau: number, shape: number): { squares: number; finalPct: number } {
      const x = lnTau - priorLnTau;
      const y = shape - prior.shape;
      return {
        squares: (d * x * x - 2 * b * x * y + a * y * y) / determinant,
        finalPct: prior.finalLossPct + byTau * x + byShape * y,
      };
    },
  };
}

function scoreGrid({
  box,
  prior,
  knots: { lnTheta, thetaDays, finalRatio, precision: weights, lossPct, courseEnd },
  tailFrom,
  steps,
}: {
  box: Box;
  prior: DryingPrior;
  knots: Knots;
  tailFrom: number;
  steps: Steps;
}): Scored[] {
  const known = conditional(prior);
  const scored: Scored[] = [];
  for (let row = 0; row < steps.shape; row++) {
    const shape = box.shapeLow + ((row + 0.5) / steps.shape) * (box.shapeHigh - box.shapeLow);
    const hazards = lnTheta.map((ln) => Math.exp(shape * ln));
    for (let column = 0; column < steps.tau; column++) {
      const across = box.acrossLow + ((column + 0.5) / steps.tau) * (box.acrossHigh - box.acrossLow);
      const lnTau = across + box.tilt * (shape - box.middle);
      const scale = Math.exp(-shape * lnTau);
      const tailScale = Math.exp(-lnTau - Math.log(tailFrom) / shape);
      let squares = 0;
      let products = 0;
      let grown = 0;
      let hazard = 0;
      let end: Grown = { grown, hazard };
      for (let i = 0; i < hazards.length; i++) {
        // As `hazardOf` and `grow` in course.ts, spelled out: this runs 50,000 times a forecast.
        const early = (hazards[i] ?? 0) * scale;
        const later =
          early <= tailFrom ? early : tailFrom * (1 + shape * ((thetaDays[i] ?? 0) * tailScale - 1));
        const ratio = finalRatio[i] ?? 1;
        grown = Math.max(grown, ratio + (grown - ratio) * Math.exp(hazard - later));
        hazard = later;
        const weight = weights[i] ?? 0;
        squares += weight * grown * grown;
        products += weight * grown * (lossPct[i] ?? 0);
        if (i === courseEnd) end = { grown, hazard };
      }
      const before = known.at(lnTau, shape);
      const precision = known.precision + squares;
      const finalPct = (known.precision * before.finalPct + products) / precision;
      const finalSdPct = 1 / Math.sqrt(precision);
      const cutBelow = normalCdf(-finalPct / finalSdPct);
      const kept = Math.max(normalCdf((prior.waterPct - finalPct) / finalSdPct) - cutBelow, Number.MIN_VALUE);
      const lnShare =
        0.5 *
          (precision * finalPct * finalPct -
            known.precision * before.finalPct * before.finalPct -
            Math.log(precision) -
            before.squares) +
        Math.log(kept);
      scored.push({ lnShare, lnTau, shape, finalPct, finalSdPct, cutBelow, kept, ...end });
    }
  }
  return scored;
}

/** The box along the ridge of the belief that holds every point that counts, with a step to spare on each side. */
function boxAround(scored: readonly Scored[], { box, steps }: { box: Box; steps: Steps }): Box {
  const nodes = shares(scored);
  const middle = mean(nodes, ({ shape }) => shape);
  const lnTau = mean(nodes, (node) => node.lnTau);
  const variance = mean(nodes, ({ shape }) => (shape - middle) ** 2);
  const joint = mean(nodes, (node) => (node.shape - middle) * (node.lnTau - lnTau));
  const shapeStep = (box.shapeHigh - box.shapeLow) / steps.shape;
  const tilt = joint / (variance + shapeStep ** 2);
  const spare = (box.acrossHigh - box.acrossLow) / steps.tau + Math.abs(tilt - box.tilt) * shapeStep;
  const across = nodes.map((node) => node.lnTau - tilt * (node.shape - middle));
  const shapes = nodes.map(({ shape }) => shape);
  return {
    acrossLow: Math.min(...across) - spare,
    acrossHigh: Math.max(...across) + spare,
    shapeLow: Math.max(box.shapeLow, Math.min(...shapes) - shapeStep),
    shapeHigh: Math.min(box.shapeHigh, Math.max(...shapes) + shapeStep),
    tilt,
    middle,
  };
}

function mean(nodes: readonly DryingNode[], of: (node: DryingNode) => number): number {
  return nodes.reduce((sum, node) => sum + node.share * of(node), 0);
}

function shares(scored: readonly Scored[]): DryingNode[] {
  const best = scored.reduce((top, { lnShare }) => Math.max(top, lnShare), -Infinity);
  const held = scored.filter(({ lnShare }) => lnShare > best - NEGLIGIBLE_LN);
  const total = held.reduce((sum, { lnShare }) => sum + Math.exp(lnShare - best), 0);
  return held.map(({ lnShare, ...node }) => ({ share: Math.exp(lnShare - best) / total, ...node }));
}
