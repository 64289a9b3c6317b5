/** What the weights of a hanging batch give away besides its days: a rim that dries too fast, and the air that there must be. */
import { driedDays } from '#core/drying/air-days.ts';
import { thetaAt } from '#core/drying/clock.ts';
import { type DryingEvidence, informedPrior } from '#core/drying/evidence.ts';
import { type ImpliedHumidity, impliedHumidity } from '#core/drying/implied-humidity.ts';
import { lossPct } from '#core/drying/loss.ts';
import { type PaceFinding, type PaceWeighIn, paceOf, SOUND_AIR_PCT } from '#core/drying/pace.ts';
import { type MixFractions, mixAw } from '#core/drying/water-activity.ts';
import type { Batch } from './batch.ts';
import { type KnownAir, plannedAir, shownHumidityPct } from './drying-air.ts';
import { type PieceSeen, seenPiece, weighingsUpTo } from './forecast-figures.ts';
import type { Piece, Weighing } from './piece.ts';

export type ImpliedAir = ImpliedHumidity & { readonly shownPct: number };

type Given = {
  readonly batch: Batch;
  readonly mix: MixFractions;
  readonly air: KnownAir | null;
  readonly nowMs: number;
};

const DAY_MS = 86_400_000;
/** With fewer weighings of a batch in the chamber its weights say nothing of the air. */
const LEAST_WEIGHINGS = 2;
/** So near to hanging a weighing counts as the one on hanging. */
const ON_HANGING_MS = DAY_MS / 2;

/** How one piece dries for its diameter: its rim, its haste, its slowness. */
export function paceNow({
  piece,
  batch,
  mix,
  air,
  nowMs,
  siblings,
  earlierBatches,
}: Given & {
  piece: Piece;
  siblings: readonly DryingEvidence[];
  earlierBatches: readonly DryingEvidence[];
}): PaceFinding {
  const seen = seenPiece(piece, batch, nowMs, { air, mix }, SOUND_AIR_PCT);
  if (seen === null)
    throw new RangeError('paceNow: piece requires to be stuffed by now, got one that is not');
  const { prior, clock } = seen;
  const weighIn = ({ atMs, netG }: Pick<Weighing, 'atMs' | 'netG'>): PaceWeighIn => ({
    dryingDays: driedDays({ startMs: piece.stuffed.atMs, rests: piece.rests }, atMs),
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

/** Null while too little was weighed, or where the air shown lets nothing be told. */
export function impliedAir(
  told: readonly { piece: Piece; curve: PieceSeen; onCurve: DryingEvidence }[],
  { batch, mix, air, nowMs }: Given,
): ImpliedAir | null {
  const hungMs = batch.hung?.atMs ?? nowMs;
  const weighed = told.filter(
    ({ piece }) => weighingsUpTo(piece, nowMs).filter(({ atMs }) => atMs > hungMs).length >= LEAST_WEIGHINGS,
  );
  const [first] = weighed;
  const shownPct = shownHumidityPct(batch, air, nowMs);
  // Under 40 % nobody dries sausage, and near the piece's own water activity nothing is to be told.
  const isTold = shownPct >= 40 && shownPct < 100 * mixAw({ mix, lossPct: 0 }) - 1;
  if (first === undefined || !isTold) return null;
  const pieces = weighed.map(({ onCurve }) => onCurve);
  return { ...impliedHumidity({ prior: first.curve.prior, pieces, mix, dialPct: shownPct }), shownPct };
}
