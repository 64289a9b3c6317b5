/** Reads and proves all there is: every row of the store, every line of the second copy. At one go, or in short pieces. */
import { checkStore, type StoreCheck } from '#record/check-store.ts';
import type { Line } from '#record/line.ts';
import { currentDevice } from './device.ts';
import { type Copied, copiedIn, readCopies } from './journal.ts';
import { lineOf, rememberedLines } from './row.ts';
import { type AllRows, allRows, eachPage } from './rows.ts';
import { readSentinel } from './sentinel.ts';

export type Seen = {
  readonly check: StoreCheck;
  readonly stored: readonly Line[];
  readonly copies: Copied | null;
  /** Rows that do not prove themselves and that no line restores. */
  readonly damaged: number;
};

export type Pause = () => Promise<void>;

const SLICE_MS = 8;
const PAGE = 250;

/** Lets the page draw and be pressed whenever a slice of time is used up. */
function inSlices(): Pause {
  let fromMs = performance.now();
  return async () => {
    if (performance.now() - fromMs < SLICE_MS) return;
    await new Promise((resolve) => setTimeout(resolve));
    fromMs = performance.now();
  };
}

/** All rows of one moment. */
export function lookAtOnce(): Promise<Seen> {
  return look(async () => undefined, allRows);
}

/** Beside a page in use: what it writes meanwhile may be seen in part, so that what is found amiss is to be looked at again. */
export function lookInSlices(): Promise<Seen> {
  const pause = inSlices();
  return look(pause, async () => {
    const rows: AllRows['rows'][number][] = [];
    const unreadable: string[] = [];
    await eachPage(PAGE, async (page) => {
      rows.push(...page.rows);
      unreadable.push(...page.unreadable);
      for (const row of page.rows) {
        lineOf(row);
        await pause();
      }
    });
    return { rows, unreadable };
  });
}

async function look(pause: Pause, read: () => Promise<AllRows>): Promise<Seen> {
  // The witnesses first, the store last: what another page stores meanwhile must not look like a loss.
  const sentinel = readSentinel();
  const remembered = rememberedLines();
  const files = await readCopies();
  const { rows, unreadable } = await read();
  const stored: Line[] = [];
  const damagedRows: { id: string; device: string }[] = unreadable.map((id) => ({ id, device: '' }));
  for (const row of rows) {
    const line = lineOf(row);
    if (line) stored.push(line);
    else damagedRows.push(row);
  }
  const known = new Map([...remembered, ...stored].map((line) => [line.hash, line]));
  const copies = files && (await copiedIn(files, known, pause));
  const good = new Set<string>(stored.map((line) => line.entry.id));
  const damaged = damagedRows.filter((row) => !good.has(row.id));
  const check = checkStore({
    stored,
    damaged: damaged.map((row) => row.device),
    copied: copies?.lines ?? null,
    remembered,
    sentinel,
    device: await currentDevice(),
  });
  const restored = new Set<string>(check.restore.map((line) => line.entry.id));
  return { check, stored, copies, damaged: damaged.filter((row) => !restored.has(row.id)).length };
}
