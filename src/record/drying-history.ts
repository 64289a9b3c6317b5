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

/** One piece of evidence a batch, the newest first. Batches that were hardly weighed say nothing. */
export function dryingHistory(batches: readonly Batch[], nowMs: number): Evidence[] {
  return batches
    .toSorted((a, b) => b.opened.atMs - a.opened.atMs)
    .map((batch) => ({ batch, pieces: tellingPieces(batch, nowMs) }))
    .filter(({ pieces }) => pieces.length > 0)
    .slice(0, LAST_BATCHES)
    .map(({ batch, pieces }) => {
      const known = { air: null, mix: mixOf(batch) };
      const told = pieces.flatMap((piece) => pieceInAir(piece, batch, nowMs, known) ?? []);
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
