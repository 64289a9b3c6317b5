import type { ChainFault } from '#record/chain.ts';
import { checkChains } from '#record/chain.ts';
import { type ClockStep, clockSteps } from '#record/clock-steps.ts';
import type { EntryId } from '#record/entry.ts';
import { type Exposure, exposure } from '#record/exposure.ts';
import { putRight } from '#record/put-right.ts';
import { log, type Notice } from './database.ts';
import { hasJournal, pendingCopies } from './journal.ts';
import { entriesOf, lineOf } from './row.ts';
import { allRows } from './rows.ts';
import { type StoreState, storeState } from './state.ts';

/** How the store is, in full. `copies` says how the last entry was stored; `secondCopy` whether this browser can keep one. */
export type Health = StoreState & {
  readonly secondCopy: boolean;
  readonly copiesPending: number;
  /** Null while the store cannot be read at all. */
  readonly entries: number | null;
  /** Rows that the browser cannot read or that do not prove themselves. */
  readonly damaged: readonly string[];
  readonly faults: readonly ChainFault[];
  /** Those that are not put right. */
  readonly clockSteps: readonly { readonly id: EntryId; readonly backMs: number }[];
  readonly notices: readonly Notice[];
  readonly exposure: Exposure;
  /** Whether the browser promised not to throw the storage away by itself; null where it cannot be asked. */
  readonly persisted: boolean | null;
  readonly usedBytes: number | null;
  readonly quotaBytes: number | null;
};

export async function health(): Promise<Health> {
  const { rows, unreadable } = (await readable(allRows())) ?? { rows: [], unreadable: null };
  const notices = (await readable(log.notices.toArray())) ?? [];
  const lines = rows.map(lineOf).filter((line) => line !== null);
  const good = new Set<string>(lines.map(({ entry }) => entry.id));
  const bad = [...rows.filter((row) => !lineOf(row)).map((row) => row.id), ...(unreadable ?? [])];
  const entries = entriesOf(rows);
  const steps = clockSteps(putRight(entries, entries));
  const storage = typeof navigator === 'undefined' ? undefined : navigator.storage;
  const [persisted, estimate] = await Promise.all([storage?.persisted?.(), storage?.estimate?.()]);
  return {
    ...storeState(),
    secondCopy: hasJournal(),
    copiesPending: pendingCopies(),
    entries: unreadable ? good.size : null,
    damaged: bad.filter((id) => !good.has(id)),
    faults: checkChains(lines).faults,
    clockSteps: steps.map(({ entry, backMs }: ClockStep) => ({ id: entry.id, backMs })),
    notices,
    exposure: exposure(entries),
    persisted: persisted ?? null,
    usedBytes: estimate?.usage ?? null,
    quotaBytes: estimate?.quota ?? null,
  };
}

function readable<T>(reading: PromiseLike<T>): Promise<T | null> {
  return Promise.resolve(reading).catch(() => null);
}
