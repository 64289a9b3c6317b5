/** The one way in: checks drafts, adds them in one transaction and answers when they are on disk, in both copies where there are two. */
import { Dexie } from 'dexie';
import { v7 as uuidv7 } from 'uuid';
import {
  checkDraft,
  type Draft,
  type EntryId,
  hashLine,
  type KnownEntry,
  readLine,
  writeLine,
} from '#record/entry.ts';
import { writtenVersion } from '#record/kinds.ts';
import type { Line } from '#record/line.ts';
import type { SubjectId, SubjectType } from '#record/subject.ts';
import { now } from './clock.ts';
import { log, type Row } from './database.ts';
import { currentDevice, lastRow, rowAt } from './device.ts';
import { healing } from './heal.ts';
import { copy } from './journal.ts';
import { acknowledge, checkAgain, mayAppend } from './open.ts';
import { askOnceToKeep } from './persistence.ts';
import type { StoreProblem } from './problem.ts';
import { holdReserve, maySpend } from './reserve.ts';
import { lineOf, remember, rowOf } from './row.ts';
import { setState, storeState } from './state.ts';

export type { StoreProblem } from './problem.ts';

export type Appended =
  | { ok: true; entries: readonly KnownEntry[]; copies: 'both' | 'one' }
  | { ok: false; problem: StoreProblem };

type Numbered = { readonly device: string; readonly seq: number; readonly prev: string };
type Ready = {
  readonly id: EntryId;
  readonly chars: number;
  readonly write: (numbered: Numbered) => KnownEntry;
};
type Written = { readonly lines: readonly Line[]; readonly device: string };

/** A number as long as any, to check a line before it has its own. */
const LONGEST: Numbered = {
  device: '00000000-0000-0000-0000-000000000000',
  seq: Number.MAX_SAFE_INTEGER,
  prev: 'f'.repeat(64),
};

export function newSubject<T extends SubjectType>(type: T): SubjectId<T> {
  return `${type}:${uuidv7()}`;
}

/** All of the drafts or none. Resolves when they are durable; the sentinel is moved on last. */
export async function append(drafts: readonly Draft[]): Promise<Appended> {
  const appended = await appendChecked(drafts);
  const unsaved = appended.ok ? [] : drafts;
  if (unsaved.length + storeState().unsaved.length > 0) setState({ unsaved });
  return appended;
}

async function appendChecked(drafts: readonly Draft[]): Promise<Appended> {
  if (!(await mayAppend())) return { ok: false, problem: { code: 'not-checked-yet' } };
  const prepared = await healing(() => prepare(drafts));
  if (!prepared.ok) return prepared;
  if ('problem' in prepared.value) return { ok: false, problem: prepared.value.problem };
  const { ready } = prepared.value;
  const isRoom = maySpend(ready.reduce((sum, { chars }) => sum + chars, 0));
  // Where the maker has made room meanwhile, it is held anew and all goes on.
  if (!isRoom) {
    await holdReserve();
    if (storeState().room === 'used') return { ok: false, problem: { code: 'full' } };
  }

  let tried = 0;
  let stored = await healing(() => store(ready, tried++ > 0));
  if (stored.ok && stored.value === 'emptied') {
    const start = await checkAgain();
    if (start.code !== 'ready') return { ok: false, problem: { code: 'not-checked-yet' } };
    stored = await healing(() => store(ready, true));
  }
  if (!stored.ok) return stored;
  if (stored.value === 'emptied') return { ok: false, problem: { code: 'unreadable' } };

  const { lines, device } = stored.value;
  const copies = (await copy(lines)) ? 'both' : 'one';
  acknowledge(lines, device);
  setState({ copies, connection: 'ok' });
  if (lines.some(({ entry }) => entry.kind === 'batch-opened')) void askOnceToKeep();
  return { ok: true, entries: lines.map(({ entry }) => entry as KnownEntry), copies };
}

