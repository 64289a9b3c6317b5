import { type Evidence, evidenceTogether, offsetBelief } from '#core/drying/belief.ts';
import { dryingClock, thetaAt } from '#core/drying/clock.ts';
import { type DryingEvidence, pieceEvidence } from '#core/drying/evidence.ts';
import { DIAL_SD_PCT } from '#core/drying/implied-humidity.ts';
import { type DryingWeighIn, dryingPosterior } from '#core/drying/posterior.ts';
import { type DryingPrior, dryingPrior } from '#core/drying/prior.ts';
import { fanWindow, radialFan } from '#core/drying/radial-fan.ts';
import {
  RADIAL_PIECE_COVARIANCE,
  type RadialPiece,
  type RadialWeighIn,
  radialFit,
  radialSpread,
} from '#core/drying/radial-fit.ts';
import { LOGGER_SD_PCT } from '#record/drying-air.ts';
import type { SimulatedBatch, SimulatedPiece } from './drying-makers.ts';

/** A simulated batch seen on one day through the drying core, as the app would. */

const DAY_MS = 86_400_000;
const atMs = (day: number) => Math.round(day * DAY_MS);

/** `days` null: not with that chance. */
export type Given = { readonly p10: number | null; readonly p50: number | null; readonly p90: number | null };

export function lossOf(piece: SimulatedPiece, weightG: number): number {
  return 100 * (1 - weightG / piece.greenG);
}

/** What is logged up to that day, then what the dial is set to. */
function airOn(batch: SimulatedBatch, day: number) {
  const current = batch.programme.findLast(({ fromDay }) => fromDay <= day);
  if (!batch.log || current === undefined) return batch.programme;
  return [
    ...batch.log.filter(({ fromDay }) => fromDay < day),
    { ...current, fromDay: day },
    ...batch.programme.filter(({ fromDay }) => fromDay > day),
  ];
}

function clockOn(batch: SimulatedBatch, day: number) {
  const planned = batch.programme.at(-1);
  if (planned === undefined) throw new RangeError('clockOn: programme requires a step, got none');
  return dryingClock({
    hungMs: 0,
    nowMs: atMs(Math.max(day, planned.fromDay)),
    mix: batch.toldMix,
    air: airOn(batch, day).map(({ fromDay, ...step }) => ({ ...step, fromMs: atMs(fromDay) })),
    rests: [],
    planned,
  });
}

export type Seen = {
  readonly clock: ReturnType<typeof clockOn>;
  readonly prior: DryingPrior;
  readonly weighIns: readonly DryingWeighIn[];
};

export function seen(batch: SimulatedBatch, piece: SimulatedPiece, day: number): Seen {
  const clock = clockOn(batch, day);
  const prior = dryingPrior({
    diameterMm: piece.toldDiameterMm,
    mix: batch.toldMix,
    humidityPct: clock.referenceHumidityPct,
  });
  const weighIns = piece.weighings
    .filter((weighing) => weighing.day <= day)
    .map((weighing) => ({
      thetaDays: thetaAt(clock, atMs(weighing.day)),
      lossPct: lossOf(piece, weighing.weightG),
    }));
  return { clock, prior, weighIns };
}

export function evidenceOf({ clock, prior, weighIns }: Seen): DryingEvidence {
  const posterior = dryingPosterior({ prior, weighIns, course: clock.steps });
  return pieceEvidence({ prior, posterior, weighIns });
}

const doubtOf = ({ log }: SimulatedBatch) => ({ humiditySdPct: log === null ? DIAL_SD_PCT : LOGGER_SD_PCT });
const spreadOf = (batch: SimulatedBatch) => radialSpread(doubtOf(batch));

export function told(
  batch: SimulatedBatch,
  piece: SimulatedPiece,
  day: number,
): { piece: RadialPiece; weighIns: RadialWeighIn[] } {
  return {
    piece: {
      diameterMm: piece.toldDiameterMm,
      mix: batch.toldMix,
      air: airOn(batch, day),
      hungDay: batch.fermentDays,
      ...doubtOf(batch),
    },
    weighIns: piece.weighings
      .filter((weighing) => weighing.day <= day)
      .map((weighing) => ({ day: weighing.day, lossPct: lossOf(piece, weighing.weightG) })),
  };
}

/** What one piece says of what it shares with others. */
export function evidenceOn(batch: SimulatedBatch, piece: SimulatedPiece, day: number): Evidence {
  const believed = offsetBelief({ spread: spreadOf(batch), siblings: [], earlierBatches: [] });
  return radialFit({ ...told(batch, piece, day), believed }).evidence;
}

export function windowOn(
  batch: SimulatedBatch,
  piece: SimulatedPiece,
  day: number,
  { siblings = [], earlierBatches = [] }: { siblings?: Evidence[]; earlierBatches?: Evidence[] } = {},
): Given {
  const seen = told(batch, piece, day);
  const believed = offsetBelief({ spread: spreadOf(batch), siblings, earlierBatches });
  const { targetLossPct } = piece;
  const fit = radialFit({ ...seen, believed });
  const fan = radialFan({ piece: seen.piece, believed: fit, fromDay: day, targetLossPct });
  const { p10Days, p50Days, p90Days } = fanWindow(fan, { targetLossPct });
  return { p10: p10Days, p50: p50Days, p90: p90Days };
}

/** A finished batch: all its weighings up to the last piece's target. */
export function finishedBatch(batch: SimulatedBatch): Evidence {
  const endDay = Math.max(...batch.pieces.map(({ reachedDay }) => reachedDay ?? 120));
  const pieces = batch.pieces.map((piece) => evidenceOn(batch, piece, endDay));
  return evidenceTogether(pieces, RADIAL_PIECE_COVARIANCE);
}
