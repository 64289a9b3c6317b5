/** What pieces are expected to have lost at a return, by what was known on leaving; and what was found. Estimates but for what was found. */
import { lossPct, lossSpread } from '#core/drying/loss.ts';
import type { Batch } from './batch.ts';
import type { BatchAhead, PieceAhead } from './drying-batch.ts';
import type { BodyOf } from './kinds.ts';
import type { Piece } from './piece.ts';

type Times = Readonly<Pick<BodyOf<'absence-planned'>, 'fromMs' | 'toMs'>>;

export type PieceAway = {
  readonly piece: Piece;
  /** Null while it was not weighed since it was stuffed. */
  readonly leavingG: number | null;
  readonly leavingPct: number | null;
  /** Eight in ten lie between the low and the high loss. */
  readonly lowPct: number;
  readonly middlePct: number;
  readonly highPct: number;
  readonly foundG: number | null;
  readonly foundPct: number | null;
  readonly found: 'inside' | 'less' | 'more' | null;
  /** As likely as not it reaches its target before the return. */
  readonly passes: boolean;
};

/** Hung before leaving and not yet down then: what the absence is about. */
export function piecesAway(batch: Batch, { fromMs }: Times, nowMs: number): Piece[] {
  const knownMs = Math.min(fromMs, nowMs);
  if (batch.hung === null || batch.hung.atMs > knownMs) return [];
  return batch.pieces.filter(
    ({ stuffed, status, takenDown }) =>
      stuffed.atMs <= knownMs && status !== 'bagged' && (takenDown === null || takenDown.atMs > knownMs),
  );
}

/** `told`: what was expected of the piece at the return, by what was known on leaving. */
export function pieceAway(
  piece: Piece,
  { asked, p50Ms }: Pick<PieceAhead, 'asked' | 'p50Ms'>,
  { fromMs, toMs, nowMs }: Times & { nowMs: number },
): PieceAway | null {
  if (asked === null) return null;
  const knownMs = Math.min(fromMs, nowMs);
  const { greenG } = piece;
  const weighed = piece.weighings.filter(({ netG }) => netG > 0);
  const leavingG = weighed.findLast(({ atMs }) => atMs <= knownMs)?.netG ?? null;
  const foundG = weighed.find(({ atMs }) => atMs >= toMs)?.netG ?? null;
  const lost = (nowG: number | null) => (nowG === null ? null : lossPct({ greenG, nowG }));
  const foundPct = lost(foundG);
  const { p10Pct, p50Pct, p90Pct } = asked;
  return {
    piece,
    leavingG,
    leavingPct: lost(leavingG),
    lowPct: p10Pct,
    middlePct: p50Pct,
    highPct: p90Pct,
    foundG,
    foundPct,
    found: foundPct === null ? null : foundPct < p10Pct ? 'less' : foundPct > p90Pct ? 'more' : 'inside',
    passes: p50Ms !== null && p50Ms < toMs,
  };
}

/** All of a batch that is away, as far as anything was expected of it. */
export function batchAway(batch: Batch, ahead: BatchAhead, given: Times & { nowMs: number }): PieceAway[] {
  return piecesAway(batch, given, given.nowMs).flatMap((piece) => {
    const told = ahead.pieces.find((each) => each.piece === piece.id);
    const away = told && pieceAway(piece, told, given);
    return away ? [away] : [];
  });
}

/** Pieces of one calibre together; thin and thick ones have no middle worth having. */
export type CalibreAway = {
  readonly diameterMm: number;
  readonly pieces: readonly PieceAway[];
  readonly leavingPct: number | null;
  readonly lowPct: number;
  readonly middlePct: number;
  readonly highPct: number;
  readonly passing: readonly PieceAway[];
  readonly foundPct: number | null;
  readonly found: Readonly<Record<NonNullable<PieceAway['found']>, number>>;
};

export function calibresAway(pieces: readonly PieceAway[]): CalibreAway[] {
  const calibres = [...new Set(pieces.map(({ piece }) => piece.diameterMm))].sort((a, b) => a - b);
  return calibres.map((diameterMm) => {
    const own = pieces.filter(({ piece }) => piece.diameterMm === diameterMm);
    const count = (found: PieceAway['found']) => own.filter((each) => each.found === found).length;
    const middle = (all: readonly (number | null)[]) =>
      lossSpread(all.filter((each) => each !== null))?.medianPct ?? null;
    return {
      diameterMm,
      pieces: own,
      leavingPct: middle(own.map(({ leavingPct }) => leavingPct)),
      lowPct: Math.min(...own.map(({ lowPct }) => lowPct)),
      middlePct: middle(own.map(({ middlePct }) => middlePct)) ?? 0,
      highPct: Math.max(...own.map(({ highPct }) => highPct)),
      passing: own.filter(({ passes }) => passes),
      foundPct: middle(own.map(({ foundPct }) => foundPct)),
      found: { inside: count('inside'), less: count('less'), more: count('more') },
    };
  });
}
