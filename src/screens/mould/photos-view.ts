import type { Batch } from '#record/batch.ts';
import type { Entry, EntryId, EntryOf } from '#record/entry.ts';
import { bySubject, photographable } from '#record/photo.ts';
import type { SubjectId } from '#record/subject.ts';
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
  readonly value: SubjectId;
  readonly label: string;
  readonly of: EntryId;
  readonly reading: string;
};

type Seen = { nowMs: number; zone: string; words: Words };

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

/** Whatever can be photographed, the batch first, each with what was last read or done there: to that the photo belongs. */
export function readingChoices(batch: Batch, entries: readonly Entry[], seen: Seen): ReadingChoice[] {
  const { photos, record, dates } = seen.words;
  const latest = photographable(entries);
  const subjects = [
    { id: batch.id, label: photos.batch },
    ...batch.pieces.map(({ id, number }) => ({ id, label: String(number) })),
  ];
  return subjects.flatMap(({ id, label }) => {
    const last = latest.find(({ subject }) => subject === id);
    if (!last) return [];
    const reading = photos.reading(
      record.kind(last.kind ?? ''),
      dates.near(last.atMs, seen.nowMs, seen.zone),
    );
    return [{ value: id, label, of: last.id, reading }];
  });
}
