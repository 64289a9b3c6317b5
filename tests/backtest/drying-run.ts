import { dryingClock, instantOf, thetaAt } from '#core/drying/clock.ts';
import { batchEvidence, type DryingEvidence, informedPrior, pieceEvidence } from '#core/drying/evidence.ts';
import { daysToTarget } from '#core/drying/forecast.ts';
import { type DryingWeighIn, dryingPosterior } from '#core/drying/posterior.ts';
import { type DryingPrior, dryingPrior } from '#core/drying/prior.ts';
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
export function clockOn(batch: SimulatedBatch, day: number) {
  const planned = batch.programme.at(-1);
  if (planned === undefined) throw new RangeError('clockOn: programme requires a step, got none');
  const current = batch.programme.findLast(({ fromDay }) => fromDay <= day) ?? planned;
  const air = batch.log
    ? [
        ...batch.log.filter(({ fromDay }) => fromDay < day),
        { ...current, fromDay: day },
        ...batch.programme.filter(({ fromDay }) => fromDay > day),
      ]
    : batch.programme;
  return dryingClock({
    hungMs: 0,
    nowMs: atMs(Math.max(day, planned.fromDay)),
    mix: batch.toldMix,
    air: air.map(({ fromDay, ...step }) => ({ ...step, fromMs: atMs(fromDay) })),
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

export function windowOf(
  view: Seen,
  targetLossPct: number,
  {
    siblings = [],
    earlierBatches = [],
  }: { siblings?: DryingEvidence[]; earlierBatches?: DryingEvidence[] } = {},
): Given {
  const { clock, weighIns } = view;
  const prior = informedPrior({ prior: view.prior, siblings, earlierBatches });
  const window = daysToTarget(dryingPosterior({ prior, weighIns, course: clock.steps }), { targetLossPct });
  const day = (thetaDays: number | null) => {
    const instantMs = thetaDays === null ? null : instantOf(clock, thetaDays);
    return instantMs === null ? null : instantMs / DAY_MS;
  };
  return { p10: day(window.p10Days), p50: day(window.p50Days), p90: day(window.p90Days) };
}

/** A finished batch: all its weighings up to the last piece's target. */
export function finishedBatch(batch: SimulatedBatch): DryingEvidence {
  const endDay = Math.max(...batch.pieces.map(({ reachedDay }) => reachedDay ?? 120));
  return batchEvidence(batch.pieces.map((piece) => evidenceOf(seen(batch, piece, endDay))));
}
