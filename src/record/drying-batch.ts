/** All that is expected of a batch that hangs: each piece, the first, the last, its pace, its course, the air that its weights speak for. */
import { jointChances } from '#core/drying/batch-window.ts';
import { type Evidence, evidenceTogether } from '#core/drying/belief.ts';
import { batchEvidence, type DryingEvidence } from '#core/drying/evidence.ts';
import type { LossBand } from '#core/drying/forecast.ts';
import type { PaceFinding } from '#core/drying/pace.ts';
import { passes } from '#core/drying/passes.ts';
import { RADIAL_PIECE_COVARIANCE } from '#core/drying/radial-fit.ts';
import type { Batch } from './batch.ts';
import type { KnownAir } from './drying-air.ts';
import { type ImpliedAir, impliedAir, paceNow } from './drying-signs.ts';
import { evidenceOf, mixOf, type PieceSeen, seenPiece } from './forecast-figures.ts';
import type { Piece } from './piece.ts';
import {
  evidenceInAir,
  type PieceFan,
  type PieceInAir,
  type PieceWindow,
  pieceFan,
  pieceInAir,
} from './piece-ahead.ts';
import { pieceFigures } from './piece-figures.ts';
import { spread } from './spread.ts';
import type { SubjectId } from './subject.ts';

/** What the forecast of a batch is made from. Plain: it may be handed to another thread. */
export type BatchGiven = {
  readonly batch: Batch;
  /** Of its chamber, for all of the time that its batches hung there. */
  readonly air: KnownAir | null;
  /** Other batches of the same chamber. */
  readonly others: readonly Batch[];
  readonly nowMs: number;
  /** An instant at which the loss of each piece is asked for too. */
  readonly askedMs?: number;
};

export type PieceAhead = PieceWindow & {
  readonly piece: SubjectId;
  readonly pace: PaceFinding;
  /** At the instant that was asked for; null where none was. */
  readonly asked: LossBand | null;
};
export type FanPoint = LossBand & { readonly atMs: number };
export type CoursePoint = { readonly atMs: number; readonly lossPct: number };
export type BatchWindow = Pick<PieceWindow, 'p10Ms' | 'p50Ms' | 'p90Ms'>;

export type BatchAhead = {
  readonly nowMs: number;
  readonly pieces: readonly PieceAhead[];
  readonly first: BatchWindow;
  readonly all: BatchWindow & { readonly neverFraction: number };
  /** The piece of middle loss, from now on. */
  readonly fan: { readonly piece: SubjectId; readonly points: readonly FanPoint[] } | null;
  /** The same piece on and on, as likely as not: what its water is counted from. */
  readonly course: readonly CoursePoint[];
  /** Null while too little was weighed, or where the air shown lets nothing be told. */
  readonly air: ImpliedAir | null;
  /** Finished batches of this chamber and calibre that sharpened this. */
  readonly batches: number;
};

const DAY_MS = 86_400_000;
const SAME_CALIBRE = 0.15;
const INSTANTS = 24;
const FAN_POINTS = 32;
/** The fan of a piece that its air never brings there goes on for so long. */
const UNREACHED_DAYS = 60;
/** Siblings count for half a piece together: a few of them say it all. */
const SPEAKING_PIECES = 6;
/** A few pieces of an earlier batch stand for it. */
const EARLIER_PIECES = 3;
/** Further than this nobody plans. */
const FURTHEST_DAYS = 400;
/** Days ahead at which its course is told: dense where water is counted by the day, then weeks, then months. */
const COURSE_DAYS = [
  ...[0, 1, 2, 3, 4, 6, 8, 10, 12, 14, 16, 18, 20, 22, 24, 26, 28],
  ...[35, 42, 49, 56, 63, 70, 77, 84, 112, 140, 168, 196, 224, 252, 280, 308, 336, 364, FURTHEST_DAYS],
];
/** The last finished batches of its chamber speak for a batch. */
export const LAST_BATCHES = 5;

