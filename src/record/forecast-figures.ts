/** When a piece should reach its target, from its green weight, its air and its weighings. An estimate, always a window. */
import { type AirReading, dryingClock, instantOf, thetaAt } from '#core/drying/clock.ts';
import { daysToTarget, type LossBand, lossBand } from '#core/drying/forecast.ts';
import { lossPct } from '#core/drying/loss.ts';
import { dryingPosterior } from '#core/drying/posterior.ts';
import { dryingPrior } from '#core/drying/prior.ts';
import { mixComposition } from '#core/formula/composition.ts';
import { weighOut } from '#core/formula/weigh-out.ts';
import type { Batch } from './batch.ts';
import type { Piece } from './piece.ts';
import { NO_SCALE } from './weigh-out-figures.ts';

export type PieceForecast = {
  readonly p10Ms: number | null;
  readonly p50Ms: number | null;
  readonly p90Ms: number | null;
  /** Chance that this air never brings the piece to its target. */
  readonly neverFraction: number;
  readonly band: (atMs: number) => LossBand;
};

/** Humid, as a warm stage is kept, where nobody read it (published range 90 to 95 %, read second-hand). */
const FERMENT_RH_PCT = 92;

/** Null before stuffing. Works from the first day on, before any weigh-in. */
export function pieceForecast(piece: Piece, batch: Batch, nowMs: number): PieceForecast | null {
  const startMs = piece.stuffed.atMs;
  if (nowMs < startMs) return null;
  const mix = mixOf(batch);
  const planned = plannedAir(batch);
  const clock = dryingClock({
    hungMs: startMs,
    nowMs,
    mix,
    air: fermentAir(batch, planned),
    rests: [],
    planned,
  });
  const prior = dryingPrior({ diameterMm: piece.diameterMm, mix, humidityPct: planned.humidityPct });
  const weighIns = piece.weighings
    .filter(({ atMs, netG }) => atMs > startMs && atMs <= nowMs && netG > 0)
    .map(({ atMs, netG }) => ({
      thetaDays: thetaAt(clock, atMs),
      lossPct: lossPct({ greenG: piece.greenG, nowG: netG }),
    }));
  const posterior = dryingPosterior({ prior, weighIns, course: clock.steps });
  const target = daysToTarget(posterior, { targetLossPct: piece.targetLossPct });
  const at = (thetaDays: number | null) => (thetaDays === null ? null : instantOf(clock, thetaDays));
  return {
    p10Ms: at(target.p10Days),
    p50Ms: at(target.p50Days),
    p90Ms: at(target.p90Days),
    neverFraction: target.neverFraction,
    band: (atMs) => lossBand(posterior, { thetaDays: thetaAt(clock, atMs) }),
  };
}

/** What the air was read as when the pieces were hung, else what the plan says. */
function plannedAir({ plan, hung }: Batch): { chamberC: number; humidityPct: number } {
  return {
    chamberC: hung?.body.airC ?? plan.dryC,
    humidityPct: hung?.body.rhPct ?? plan.dryRhPct,
  };
}

function fermentAir(batch: Batch, planned: { chamberC: number; humidityPct: number }): AirReading[] {
  const readings = batch.room.map(({ atMs, body }) => ({
    fromMs: atMs,
    chamberC: body.roomC,
    humidityPct: body.rhPct ?? FERMENT_RH_PCT,
  }));
  return batch.hung ? [...readings, { fromMs: batch.hung.atMs, ...planned }] : readings;
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
