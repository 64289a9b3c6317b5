/** A store as a newly opened page has it: its own modules, over the browser's storage that all pages share. */
import 'fake-indexeddb/auto';
import { IDBFactory } from 'fake-indexeddb';
import { vi } from 'vitest';

/** What `localStorage` is to a page; node has none. */
export function memoryStorage(): Storage {
  const held = new Map<string, string>();
  return {
    get length() {
      return held.size;
    },
    clear: () => held.clear(),
    getItem: (key) => held.get(key) ?? null,
    key: (index) => [...held.keys()][index] ?? null,
    removeItem: (key) => void held.delete(key),
    setItem: (key, value) => void held.set(key, value),
  };
}

/** A device nobody has used yet. */
export function freshDevice(): void {
  vi.stubGlobal('indexedDB', new IDBFactory());
  vi.stubGlobal('localStorage', memoryStorage());
}

/** Another page of the same device, opened now. */
export async function openPage() {
  vi.resetModules();
  const { Dexie } = await import('dexie');
  Object.assign(Dexie.dependencies, { indexedDB, IDBKeyRange });
  const { log } = await import('#store/database.ts');
  const { append, newSubject } = await import('#store/append.ts');
  const { startCheck, lookThrough, beginAnew, checkAgain } = await import('#store/open.ts');
  const { exportLog, planImport, planRecovery, takeIn } = await import('#store/backup.ts');
  const { health } = await import('#store/health.ts');
  const { entriesOf, lineOf } = await import('#store/row.ts');
  const { allRows, rowsAbout, rowsTouching } = await import('#store/rows.ts');
  const { batchesNow } = await import('#store/summaries.ts');
  const { storeState } = await import('#store/state.ts');
  return {
    log,
    append,
    newSubject,
    startCheck,
    lookThrough,
    beginAnew,
    checkAgain,
    exportLog,
    planImport,
    planRecovery,
    takeIn,
    health,
    entriesOf,
    lineOf,
    allRows,
    rowsAbout,
    rowsTouching,
    storeState,
    batchesNow,
  };
}

export type Page = Awaited<ReturnType<typeof openPage>>;
