/** Opens the log and checks it before anything is appended: both copies and the sentinel against each other, and the chains. */
import { v7 as uuidv7 } from 'uuid';
import type { Line } from '#record/line.ts';
import { now } from './clock.ts';
import { log, nextGeneration, type Row, SCHEMA } from './database.ts';
import { currentDevice } from './device.ts';
import { glance } from './glance.ts';
import { healing } from './heal.ts';
import { copy, GATHER_FROM, gather, leaveFile } from './journal.ts';
import { lookAtOnce, lookInSlices } from './look.ts';
import { holdReserve } from './reserve.ts';
import { lineOf, remember, rowOf } from './row.ts';
import { readSentinel, writeSentinel } from './sentinel.ts';
import { type StartState, setState, storeState } from './state.ts';
import { keepNotices, news, tell } from './told.ts';
import { watch } from './watch.ts';

let started: Promise<StartState> | null = null;
/** Whether the start rests on a glance, so that the old lines are still to be looked through. */
let glanced = false;
let looked: Promise<StartState> | null = null;
/** How many entries, and rows, this page knows to be stored. Other pages add more; a witness may lag behind. */
let known = { count: 0, rows: 0 };

/** The check at the start; the second call and later ones answer with the first one's result. */
export function startCheck(): Promise<StartState> {
  started ??= begin(() => check(atAGlance));
  return started;
}

/** The whole check: after the browser emptied the store under an open page, or a backup was taken in, or by the maker's wish. */
export function checkAgain(): Promise<StartState> {
  glanced = false;
  // Where the browser threw the storage away, the file that this page still writes to went with it.
  leaveFile();
  started = begin(() => check(checkOpened));
  return started;
}

/**
 * The second half of the check at the start: every old line and the second copy, in pieces too short to be felt. Where
 * anything is amiss, the whole check has the word. Once a page.
 */
export function lookThrough(): Promise<StartState> {
  looked ??= throughOldLines().then((start) => {
    if (start.code === 'ready') void holdReserve();
    return start;
  });
  return looked;
}

async function throughOldLines(): Promise<StartState> {
  const start = await startCheck();
  if (start.code !== 'ready' || !glanced) return start;
  const from = readSentinel();
  try {
    const seen = await lookInSlices();
    const { restore, recopy, missing } = seen.check;
    const uncopied = recopy.filter(({ entry }) => entry.device !== from?.device || entry.seq <= from.lastSeq);
    const told = (await news(tell(seen, 0))).filter(({ code }) => code !== 'recopied');
    const many = (seen.copies?.small.length ?? 0) >= GATHER_FROM;
    if (restore.length + uncopied.length + missing + told.length === 0 && !many) return start;
  } catch {
    // What could not be read is for the whole check to name.
  }
  return checkAgain();
}

function begin(work: () => Promise<StartState>): Promise<StartState> {
  return alone(work).then((start) => {
    setState({ start });
    return start;
  });
}

async function atAGlance(): Promise<StartState> {
  const witness = await glance();
  if (!witness) return checkOpened();
  glanced = true;
  known = { count: witness.count, rows: witness.rows };
  writeSentinel(witness);
  return { code: 'ready', first: false, told: [] };
}

/** Whether entries may be appended; waits for a check that runs, and does not begin one. */
export async function mayAppend(): Promise<boolean> {
  const start = started ? await started : storeState().start;
  return start.code === 'ready' && storeState().start.code === 'ready';
}

/** The sentinel moves on when lines were stored. */
export function acknowledge(lines: readonly Line[], device: string): void {
  const own = lines.filter(({ entry }) => entry.device === device).at(-1);
  const before = readSentinel();
  known = {
    count: Math.max(known.count, before?.count ?? 0) + lines.length,
    rows: Math.max(known.rows, before?.rows ?? 0) + lines.length,
  };
  if (own) writeSentinel({ device, lastSeq: own.entry.seq, lastHash: own.hash, ...known });
  else if (before) writeSentinel({ ...before, ...known });
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
  known = { count: 0, rows: 0 };
  writeSentinel({ device: '', lastSeq: 0, lastHash: '', ...known });
  return checkAgain();
}

/** For a database that cannot be read any more: loads the page anew on a new one, which the check fills from the second copy. */
export function beginFromCopy(): void {
  if (storeState().start.code !== 'cannot-open') return;
  nextGeneration();
  location.reload();
}

async function check(opened: () => Promise<StartState>): Promise<StartState> {
  watch(checkAgain);
  const open = await healing(() => log.open());
  if (!open.ok) {
    const { problem } = open;
    return problem.code === 'newer-open' || problem.code === 'blocked'
      ? { code: problem.code }
      : { code: 'cannot-open', problem };
  }
  if (log.backendDB().version > SCHEMA * 10) return { code: 'newer-open' };
  const checked = await healing(opened);
  return checked.ok ? checked.value : { code: 'cannot-open', problem: checked.problem };
}

async function checkOpened(): Promise<StartState> {
  const seen = await lookAtOnce();
  const { check: found, copies, stored } = seen;
  if (found.state === 'lost') return { code: 'lost', missing: found.missing };

  const restored = (await put(found.restore, found.newDevice)).length;
  const told = await news(tell(seen, restored));
  await keepNotices(told);
  if (copies) {
    await copy(found.recopy);
    await gather(copies.small);
  }
  const all = [...stored, ...found.restore];
  const device = (await currentDevice()) ?? '';
  const last = all
    .filter(({ entry }) => entry.device === device)
    .reduce<Line | null>((a, b) => (a && a.entry.seq > b.entry.seq ? a : b), null);
  known = { count: found.count, rows: await log.entries.count() };
  writeSentinel({ device, lastSeq: last?.entry.seq ?? 0, lastHash: last?.hash ?? '', ...known });
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

/** One check at a time among all pages of this origin. */
function alone<T>(work: () => Promise<T>): Promise<T> {
  const locks = typeof navigator === 'undefined' ? undefined : navigator.locks;
  return locks ? locks.request('greenweight-check', work) : work();
}