/** What is expected of a batch is made from this, whichever page asks. `batches`: the last opened first. */
export function batchGiven(
  batch: Batch,
  { batches, ...known }: Omit<BatchGiven, 'batch' | 'others'> & { readonly batches: readonly Batch[] },
): BatchGiven {
  const chamber = batch.hung?.body.chamber;
  const others = batches.filter(
    ({ id, stage, hung }) =>
      chamber !== undefined && id !== batch.id && stage === 'finished' && hung?.body.chamber === chamber,
  );
  return { ...known, batch, others: others.slice(0, LAST_BATCHES) };
}

/** Null where nothing was stuffed, and once all of it is down. */
export function batchAhead({ batch, air, others, nowMs, askedMs }: BatchGiven): BatchAhead | null {
  const isUp = ({ takenDown }: Piece) => takenDown === null || takenDown.atMs > nowMs;
  const mix = mixOf(batch);
  const seen = batch.pieces.flatMap((piece) => {
    const curve = seenPiece(piece, batch, nowMs, { air, mix });
    const inAir = pieceInAir(piece, batch, nowMs, { air, mix });
    return curve && inAir ? [{ piece, curve, inAir }] : [];
  });
  if (!seen.some(({ piece }) => isUp(piece))) return null;
  const told = spread(seen, SPEAKING_PIECES).map(saying);
  const earlier = earlierBatches({ batch, air, others, nowMs });
  const hanging = seen
    .filter(({ piece }) => isUp(piece))
    .map(({ piece, inAir }) => {
      const siblings = told.filter((one) => one.piece !== piece);
      const fan = pieceFan(
        inAir,
        {
          siblings: siblings.map(({ evidence }) => evidence),
          earlierBatches: earlier.map(({ evidence }) => evidence),
        },
        piece.targetLossPct,
      );
      return { piece, siblings, fan };
    });
  const given = { batch, mix, air, nowMs };
  const pieces = hanging.map(({ piece, siblings, fan }) => ({
    piece: piece.id,
    ...fan.window,
    pace: paceNow({
      piece,
      ...given,
      siblings: siblings.map(({ onCurve }) => onCurve),
      earlierBatches: earlier.map(({ onCurve }) => onCurve),
    }),
    asked: askedMs === undefined ? null : fan.band(askedMs),
  }));
  const middle = middleOf(hanging.map(({ piece }) => piece));
  const drawn = hanging.find(({ piece }) => piece === middle);
  return {
    nowMs,
    pieces,
    ...together(hanging, nowMs),
    fan: drawn ? { piece: drawn.piece.id, points: fanOf(drawn, nowMs) } : null,
    course: drawn ? courseOf(drawn, nowMs) : [],
    air: impliedAir(told, given),
    batches: earlier.length,
  };
}

/** The piece whose loss is in the middle. */
export function middleOf(pieces: readonly Piece[]): Piece | null {
  const sorted = [...pieces].sort((a, b) => (pieceFigures(a).lossPct ?? 0) - (pieceFigures(b).lossPct ?? 0));
  return sorted[Math.floor(sorted.length / 2)] ?? null;
}

type Seen = { readonly piece: Piece; readonly curve: PieceSeen; readonly inAir: PieceInAir };
/** What it says of others: by its curve, for pace and air; by the radial model, for when they are there. */
type Saying = { readonly onCurve: DryingEvidence; readonly evidence: Evidence };
type Told = Seen & Saying;
type Hanging = { readonly piece: Piece; readonly fan: PieceFan };

function saying(seen: Seen): Told {
  return { ...seen, onCurve: evidenceOf(seen.curve), evidence: evidenceInAir(seen.inAir) };
}

