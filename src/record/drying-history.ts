/** What the maker's own batches say about how long the next one will dry. */
import { type Evidence, evidenceTogether } from '#core/drying/belief.ts';
import { RADIAL_PIECE_COVARIANCE } from '#core/drying/radial-fit.ts';
import type { Batch } from './batch.ts';
import { mixOf, weighingsUpTo } from './forecast-figures.ts';
import type { Piece } from './piece.ts';
import { evidenceInAir, pieceInAir } from './piece-ahead.ts';

/** The last batches say most, and a few pieces of each stand for it. */
const LAST_BATCHES = 5;
const PIECES_OF_EACH = 3;
/** Two weighings on the rail, days apart, tell a pace. */
const LEAST_WEIGHINGS = 2;
const LEAST_DAYS = 5;
const DAY_MS = 24 * 3_600_000;

/** Those that say something, the newest first. Batches that were hardly weighed do not. */
export function tellingBatches(batches: readonly Batch[], nowMs: number): Batch[] {
  return batches
    .filter((batch) => tellingPieces(batch, nowMs).length > 0)
    .sort((a, b) => b.opened.atMs - a.opened.atMs)
    .slice(0, LAST_BATCHES);
}

/** One piece of evidence a batch. */
export function dryingHistory(batches: readonly Batch[], nowMs: number): Evidence[] {
  return tellingBatches(batches, nowMs).map((batch) => {
    const known = { air: null, mix: mixOf(batch) };
    const told = tellingPieces(batch, nowMs).flatMap((piece) => {
      const endMs = Math.min(nowMs, piece.takenDown?.atMs ?? nowMs);
      return pieceInAir(piece, batch, endMs, known) ?? [];
    });
    return evidenceTogether(told.map(evidenceInAir), RADIAL_PIECE_COVARIANCE);
  });
}

function tellingPieces({ hung, pieces }: Batch, nowMs: number): Piece[] {
  const hungMs = hung?.atMs ?? nowMs;
  return pieces
    .filter((piece) => {
      const own = weighingsUpTo(piece, nowMs).filter(({ atMs }) => atMs >= hungMs);
      return own.length >= LEAST_WEIGHINGS && (own.at(-1)?.atMs ?? 0) - hungMs >= LEAST_DAYS * DAY_MS;
    })
    .slice(0, PIECES_OF_EACH);
}
