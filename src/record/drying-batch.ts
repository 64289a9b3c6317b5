/** All that is expected of a batch that hangs: each piece, the first, the last, its pace, its course, the air that its weights speak for. Long, since all of it rests on the same pieces, seen once. */
import { jointChances, passes } from '#core/drying/batch-window.ts';
import { instantOf, thetaAt } from '#core/drying/clock.ts';
import { batchEvidence, type DryingEvidence, informedPrior } from '#core/drying/evidence.ts';
import { type LossBand, lossBand, lossChance } from '#core/drying/forecast.ts';
import { type ImpliedHumidity, impliedHumidity } from '#core/drying/implied-humidity.ts';
import { lossPct } from '#core/drying/loss.ts';
import { type PaceFinding, type PaceWeighIn, paceOf, SOUND_AIR_PCT } from '#core/drying/pace.ts';
import type { DryingPosterior } from '#core/drying/posterior.ts';
import { type MixFractions, mixAw } from '#core/drying/water-activity.ts';
import type { Batch } from './batch.ts';
import { type KnownAir, plannedAir, shownHumidityPct } from './drying-air.ts';
import {
  evidenceOf,
  mixOf,
  type PieceSeen,
  type PieceWindow,
  posteriorOf,
  seenPiece,
  weighingsUpTo,
  windowOf,
} from './forecast-figures.ts';
import type { Piece, Weighing } from './piece.ts';
import { pieceFigures } from './piece-figures.ts';
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
  readonly air: (ImpliedHumidity & { readonly shownPct: number }) | null;
  /** Finished batches of this chamber and calibre that sharpened this. */
  readonly batches: number;
};

const DAY_MS = 86_400_000;
const SAME_CALIBRE = 0.15;
const INSTANTS = 24;
const FAN_POINTS = 32;
/** Further than this nobody plans. */
const FURTHEST_DAYS = 400;
/** Days ahead at which its course is told: dense where water is counted by the day, then weeks, then months. */
const COURSE_DAYS = [
  ...[0, 1, 2, 3, 4, 6, 8, 10, 12, 14, 16, 18, 20, 22, 24, 26, 28],
  ...[35, 42, 49, 56, 63, 70, 77, 84, 112, 140, 168, 196, 224, 252, 280, 308, 336, 364, FURTHEST_DAYS],
];
/** The last finished batches of its chamber speak for a batch. */
export const LAST_BATCHES = 5;
/** With fewer weighings of a batch in the chamber its weights say nothing of the air. */
const LEAST_WEIGHINGS = 2;
/** So near to hanging a weighing counts as the one on hanging. */
const ON_HANGING_MS = DAY_MS / 2;

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
  const told = batch.pieces.flatMap((piece) => {
    const seen = seenPiece(piece, batch, nowMs, { air, mix });
    return seen ? [{ piece, seen, evidence: evidenceOf(seen) }] : [];
  });
  if (!told.some(({ piece }) => isUp(piece))) return null;
  const earlierBatches = earlierEvidence({ batch, air, others, nowMs });
  const hanging = told
    .filter(({ piece }) => isUp(piece))
    .map((one) => {
      const siblings = told.filter(({ piece }) => piece !== one.piece).map(({ evidence }) => evidence);
      return { ...one, siblings, posterior: posteriorOf(one.seen, { siblings, earlierBatches }) };
    });
  const pieces = hanging.map(({ piece, seen, siblings, posterior }) => ({
    piece: piece.id,
    ...windowOf(seen, posterior, piece.targetLossPct),
    pace: paceNow({ piece, batch, mix, air, nowMs, siblings, earlierBatches }),
    asked: askedMs === undefined ? null : lossBand(posterior, { thetaDays: thetaAt(seen.clock, askedMs) }),
  }));
  const middle = middleOf(hanging.map(({ piece }) => piece));
  const drawn = hanging.find(({ piece }) => piece === middle);
  return {
    nowMs,
    pieces,
    ...together(hanging, pieces, nowMs),
    fan: drawn ? { piece: drawn.piece.id, points: fanOf(drawn, nowMs) } : null,
    course: drawn ? courseOf(drawn, nowMs) : [],
    air: impliedAir({ batch, mix, air, nowMs, told }),
    batches: earlierBatches.length,
  };
}

