import { type Evidence, evidenceTogether, offsetBelief } from './belief.ts';
import { type CourseStep, growth } from './course.ts';
import { apply, diagonal, outer, plus, plusVector, type Vector } from './matrix.ts';
import { type DryingPosterior, type DryingWeighIn, weighingPrecision } from './posterior.ts';
import { CHAMBER_COVARIANCE, type DryingPrior, PIECE_COVARIANCE } from './prior.ts';

/** Of (ln tau, shape, final loss), as offsets from a prior. */
export type DryingEvidence = Evidence;

const STEP = 1e-4;

/**
 * What one piece says about the offset of its own drying from what was expected of it. The wrong tool for its own
 * forecast: that is the whole posterior, this a normal distribution around its middle.
 *
 * The least squares fit in a straight line around the middle of the posterior: sum of J Jᵀ / sd², J the slope of the
 * loss in (ln tau, shape, final).
 * Units: reference days, %.
 * Source: Gauss and Newton's normal equations.
 * @example pieceEvidence({ prior: { tauDays: 20, shape: 0.88, finalLossPct: 45, covariance: [[0.25, 0, 0], [0, 0.04, 0], [0, 0, 16]], waterPct: 60 }, posterior: { nodes: [], course: [], model: { weighingSdPct: 0.75, repeatShare: 0.2, tailHazard: 1.5 }, waterPct: 60 }, weighIns: [] }).pull // => [0, 0, 0]
 */
export function pieceEvidence({
  prior,
  posterior,
  weighIns,
}: {
  prior: DryingPrior;
  posterior: DryingPosterior;
  weighIns: readonly DryingWeighIn[];
}): DryingEvidence {
  const middle = middleOf(posterior);
  const expected = [Math.log(prior.tauDays), prior.shape, prior.finalLossPct];
  let evidence: DryingEvidence = { precision: diagonal([0, 0, 0]), pull: [0, 0, 0] };
  for (const { thetaDays, lossPct, scaleSdPct = 0 } of weighIns) {
    const { course, model } = posterior;
    const { tailHazard } = model;
    const loss = curve({ course, tailHazard, at: middle, thetaDays });
    const slope: Vector = [
      (curve({ course, tailHazard, at: plusVector(middle, [STEP, 0, 0]), thetaDays }) - loss) / STEP,
      (curve({ course, tailHazard, at: plusVector(middle, [0, STEP, 0]), thetaDays }) - loss) / STEP,
      (curve({ course, tailHazard, at: plusVector(middle, [0, 0, STEP]), thetaDays }) - loss) / STEP,
    ];
    const weight = weighingPrecision({ count: weighIns.length, model, scaleSdPct });
    evidence = {
      precision: plus(evidence.precision, outer(slope, slope), weight),
      pull: plusVector(evidence.pull, slope, weight * (lossPct - loss)),
    };
  }
  const offset = plusVector(middle, expected, -1);
  return { ...evidence, pull: plusVector(evidence.pull, apply(evidence.precision, offset)) };
}

/**
 * What the pieces of one batch say together: each strays by `PIECE_COVARIANCE`.
 *
 * Source: as `evidenceTogether`.
 * @example batchEvidence([]).pull // => [0, 0, 0]
 */
export function batchEvidence(pieces: readonly DryingEvidence[]): DryingEvidence {
  return evidenceTogether(pieces, PIECE_COVARIANCE);
}

/**
 * A prior that other pieces have sharpened: those of the same batch, and finished batches from the same chamber.
 *
 * Source: as `offsetBelief`; what is neither the chamber's nor the piece's own belongs to the batch.
 * @example informedPrior({ prior: { tauDays: 20, shape: 0.88, finalLossPct: 45, covariance: [[0.25, 0, 0], [0, 0.04, 0], [0, 0, 16]], waterPct: 60 }, siblings: [], earlierBatches: [] }).shape // => 0.88
 */
export function informedPrior({
  prior,
  siblings,
  earlierBatches,
}: {
  prior: DryingPrior;
  /** `pieceEvidence` of the other pieces of this batch. */
  siblings: readonly DryingEvidence[];
  /** `batchEvidence` of each finished batch from this chamber. */
  earlierBatches: readonly DryingEvidence[];
}): DryingPrior {
  if (siblings.length + earlierBatches.length === 0) return prior;
  const batch = plus(plus(prior.covariance, CHAMBER_COVARIANCE, -1), PIECE_COVARIANCE, -1);
  const spread = { chamber: CHAMBER_COVARIANCE, batch, piece: PIECE_COVARIANCE };
  const { mean, covariance } = offsetBelief({ spread, siblings, earlierBatches });
  const [lnTau = 0, shape = 0, finalPct = 0] = mean;
  return {
    tauDays: prior.tauDays * Math.exp(lnTau),
    shape: prior.shape + shape,
    finalLossPct: prior.finalLossPct + finalPct,
    covariance,
    waterPct: prior.waterPct,
  };
}

function middleOf({ nodes }: DryingPosterior): Vector {
  return nodes.reduce<Vector>(
    (sum, { share, lnTau, shape, finalPct }) => plusVector(sum, [lnTau, shape, finalPct], share),
    [0, 0, 0],
  );
}

function curve({
  course,
  tailHazard,
  at: [lnTau = 0, shape = 0, finalPct = 0],
  thetaDays,
}: {
  course: readonly CourseStep[];
  tailHazard: number;
  at: Vector;
  thetaDays: number;
}): number {
  return finalPct * growth({ course, tailHazard, lnTau, shape, thetaDays });
}
