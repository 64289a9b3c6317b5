import { type DBCore, Dexie, type Table } from 'dexie';
import type { SubjectId } from '#record/subject.ts';
import type { ToldCode } from './state.ts';

/** A stored entry. Only `hash` and `line` are the entry; the other columns are there to find it by. */
export type Row = {
  readonly id: string;
  readonly subject: SubjectId;
  /** The subject and every other that it refers to. */
  readonly touches: readonly SubjectId[];
  readonly kind: string;
  readonly atMs: number;
  readonly device: string;
  readonly seq: number;
  readonly hash: string;
  readonly line: string;
};

/** The ids under which this store wrote; the last is in force. */
export type DeviceRow = { readonly n?: number; readonly device: string; readonly sinceMs: number };

/** What the store found and did, kept so that it can be told later. */
export type Notice = {
  readonly n?: number;
  readonly atMs: number;
  readonly code: ToldCode;
  readonly count: number;
};

export type LogDatabase = Dexie & {
  readonly entries: Table<Row, string>;
  readonly devices: Table<DeviceRow, number>;
  readonly notices: Table<Notice, number>;
};

export const SCHEMA = 1;

/** A live query sees the cache of Dexie before the write is committed, so it is off; strict: committed means on disk. */
export function logDatabase(name: string): LogDatabase {
  const log = new Dexie(name, { chromeTransactionDurability: 'strict', cache: 'disabled' }) as LogDatabase;
  log.version(SCHEMA).stores({
    entries: 'id, [subject+atMs], &[device+seq], *touches',
    devices: '++n',
    notices: '++n',
  });
  log.use({ stack: 'dbcore', name: 'add-only', level: -1, create: addOnly });
  return log;
}

/** Below every API of Dexie: what is written is never changed, cleared or taken away. */
function addOnly(core: DBCore): Partial<DBCore> {
  return {
    table(name) {
      const table = core.table(name);
      return {
        ...table,
        mutate: (request) =>
          request.type === 'add'
            ? table.mutate(request)
            : Promise.reject(new TypeError(`log: ${name} takes "add" only, got "${request.type}"`)),
      };
    },
  };
}

const GENERATION_KEY = 'greenweight-generation';

/** Where the browser can no longer read the log's database, a new one beside it is filled from the second copy. */
function generation(): number {
  try {
    return Math.max(1, Math.trunc(Number(localStorage.getItem(GENERATION_KEY) ?? 1)) || 1);
  } catch {
    return 1;
  }
}

/** The next page opens a new database; the unreadable one stays where it is. Throws where nothing can be kept of this. */
export function nextGeneration(): void {
  localStorage.setItem(GENERATION_KEY, String(generation() + 1));
}

export const log = logDatabase(generation() === 1 ? 'greenweight' : `greenweight-${generation()}`);
