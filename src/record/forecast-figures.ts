/** A piece through the curve of drying: from its green weight, its air and its weighings. An estimate, always a band. */
import { type DryingClock, dryingClock, thetaAt } from '#core/drying/clock.ts';
import { type DryingEvidence, pieceEvidence } from '#core/drying/evidence.ts';
import { type LossBand, lossBand } from '#core/drying/forecast.ts';
import { lossPct } from '#core/drying/loss.ts';
import { type DryingPosterior, type DryingWeighIn, dryingPosterior } from '#core/drying/posterior.ts';
import { type DryingPrior, dryingPrior } from '#core/drying/prior.ts';
import type { MixFractions } from '#core/drying/water-activity.ts';
import { mixComposition } from '#core/formula/composition.ts';
import { weighOut } from '#core/formula/weigh-out.ts';
import type { Batch } from './batch.ts';
import { airOf, type KnownAir, plannedAir } from './drying-air.ts';
import type { Piece, Weighing } from './piece.ts';
import { NO_SCALE } from './weigh-out-figures.ts';

export type PieceForecast = { readonly band: (atMs: number) => LossBand };

/** A piece as it stood at an instant: only what was written of the time before. */
export type PieceSeen = {
  readonly clock: DryingClock;
  readonly prior: DryingPrior;
  readonly weighIns: readonly DryingWeighIn[];
};

/** What is known beyond the batch's own record. */
export type Known = {
  readonly air?: KnownAir | null;
  /** Of the mix, where it was made up already. */
  readonly mix?: MixFractions;
};

/** Null before stuffing. Quick, and alone: what others of its batch and chamber say is in `piece-ahead.ts`. */
export function pieceForecast(
  piece: Piece,
  batch: Batch,
  nowMs: number,
  known: Known = {},
): PieceForecast | null {
  const seen = seenPiece(piece, batch, nowMs, known);
  if (seen === null) return null;
  const posterior = posteriorOf(seen);
  return { band: (atMs) => lossBand(posterior, { thetaDays: thetaAt(seen.clock, atMs) }) };
}

/** The piece seen through its air, no drier than `leastHumidityPct`; the clock stands while it rests. */
export function seenPiece(
  piece: Piece,
  batch: Batch,
  nowMs: number,
  { air = null, mix = mixOf(batch) }: Known,
  leastHumidityPct = 0,
): PieceSeen | null {
  const startMs = piece.stuffed.atMs;
  if (nowMs < startMs) return null;
  const floored = <T extends { humidityPct: number }>(one: T): T => ({
    ...one,
    humidityPct: Math.max(one.humidityPct, leastHumidityPct),
  });
  const planned = floored(plannedAir(batch, air, nowMs));
  const clock = dryingClock({
    hungMs: startMs,
    nowMs,
    mix,
    air: airOf(batch, air, nowMs).map(floored),
    rests: piece.rests,
    planned,
  });
  return {
    clock,
    prior: dryingPrior({ diameterMm: piece.diameterMm, mix, humidityPct: clock.referenceHumidityPct }),
    weighIns: weighingsUpTo(piece, nowMs).map(({ atMs, netG }) => ({
      thetaDays: thetaAt(clock, atMs),
      lossPct: lossPct({ greenG: piece.greenG, nowG: netG }),
    })),
  };
}

/** After stuffing, up to an instant. */
export function weighingsUpTo({ weighings, stuffed }: Piece, nowMs: number): Weighing[] {
  return weighings.filter(({ atMs, netG }) => atMs > stuffed.atMs && atMs <= nowMs && netG > 0);
}

/** What the weighings of one piece say about its fellows. */
export function evidenceOf(seen: PieceSeen): DryingEvidence {
  const { prior, weighIns } = seen;
  return pieceEvidence({ prior, posterior: posteriorOf(seen), weighIns });
}

function posteriorOf({ clock, prior, weighIns }: PieceSeen): DryingPosterior {
  return dryingPosterior({ prior, weighIns, course: clock.steps });
}

/** The mix as planned for the meat that was weighed; before that, for a kilo in the shares of the formula. */
export function mixOf(batch: Batch) {
  const { formula } = batch.opened.body;
  const weighed = batch.leanG + batch.fatG > 0;
  const leanG = weighed ? batch.leanG : 1000 - 10 * formula.fatPctOfMeat;
  const fatG = weighed ? batch.fatG : 10 * formula.fatPctOfMeat;
  const plan = weighOut({ formula, leanG, fatG, pieces: batch.pieces.length, scales: [NO_SCALE] });
  return mixComposition({ formula, leanG, fatG, gramsByLine: plan.lines.map(({ exactG }) => exactG) })
    .composition;
}
