/** Union: what another log has and this one lacks. Nothing is ever replaced or taken away by a merge. */
import type { EntryId } from './entry.ts';
import type { Line } from './line.ts';

/** A log is a set of lines by their hash. */
export type Log = ReadonlyMap<string, Line>;

export type MergePlan = {
  /** Lines to add. */
  readonly fresh: readonly Line[];
  readonly here: number;
  /** The same id with other bytes: somebody changed an entry. What is here stays; these are told and not taken. */
  readonly twins: readonly Line[];
};

export function logOf(lines: readonly Line[]): Log {
  return new Map(lines.map((line) => [line.hash, line]));
}

/** `held` is the hash of each entry that is here, by id. */
export function planMerge(held: ReadonlyMap<EntryId, string>, incoming: readonly Line[]): MergePlan {
  const known = new Map(held);
  const fresh: Line[] = [];
  const twins: Line[] = [];
  let here = 0;
  for (const line of incoming) {
    const hash = known.get(line.entry.id);
    if (hash === undefined) {
      known.set(line.entry.id, line.hash);
      fresh.push(line);
    } else if (hash === line.hash) here += 1;
    else twins.push(line);
  }
  return { fresh, here, twins };
}

/** Two logs as one. */
export function union(a: Log, b: Log): Log {
  const held = new Map([...a.values()].map((line) => [line.entry.id, line.hash]));
  return logOf([...a.values(), ...planMerge(held, [...b.values()]).fresh]);
}
