import { gramsToGoG, lossPct } from '#core/drying/loss.ts';
import { massFromG } from '#core/units.ts';
import type { Batch } from '#record/batch.ts';
import type { Piece } from '#record/piece.ts';
import { pieceFigures } from '#record/piece-figures.ts';
import type { Place } from '#record/place.ts';
import type { Words } from '#words/en.ts';
import { decimal, joined, mass, massUnit } from '#words/format.ts';
import type { Said } from '#words/said.ts';

const HOUR_MS = 3_600_000;
/** Weighings this close together belong to one round: one left half-way goes on where it stopped. */
const ROUND_HOURS = 3;

export const MOST_PIECE_G = 20_000;

/** The pieces still to be weighed in this round, in hanging order, and those already weighed in it. */
export function roundState(batch: Batch, nowMs: number): { todo: Piece[]; weighed: Piece[] } {
  const up = batch.pieces.filter(({ status }) => status === 'hanging');
  const hungAtMs = batch.hung?.atMs ?? 0;
  const inRound = ({ weighings }: Piece) => {
    const last = weighings.at(-1);
    return last !== undefined && last.atMs >= hungAtMs && nowMs - last.atMs < ROUND_HOURS * HOUR_MS;
  };
  const weighed = up.filter(inRound);
  return { todo: up.filter((piece) => !inRound(piece)), weighed };
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

/** What a weight would mean, at once: the loss, and the grams to go or that it is at target weight. */
export function meaning(netG: number, piece: Piece, place: Place, words: Words): Said {
  if (netG > piece.greenG) return words.round.heavier(joined(mass(netG - piece.greenG, 1, place)));
  const loss = `${decimal(lossPct({ greenG: piece.greenG, nowG: netG }), 1, place, 'down')}\u00a0%`;
  const toGoG = gramsToGoG({ greenG: piece.greenG, nowG: netG, targetLossPct: piece.targetLossPct });
  return toGoG <= 0
    ? words.round.atTarget(loss)
    : words.round.lost(loss, joined(mass(toGoG, 1, place, 'up')));
}

/** Gain beyond the scale's grain, or a loss of more than 15 % of green weight at once, is asked about once. */
const GAIN_SHARE = 0.005;
const DROP_SHARE = 0.15;

export function unlikely(netG: number, piece: Piece): 'gained' | 'dropped' | null {
  const beforeG = pieceFigures(piece).last?.netG ?? piece.greenG;
  if (netG > beforeG + GAIN_SHARE * piece.greenG) return 'gained';
  return beforeG - netG > DROP_SHARE * piece.greenG ? 'dropped' : null;
}
