import type { Batch } from '#record/batch.ts';
import type { Entry, EntryId, EntryOf } from '#record/entry.ts';
import { bySubject, photographable } from '#record/photo.ts';
import { isSubject, type SubjectId } from '#record/subject.ts';
import type { Words } from '#words/en.ts';

export type PhotoRow = {
  readonly key: EntryId;
  readonly sha256: string;
  readonly caption: string;
  readonly alt: string;
};
export type PhotoGroup = {
  readonly key: SubjectId;
  readonly title: string;
  readonly photos: readonly PhotoRow[];
};
export type ReadingChoice = {
  readonly value: EntryId;
  readonly label: string;
  readonly subject: SubjectId;
};

type Seen = { nowMs: number; zone: string; words: Words };

const MOST_READINGS = 8;

/** Every subject that was photographed, pieces by their number; of each the newest photo first. */
export function photoGroups(batch: Batch, entries: readonly Entry[], seen: Seen): PhotoGroup[] {
  const groups = bySubject(entries);
  const numbers = new Map(batch.pieces.map(({ id, number }) => [id, number]));
  const order = (id: SubjectId) => numbers.get(id) ?? 0;
  return [...groups]
    .filter(([id]) => id === batch.id || numbers.has(id))
    .sort(([a], [b]) => order(a) - order(b))
    .map(([key, list]) => {
      const number = numbers.get(key);
      const title = number === undefined ? seen.words.photos.batch : seen.words.photos.piece(number);
      return { key, title, photos: photoRows(list, title, entries, seen) };
    });
}

/** The photos of one piece, the newest first. */
export function photosOfPiece(
  { id, number }: Pick<Batch['pieces'][number], 'id' | 'number'>,
  entries: readonly Entry[],
  seen: Seen,
): readonly PhotoRow[] {
  return photoRows(bySubject(entries).get(id) ?? [], seen.words.photos.piece(number), entries, seen);
}

function photoRows(
  list: readonly EntryOf<'photographed'>[],
  title: string,
  entries: readonly Entry[],
  { nowMs, zone, words }: Seen,
): PhotoRow[] {
  return list.toReversed().map(({ id, atMs, body }) => {
    const at = words.dates.near(atMs, nowMs, zone);
    const of = entries.find((entry) => entry.id === body.of);
    return {
      key: id,
      sha256: body.sha256,
      caption: words.photos.caption(at, of?.kind ? words.record.kind(of.kind) : ''),
      alt: words.photos.alt(title, at),
    };
  });
}

/** What a photo may belong to, the last readings first. */
export function readingChoices(batch: Batch, entries: readonly Entry[], seen: Seen): ReadingChoice[] {
  const { photos, record, dates } = seen.words;
  return photographable(entries)
    .slice(0, MOST_READINGS)
    .map(({ id, kind, subject, atMs }) => {
      const number = batch.pieces.find((piece) => piece.id === subject)?.number;
      const what = record.kind(kind ?? '');
      const said = number === undefined || !isSubject(subject, 'piece') ? what : photos.ofPiece(number, what);
      return { value: id, subject, label: photos.reading(said, dates.near(atMs, seen.nowMs, seen.zone)) };
    });
}
