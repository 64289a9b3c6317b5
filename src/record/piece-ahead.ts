/** When a piece that hangs should reach its target: the radial model in its own air, fitted to its weighings. An estimate. */
import { driedDays } from '#core/drying/air-days.ts';
import { type Evidence, offsetBelief, type Spread } from '#core/drying/belief.ts';
import type { LossBand } from '#core/drying/forecast.ts';
import { lossPct } from '#core/drying/loss.ts';
import { fanBand, fanChance, fanWindow, type RadialFan, radialFan } from '#core/drying/radial-fan.ts';
import { type RadialPiece, type RadialWeighIn, radialFit, radialSpread } from '#core/drying/radial-fit.ts';
import type { MixFractions } from '#core/drying/water-activity.ts';
import type { Batch } from './batch.ts';
import { dailyAir, humiditySdPct, type KnownAir } from './drying-air.ts';
import { weighingsUpTo } from './forecast-figures.ts';
import type { Piece } from './piece.ts';

const DAY_MS = 86_400_000;

/** A piece as it stood at an instant, through the radial model: only what was written of the time before. */
export type PieceInAir = {
  readonly radial: RadialPiece;
  readonly weighIns: readonly RadialWeighIn[];
  readonly spread: Spread;
  readonly nowMs: number;
  readonly nowDay: number;
};

export type PieceWindow = {
  readonly p10Ms: number | null;
  readonly p50Ms: number | null;
  readonly p90Ms: number | null;
  /** Chance that this air never brings the piece to its target. */
  readonly neverFraction: number;
};

export type PieceFan = {
  readonly window: PieceWindow;
  /** From now on. */
  readonly band: (atMs: number) => LossBand;
  readonly chance: (given: { readonly atMs: number; readonly lossPct: number }) => number;
};

/** Null before stuffing. */
export function pieceInAir(
  piece: Piece,
  batch: Batch,
  nowMs: number,
  { air, mix }: { air: KnownAir | null; mix: MixFractions },
): PieceInAir | null {
  const { stuffed, rests, greenG, diameterMm } = piece;
  if (nowMs < stuffed.atMs) return null;
  const day = (atMs: number) => driedDays({ startMs: stuffed.atMs, rests }, atMs);
  const nowDay = day(nowMs);
  const hungMs = batch.hung?.atMs ?? nowMs;
  const doubt = { humiditySdPct: humiditySdPct(batch, air, nowMs) };
  return {
    radial: {
      diameterMm,
      mix,
      air: dailyAir(batch, piece, air, nowMs),
      hungDay: Math.max(0, day(Math.min(hungMs, nowMs))),
      ...doubt,
    },
    weighIns: weighingsUpTo(piece, nowMs).map(({ atMs, netG }) => ({
      day: day(atMs),
      lossPct: lossPct({ greenG, nowG: netG }),
    })),
    spread: radialSpread(doubt),
    nowMs,
    nowDay,
  };
}

/** What the weighings of one piece say of what it shares with others. */
export function evidenceInAir({ radial, weighIns, spread }: PieceInAir): Evidence {
  const believed = offsetBelief({ spread, siblings: [], earlierBatches: [] });
  return radialFit({ piece: radial, believed, weighIns }).evidence;
}

/** While the piece rests the days count from now: the caller says that the clock stands. */
export function pieceFan(
  { radial, weighIns, spread, nowMs, nowDay }: PieceInAir,
  known: { readonly siblings: readonly Evidence[]; readonly earlierBatches: readonly Evidence[] },
  targetLossPct: number,
): PieceFan {
  const believed = radialFit({ piece: radial, believed: offsetBelief({ spread, ...known }), weighIns });
  const fan: RadialFan = radialFan({ piece: radial, believed, fromDay: nowDay, targetLossPct });
  const dayAt = (atMs: number) => nowDay + (atMs - nowMs) / DAY_MS;
  const instantOf = (day: number | null) => (day === null ? null : nowMs + (day - nowDay) * DAY_MS);
  const { p10Days, p50Days, p90Days, neverFraction } = fanWindow(fan, { targetLossPct });
  return {
    window: {
      p10Ms: instantOf(p10Days),
      p50Ms: instantOf(p50Days),
      p90Ms: instantOf(p90Days),
      neverFraction,
    },
    band: (atMs) => fanBand(fan, { day: dayAt(atMs) }),
    chance: ({ atMs, ...loss }) => fanChance(fan, { day: dayAt(atMs), ...loss }),
  };
}
