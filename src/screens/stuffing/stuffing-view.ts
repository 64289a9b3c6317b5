import { massFromG } from '#core/units.ts';
import type { Batch } from '#record/batch.ts';
import type { Place, Scale } from '#record/place.ts';
import type { Words } from '#words/en.ts';
import { decimal, joined, mass, massUnit } from '#words/format.ts';
import type { Said } from '#words/said.ts';

/** What all pieces of a batch share, said once; taken from the last piece when the page is opened again. */
export type Shared = {
  readonly diameterMm: number;
  readonly casing: string;
  readonly targetLossPct: number;
  readonly tareG: number;
};

/** No piece of a small maker weighs more. */
export const MOST_PIECE_G = 20_000;

export type StuffingView = {
  readonly line: string;
  readonly sentence: Said;
  readonly next: number;
  readonly previous: string | null;
  readonly unit: 'g' | 'oz' | 'lb';
  readonly most: string;
  readonly scale: Scale | null;
  readonly rows: readonly { key: string; title: string; figure: string; unit: string }[];
};

/** Pieces are weighed on the finest scale that carries them. */
function scaleFor(scales: readonly Scale[], typicalG: number): Scale | null {
  const able = scales.filter(({ mostG }) => mostG === null || mostG >= typicalG * 1.2);
  return [...able].sort((a, b) => a.stepG - b.stepG)[0] ?? null;
}

const TYPICAL_PIECE_G = 1000;

export function stuffingView({
  batch,
  scales,
  place,
  words,
}: {
  batch: Batch;
  scales: readonly Scale[];
  place: Place;
  words: Words;
}): StuffingView {
  const { stuffing } = words;
  const { formula, lot } = batch.opened.body;
  const last = batch.pieces.at(-1) ?? null;
  const scale = scaleFor(scales, medianG(batch) ?? TYPICAL_PIECE_G);
  const stepG = scale?.stepG ?? 1;
  const totalG = batch.pieces.reduce((sumG, { greenG }) => sumG + greenG, 0);
  const unit = massUnit(last?.greenG ?? TYPICAL_PIECE_G, place);
  return {
    line: stuffing.line(formula.name, lot),
    sentence: stuffing.sentence(batch.pieces.length, joined(mass(totalG, stepG, place))),
    next: (last?.number ?? 0) + 1,
    previous: last && stuffing.previous(last.number, joined(mass(last.stuffed.body.grossG, stepG, place))),
    unit,
    most: `${decimal(massFromG({ massG: MOST_PIECE_G, unit }), 0, place)} ${unit}`,
    scale,
    rows: [...batch.pieces].reverse().map((piece) => {
      const { value, unit: shown } = mass(piece.greenG, stepG, place);
      return { key: piece.id, title: stuffing.piece(piece.number), figure: value, unit: shown };
    }),
  };
}

/** What the pieces share so far, or what the plan of the batch says. */
export function sharedSoFar(batch: Batch): Shared {
  const last = batch.pieces.at(-1)?.stuffed.body;
  return {
    diameterMm: last?.diameterMm ?? batch.plan.diameterMm,
    casing: last?.casing ?? '',
    targetLossPct: last?.targetLossPct ?? batch.plan.targetLossPct,
    tareG: last?.tareG ?? 0,
  };
}

export function medianG(batch: Batch): number | null {
  const sorted = batch.pieces.map(({ greenG }) => greenG).sort((a, b) => a - b);
  return sorted[Math.floor(sorted.length / 2)] ?? null;
}

/** Longer than this no piece of a small maker hangs: common practice. */
const LONGEST_MM = 1200;
/** About what a stuffed mix weighs. Common practice: 1.05 g/ml. */
const DENSITY_G_PER_MM3 = 1.05e-3;

/**
 * What is asked once about an unlikely piece: less than a third or more than three times its fellows; the first one where it
 * would be longer than any hangs. Null where it is likely enough. `typed` with its unit.
 */
export function pieceQuestion(
  greenG: number,
  typed: string,
  { batch, diameterMm, place, words }: { batch: Batch; diameterMm: number; place: Place; words: Words },
): string | null {
  const { stuffing } = words;
  const usualG = medianG(batch);
  if (usualG !== null)
    return greenG < usualG / 3 || greenG > usualG * 3
      ? stuffing.unlikely(typed, joined(mass(usualG, 1, place)))
      : null;
  const lengthMm = greenG / DENSITY_G_PER_MM3 / ((Math.PI / 4) * diameterMm ** 2);
  if (lengthMm <= LONGEST_MM) return null;
  return stuffing.long(
    typed,
    `${decimal(diameterMm, 0, place)}\u00a0mm`,
    `${decimal(lengthMm / 1000, 1, place)}\u00a0m`,
  );
}
