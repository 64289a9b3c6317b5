/** Opens the log and checks it before anything is appended: both copies and the sentinel against each other, and the chains. */
import { v7 as uuidv7 } from 'uuid';
import type { ChainFault } from '#record/chain.ts';
import { checkStore, type StoreCheck } from '#record/check-store.ts';
import type { Line } from '#record/line.ts';
import { now } from './clock.ts';
import { type DeviceRow, log, nextGeneration, type Row, SCHEMA } from './database.ts';
import { healing } from './heal.ts';
import { copiedIn, copy, gather, readCopies } from './journal.ts';
import { lineOf, remember, rememberedLines, rowOf } from './row.ts';
import { allRows } from './rows.ts';
import { readSentinel, writeSentinel } from './sentinel.ts';
import { type StartState, setState, storeState, type Told } from './state.ts';
import { watch } from './watch.ts';

const CLOCK_SLACK_MS = 2 * 60_000;

let started: Promise<StartState> | null = null;
/** How many entries this page knows to be stored. Others pages add more; a witness may lag behind. */
let known = 0;

/** The check at the start; the second call and later ones answer with the first one's result. */
export function startCheck(): Promise<StartState> {
  started ??= alone(check).then((start) => {
    setState({ start });
    return start;
  });
  return started;
}

/** The check once more: after the browser emptied the store under an open page, or a backup was taken in. */
export function checkAgain(): Promise<StartState> {
  started = null;
  return startCheck();
}

/** Whether entries may be appended; waits for a check that runs, and does not begin one. */
export async function mayAppend(): Promise<boolean> {
  const start = started ? await started : storeState().start;
  return start.code === 'ready' && storeState().start.code === 'ready';
}

/** The sentinel moves on when lines were stored. */
export function acknowledge(lines: readonly Line[], device: string): void {
  known += lines.length;
  const own = lines.filter(({ entry }) => entry.device === device).at(-1);
  const before = readSentinel();
  if (own) writeSentinel({ device, lastSeq: own.entry.seq, lastHash: own.hash, count: known });
  else if (before) writeSentinel({ ...before, count: known });
}

/** The maker was told that a log is lost and begins a new one all the same. What was lost stays on record as a count. */
export async function beginAnew(): Promise<StartState> {
  const { start } = storeState();
  if (start.code !== 'lost') return start;
  const { nowMs } = now();
  await log.transaction('rw', log.devices, log.notices, async () => {
    await log.devices.add({ device: uuidv7(), sinceMs: nowMs });
    await log.notices.add({ atMs: nowMs, code: 'began-anew', count: start.missing });
  });
  writeSentinel({ device: '', lastSeq: 0, lastHash: '', count: 0 });
  return checkAgain();
}

/** For a database that cannot be read any more: loads the page anew on a new one, which the check fills from the second copy. */
export function beginFromCopy(): void {
  if (storeState().start.code !== 'cannot-open') return;
  nextGeneration();
  location.reload();
}

/** Asks the browser not to throw this origin's storage away by itself. Null where it cannot be asked. */
export async function requestPersistence(): Promise<boolean | null> {
  return (await navigator.storage?.persist?.()) ?? null;
}

export async function currentDevice(): Promise<string | null> {
  const last: DeviceRow | undefined = await log.devices.orderBy('n').last();
  return last?.device ?? null;
}

async function check(): Promise<StartState> {
  watch(checkAgain);
  const opened = await healing(() => log.open());
  if (!opened.ok) {
    const { problem } = opened;
    return problem.code === 'newer-open' || problem.code === 'blocked'
      ? { code: problem.code }
      : { code: 'cannot-open', problem };
  }
  if (log.backendDB().version > SCHEMA * 10) return { code: 'newer-open' };
  const checked = await healing(checkOpened);
  return checked.ok ? checked.value : { code: 'cannot-open', problem: checked.problem };
}

