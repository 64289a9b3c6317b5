import type { Entry, EntryId } from './entry.ts';

/** An entry as the record shows it: struck ones stay visible, with what struck them. */
export type Standing = { readonly entry: Entry; readonly struckBy: readonly Entry[]; readonly live: boolean };

/**
 * Which entries stand, in order. An entry is struck by any standing entry that strikes it; a strike may itself be struck, and
 * then the old entry stands again. Each entry strikes one other at most, so whoever is never settled below lies on a ring
 * that nothing outside it broke (only a forged file can hold one), and a ring strikes nothing.
 */
export function standings(entries: readonly Entry[]): Standing[] {
  const byId = new Map(entries.map((entry) => [entry.id, entry]));
  const strikers = byTarget(entries);
  const open = new Map(entries.map((entry) => [entry.id, strikers.get(entry.id)?.length ?? 0]));
  const struck = new Set<EntryId>();
  const settled = entries.filter((entry) => open.get(entry.id) === 0);
  for (const entry of settled) {
    open.delete(entry.id);
    const target = entry.strikes && byId.get(entry.strikes.id);
    const left = target && open.get(target.id);
    if (left === undefined || !target) continue;
    open.set(target.id, left - 1);
    const strikes = !struck.has(entry.id);
    if (strikes) struck.add(target.id);
    if (strikes || left === 1) {
      open.delete(target.id);
      settled.push(target);
    }
  }
  const counts = (striker: Entry): boolean => !struck.has(striker.id) && !open.has(striker.id);
  return [...entries].sort(inOrder).map((entry) => {
    const struckBy = (strikers.get(entry.id) ?? []).filter(counts).sort(inOrder);
    return { entry, struckBy, live: struckBy.length === 0 };
  });
}

/** The order in which things were true; of two at one instant, the one written first. The same on every device. */
export function inOrder(a: Entry, b: Entry): number {
  return a.atMs - b.atMs || a.writtenAtMs - b.writtenAtMs || (a.id < b.id ? -1 : a.id > b.id ? 1 : 0);
}

/** The entries that stand, in order. */
export function live(entries: readonly Entry[]): Entry[] {
  return standings(entries)
    .filter((standing) => standing.live)
    .map((standing) => standing.entry);
}

/** Standing corrections of one and the same entry, made apart (on two phones): both are shown, the less favourable counts. */
export function rivals(entries: readonly Entry[]): Entry[][] {
  const corrections = live(entries).filter((entry) => entry.kind !== 'struck');
  return [...byTarget(corrections).values()].filter((group) => group.length > 1);
}

function byTarget(entries: readonly Entry[]): Map<EntryId, Entry[]> {
  const groups = new Map<EntryId, Entry[]>();
  for (const entry of entries) {
    if (!entry.strikes) continue;
    const group = groups.get(entry.strikes.id);
    if (group) group.push(entry);
    else groups.set(entry.strikes.id, [entry]);
  }
  return groups;
}
