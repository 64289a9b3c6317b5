/** What the maker's own batches say about how long the next one will dry. */
import { dryingClock, thetaAt } from '#core/drying/clock.ts';
import { batchEvidence, type DryingEvidence, pieceEvidence } from '#core/drying/evidence.ts';
import { lossPct } from '#core/drying/loss.ts';
import { dryingPosterior } from '#core/drying/posterior.ts';
import { dryingPrior } from '#core/drying/prior.ts';
import type { Batch } from './batch.ts';
import { mixOf } from './forecast-figures.ts';
import type { Piece } from './piece.ts';

/** The last batches say most, and a few pieces of each stand for it: a forecast takes a phone some 50 ms a piece. */
const LAST_BATCHES = 5;
const PIECES_OF_EACH = 3;
/** Two weighings on the rail, days apart, tell a pace. */
const LEAST_WEIGHINGS = 2;
const LEAST_DAYS = 5;
/** What was lost before hanging is not the chamber's doing: the first day tells mostly of that. */
const FROM_DAYS = 1;
const DAY_MS = 24 * 3_600_000;

/** One piece of evidence a batch, the newest first. Batches that were hardly weighed say nothing. */
export function dryingHistory(batches: readonly Batch[], nowMs: number): DryingEvidence[] {
  return batches
    .toSorted((a, b) => b.opened.atMs - a.opened.atMs)
    .map((batch) => tellingPieces(batch, nowMs).map((piece) => evidenceOf(piece, batch, nowMs)))
    .filter((pieces) => pieces.length > 0)
    .slice(0, LAST_BATCHES)
    .map(batchEvidence);
}

function tellingPieces(batch: Batch, nowMs: number): Piece[] {
  const hungMs = batch.hung?.atMs ?? nowMs;
  return batch.pieces
    .filter((piece) => {
      const own = weighingsOf(piece, { hungMs, nowMs });
      return own.length >= LEAST_WEIGHINGS && (own.at(-1)?.atMs ?? 0) - hungMs >= LEAST_DAYS * DAY_MS;
    })
    .slice(0, PIECES_OF_EACH);
}

function weighingsOf({ weighings }: Piece, { hungMs, nowMs }: { hungMs: number; nowMs: number }) {
  const fromMs = hungMs + FROM_DAYS * DAY_MS;
  return weighings.filter(({ atMs, netG }) => atMs >= fromMs && atMs <= nowMs && netG > 0);
}

/** Counted from the day of hanging in the air that was read then, as for a batch that is only wished for. */
function evidenceOf(piece: Piece, { plan, hung, ...batch }: Batch, nowMs: number): DryingEvidence {
  const mix = mixOf({ ...batch, plan, hung });
  const planned = {
    chamberC: hung?.body.airC ?? plan.dryC,
    humidityPct: hung?.body.rhPct ?? plan.dryRhPct,
  };
  const hungMs = hung?.atMs ?? nowMs;
  const clock = dryingClock({ hungMs, nowMs, mix, air: [], rests: [], planned });
  const prior = dryingPrior({ diameterMm: piece.diameterMm, mix, humidityPct: planned.humidityPct });
  const weighIns = weighingsOf(piece, { hungMs, nowMs }).map(({ atMs, netG }) => ({
    thetaDays: thetaAt(clock, atMs),
    lossPct: lossPct({ greenG: piece.greenG, nowG: netG }),
  }));
  const posterior = dryingPosterior({ prior, weighIns, course: clock.steps });
  return pieceEvidence({ prior, posterior, weighIns });
}