async function checkOpened(): Promise<StartState> {
  // The witnesses first, the store last: what another page stores meanwhile must not look like a loss.
  const sentinel = readSentinel();
  const remembered = rememberedLines();
  const files = await readCopies();
  const { rows, unreadable } = await allRows();
  const stored: Line[] = [];
  const damagedRows: { id: string; device: string }[] = unreadable.map((id) => ({ id, device: '' }));
  for (const row of rows) {
    const line = lineOf(row);
    if (line) stored.push(line);
    else damagedRows.push(row);
  }
  const copies =
    files && copiedIn(files, new Map([...remembered, ...stored].map((line) => [line.hash, line])));
  const good = new Set<string>(stored.map((line) => line.entry.id));
  const damaged = damagedRows.filter((row) => !good.has(row.id));
  const found = checkStore({
    stored,
    damaged: damaged.map((row) => row.device),
    copied: copies?.lines ?? null,
    remembered,
    sentinel,
    device: await currentDevice(),
  });
  if (found.state === 'lost') return { code: 'lost', missing: found.missing };

  const restored = (await put(found.restore, found.newDevice)).length;
  const left = damaged.filter((row) => !found.restore.some((line) => line.entry.id === row.id));
  const told = await news(
    tell(found, { restored, damaged: left.length, copyDamaged: copies?.damaged ?? 0, stored }),
  );
  if (copies) {
    await copy(found.recopy);
    await gather(copies.small);
  }
  known = found.count;
  const all = [...stored, ...found.restore];
  const device = (await currentDevice()) ?? '';
  const last = all
    .filter(({ entry }) => entry.device === device)
    .reduce<Line | null>((a, b) => (a && a.entry.seq > b.entry.seq ? a : b), null);
  writeSentinel({ device, lastSeq: last?.entry.seq ?? 0, lastHash: last?.hash ?? '', count: known });
  return { code: 'ready', first: found.state === 'first', told };
}

/**
 * Adds lines that are not there yet, in one transaction, and a new device id with them where one is due. A key that is taken
 * by other bytes (a damaged row, a fork) is not touched: the line goes beside it.
 */
export async function put(lines: readonly Line[], newDevice: boolean): Promise<Line[]> {
  return log.transaction('rw', log.entries, log.devices, async () => {
    const places = lines.map(({ entry: { device, seq } }) => [device, seq]);
    const ids = new Set(
      await log.entries
        .where('id')
        .anyOf(lines.map(({ entry }) => entry.id))
        .primaryKeys(),
    );
    const seqs = new Set((await log.entries.where('[device+seq]').anyOf(places).keys()).map(String));
    const rows: Row[] = [];
    const added: Line[] = [];
    for (const line of lines) {
      const { id, device, seq } = line.entry;
      if (ids.has(id)) {
        const same = await log.entries.get(id).catch(() => undefined);
        if (same && lineOf(same)) continue;
      }
      const row = rowOf(line, { id: ids.has(id), seq: seqs.has(String([device, seq])) });
      if (ids.has(id) && (await log.entries.get(row.id))) continue;
      seqs.add(String([row.device, row.seq]));
      rows.push(row);
      added.push(remember(line));
    }
    await log.entries.bulkAdd(rows);
    if (newDevice) await log.devices.add({ device: uuidv7(), sinceMs: now().nowMs });
    return added;
  });
}

function tell(
  found: StoreCheck,
  seen: { restored: number; damaged: number; copyDamaged: number; stored: readonly Line[] },
): Told[] {
  const faults = (code: ChainFault['code']) => found.faults.filter((fault) => fault.code === code);
  const gaps = faults('gap').reduce(
    (sum, fault) => sum + ('toSeq' in fault ? fault.toSeq - fault.fromSeq + 1 : 0),
    0,
  );
  const { nowMs } = now();
  const ahead = seen.stored.filter(({ entry }) => entry.writtenAtMs > nowMs + CLOCK_SLACK_MS).length;
  const told: Told[] = [
    { code: 'restored', count: seen.restored },
    { code: 'missing', count: found.missing },
    { code: 'damaged', count: seen.damaged },
    { code: 'copy-damaged', count: seen.copyDamaged },
    { code: 'gap', count: gaps },
    { code: 'broken', count: faults('broken').length },
    { code: 'fork', count: faults('fork').length },
    { code: 'clock-behind', count: ahead },
  ];
  return told.filter(({ count }) => count > 0);
}

const STANDING: ReadonlySet<Told['code']> = new Set([
  'damaged',
  'copy-damaged',
  'gap',
  'broken',
  'fork',
  'clock-behind',
]);

/** Keeps what is new as notices. A standing fault that was found at the last start with the same count is not news. */
async function news(told: readonly Told[]): Promise<Told[]> {
  const last = new Map((await log.notices.toArray()).map(({ code, count }) => [code, count]));
  const fresh = told.filter(({ code, count }) => !STANDING.has(code) || last.get(code) !== count);
  const { nowMs } = now();
  await log.notices.bulkAdd(fresh.map((each) => ({ ...each, atMs: nowMs })));
  return fresh;
}

/** One check at a time among all pages of this origin. */
function alone<T>(work: () => Promise<T>): Promise<T> {
  const locks = typeof navigator === 'undefined' ? undefined : navigator.locks;
  return locks ? locks.request('greenweight-check', work) : work();
}
