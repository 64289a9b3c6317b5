import { normalCdf } from './normal.ts';
import type { DryingPrior } from './prior.ts';

/** One weighing of a piece, on the reference clock of `prior.ts`. */
export type DryingWeighIn = { readonly thetaDays: number; readonly lossPct: number };

/** One point of the grid: its share of the belief, and final loss there as a normal distribution cut to 0..water. */
export type DryingNode = {
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
export type DryingPosterior = { readonly nodes: readonly DryingNode[]; readonly waterPct: number };

const TAU_STEPS = 41;
const SHAPE_STEPS = 21;
const PRIOR_REACH_SD = 4.5;
const SHAPE_LOW = 0.4;
const SHAPE_HIGH = 1.4;
/** Points of the grid whose share lies this far (in ln) below the best are left out: together under 1e-4. */
const NEGLIGIBLE_LN = 14;

type Box = { tauLow: number; tauHigh: number; shapeLow: number; shapeHigh: number };
type Scored = Omit<DryingNode, 'share'> & { lnShare: number };

/**
 * What the weighings of one piece say about how it dries. Works from no weighing at all: then it is the prior.
 *
 * A grid over (ln tau, shape); final loss, in which the model is linear, is summed out in closed form at each point as
 * a normal distribution cut to 0..water. The grid is drawn over the prior first, then again over where the belief lies.
 * Units: reference days, %.
 * Source: Bayes' rule; conjugate normal regression, truncated. Weighing error sd 1.8 points, model error included
 * (computed, in-sample, on 15 published series).
 * @throws RangeError if a weighing is not a number, lies before the start or the error is not above zero.
 * @example dryingPosterior({ prior: { tauDays: 20, tauLnSd: 0.5, shapeMean: 0.88, shapeSd: 0.12, finalLossPct: 45, finalLossSdPct: 3.5, waterPct: 60 }, weighIns: [] }).waterPct // => 60
 */
export function dryingPosterior({
  prior,
  weighIns,
  weighingSdPct = 1.8,
}: {
  prior: DryingPrior;
  weighIns: readonly DryingWeighIn[];
  weighingSdPct?: number;
}): DryingPosterior {
  requirePrior(prior);
  if (!(weighingSdPct > 0 && weighingSdPct < Infinity))
    throw new RangeError(`dryingPosterior: weighingSdPct requires a value above 0, got ${weighingSdPct}`);
  for (const { thetaDays, lossPct } of weighIns)
    if (!(thetaDays >= 0 && thetaDays < Infinity && Number.isFinite(lossPct)))
      throw new RangeError(
        `dryingPosterior: weighIns require thetaDays >= 0 and a finite lossPct, got ${thetaDays}, ${lossPct}`,
      );
  const priorLnTau = Math.log(prior.tauDays);
  let box: Box = {
    tauLow: priorLnTau - PRIOR_REACH_SD * prior.tauLnSd,
    tauHigh: priorLnTau + PRIOR_REACH_SD * prior.tauLnSd,
    shapeLow: Math.max(SHAPE_LOW, prior.shapeMean - PRIOR_REACH_SD * prior.shapeSd),
    shapeHigh: Math.min(SHAPE_HIGH, prior.shapeMean + PRIOR_REACH_SD * prior.shapeSd),
  };
  let scored = scoreGrid({ box, prior, weighIns, weighingSdPct });
  for (let round = 0; round < 2 && weighIns.length > 0; round++) {
    box = boxAround(scored, box);
    scored = scoreGrid({ box, prior, weighIns, weighingSdPct });
  }
  return { nodes: shares(scored), waterPct: prior.waterPct };
}

function scoreGrid({
  box,
  prior,
  weighIns,
  weighingSdPct,
}: {
  box: Box;
  prior: DryingPrior;
  weighIns: readonly DryingWeighIn[];
  weighingSdPct: number;
}): Scored[] {
  const priorLnTau = Math.log(prior.tauDays);
  const priorPrecision = 1 / prior.finalLossSdPct ** 2;
  const dataPrecision = 1 / weighingSdPct ** 2;
  const lnTheta = Float64Array.from(weighIns, ({ thetaDays }) => Math.log(thetaDays));
  const losses = Float64Array.from(weighIns, ({ lossPct }) => lossPct);
  const hazards = new Float64Array(weighIns.length);
  const scored: Scored[] = [];
  for (let row = 0; row < SHAPE_STEPS; row++) {
    const shape = box.shapeLow + ((row + 0.5) / SHAPE_STEPS) * (box.shapeHigh - box.shapeLow);
    for (let i = 0; i < hazards.length; i++) hazards[i] = Math.exp(shape * (lnTheta[i] ?? 0));
    const shapeSds = (shape - prior.shapeMean) / prior.shapeSd;
    for (let column = 0; column < TAU_STEPS; column++) {
      const lnTau = box.tauLow + ((column + 0.5) / TAU_STEPS) * (box.tauHigh - box.tauLow);
      const scale = Math.exp(-shape * lnTau);
      let squares = 0;
      let products = 0;
      for (let i = 0; i < hazards.length; i++) {
        const curve = 1 - Math.exp(-(hazards[i] ?? 0) * scale);
        squares += curve * curve;
        products += curve * (losses[i] ?? 0);
      }
      const precision = priorPrecision + dataPrecision * squares;
      const finalPct = (priorPrecision * prior.finalLossPct + dataPrecision * products) / precision;
      const finalSdPct = 1 / Math.sqrt(precision);
      const cutBelow = normalCdf(-finalPct / finalSdPct);
      const kept = Math.max(normalCdf((prior.waterPct - finalPct) / finalSdPct) - cutBelow, Number.MIN_VALUE);
      const tauSds = (lnTau - priorLnTau) / prior.tauLnSd;
      const lnShare =
        0.5 *
          (precision * finalPct * finalPct - Math.log(precision) - tauSds * tauSds - shapeSds * shapeSds) +
        Math.log(kept);
      scored.push({ lnShare, lnTau, shape, finalPct, finalSdPct, cutBelow, kept });
    }
  }
  return scored;
}

/** The box that holds every point of weight, with one step to spare on each side, within the old one. */
function boxAround(scored: readonly Scored[], box: Box): Box {
  const best = scored.reduce((top, { lnShare }) => Math.max(top, lnShare), -Infinity);
  const held = scored.filter(({ lnShare }) => lnShare > best - NEGLIGIBLE_LN);
  const tauStep = (box.tauHigh - box.tauLow) / TAU_STEPS;
  const shapeStep = (box.shapeHigh - box.shapeLow) / SHAPE_STEPS;
  return {
    tauLow: Math.max(box.tauLow, Math.min(...held.map(({ lnTau }) => lnTau)) - tauStep),
    tauHigh: Math.min(box.tauHigh, Math.max(...held.map(({ lnTau }) => lnTau)) + tauStep),
    shapeLow: Math.max(box.shapeLow, Math.min(...held.map(({ shape }) => shape)) - shapeStep),
    shapeHigh: Math.min(box.shapeHigh, Math.max(...held.map(({ shape }) => shape)) + shapeStep),
  };
}

function shares(scored: readonly Scored[]): DryingNode[] {
  const best = scored.reduce((top, { lnShare }) => Math.max(top, lnShare), -Infinity);
  const held = scored.filter(({ lnShare }) => lnShare > best - NEGLIGIBLE_LN);
  const total = held.reduce((sum, { lnShare }) => sum + Math.exp(lnShare - best), 0);
  return held.map(({ lnShare, ...node }) => ({ share: Math.exp(lnShare - best) / total, ...node }));
}

function requirePrior(prior: DryingPrior): void {
  const spreads = [prior.tauDays, prior.tauLnSd, prior.shapeSd, prior.finalLossSdPct, prior.waterPct];
  const middles = [prior.shapeMean, prior.finalLossPct];
  if (!(spreads.every((value) => value > 0 && value < Infinity) && middles.every(Number.isFinite)))
    throw new RangeError(`dryingPosterior: prior requires finite numbers, got ${JSON.stringify(prior)}`);
}