/** What the log would refuse to read back is refused here, with its field, before a transaction begins. */
async function prepare(drafts: readonly Draft[]): Promise<{ ready: Ready[] } | { problem: StoreProblem }> {
  const { nowMs } = now();
  const ready: Ready[] = [];
  for (const draft of drafts) {
    const problem = checkDraft(draft);
    if (problem) return bad(problem.field);
    const refs = new Set(draft.refs);
    if (draft.strikes) {
      const struck: Row | undefined = await log.entries.get(draft.strikes.id);
      if (!struck) return bad('strikes.id');
      // A strike is about what it strikes, or whoever folds that subject would not see it.
      if (struck.subject !== draft.subject) return bad('subject');
      for (const touched of struck.touches) if (touched !== draft.subject) refs.add(touched);
    }
    const id = uuidv7() as EntryId;
    const write = (numbered: Numbered): KnownEntry =>
      ({
        ...draft,
        refs: [...refs],
        id,
        v: writtenVersion(draft.kind, draft.body),
        writtenAtMs: nowMs,
        ...numbered,
      }) as KnownEntry;
    const line = writeLine(write(LONGEST));
    const read = readLine(line);
    if (!read.ok) return bad('field' in read.problem ? read.problem.field : read.problem.code);
    ready.push({ id, chars: line.length, write });
  }
  return { ready };
}

function bad(field: string): { problem: StoreProblem } {
  return { problem: { code: 'bad-draft', field } };
}

type End = { readonly device: string; readonly seq: number; readonly hash: string };

/** The end of this device's chain as this page knows it: a store that is behind it lost something under the open page. */
let reached: End = { device: '', seq: 0, hash: '' };

async function store(ready: readonly Ready[], again: boolean): Promise<Written | 'emptied'> {
  const written = (again ? null : await storeAtReach(ready)) ?? (await storeAtEnd(ready, again));
  if (written !== 'emptied') {
    for (const line of written.lines) {
      remember(line);
      reached = { device: line.entry.device, seq: line.entry.seq, hash: line.hash };
    }
  }
  return written;
}

const MOVED = new Error('append: the chain goes on elsewhere');

/**
 * Most often nobody wrote since this page did, so the lines follow the end that it knows, and the end is read in the same
 * transaction. Were it gone, all is taken back; were it no end any more, the next number is taken. Then null says so. One way
 * to the store and back is saved.
 */
async function storeAtReach(ready: readonly Ready[]): Promise<Written | null> {
  const { device, seq, hash } = reached;
  if (hash === '' || ready.length === 0) return null;
  const lines = linesAfter(reached, ready);
  try {
    await log.transaction('rw', log.entries, log.devices, async () => {
      const rows = lines.map((line) => rowOf(line, { id: false, seq: false }));
      const [now, last] = await Promise.all([currentDevice(), rowAt(device, seq), log.entries.bulkAdd(rows)]);
      if (now !== device || last?.hash !== hash) throw MOVED;
    });
    return { lines, device };
  } catch (error) {
    if (error === MOVED || isTaken(error)) return null;
    throw error;
  }
}

/** Another page wrote under the number meanwhile. */
function isTaken(error: unknown): boolean {
  return error instanceof Dexie.BulkError && error.failures.some(({ name }) => name === 'ConstraintError');
}

/**
 * Last number, its hash and the new entries in one transaction, so that two pages cannot both follow one line. May run again
 * after a lost connection: entries that are there already are not added twice.
 */
async function storeAtEnd(ready: readonly Ready[], again: boolean): Promise<Written | 'emptied'> {
  return log.transaction('rw', log.entries, log.devices, async () => {
    const device = await currentDevice();
    if (device === null) return 'emptied';
    const ids = ready.map(({ id }) => id);
    const there = again ? (await log.entries.bulkGet(ids)).filter((row) => row !== undefined) : [];
    const before = there.map(lineOf).filter((line) => line !== null);
    if (ready.length > 0 && before.length === ready.length) return { lines: before, device };

    const last = await lastRow(device);
    if (reached.device === device && reached.seq > (last?.seq ?? 0)) return 'emptied';
    const lines = linesAfter({ device, seq: last?.seq ?? 0, hash: last?.hash ?? '' }, ready);
    await log.entries.bulkAdd(lines.map((line) => rowOf(line, { id: false, seq: false })));
    return { lines, device };
  });
}

function linesAfter({ device, seq, hash }: End, ready: readonly Ready[]): Line[] {
  let prev = hash;
  return ready.map(({ write }, at) => {
    const line = writeLine(write({ device, seq: seq + at + 1, prev }));
    prev = hashLine(line);
    return readBack(line, prev);
  });
}

/** The entry as the log will read it ever after, not the draft that a screen still holds in its hand. */
function readBack(line: string, hash: string): Line {
  const read = readLine(line);
  if (!read.ok) throw new TypeError(`append: the log would not read back ${line}`);
  return { hash, line, entry: read.entry };
}
