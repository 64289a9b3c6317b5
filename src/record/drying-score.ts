/** How the app's own windows did: each is told again from what was written by then, and held against what came of it. */
import { lossPct } from '#core/drying/loss.ts';
import { type PastWindow, scoreWindows, type WindowScore } from '#core/drying/window-score.ts';
import type { Batch } from './batch.ts';
import type { KnownAir } from './drying-air.ts';
import { mixOf, weighingsUpTo } from './forecast-figures.ts';
import type { Piece } from './piece.ts';
import { evidenceInAir, pieceFan, pieceInAir } from './piece-ahead.ts';
import { spread } from './spread.ts';

const DAY_MS = 86_400_000;
/** The last batches, a few pieces and rounds of each: enough to tell four in five from half. */
const LAST_BATCHES = 4;
const PIECES = 3;
const ROUNDS = 3;

export type FinishedIn = { readonly batch: Batch; readonly air: KnownAir | null };

/** Null while no piece was ever weighed past its target. */
export function ownScore(finished: readonly FinishedIn[]): WindowScore | null {
  return scoreWindows(
    finished
      .toSorted((a, b) => b.batch.opened.atMs - a.batch.opened.atMs)
      .slice(0, LAST_BATCHES)
      .flatMap(pastWindows),
  );
}

function pastWindows({ batch, air }: FinishedIn): PastWindow[] {
  const mix = mixOf(batch);
  const hungMs = batch.hung?.atMs ?? Infinity;
  return batch.pieces.slice(0, PIECES).flatMap((piece) => {
    const reachedMs = reachedTarget(piece);
    if (reachedMs === null) return [];
    const rounds = piece.weighings.filter(({ atMs }) => atMs >= hungMs && atMs < reachedMs);
    return spread(rounds, ROUNDS).flatMap(({ atMs }) => {
      const seen = pieceInAir(piece, batch, atMs, { air, mix });
      if (seen === null) return [];
      const siblings = batch.pieces
        .slice(0, PIECES)
        .filter((other) => other !== piece)
        .flatMap((other) => pieceInAir(other, batch, atMs, { air, mix }) ?? [])
        .map(evidenceInAir);
      const { window } = pieceFan(seen, { siblings, earlierBatches: [] }, piece.targetLossPct);
      const { p10Ms, p50Ms, p90Ms } = window;
      if (p10Ms === null || p50Ms === null) return [];
      const days = (ms: number) => (ms - piece.stuffed.atMs) / DAY_MS;
      return [
        {
          p10Days: days(p10Ms),
          p50Days: days(p50Ms),
          p90Days: p90Ms === null ? null : days(p90Ms),
          reachedDays: days(reachedMs),
        },
      ];
    });
  });
}

/** Between the last weighing short of the target and the first past it, on a straight line; null if it was never weighed past it. */
export function reachedTarget(piece: Piece): number | null {
  const { greenG, targetLossPct, stuffed } = piece;
  let before = { atMs: stuffed.atMs, lost: 0 };
  for (const { atMs, netG } of weighingsUpTo(piece, Infinity)) {
    const lost = lossPct({ greenG, nowG: netG });
    if (lost >= targetLossPct)
      return before.atMs + ((atMs - before.atMs) * (targetLossPct - before.lost)) / (lost - before.lost);
    before = { atMs, lost };
  }
  return null;
}
