/** What the maker's own batches say about how long the next one will dry. */
import { batchEvidence, type DryingEvidence } from '#core/drying/evidence.ts';
import type { Batch } from './batch.ts';
import { evidenceOf, seenPiece, weighingsUpTo } from './forecast-figures.ts';
import type { Piece } from './piece.ts';

/** The last batches say most, and a few pieces of each stand for it: a forecast takes a phone some 50 ms a piece. */
const LAST_BATCHES = 5;
const PIECES_OF_EACH = 3;
/** Two weighings on the rail, days apart, tell a pace. */
const LEAST_WEIGHINGS = 2;
const LEAST_DAYS = 5;
const DAY_MS = 24 * 3_600_000;

/** One piece of evidence a batch, the newest first. Batches that were hardly weighed say nothing. */
export function dryingHistory(batches: readonly Batch[], nowMs: number): DryingEvidence[] {
  return batches
    .toSorted((a, b) => b.opened.atMs - a.opened.atMs)
    .map((batch) =>
      tellingPieces(batch, nowMs).flatMap((piece) => {
        const seen = seenPiece(piece, batch, nowMs, {});
        return seen ? [evidenceOf(seen)] : [];
      }),
    )
    .filter((pieces) => pieces.length > 0)
    .slice(0, LAST_BATCHES)
    .map(batchEvidence);
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
