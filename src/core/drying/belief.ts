/** Evidence about a few numbers that pieces, batches and a chamber share, as normal distributions. */
import {
  apply,
  diagonal,
  dot,
  inverse,
  type Matrix,
  plus,
  plusVector,
  times,
  type Vector,
} from './matrix.ts';

/**
 * What weighings say about how far a piece lies from what was expected: precision, and precision times the offset. It
 * adds up over pieces and batches.
 */
export type Evidence = { readonly precision: Matrix; readonly pull: Vector };
export type Normal = { readonly mean: Vector; readonly covariance: Matrix };

/** Where doubt comes from: what stays with a maker and a chamber, what is a batch's own, what a piece's own. */
export type Spread = { readonly chamber: Matrix; readonly batch: Matrix; readonly piece: Matrix };

/** All siblings together count as half a piece more: they hang in the same air, and the model is wrong on all alike. */
const SIBLINGS_COUNT = 0.5;

/**
 * What the pieces of one batch say together about the batch: each is held back by what is its own, so that many pieces
 * of one batch never say more than one batch can.
 *
 * Source: hierarchical normal model.
 * @example evidenceTogether([], [[1]]) // => { precision: [[0]], pull: [0] }
 */
export function evidenceTogether(parts: readonly Evidence[], stray: Matrix): Evidence {
  return parts
    .map((part) => heldBack(part, stray))
    .reduce(
      (sum, { precision, pull }) => ({
        precision: plus(sum.precision, precision),
        pull: plusVector(sum.pull, pull),
      }),
      scaled({ precision: stray, pull: stray.map(() => 0) }, 0),
    );
}

/**
 * What is to be expected of a piece, as an offset, once others have spoken: pieces of its batch, and finished batches
 * from the same chamber. The doubt that belongs to a batch and to a piece always stays, however many there were.
 *
 * Source: hierarchical normal model; offsets of chamber, batch and piece add up.
 * @example offsetBelief({ spread: { chamber: [[1]], batch: [[1]], piece: [[1]] }, siblings: [], earlierBatches: [] }) // => { mean: [0], covariance: [[3]] }
 */
export function offsetBelief({
  spread: { chamber, batch, piece },
  siblings,
  earlierBatches,
}: {
  spread: Spread;
  /** Of the other pieces of this batch. */
  siblings: readonly Evidence[];
  /** `evidenceTogether` of each finished batch from this chamber. */
  earlierBatches: readonly Evidence[];
}): Normal {
  const ofChamber = afterEvidence(
    { mean: chamber.map(() => 0), covariance: chamber },
    evidenceTogether(earlierBatches, batch),
  );
  const ofBatch = afterEvidence(
    { mean: ofChamber.mean, covariance: plus(ofChamber.covariance, batch) },
    scaled(evidenceTogether(siblings, piece), SIBLINGS_COUNT / Math.max(1, siblings.length)),
  );
  return { mean: ofBatch.mean, covariance: plus(ofBatch.covariance, piece) };
}

/**
 * Bayes' rule for normal distributions. Works where part of the covariance is zero: that part is known.
 *
 * covariance' = (I + covariance · precision)⁻¹ covariance; mean' = mean + covariance' (pull - precision · mean).
 * Source: conjugate normal distribution (derived).
 * @example afterEvidence({ mean: [0], covariance: [[1]] }, { precision: [[1]], pull: [2] }) // => { mean: [1], covariance: [[0.5]] }
 */
export function afterEvidence({ mean, covariance }: Normal, { precision, pull }: Evidence): Normal {
  const after = times(inverse(plus(one(mean), times(covariance, precision))), covariance);
  return {
    covariance: after,
    mean: plusVector(mean, apply(after, plusVector(pull, apply(precision, mean), -1))),
  };
}

/**
 * How well evidence fits an offset, all else being as unsure as `doubt` says: ln of the likelihood, 0 for no offset.
 *
 * Source: normal distribution (derived).
 * @example likelihoodOf({ precision: [[1, 0], [0, 1]], pull: [2, 0] }, [[0, 0], [0, 0]])([2, 0]) // => 2
 */
export function likelihoodOf(evidence: Evidence, doubt: Matrix): (offset: Vector) => number {
  const { precision, pull } = heldBack(evidence, doubt);
  return (offset) => dot(offset, pull) - dot(offset, apply(precision, offset)) / 2;
}

/** Evidence about a part, seen as evidence about the whole that the part strays from: (I + precision · stray)⁻¹. */
function heldBack({ precision, pull }: Evidence, stray: Matrix): Evidence {
  const share = inverse(plus(one(pull), times(precision, stray)));
  return { precision: times(share, precision), pull: apply(share, pull) };
}

function scaled({ precision, pull }: Evidence, share: number): Evidence {
  return {
    precision: precision.map((row) => row.map((value) => value * share)),
    pull: pull.map((value) => value * share),
  };
}

function one(like: Vector): Matrix {
  return diagonal(like.map(() => 1));
}
