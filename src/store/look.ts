/** Reads and proves all there is: every row of the store, every line of the second copy. At one go, or in short pieces. */
import { checkStore, type StoreCheck } from '#record/check-store.ts';
import type { Line } from '#record/line.ts';
import type { Row } from './database.ts';
import { currentDevice } from './device.ts';
import { type Copied, copiedIn, readCopies } from './journal.ts';
import { lineOf, rememberedLines } from './row.ts';
import { allRows, eachPage } from './rows.ts';
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

/** Gives each row to be proved, and answers with the ids of those that cannot even be read. */
type Read = (prove: (row: Row) => void) => Promise<readonly string[]>;

/** Lets the page draw and be pressed whenever a slice of time is used up. By a message: a timer would wait 4 ms each time. */
function inSlices(): Pause {
  let fromMs = performance.now();
  return async () => {
    if (performance.now() - fromMs < SLICE_MS) return;
    await new Promise<void>((resolve) => {
      const { port1, port2 } = new MessageChannel();
      port1.onmessage = () => {
        port1.close();
        resolve();
      };
      port2.postMessage(null);
    });
    fromMs = performance.now();
  };
}

/** All rows of one moment. */
export function lookAtOnce(): Promise<Seen> {
  return look(
    async () => undefined,
    async (prove) => {
      const { rows, unreadable } = await allRows();
      for (const row of rows) prove(row);
      return unreadable;
    },
  );
}

/** Beside a page in use: what it writes meanwhile may be seen in part, so that what is found amiss is to be looked at again. */
export function lookInSlices(): Promise<Seen> {
  const pause = inSlices();
  return look(pause, async (prove) => {
    const unreadable: string[] = [];
    await eachPage(PAGE, async (page) => {
      unreadable.push(...page.unreadable);
      for (const row of page.rows) {
        prove(row);
        await pause();
      }
    });
    return unreadable;
  });
}

async function look(pause: Pause, read: Read): Promise<Seen> {
  // The witnesses first, the store last: what another page stores meanwhile must not look like a loss.
  const sentinel = readSentinel();
  const remembered = rememberedLines();
  const files = await readCopies();
  const stored: Line[] = [];
  const unproved: { id: string; device: string }[] = [];
  const unreadable = await read((row) => {
    const line = lineOf(row);
    if (line) stored.push(line);
    else unproved.push(row);
  });
  const damagedRows = [...unreadable.map((id) => ({ id, device: '' })), ...unproved];
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
