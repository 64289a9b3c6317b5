import type { CourseStep } from './course.ts';
import {
  boxAround,
  type DryingNode,
  type Knots,
  priorBox,
  type Steps,
  scoreGrid,
  shares,
} from './posterior-grid.ts';
import type { DryingPrior } from './prior.ts';

/** One weighing of a piece, on the reference clock. `scaleSdPct`: what a coarse scale adds to its error. */
export type DryingWeighIn = {
  readonly thetaDays: number;
  readonly lossPct: number;
  readonly scaleSdPct?: number;
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
export const WEIGHED_PIECE: DryingModel = { weighingSdPct: 0.6, repeatShare: 0.2, tailHazard: 1.5 };

const LOOK_STEPS: Steps = [25, 13];
const FINE_STEPS: Steps = [41, 21];
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
 * @example weighingPrecision({ count: 3, model: { weighingSdPct: 1, repeatShare: 0.5 } }) // => 0.5
 */
export function weighingPrecision({
  count,
  model: { weighingSdPct, repeatShare },
  scaleSdPct = 0,
}: {
  count: number;
  model: Pick<DryingModel, 'weighingSdPct' | 'repeatShare'>;
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
