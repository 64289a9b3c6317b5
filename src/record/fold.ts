/** Projections: "the standing entries of this kind, in order". Every fold is made of these, so that each field says what it is. */
import type { Entry, EntryOf } from './entry.ts';
import type { Kind } from './kinds.ts';

export function ofKind<K extends Kind>(entries: readonly Entry[], kind: K): EntryOf<K>[] {
  return entries.filter((entry): entry is Entry & EntryOf<K> => entry.kind === kind);
}

export function latest<K extends Kind>(entries: readonly Entry[], kind: K): EntryOf<K> | null {
  return ofKind(entries, kind).at(-1) ?? null;
}

/** Entries of kinds or versions that this build does not know: what they touch cannot be called known. */
export function unknownOf(entries: readonly Entry[]): Entry[] {
  return entries.filter((entry) => entry.kind === null);
}