/** What finished batches of this chamber and calibre say. */
function earlierBatches({ batch, air, others, nowMs }: BatchGiven): Saying[] {
  const calibresMm = batch.pieces.map(({ diameterMm }) => diameterMm);
  const isNear = ({ diameterMm }: Piece) =>
    calibresMm.some((own) => Math.abs(Math.log(diameterMm / own)) <= SAME_CALIBRE);
  return others
    .filter(({ stage, id }) => stage === 'finished' && id !== batch.id)
    .map((other) => {
      const mix = mixOf(other);
      const seen = other.pieces.filter(isNear).flatMap((piece) => {
        const endMs = piece.takenDown?.atMs ?? nowMs;
        const curve = endMs <= nowMs ? seenPiece(piece, other, endMs, { air, mix }) : null;
        const inAir = endMs <= nowMs ? pieceInAir(piece, other, endMs, { air, mix }) : null;
        return curve && inAir && curve.weighIns.length > 0 ? [{ piece, curve, inAir }] : [];
      });
      return spread(seen, EARLIER_PIECES);
    })
    .filter((pieces) => pieces.length > 0)
    .map((pieces) => {
      const told = pieces.map(saying);
      const evidence = told.map((one) => one.evidence);
      return {
        onCurve: batchEvidence(told.map(({ onCurve }) => onCurve)),
        evidence: evidenceTogether(evidence, RADIAL_PIECE_COVARIANCE),
      };
    });
}

/** The first and the last of those that hang: what is at target weight by the scale is there. */
function together(hanging: readonly Hanging[], nowMs: number): Pick<BatchAhead, 'first' | 'all'> {
  const endMs = nowMs + FURTHEST_DAYS * DAY_MS;
  const lastMs = Math.max(
    ...hanging.map(({ fan: { window } }) => window.p90Ms ?? (window.p50Ms ?? endMs) + 120 * DAY_MS),
  );
  const spanMs = Math.max(DAY_MS, Math.min(endMs, nowMs + 1.5 * (lastMs - nowMs)) - nowMs);
  const instants = Array.from({ length: INSTANTS + 1 }, (_, at) => nowMs + spanMs * (at / INSTANTS) ** 1.5);
  const isThere = ({ piece }: Hanging) => pieceFigures(piece).atTarget;
  const chances = hanging.map((one) => {
    const { piece, fan } = one;
    return instants.map((atMs) => (isThere(one) ? 1 : fan.chance({ atMs, lossPct: piece.targetLossPct })));
  });
  const joint = jointChances(chances);
  const window = (reachedFraction: readonly number[]): BatchWindow => {
    const at = (level: number) => passes({ x: instants, values: reachedFraction, level });
    return { p10Ms: at(0.1), p50Ms: at(0.5), p90Ms: at(0.9) };
  };
  const never = jointChances(hanging.map((one) => [isThere(one) ? 1 : 1 - one.fan.window.neverFraction]));
  return {
    first: window(joint.firstFraction),
    all: { ...window(joint.allFraction), neverFraction: 1 - (never.allFraction[0] ?? 0) },
  };
}

function fanOf({ piece, fan }: Hanging, nowMs: number): FanPoint[] {
  const { p50Ms, p90Ms } = fan.window;
  const startMs = piece.stuffed.atMs;
  const middleMs = p50Ms ?? nowMs + UNREACHED_DAYS * DAY_MS;
  const wishMs = Math.min(p90Ms ?? Infinity, startMs + 1.6 * (middleMs - startMs));
  const endMs = Math.max(startMs + 14 * DAY_MS, nowMs + 0.15 * (nowMs - startMs), wishMs);
  return Array.from({ length: FAN_POINTS + 1 }, (_, at) => {
    const atMs = nowMs + ((endMs - nowMs) * at) / FAN_POINTS;
    return { atMs, ...fan.band(atMs) };
  });
}

function courseOf({ fan }: Hanging, nowMs: number): CoursePoint[] {
  return COURSE_DAYS.map((day) => {
    const atMs = nowMs + day * DAY_MS;
    return { atMs, lossPct: fan.band(atMs).p50Pct };
  });
}

/** Between the points of a course; before and after it as at its ends. */
export function lossOn(course: readonly CoursePoint[], atMs: number): number {
  const after = course.find((point) => point.atMs >= atMs) ?? course.at(-1);
  if (after === undefined) throw new RangeError('lossOn: course requires at least one point, got none');
  const before = course.findLast((point) => point.atMs <= atMs) ?? after;
  if (after.atMs <= before.atMs) return after.lossPct;
  const share = (atMs - before.atMs) / (after.atMs - before.atMs);
  return before.lossPct + share * (after.lossPct - before.lossPct);
}
