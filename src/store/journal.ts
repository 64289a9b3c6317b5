/** The second copy of the log, in the origin private file system: other code of the browser, other files, the same lines. */
import { type Line, readSummed } from '#record/line.ts';
import type { JournalAnswer, JournalTask } from './journal-worker.ts';

const DIRECTORY = 'journals';
const ANSWER_MS = 5000;
/** Closed pages leave small files behind; so many of them are gathered into one. */
const GATHER_FROM = 8;
const SMALL_BYTES = 256 * 1024;

export type Copied = {
  readonly lines: readonly Line[];
  /** Lines that do not prove themselves, a torn end left out: it was never acknowledged. */
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
  const done = await ask({ task: 'append', text });
  if (done) pending = pending.slice(lines.length);
  return done;
}

/** Everything in the copy, of all pages that ever were open, or null where there can be no copy. */
export async function readCopies(known: ReadonlyMap<string, Line>): Promise<Copied | null> {
  if (!hasJournal()) return null;
  const lines = new Map<string, Line>();
  const small: { name: string; texts: string[] }[] = [];
  let damaged = 0;
  try {
    const files = await (await navigator.storage.getDirectory()).getDirectoryHandle(DIRECTORY, {
      create: true,
    });
    const names: string[] = [];
    for await (const name of files.keys()) names.push(name);
    // Asked after the names and before the texts: a file that no page holds now is never written to again.
    const live = await liveSessions();
    for (const name of names) {
      const text = await (await (await files.getFileHandle(name)).getFile()).text();
      const texts = text.split('\n');
      // What follows the last line break is a write that was cut short.
      texts.pop();
      let whole = true;
      for (const each of texts) {
        const hash = each.slice(0, 64);
        const held = known.get(hash);
        const read =
          held && each.slice(65) === held.line ? { ok: true as const, line: held } : readSummed(each);
        if (read.ok) lines.set(read.line.hash, read.line);
        else {
          damaged += 1;
          whole = false;
        }
      }
      if (whole && live && !live.has(name) && text.length < SMALL_BYTES) small.push({ name, texts });
    }
  } catch {
    return null;
  }
  return { lines: [...lines.values()], damaged, small };
}

export async function gather(small: Copied['small']): Promise<void> {
  if (small.length < GATHER_FROM) return;
  const texts = new Set(small.flatMap((file) => file.texts));
  const text = [...texts].map((each) => `${each}\n`).join('');
  await ask({ task: 'gather', into: fileName(), from: small.map((file) => file.name), text });
}

async function ask(job: Job): Promise<boolean> {
  try {
    session ??= await begin();
    const { worker } = session;
    const n = ++asked;
    const answer = new Promise<boolean>((resolve) => {
      const settle = (done: boolean) => {
        clearTimeout(timer);
        worker.removeEventListener('message', hear);
        worker.removeEventListener('error', fail);
        resolve(done);
      };
      const hear = ({ data }: MessageEvent<JournalAnswer>) => {
        if (data.n === n) settle(data.problem === null);
      };
      const fail = () => settle(false);
      const timer = setTimeout(fail, ANSWER_MS);
      worker.addEventListener('message', hear);
      worker.addEventListener('error', fail);
    });
    worker.postMessage({ ...job, n });
    const done = await answer;
    if (!done) end();
    return done;
  } catch {
    end();
    return false;
  }
}

/** A page that fails to write goes on in a new file: what the old one holds stays. */
function end(): void {
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
