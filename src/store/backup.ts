/** The log as a file and back. A backup is read back before it is handed out; an import is a union, shown before it is done. */
import type { ChainFault } from '#record/chain.ts';
import type { EntryId } from '#record/entry.ts';
import { type FileHeader, type FileProblem, readFile, writeFile } from '#record/file.ts';
import type { Line } from '#record/line.ts';
import { planMerge } from '#record/merge.ts';
import { inOrder } from '#record/strikes.ts';
import { now } from './clock.ts';
import { log } from './database.ts';
import { currentDevice } from './device.ts';
import { healing } from './heal.ts';
import { copiedIn, copy, readCopies } from './journal.ts';
import { acknowledge, checkAgain, put } from './open.ts';
import type { StoreProblem } from './problem.ts';
import { lineOf } from './row.ts';
import { allRows } from './rows.ts';
import { setState, storeState } from './state.ts';

export type Exported = {
  readonly text: string;
  readonly entries: number;
  readonly hash: string;
  /** Rows that could not be read: all others are in the text. */
  readonly left: readonly string[];
};

export type ImportPlan = {
  /** Whether it may be taken in: a file with one wrong byte is not, a recovery is when it holds any line. */
  readonly ok: boolean;
  readonly header: FileHeader | null;
  readonly lines: number;
  readonly fresh: readonly Line[];
  readonly here: number;
  /** Ids that are here with other bytes. What is here stays. */
  readonly twins: readonly EntryId[];
  /** Entries of a newer build among the fresh: kept and passed on untouched. */
  readonly unknown: number;
  /** What was refused (import) or set aside (recovery), by line. */
  readonly problems: readonly FileProblem[];
  /** What the file's own log lacks. */
  readonly faults: readonly ChainFault[];
};

export type TakenIn =
  | { ok: true; added: number; copies: 'both' | 'one' }
  | { ok: false; problem: StoreProblem };

/** `build` stands in the file's header. Throws when the text does not read back as what is stored: then there is no backup. */
export async function exportLog(build = ''): Promise<Exported> {
  const { lines, left } = await allLines();
  const good = new Map(lines.map((line) => [line.entry.id, line]));
  const device = (await currentDevice()) ?? '';
  const { text, hash } = writeFile(lines, { build, madeAtMs: now().nowMs, device });
  const back = readFile(text);
  const same =
    back.lines.length === lines.length &&
    back.lines.every(({ entry, hash: sum }) => good.get(entry.id)?.hash === sum);
  if (back.problems.length > 0 || !same) throw new Error('exportLog: the text does not read back as the log');
  return { text, entries: lines.length, hash, left };
}

/**
 * A backup of what the second copy holds, for a phone on which the book cannot be opened. Null where there is no line of it to be
 * read. What it names as its device is the one that wrote last.
 */
export async function exportCopy(build: string): Promise<Omit<Exported, 'left'> | null> {
  const files = await readCopies();
  const { lines } = files ? await copiedIn(files, new Map()) : { lines: [] };
  const ordered = [...lines].sort((a, b) => inOrder(a.entry, b.entry));
  const last = ordered.at(-1);
  if (last === undefined) return null;
  const { text, hash } = writeFile(ordered, { build, madeAtMs: now().nowMs, device: last.entry.device });
  if (readFile(text).problems.length > 0) return null;
  return { text, entries: ordered.length, hash };
}

/** Every line that proves itself, in the order in which they were true, and the ids of the rows that do not. */
export async function allLines(): Promise<{ lines: readonly Line[]; left: readonly string[] }> {
  const read = await healing(allRows);
  if (!read.ok) throw new Error(`allLines: the log cannot be read: ${read.problem.code}`);
  const { rows, unreadable } = read.value;
  const good = new Map<string, Line>();
  const bad: string[] = [...unreadable];
  for (const row of rows) {
    const line = lineOf(row);
    if (line) good.set(line.entry.id, line);
    else bad.push(row.id);
  }
  const lines = [...good.values()].sort((a, b) => inOrder(a.entry, b.entry));
  return { lines, left: bad.filter((id) => !good.has(id)) };
}

/** What taking in a file would do. Nothing is written. */
export async function planImport(text: string): Promise<ImportPlan> {
  const plan = await planOf(text);
  return { ...plan, ok: plan.problems.length === 0 };
}

/** For a damaged backup of one's own: every line that proves itself, the rest set aside by line. */
export async function planRecovery(text: string): Promise<ImportPlan> {
  const plan = await planOf(text);
  return { ...plan, ok: plan.lines > 0 };
}

/** Adds what is not here yet, in one transaction. Where the log was lost, this brings it back. */
export async function takeIn(plan: ImportPlan): Promise<TakenIn> {
  const { code } = storeState().start;
  if (!plan.ok || (code !== 'ready' && code !== 'lost'))
    return { ok: false, problem: { code: 'not-checked-yet' } };
  const device = await currentDevice();
  // Lines under this device's own id that it does not have: it was put back to an older state, or copied.
  const ownAhead = plan.fresh.some(({ entry }) => entry.device === device);
  const taken = await healing(() => put(plan.fresh, ownAhead || device === null));
  if (!taken.ok) return taken;
  const { value: lines } = taken;
  await log.notices.add({ atMs: now().nowMs, code: 'taken-in', count: lines.length });
  const copies = (await copy(lines)) ? 'both' : 'one';
  acknowledge(lines, '');
  setState({ copies });
  if (code === 'lost') await checkAgain();
  return { ok: true, added: lines.length, copies };
}

async function planOf(text: string): Promise<ImportPlan> {
  const file = readFile(text);
  const { rows } = await allRows();
  const held = new Map<EntryId, string>();
  for (const line of rows.map(lineOf)) if (line) held.set(line.entry.id, line.hash);
  const { fresh, here, twins } = planMerge(held, file.lines);
  return {
    ok: false,
    header: file.header,
    lines: file.lines.length,
    fresh,
    here,
    twins: twins.map(({ entry }) => entry.id),
    unknown: fresh.filter(({ entry }) => entry.kind === null).length,
    problems: file.problems,
    faults: file.faults,
  };
}
