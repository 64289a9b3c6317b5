import type { CourseStep, Grown } from './course.ts';
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
  readonly belowShare: number;
  readonly kept: number;
};

/** What is believed about a piece once its weighings are counted in. Shares add up to 1. */
export type DryingPosterior = {
  readonly nodes: readonly DryingNode[];
  readonly course: readonly CourseStep[];
  readonly model: DryingModel;
  readonly waterPct: number;
};

/** How the curve and its weighings are taken. */
export type DryingModel = {
  /** Error of one weighing in points of loss, what the model leaves over included. */
  readonly weighingSdPct: number;
  /** How much of that error all weighings of a piece share. */
  readonly repeatShare: number;
  /** Hazard from which the curve comes to rest exponentially; `Infinity`: nowhere. */
  readonly tailHazard: number;
};

/** One piece on one scale: set on simulated makers, by seeds that nothing is tested on (computed). */
export const WEIGHED_PIECE: DryingModel = { weighingSdPct: 0.75, repeatShare: 0.2, tailHazard: 1.5 };

/** Of ln tau, of shape. */
type Steps = readonly [number, number];
const LOOK_STEPS: Steps = [25, 13];
const FINE_STEPS: Steps = [41, 21];
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
type Knots = {
  readonly lnTheta: Float64Array;
  readonly thetaDays: Float64Array;
  readonly finalRatio: Float64Array;
  readonly precision: Float64Array;
  readonly lossPct: Float64Array;
  /** Knots of the course itself; the rest are weighings after it. */
  readonly count: number;
};

/**
 * What the weighings of one piece say about how it dries. Works from no weighing at all: then it is the prior.
 *
 * A grid over (ln tau, shape); final loss, in which the model is linear, is summed out in closed form at each point as
 * a normal distribution cut to 0..water. The grid is drawn over the prior first, then again over where the belief lies.
 * Units: reference days, %.
 * Source: Bayes' rule; conjugate normal regression, truncated; held against a finer grid computed elsewhere. For series
 * in which each point is another piece, as in published tables, an error of 1.8 points held (computed, in-sample).
 * @throws RangeError if a weighing is not a number, lies before the start or the error is not above zero.
 * @example dryingPosterior({ prior: { tauDays: 20, shape: 0.88, finalLossPct: 45, covariance: [[0.25, 0, 0], [0, 0.0144, 0], [0, 0, 12]], waterPct: 60 }, weighIns: [] }).waterPct // => 60
 */
export function dryingPosterior({
  prior,
  weighIns,
  course = [],
  model = WEIGHED_PIECE,
}: {
  prior: DryingPrior;
  weighIns: readonly DryingWeighIn[];
  course?: readonly CourseStep[];
  model?: DryingModel;
}): DryingPosterior {
  const { weighingSdPct, tailHazard } = model;
  if (!(weighingSdPct > 0 && weighingSdPct < Infinity))
    throw new RangeError(`dryingPosterior: weighingSdPct requires a value above 0, got ${weighingSdPct}`);
  for (const { thetaDays, lossPct, scaleSdPct = 0 } of weighIns)
    if (!(thetaDays >= 0 && thetaDays < Infinity && Number.isFinite(lossPct) && scaleSdPct >= 0))
      throw new RangeError(
        `dryingPosterior: weighIns require thetaDays >= 0 and a finite lossPct, got ${thetaDays}, ${lossPct}`,
      );
  const knots = lineUp({ course, weighIns, model });
  let box = priorBox(prior);
  if (weighIns.length > 0)
    for (let look = 0; look < 2; look++)
      box = boxAround(scoreGrid({ box, prior, knots, tailHazard, steps: LOOK_STEPS }), {
        box,
        steps: LOOK_STEPS,
      });
  const nodes = shares(scoreGrid({ box, prior, knots, tailHazard, steps: FINE_STEPS }));
  return { nodes, course, model, waterPct: prior.waterPct };
}

/**
 * How much one of so many weighings of a piece counts. What the model gets wrong, it gets wrong in all of them: at a
 * repeat share of 0.2 they never count for more than five, however many there are.
 *
 * 1 / (sd² (1 + share (n - 1)) + scale²).
 * Units: points of loss; result 1/points².
 * Source: the effective number of equally correlated readings (derived).
 * @example weighingPrecision({ count: 3, model: { weighingSdPct: 1, repeatShare: 0.5, tailHazard: 1.5 } }) // => 0.5
 */
export function weighingPrecision({
  count,
  model: { weighingSdPct, repeatShare },
  scaleSdPct = 0,
}: {
  count: number;
  model: DryingModel;
  scaleSdPct?: number;
}): number {
  return 1 / (weighingSdPct ** 2 * (1 + repeatShare * (count - 1)) + scaleSdPct ** 2);
}

function lineUp({
  course,
  weighIns,
  model,
}: {
  course: readonly CourseStep[];
  weighIns: readonly DryingWeighIn[];
  model: DryingModel;
}): Knots {
  const ratioAt = (thetaDays: number) =>
    course.find(({ untilThetaDays }) => untilThetaDays >= thetaDays)?.finalRatio ?? 1;
  const ends = course.map(({ untilThetaDays }) => ({ thetaDays: untilThetaDays, lossPct: 0, precision: 0 }));
  const weighed = weighIns.map(({ thetaDays, lossPct, scaleSdPct = 0 }) => ({
    thetaDays,
    lossPct,
    precision: weighingPrecision({ count: weighIns.length, model, scaleSdPct }),
  }));
  const line = [...ends, ...weighed].sort((a, b) => a.thetaDays - b.thetaDays);
  return {
    lnTheta: Float64Array.from(line, ({ thetaDays }) => Math.log(thetaDays)),
    thetaDays: Float64Array.from(line, ({ thetaDays }) => thetaDays),
    finalRatio: Float64Array.from(line, ({ thetaDays }) => ratioAt(thetaDays)),
    precision: Float64Array.from(line, ({ precision }) => precision),
    lossPct: Float64Array.from(line, ({ lossPct }) => lossPct),
    count: line.findLastIndex(({ precision }) => precision === 0) + 1,
  };
}

function priorBox({ tauDays, shape, covariance }: DryingPrior): Box {
  const [[tauVariance, joint], [, shapeVariance]] = covariance;
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

function scoreGrid({
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

/** The box along the ridge of the belief that holds every point that counts, with a step to spare on each side. */
function boxAround(scored: readonly Scored[], { box, steps }: { box: Box; steps: Steps }): Box {
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

function shares(scored: readonly Scored[]): DryingNode[] {
  const best = scored.reduce((top, { lnShare }) => Math.max(top, lnShare), -Infinity);
  const held = scored.filter(({ lnShare }) => lnShare > best - NEGLIGIBLE_LN);
  const total = held.reduce((sum, { lnShare }) => sum + Math.exp(lnShare - best), 0);
  return held.map(({ lnShare, ...node }) => ({ share: Math.exp(lnShare - best) / total, ...node }));
}