/** The piece whose loss is in the middle. */
export function middleOf(pieces: readonly Piece[]): Piece | null {
  const sorted = [...pieces].sort((a, b) => (pieceFigures(a).lossPct ?? 0) - (pieceFigures(b).lossPct ?? 0));
  return sorted[Math.floor(sorted.length / 2)] ?? null;
}

type Told = { readonly piece: Piece; readonly seen: PieceSeen; readonly evidence: DryingEvidence };
type Hanging = Pick<Told, 'piece' | 'seen'> & { readonly posterior: DryingPosterior };

function earlierEvidence({ batch, air, others, nowMs }: BatchGiven): DryingEvidence[] {
  const calibresMm = batch.pieces.map(({ diameterMm }) => diameterMm);
  const isNear = ({ diameterMm }: Piece) =>
    calibresMm.some((own) => Math.abs(Math.log(diameterMm / own)) <= SAME_CALIBRE);
  return others
    .filter(({ stage, id }) => stage === 'finished' && id !== batch.id)
    .map((other) => {
      const mix = mixOf(other);
      return other.pieces.filter(isNear).flatMap((piece) => {
        const endMs = piece.takenDown?.atMs ?? nowMs;
        const seen = endMs <= nowMs ? seenPiece(piece, other, endMs, { air, mix }) : null;
        return seen && seen.weighIns.length > 0 ? [evidenceOf(seen)] : [];
      });
    })
    .filter((evidence) => evidence.length > 0)
    .map(batchEvidence);
}

function paceNow({
  piece,
  batch,
  mix,
  air,
  nowMs,
  siblings,
  earlierBatches,
}: {
  piece: Piece;
  batch: Batch;
  mix: MixFractions;
  air: KnownAir | null;
  nowMs: number;
  siblings: readonly DryingEvidence[];
  earlierBatches: readonly DryingEvidence[];
}): PaceFinding {
  const seen = seenPiece(piece, batch, nowMs, { air, mix }, SOUND_AIR_PCT);
  if (seen === null)
    throw new RangeError('paceNow: piece requires to be stuffed by now, got one that is not');
  const { prior, clock } = seen;
  const weighIn = ({ atMs, netG }: Pick<Weighing, 'atMs' | 'netG'>): PaceWeighIn => ({
    dryingDays: driedDays(piece, atMs),
    thetaDays: thetaAt(clock, atMs),
    lossPct: lossPct({ greenG: piece.greenG, nowG: netG }),
  });
  const start = weighingOnHanging(piece, batch, nowMs);
  return paceOf({
    prior,
    informed: informedPrior({ prior, siblings, earlierBatches }),
    weighIns: weighingsUpTo(piece, nowMs).map(weighIn),
    onHanging: start && weighIn(start),
    mix,
    air: { ...plannedAir(batch, air, nowMs), humidityPct: shownHumidityPct(batch, air, nowMs) },
    diameterMm: piece.diameterMm,
    targetLossPct: piece.targetLossPct,
  });
}

/** The weighing nearest to hanging, within half a day; green weight where it was hung on the day of stuffing. */
function weighingOnHanging(
  piece: Piece,
  { hung }: Batch,
  nowMs: number,
): Pick<Weighing, 'atMs' | 'netG'> | null {
  if (hung === null) return null;
  const awayMs = (one: { atMs: number }) => Math.abs(one.atMs - hung.atMs);
  const green = { atMs: piece.stuffed.atMs, netG: piece.greenG };
  const nearest = [green, ...weighingsUpTo(piece, nowMs)].reduce((near, one) =>
    awayMs(one) < awayMs(near) ? one : near,
  );
  return awayMs(nearest) <= ON_HANGING_MS ? nearest : null;
}

/** Days in the air since stuffing, bags and other rests left out. */
function driedDays({ rests, stuffed }: Piece, toMs: number): number {
  const restMs = rests.reduce(
    (sum, rest) => sum + Math.max(0, Math.min(toMs, rest.toMs ?? toMs) - rest.fromMs),
    0,
  );
  return (toMs - stuffed.atMs - restMs) / DAY_MS;
}

