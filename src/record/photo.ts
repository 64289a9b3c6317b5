/** Photos as the log knows them: what each shows, when it was taken, and the sum that proves its bytes. */
import type { Entry, EntryOf } from './entry.ts';
import { ofKind } from './fold.ts';
import { live } from './strikes.ts';
import { isSubject, type SubjectId } from './subject.ts';

/** 200 photos of this size are less than 60 MB. */
export const MOST_PHOTO_BYTES = 280_000;

/** The standing photos, in order. */
export function photos(entries: readonly Entry[]): EntryOf<'photographed'>[] {
  return ofKind(live(entries), 'photographed');
}

/** A reading or an act that a photo may belong to; nothing that only speaks of the log. */
const SHOWS: ReadonlySet<Entry['kind']> = new Set([
  'ph-read',
  'room-read',
  'weighed',
  'mould-looked',
  'ground',
  'mixed',
  'stuffed',
  'piece-stuffed',
  'hung',
  'taken-down',
  'noted',
  'action-taken',
] as const);

/** What was last read or done here, the newest first: a photo comes after it, and belongs to it. */
export function photographable(entries: readonly Entry[]): Entry[] {
  return live(entries)
    .filter(
      ({ kind, subject }) => SHOWS.has(kind) && (isSubject(subject, 'batch') || isSubject(subject, 'piece')),
    )
    .reverse();
}

/** Each subject that was photographed, with its photos in order: the same piece stands side by side with itself. */
export function bySubject(entries: readonly Entry[]): Map<SubjectId, EntryOf<'photographed'>[]> {
  const groups = new Map<SubjectId, EntryOf<'photographed'>[]>();
  for (const photo of photos(entries)) {
    const group = groups.get(photo.subject);
    if (group) group.push(photo);
    else groups.set(photo.subject, [photo]);
  }
  return groups;
}

/** The sums of all that were ever photographed, struck ones too: what a box of photos may hold. */
export function photoSums(entries: readonly Entry[]): string[] {
  return [...new Set(ofKind(entries, 'photographed').map(({ body }) => body.sha256))];
}
