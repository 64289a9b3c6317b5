/** What the check at the start finds: the store, its copy and the sentinel held against each other. Pure; the store acts on it. */
import { type ChainFault, checkChains } from './chain.ts';
import type { Line } from './line.ts';

/** Kept apart from both copies: what the store held when it last said "Saved". It may lag behind, and never runs ahead. */
export type Sentinel = {
  readonly device: string;
  readonly lastSeq: number;
  readonly lastHash: string;
  readonly count: number;
};

export type StoreFound = {
  /** Rows of the store that prove themselves, and the device that each other row names. */
  readonly stored: readonly Line[];
  readonly damaged: readonly string[];
  /** Lines of the second copy that prove themselves; null where there is no second copy. */
  readonly copied: readonly Line[] | null;
  /** Lines that this page read earlier: after the browser emptied the store under an open page they may be all that is left. */
  readonly remembered: readonly Line[];
  readonly sentinel: Sentinel | null;
  /** The device id in force in the store, or null when there is none. */
  readonly device: string | null;
};

export type StoreCheck = {
  /** `lost`: there was a log, and nothing of it is left. `first`: nothing says that there ever was one. */
  readonly state: 'first' | 'sound' | 'repaired' | 'short' | 'lost';
  readonly restore: readonly Line[];
  readonly recopy: readonly Line[];
  /** Entries that were acknowledged once and are in neither copy; at least so many. */
  readonly missing: number;
  readonly faults: readonly ChainFault[];
  /** A chain whose end cannot be known is never gone on with. */
  readonly newDevice: boolean;
  readonly count: number;
};

export function checkStore(found: StoreFound): StoreCheck {
  const { stored, copied, sentinel, device } = found;
  const inCopy = new Set(copied?.map((line) => line.hash));
  const ids = new Set(stored.map((line) => line.entry.id));
  const restore = distinct([...(copied ?? []), ...found.remembered]).filter(
    ({ entry }) => !ids.has(entry.id),
  );
  const all = [...stored, ...restore];
  const missing = sentinel ? missingOf(all, sentinel) : 0;
  const { faults } = checkChains(all);
  const state =
    all.length === 0
      ? missing > 0 || (sentinel === null && found.damaged.length > 0)
        ? 'lost'
        : 'first'
      : missing > 0
        ? 'short'
        : restore.length > 0
          ? 'repaired'
          : 'sound';
  return {
    state,
    restore,
    recopy: copied ? all.filter((line) => !inCopy.has(line.hash)) : [],
    missing,
    faults,
    newDevice:
      device === null ||
      state === 'repaired' ||
      state === 'short' ||
      faults.some((fault) => fault.device === device),
    count: all.length,
  };
}

function missingOf(all: readonly Line[], sentinel: Sentinel): number {
  const short = Math.max(0, sentinel.count - all.length);
  if (sentinel.lastSeq === 0 || all.some((line) => line.hash === sentinel.lastHash)) return short;
  const lastSeq = all.reduce(
    (seq, { entry }) => (entry.device === sentinel.device ? Math.max(seq, entry.seq) : seq),
    0,
  );
  return Math.max(short, sentinel.lastSeq - lastSeq, 1);
}

function distinct(lines: readonly Line[]): Line[] {
  return [...new Map(lines.map((line) => [line.entry.id, line])).values()];
}
