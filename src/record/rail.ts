/** Where pieces hang, by what was written down: rails from above, places from the door. */
import { lossSpread } from '#core/drying/loss.ts';
import type { Entry } from './entry.ts';
import { latest } from './fold.ts';
import type { BodyOf } from './kinds.ts';
import type { Piece } from './piece.ts';
import { pieceFigures } from './piece-figures.ts';
import { live } from './strikes.ts';
import type { SubjectId } from './subject.ts';

type At = Readonly<Pick<BodyOf<'rail-placed'>, 'rail' | 'position'>>;
export type Hung = At & { readonly piece: Piece; readonly isWritten: boolean };

/**
 * Rail by rail, each from the door on. A piece of which nothing was written hangs after the others of the first rail, in the order
 * of the numbers: that is how a batch is hung.
 */
export function onRails(pieces: readonly Piece[], entries: readonly Entry[]): Hung[] {
  const own = new Map<SubjectId, Entry[]>();
  for (const entry of live(entries)) own.set(entry.subject, [...(own.get(entry.subject) ?? []), entry]);
  const placed = pieces.map((piece) => ({
    piece,
    place: latest(own.get(piece.id) ?? [], 'rail-placed')?.body ?? null,
  }));
  const after = Math.max(0, ...placed.map(({ place }) => (place?.rail === 1 ? place.position : 0)));
  return placed
    .map(({ piece, place }) => ({
      piece,
      rail: place?.rail ?? 1,
      position: place?.position ?? after + piece.number,
      isWritten: place !== null,
    }))
    .sort((a, b) => a.rail - b.rail || a.position - b.position || a.piece.number - b.piece.number);
}

/**
 * What has to be written so that pieces hang in this order: nothing where they already do, else each whose place was not written
 * down or was another.
 */
export function moves(
  before: readonly Hung[],
  after: readonly (Pick<At, 'rail'> & { readonly piece: SubjectId })[],
): (At & { readonly piece: SubjectId })[] {
  const same = before.every(
    ({ piece, rail }, at) => after[at]?.piece === piece.id && after[at]?.rail === rail,
  );
  if (same) return [];
  const count = new Map<At['rail'], At['position']>();
  return after
    .map(({ piece, rail }) => {
      const position = (count.get(rail) ?? 0) + 1;
      count.set(rail, position);
      return { piece, rail, position };
    })
    .filter(({ piece, rail, position }) => {
      const was = before.find((each) => each.piece.id === piece);
      return !was?.isWritten || was.rail !== rail || was.position !== position;
    });
}

/** Fewer fellows of one calibre than this have no middle worth comparing with; and so many points of loss apart is worth a look. */
const LEAST_FELLOWS = 4;
const APART_PCT = 3;
const APART_TIMES = 3;

/**
 * Pieces that dry apart from those of their calibre: more than 3 points of loss, and more than three times the usual distance,
 * from the middle one. Own rule of thumb: it says look, nothing else.
 */
export function apart(pieces: readonly Piece[]): ReadonlyMap<SubjectId, 'slow' | 'fast'> {
  const found = new Map<SubjectId, 'slow' | 'fast'>();
  const weighed = pieces.flatMap((piece) => {
    const { lossPct } = pieceFigures(piece);
    return piece.status === 'hanging' && lossPct !== null ? [{ piece, lossPct }] : [];
  });
  for (const calibre of new Set(weighed.map(({ piece }) => piece.diameterMm))) {
    const fellows = weighed.filter(({ piece }) => piece.diameterMm === calibre);
    const middlePct = lossSpread(fellows.map(({ lossPct }) => lossPct))?.medianPct;
    if (fellows.length < LEAST_FELLOWS || middlePct === undefined) continue;
    const awayPct = fellows.map(({ lossPct }) => Math.abs(lossPct - middlePct));
    const limitPct = Math.max(APART_PCT, APART_TIMES * (lossSpread(awayPct)?.medianPct ?? 0));
    for (const { piece, lossPct } of fellows)
      if (Math.abs(lossPct - middlePct) > limitPct)
        found.set(piece.id, lossPct < middlePct ? 'slow' : 'fast');
  }
  return found;
}
