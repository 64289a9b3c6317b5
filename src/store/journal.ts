/** The second copy of the log, in the origin private file system: other code of the browser, other files, the same lines. */
import { type Line, readSummed } from '#record/line.ts';
import type { JournalAnswer, JournalTask } from './journal-worker.ts';
import { problemOf } from './problem.ts';
import { makeRoom } from './reserve.ts';

const DIRECTORY = 'journals';
const ANSWER_MS = 5000;
/** Closed pages leave small files behind; so many of them are gathered into one. */
export const GATHER_FROM = 8;
const SMALL_BYTES = 256 * 1024;

export type CopyFile = {
  readonly name: string;
  /** Whether no page writes to it any more. */
  readonly closed: boolean;
  /** Null when it could not be read. */
  readonly text: string | null;
};

export type Copied = {
  readonly lines: readonly Line[];
  /** Lines that do not prove themselves and files that cannot be read, a torn end left out: it was never acknowledged. */
  readonly damaged: number;
  readonly small: readonly { readonly name: string; readonly texts: readonly string[] }[];
};

type Session = { readonly name: string; readonly worker: Worker; readonly release: () => void };
type Job = JournalTask extends infer Task ? (Task extends unknown ? Omit<Task, 'n'> : never) : never;

let session: Session | null = null;
let pending: readonly Line[] = [];
let turn: Promise<unknown> = Promise.resolve();
let asked = 0;

export function hasJournal(): boolean {
  return typeof Worker === 'function' && typeof navigator.storage?.getDirectory === 'function';
}

/** Lines that stand in the store and not yet in the copy. */
export function pendingCopies(): number {
  return pending.length;
}

/** Adds lines to the copy and answers whether they, and all that waited before them, are on disk there. */
export function copy(lines: readonly Line[]): Promise<boolean> {
  pending = [...pending, ...lines];
  const copied = turn.then(copyPending);
  turn = copied;
  return copied;
}

async function copyPending(): Promise<boolean> {
  const lines = pending;
  if (lines.length === 0) return true;
  if (!hasJournal()) return false;
  const text = lines.map(({ hash, line }) => `${hash} ${line}\n`).join('');
  let problem = await ask({ task: 'append', text });
  if (isFull(problem)) {
    // The file stays open where there is no room: on a full disk no other can be begun.
    const room = await makeRoom();
    if (room !== 'none') leaveFile();
    if (room === 'made') problem = await ask({ task: 'append', text });
  }
  if (problem === null) pending = pending.slice(lines.length);
  return problem === null;
}

function isFull(problem: string | null): boolean {
  return problem !== null && problemOf({ message: problem }).code === 'full';
}

/** The files of the copy as they are, or null where there can be no copy. */
export async function readCopies(): Promise<readonly CopyFile[] | null> {
  if (!hasJournal()) return null;
  try {
    const root = await navigator.storage.getDirectory();
    const files = await root.getDirectoryHandle(DIRECTORY, { create: true });
    const names: string[] = [];
    for await (const name of files.keys()) names.push(name);
    // Asked after the names and before the texts: a file that no page holds now is never written to again.
    const live = await liveSessions();
    const read: CopyFile[] = [];
    for (const name of names) {
      const text = await textOf(files, name);
      read.push({ name, closed: live !== null && !live.has(name), text });
    }
    return read;
  } catch {
    return null;
  }
}

/** What the files hold. A line that is as `known` has it was proved there and is not summed again. */
export async function copiedIn(
  files: readonly CopyFile[],
  known: ReadonlyMap<string, Line>,
  pause: () => Promise<void> = async () => undefined,
): Promise<Copied> {
  const lines = new Map<string, Line>();
  const small: { name: string; texts: string[] }[] = [];
  let damaged = 0;
  for (const { name, closed, text } of files) {
    const before = damaged;
    const texts = text?.split('\n') ?? [];
    // What follows the last line break is a write that was cut short.
    texts.pop();
    if (text === null) damaged += 1;
    for (const each of texts) {
      const held = known.get(each.slice(0, 64));
      const line = held && each.slice(65) === held.line ? held : proved(each);
      if (line) lines.set(line.hash, line);
      else damaged += 1;
      await pause();
    }
    if (closed && damaged === before && (text?.length ?? 0) < SMALL_BYTES) small.push({ name, texts });
  }
  return { lines: [...lines.values()], damaged, small };
}

function proved(text: string): Line | null {
  const read = readSummed(text);
  return read.ok ? read.line : null;
}

async function textOf(files: FileSystemDirectoryHandle, name: string): Promise<string | null> {
  try {
    return await (await (await files.getFileHandle(name)).getFile()).text();
  } catch {
    return null;
  }
}

export async function gather(small: Copied['small']): Promise<void> {
  if (small.length < GATHER_FROM) return;
  const texts = new Set(small.flatMap((file) => file.texts));
  const text = [...texts].map((each) => `${each}\n`).join('');
  await ask({ task: 'gather', into: fileName(), from: small.map((file) => file.name), text });
}

/** Null when it is done and on disk; else why not. */
async function ask(job: Job): Promise<string | null> {
  try {
    session ??= await begin();
    const problem = await answerOf(session.worker, job);
    if (problem !== null && !isFull(problem)) leaveFile();
    return problem;
  } catch (error) {
    leaveFile();
    return String(error);
  }
}

function answerOf(worker: Worker, job: Job): Promise<string | null> {
  const n = ++asked;
  const answer = new Promise<string | null>((resolve) => {
    const settle = (problem: string | null) => {
      clearTimeout(timer);
      worker.removeEventListener('message', hear);
      worker.removeEventListener('error', fail);
      resolve(problem);
    };
    const hear = ({ data }: MessageEvent<JournalAnswer>) => {
      if (data.n === n) settle(data.problem);
    };
    const fail = () => settle('no answer');
    const timer = setTimeout(fail, ANSWER_MS);
    worker.addEventListener('message', hear);
    worker.addEventListener('error', fail);
  });
  worker.postMessage({ ...job, n });
  return answer;
}

/** A page that fails to write goes on in a new file: what the old one holds stays. */
export function leaveFile(): void {
  session?.worker.terminate();
  session?.release();
  session = null;
}

async function begin(): Promise<Session> {
  const name = fileName();
  const release = await holdLock(name);
  const worker = new Worker(new URL('./journal-worker.ts', import.meta.url), { type: 'module', name });
  return { name, worker, release };
}

function fileName(): string {
  return `${crypto.randomUUID()}.log`;
}

/** Held while the page lives, so that another page does not gather a file that is being written. */
function holdLock(name: string): Promise<() => void> {
  if (!navigator.locks) return Promise.resolve(() => undefined);
  return new Promise((resolve) => {
    void navigator.locks.request(lockOf(name), () => new Promise<void>((release) => resolve(release)));
  });
}

async function liveSessions(): Promise<Set<string> | null> {
  if (!navigator.locks) return null;
  const { held } = await navigator.locks.query();
  const names = (held ?? []).map((lock) => lock.name ?? '');
  return new Set(
    names.filter((name) => name.startsWith(lockOf(''))).map((name) => name.slice(lockOf('').length)),
  );
}

function lockOf(name: string): string {
  return `greenweight-journal-${name}`;
}