function impliedAir({
  batch,
  mix,
  air,
  nowMs,
  told,
}: {
  batch: Batch;
  mix: MixFractions;
  air: KnownAir | null;
  nowMs: number;
  told: readonly Told[];
}): BatchAhead['air'] {
  const hungMs = batch.hung?.atMs ?? nowMs;
  const weighed = told.filter(
    ({ piece }) => weighingsUpTo(piece, nowMs).filter(({ atMs }) => atMs > hungMs).length >= LEAST_WEIGHINGS,
  );
  const [first] = weighed;
  const shownPct = shownHumidityPct(batch, air, nowMs);
  // Under 40 % nobody dries sausage, and near the piece's own water activity nothing is to be told.
  const isTold = shownPct >= 40 && shownPct < 100 * mixAw({ mix, lossPct: 0 }) - 1;
  if (first === undefined || !isTold) return null;
  const pieces = weighed.map(({ evidence }) => evidence);
  return { ...impliedHumidity({ prior: first.seen.prior, pieces, mix, dialPct: shownPct }), shownPct };
}

/** The first and the last of those that hang: what is at target weight by the scale is there. */
function together(
  hanging: readonly Hanging[],
  windows: readonly PieceWindow[],
  nowMs: number,
): Pick<BatchAhead, 'first' | 'all'> {
  const endMs = nowMs + FURTHEST_DAYS * DAY_MS;
  const lastMs = Math.max(...windows.map(({ p50Ms, p90Ms }) => p90Ms ?? (p50Ms ?? endMs) + 120 * DAY_MS));
  const spanMs = Math.max(DAY_MS, Math.min(endMs, nowMs + 1.5 * (lastMs - nowMs)) - nowMs);
  const instants = Array.from({ length: INSTANTS + 1 }, (_, at) => nowMs + spanMs * (at / INSTANTS) ** 1.5);
  const isThere = ({ piece }: Hanging) => pieceFigures(piece).atTarget;
  const chances = hanging.map((one) => {
    if (isThere(one)) return instants.map(() => 1);
    const { piece, seen, posterior } = one;
    return instants.map((atMs) => {
      const thetaDays = thetaAt(seen.clock, atMs);
      return thetaDays > 0 ? lossChance(posterior, { thetaDays, lossPct: piece.targetLossPct }) : 0;
    });
  });
  const joint = jointChances(chances);
  const window = (reachedFraction: readonly number[]): BatchWindow => {
    const at = (level: number) => passes({ atMs: instants, reachedFraction, level });
    return { p10Ms: at(0.1), p50Ms: at(0.5), p90Ms: at(0.9) };
  };
  const never = jointChances(
    hanging.map((one, at) => [isThere(one) ? 1 : 1 - (windows[at]?.neverFraction ?? 1)]),
  );
  return {
    first: window(joint.firstFraction),
    all: { ...window(joint.allFraction), neverFraction: 1 - (never.allFraction[0] ?? 0) },
  };
}

function fanOf({ seen, posterior, piece }: Hanging, nowMs: number): FanPoint[] {
  const { p50Ms, p90Ms } = windowOf(seen, posterior, piece.targetLossPct);
  const startMs = piece.stuffed.atMs;
  const middleMs = p50Ms ?? instantOf(seen.clock, 2 * seen.prior.tauDays) ?? nowMs + 60 * DAY_MS;
  const wishMs = Math.min(p90Ms ?? Infinity, startMs + 1.6 * (middleMs - startMs));
  const endMs = Math.max(startMs + 14 * DAY_MS, nowMs + 0.15 * (nowMs - startMs), wishMs);
  return Array.from({ length: FAN_POINTS + 1 }, (_, at) => {
    const atMs = nowMs + ((endMs - nowMs) * at) / FAN_POINTS;
    return { atMs, ...lossBand(posterior, { thetaDays: thetaAt(seen.clock, atMs) }) };
  });
}

function courseOf({ seen, posterior }: Hanging, nowMs: number): CoursePoint[] {
  return COURSE_DAYS.map((day) => {
    const atMs = nowMs + day * DAY_MS;
    return { atMs, lossPct: lossBand(posterior, { thetaDays: thetaAt(seen.clock, atMs) }).p50Pct };
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
