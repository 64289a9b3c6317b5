import type { Entry, EntryOf } from './entry.ts';
import { ofKind } from './fold.ts';
import { live } from './strikes.ts';

/** How much exists on this device only. Counted in entries, not by the clock: a log only grows. */
export type Exposure = {
  readonly last: EntryOf<'backed-up'> | null;
  /** Entries that no backup holds. The note of a backup is itself an entry, and is not counted. */
  readonly entries: number;
};

/** `entries` hold every note of a backup; `count` is how many there are in all. */
export function exposure(entries: readonly Entry[], count = entries.length): Exposure {
  const backups = ofKind(live(entries), 'backed-up');
  const last = backups.reduce<EntryOf<'backed-up'> | null>(
    (most, each) => (most && most.body.entries > each.body.entries ? most : each),
    null,
  );
  const notes = backups.filter((each) => !last || each.writtenAtMs >= last.writtenAtMs).length;
  return { last, entries: Math.max(0, count - (last?.body.entries ?? 0) - notes) };
}

/** What was written since the last backup, and when the first of it was. */
export type Unbacked = { readonly entries: number; readonly sinceMs: number };

export function lastBackUpMs(entries: readonly Entry[]): number {
  return Math.max(0, ...ofKind(live(entries), 'backed-up').map(({ writtenAtMs }) => writtenAtMs));
}

/** Null where a backup holds all. */
export function unbacked(entries: readonly Entry[]): Unbacked | null {
  const lastMs = lastBackUpMs(entries);
  const since = entries.filter(({ kind, writtenAtMs }) => kind !== 'backed-up' && writtenAtMs > lastMs);
  const sinceMs = since.reduce(
    (least, { writtenAtMs }) => Math.min(least, writtenAtMs),
    Number.POSITIVE_INFINITY,
  );
  return since.length === 0 ? null : { entries: since.length, sinceMs };
}
