import { gramsToGoG, lossPct } from '#core/drying/loss.ts';
import { massFromG } from '#core/units.ts';
import type { Batch } from '#record/batch.ts';
import { pieceForecast } from '#record/forecast-figures.ts';
import type { Piece, Weighing } from '#record/piece.ts';
import { pieceFigures } from '#record/piece-figures.ts';
import type { Place } from '#record/place.ts';
import type { Words } from '#words/en.ts';
import { decimal, joined, mass, massUnit } from '#words/format.ts';
import { type Said, said } from '#words/said.ts';

const HOUR_MS = 3_600_000;
/** Weighings this close together belong to one round: one left half-way goes on where it stopped. */
const ROUND_HOURS = 3;

export const MOST_PIECE_G = 20_000;

export type RoundState = {
  /** Still to be weighed, in hanging order from where the round stands: what was passed over comes last. */
  readonly todo: readonly Piece[];
  readonly weighed: readonly Piece[];
  /** The weighing written last in this round, which can be struck at once. */
  readonly last: { readonly piece: Piece; readonly weighing: Weighing } | null;
};

/** Where a round stands, read from the log alone: a killed app goes on there. */
export function roundState(batch: Batch, nowMs: number): RoundState {
  const hungAtMs = batch.hung?.atMs ?? 0;
  const inRound = ({ weighings }: Piece) => {
    const last = weighings.at(-1);
    return last !== undefined && last.atMs >= hungAtMs && nowMs - last.atMs < ROUND_HOURS * HOUR_MS
      ? last
      : null;
  };
  const up = batch.pieces.filter(({ status }) => status === 'hanging');
  const weighed = up.filter((piece) => inRound(piece) !== null);
  const last = weighed
    .flatMap((piece) => {
      const weighing = inRound(piece);
      return weighing ? [{ piece, weighing }] : [];
    })
    .sort((a, b) => a.weighing.atMs - b.weighing.atMs)
    .at(-1);
  const stands = last === undefined ? -1 : up.indexOf(last.piece);
  const todo = [...up.slice(stands + 1), ...up.slice(0, stands + 1)].filter(
    (piece) => inRound(piece) === null,
  );
  return { todo, weighed, last: last ?? null };
}

export function stageOf(batch: Batch, piece: Piece): 'to-drying' | 'round' {
  const hungAtMs = batch.hung?.atMs ?? Number.POSITIVE_INFINITY;
  return piece.weighings.some(({ atMs }) => atMs >= hungAtMs) ? 'round' : 'to-drying';
}

export type RoundView = {
  readonly line: string;
  readonly previous: string;
  readonly unit: 'g' | 'oz' | 'lb';
  readonly most: string;
  readonly decimals: number;
  readonly look: {
    diameterMm: number;
    lengthMm: number;
    lossFraction: number | null;
    targetFraction: number;
    seed: number;
  };
};

/** About what a stuffed mix weighs: only to draw the piece as long as it is. Common practice: 1.05 g/ml. */
const DENSITY_G_PER_MM3 = 1.05e-3;

export function lookOf(piece: Piece): RoundView['look'] {
  const { lossPct: lost } = pieceFigures(piece);
  const areaMm2 = (Math.PI / 4) * piece.diameterMm ** 2;
  return {
    diameterMm: piece.diameterMm,
    lengthMm: piece.greenG / DENSITY_G_PER_MM3 / areaMm2,
    lossFraction: lost === null ? null : Math.max(0, lost / 100),
    targetFraction: piece.targetLossPct / 100,
    seed: piece.number,
  };
}

export function roundView({
  piece,
  batch,
  stepG,
  place,
  nowMs,
  words,
}: {
  piece: Piece;
  batch: Batch;
  stepG: number;
  place: Place;
  nowMs: number;
  words: Words;
}): RoundView {
  const { round } = words;
  const { last } = pieceFigures(piece);
  const gross = (netG: number) => joined(mass(netG + piece.tareG, stepG, place));
  const unit = massUnit(piece.greenG, place);
  return {
    line: `${batch.opened.body.formula.name} · ${round.line(piece.number, batch.pieces.length)}`,
    previous: last
      ? round.was(gross(last.netG), words.dates.ago(last.atMs, nowMs))
      : round.green(gross(piece.greenG)),
    unit,
    most: `${decimal(massFromG({ massG: MOST_PIECE_G, unit }), 0, place)} ${unit}`,
    decimals: unit === 'g' ? (stepG < 1 ? 2 : 1) : 3,
    look: lookOf(piece),
  };
}

/** What a weight would mean, at once: the loss, the grams to go, and what changed since the last time. */
export function meaning(netG: number, piece: Piece, stepG: number, place: Place, words: Words): Said {
  const { round } = words;
  if (netG > piece.greenG) return round.heavier(joined(mass(netG - piece.greenG, 1, place)));
  const loss = `${decimal(lossPct({ greenG: piece.greenG, nowG: netG }), 1, place, 'down')}\u00a0%`;
  const toGoG = gramsToGoG({ greenG: piece.greenG, nowG: netG, targetLossPct: piece.targetLossPct });
  const stands = toGoG <= 0 ? round.atTarget(loss) : round.lost(loss, joined(mass(toGoG, 1, place, 'up')));
  const { last } = pieceFigures(piece);
  return last ? said(...stands, ...changed(netG - last.netG, stepG, place, words)) : stands;
}

function changed(moreG: number, stepG: number, place: Place, { round }: Words): Said {
  if (Math.abs(moreG) < stepG / 2) return round.same;
  const by = joined(mass(Math.abs(moreG), stepG, place));
  return moreG < 0 ? round.less(by) : round.more(by);
}

/** A gain beyond the scale's grain; a loss at once, or past what the piece's own curve allows, by more than these points. */
const GAIN_SHARE = 0.005;
const DROP_SHARE = 0.05;

/** The most that a piece is likely to have lost by now: the ninety percent line of its own curve, and some room. */
export function mostLostPct(piece: Piece, batch: Batch, nowMs: number): number {
  return (pieceForecast(piece, batch, nowMs)?.band(nowMs).p90Pct ?? 0) + 100 * DROP_SHARE;
}

/** Asked about once. The range is that of its own curve; only a large drop asks for it. */
export function unlikely(netG: number, piece: Piece, mostPct: () => number): 'gained' | 'dropped' | null {
  const beforeG = pieceFigures(piece).last?.netG ?? piece.greenG;
  if (netG > beforeG + GAIN_SHARE * piece.greenG) return 'gained';
  if (beforeG - netG <= DROP_SHARE * piece.greenG) return null;
  return lossPct({ greenG: piece.greenG, nowG: netG }) > mostPct() ? 'dropped' : null;
}
