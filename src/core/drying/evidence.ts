import { type CourseStep, growth } from './course.ts';
import {
  apply,
  diagonal,
  dot,
  inverse,
  type Matrix3,
  plus,
  plusVector,
  times,
  type Vector3,
} from './matrix3.ts';
import { type DryingPosterior, type DryingWeighIn, weighingPrecision } from './posterior.ts';
import { CHAMBER_COVARIANCE, type DryingPrior, PIECE_COVARIANCE } from './prior.ts';

/**
 * What weighings say about how far (ln tau, shape, final loss) lies from what was expected, as a normal distribution:
 * precision, and precision times the offset. It adds up over pieces and batches.
 */
export type DryingEvidence = { readonly precision: Matrix3; readonly pull: Vector3 };

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
  const expected: Vector3 = [Math.log(prior.tauDays), prior.shape, prior.finalLossPct];
  let evidence: DryingEvidence = { precision: diagonal([0, 0, 0]), pull: [0, 0, 0] };
  for (const { thetaDays, lossPct, scaleSdPct = 0 } of weighIns) {
    const { course, model } = posterior;
    const { tailHazard } = model;
    const loss = curve({ course, tailHazard, at: middle, thetaDays });
    const slope: Vector3 = [
      (curve({ course, tailHazard, at: plusVector(middle, [STEP, 0, 0]), thetaDays }) - loss) / STEP,
      (curve({ course, tailHazard, at: plusVector(middle, [0, STEP, 0]), thetaDays }) - loss) / STEP,
      (curve({ course, tailHazard, at: plusVector(middle, [0, 0, STEP]), thetaDays }) - loss) / STEP,
    ];
    const weight = weighingPrecision({ count: weighIns.length, model, scaleSdPct });
    const none = diagonal([0, 0, 0]);
    const outer: Matrix3 = [
      plusVector(none[0], slope, slope[0]),
      plusVector(none[1], slope, slope[1]),
      plusVector(none[2], slope, slope[2]),
    ];
    evidence = {
      precision: plus(evidence.precision, outer, weight),
      pull: plusVector(evidence.pull, slope, weight * (lossPct - loss)),
    };
  }
  const offset = plusVector(middle, expected, -1);
  return { ...evidence, pull: plusVector(evidence.pull, apply(evidence.precision, offset)) };
}

/**
 * What the pieces of one batch say together about the batch: each is held back by what is its own, so that many pieces
 * of one batch never say more than one batch can.
 *
 * Source: hierarchical normal model; the spread of pieces within a batch is `PIECE_COVARIANCE`.
 * @example batchEvidence([]).pull // => [0, 0, 0]
 */
export function batchEvidence(pieces: readonly DryingEvidence[]): DryingEvidence {
  return pieces.map((piece) => heldBack(piece, PIECE_COVARIANCE)).reduce(together, NOTHING);
}

/**
 * A prior that other pieces have sharpened: those of the same batch, and finished batches from the same chamber. The
 * doubt that belongs to a batch and to a piece always stays, however many there were.
 *
 * Source: hierarchical normal model; offsets of chamber, batch and piece add up to the prior's own covariance.
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
  const ownToBatch = plus(plus(prior.covariance, CHAMBER_COVARIANCE, -1), PIECE_COVARIANCE, -1);
  const chamber = belief(
    { mean: [0, 0, 0], covariance: CHAMBER_COVARIANCE },
    earlierBatches.map((batch) => heldBack(batch, ownToBatch)).reduce(together, NOTHING),
  );
  const shared = belief(
    { mean: chamber.mean, covariance: plus(chamber.covariance, ownToBatch) },
    weighted(batchEvidence(siblings), SIBLINGS_COUNT / Math.max(1, siblings.length)),
  );
  const [lnTau, shape, finalPct] = shared.mean;
  return {
    tauDays: prior.tauDays * Math.exp(lnTau),
    shape: prior.shape + shape,
    finalLossPct: prior.finalLossPct + finalPct,
    covariance: plus(shared.covariance, PIECE_COVARIANCE),
    waterPct: prior.waterPct,
  };
}

/**
 * How well evidence fits a shift of (ln tau, shape, final loss), all else being as unsure as `doubt` says: ln of the
 * likelihood, 0 for no shift.
 *
 * Source: normal distribution (derived).
 * @example likelihoodOf({ precision: [[1, 0, 0], [0, 1, 0], [0, 0, 1]], pull: [2, 0, 0] }, [[0, 0, 0], [0, 0, 0], [0, 0, 0]])([2, 0, 0]) // => 2
 */
export function likelihoodOf(evidence: DryingEvidence, doubt: Matrix3): (shift: Vector3) => number {
  const { precision, pull } = heldBack(evidence, doubt);
  return (shift) => dot(shift, pull) - dot(shift, apply(precision, shift)) / 2;
}

const NOTHING: DryingEvidence = { precision: diagonal([0, 0, 0]), pull: [0, 0, 0] };

function together(left: DryingEvidence, right: DryingEvidence): DryingEvidence {
  return { precision: plus(left.precision, right.precision), pull: plusVector(left.pull, right.pull) };
}

/** Evidence about a part, seen as evidence about the whole that the part strays from: (I + precision · stray)⁻¹. */
function heldBack({ precision, pull }: DryingEvidence, stray: Matrix3): DryingEvidence {
  const share = inverse(plus(diagonal([1, 1, 1]), times(precision, stray)));
  return { precision: times(share, precision), pull: apply(share, pull) };
}

type Normal = { readonly mean: Vector3; readonly covariance: Matrix3 };

function belief(before: Normal, { precision, pull }: DryingEvidence): Normal {
  const known = inverse(before.covariance);
  const covariance = inverse(plus(known, precision));
  return { covariance, mean: apply(covariance, plusVector(apply(known, before.mean), pull)) };
}

function middleOf({ nodes }: DryingPosterior): Vector3 {
  return nodes.reduce<Vector3>(
    (sum, { share, lnTau, shape, finalPct }) => plusVector(sum, [lnTau, shape, finalPct], share),
    [0, 0, 0],
  );
}

function curve({
  course,
  tailHazard,
  at: [lnTau, shape, finalPct],
  thetaDays,
}: {
  course: readonly CourseStep[];
  tailHazard: number;
  at: Vector3;
  thetaDays: number;
}): number {
  return finalPct * growth({ course, tailHazard, lnTau, shape, thetaDays });
}

/** All siblings together count as half a piece more: they hang in the same air, and the model is wrong on all alike. */
const SIBLINGS_COUNT = 0.5;

function weighted({ precision, pull }: DryingEvidence, share: number): DryingEvidence {
  return {
    precision: plus(NOTHING.precision, precision, share),
    pull: plusVector(NOTHING.pull, pull, share),
  };
}
