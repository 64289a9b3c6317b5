import type { Batch } from '#record/batch.ts';
import type { Piece } from '#record/piece.ts';
import { pieceFigures } from '#record/piece-figures.ts';
import type { Place } from '#record/place.ts';
import { pieceAddress, tagCode } from '#record/tag-code.ts';
import type { Words } from '#words/en.ts';
import { joined, mass } from '#words/format.ts';
import type { Said } from '#words/said.ts';

export type TagView = {
  readonly key: string;
  readonly number: string;
  readonly name: string;
  readonly lot: string;
  readonly green: string;
  readonly target: string;
  readonly stuffed: string;
  readonly code: string;
  /** What its QR code holds. */
  readonly address: string;
  readonly opens: string;
};

export type TagsView = { readonly line: string; readonly sentence: Said; readonly tags: readonly TagView[] };

/** One tag a piece, in hanging order. The target weight is rounded down: at it, it has lost what was asked. */
export function tagsView({
  batch,
  which,
  place,
  appAddress,
  words,
}: {
  batch: Batch;
  which: 'all' | 'up';
  place: Place;
  appAddress: string;
  words: Words;
}): TagsView {
  const { formula, lot } = batch.opened.body;
  const chosen = batch.pieces.filter(({ status }) => which === 'all' || status !== 'taken-down');
  const tag = (piece: Piece): TagView => ({
    key: piece.id,
    number: String(piece.number),
    name: formula.name,
    lot: words.tags.lot(lot),
    green: joined(mass(piece.greenG, 1, place)),
    target: joined(mass(pieceFigures(piece).targetG, 1, place, 'down')),
    stuffed: words.tags.stuffed(words.dates.fullDay(piece.stuffed.atMs, piece.stuffed.zone)),
    code: words.tags.code(tagCode(piece.id)),
    address: pieceAddress(piece.id, appAddress),
    opens: words.tags.opens(piece.number),
  });
  return {
    line: words.tags.line(formula.name, lot),
    sentence: chosen.length === 0 ? words.tags.none : words.tags.sentence(chosen.length),
    tags: chosen.map(tag),
  };
}
