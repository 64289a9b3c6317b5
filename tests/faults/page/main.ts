/** The real store, laid open to the fault tests. */
import '../../../src/app/trusted-types.ts';
import { Dexie, liveQuery } from 'dexie';
import { createElement } from 'react';
import { createRoot } from 'react-dom/client';
import type { Draft } from '#record/entry.ts';
import { type Appended, append } from '#store/append.ts';
import { exportCopy, exportLog, planImport, planRecovery, takeIn } from '#store/backup.ts';
import { log } from '#store/database.ts';
import { readDraft, saveDraft } from '#store/drafts.ts';
import { health } from '#store/health.ts';
import { copiedIn, readCopies } from '#store/journal.ts';
import { beginAnew, beginFromCopy, lookThrough, startCheck } from '#store/open.ts';
import { keepPhoto } from '#store/photos.ts';
import { allRows } from '#store/rows.ts';
import { storeState } from '#store/state.ts';
import { Hooks } from './Hooks.tsx';

function draft(text: string): Draft {
  return { kind: 'noted', subject: 'batch:a', atMs: Date.now(), zone: '+00:00', by: 'AB', body: { text } };
}

function write(texts: readonly string[]): Promise<Appended> {
  return append(texts.map(draft));
}

/** Appends until the page dies, one after the other, now and then twelve at once; tells the ids of what was acknowledged. */
async function writeOn(tell: (ids: readonly string[]) => Promise<void>, pad: number): Promise<void> {
  for (let number = 0; ; number++) {
    const texts = number % 5 === 0 ? Array.from({ length: 12 }, (_, at) => `${at} of twelve`) : ['one'];
    const appended = await write(texts.map((text) => `${text} ${number} ${'x'.repeat(pad)}`));
    if (appended.ok) await tell(appended.entries.map(({ id }) => id));
    else throw new Error(`writeOn: ${JSON.stringify(appended.problem)}`);
  }
}

/** How long each of so many appends took. */
async function timed(count: number): Promise<number[]> {
  const tookMs: number[] = [];
  for (let number = 0; number < count; number++) {
    const from = performance.now();
    await write([`timed ${number}`]);
    tookMs.push(performance.now() - from);
  }
  return tookMs;
}

/** Which ids stand in the store and which in the second copy. */
async function held(): Promise<{ stored: string[]; copied: string[] | undefined }> {
  const { rows } = await allRows();
  const files = await readCopies();
  return {
    stored: rows.map(({ id }) => id.slice(0, 36)),
    copied: files ? (await copiedIn(files, new Map())).lines.map(({ entry }) => entry.id) : undefined,
  };
}

function durability(): Promise<string> {
  return log.transaction('rw', log.entries, () =>
    String((Dexie.currentTransaction as unknown as { idbtrans: IDBTransaction }).idbtrans.durability),
  );
}

/** The transaction is committed, and told to the page as aborted. */
function loseAnswerOf(transaction: IDBTransaction): void {
  Object.defineProperty(transaction, 'oncomplete', {
    set: () => transaction.addEventListener('complete', () => transaction.dispatchEvent(new Event('abort'))),
  });
}

/** Whether a live query ever showed a row that was then refused. */
async function shownUncommitted(): Promise<boolean> {
  const [row] = await log.entries.toArray();
  if (!row) throw new Error('shownUncommitted: nothing is stored');
  let shown = false;
  const watching = liveQuery(() => log.entries.toArray()).subscribe((rows) => {
    shown ||= rows.some(({ id }) => id === 'refused');
  });
  await new Promise((resolve) => setTimeout(resolve, 200));
  // The store is busy for a while, so that what is asked for next waits to be committed.
  const until = performance.now() + 300;
  const busy = log.transaction('rw', log.entries, async () => {
    while (performance.now() < until) await log.entries.count();
  });
  // Another id with the device and number of a row that is there: refused by the index, after the store was asked.
  const refused = await log.entries.add({ ...row, id: 'refused' }).then(
    () => false,
    () => true,
  );
  await busy;
  await new Promise((resolve) => setTimeout(resolve, 200));
  watching.unsubscribe();
  if (!refused) throw new Error('shownUncommitted: it was not refused');
  return shown;
}

async function copyFiles(): Promise<number> {
  const folder = await (await navigator.storage.getDirectory()).getDirectoryHandle('journals');
  let files = 0;
  for await (const _ of folder.keys()) files += 1;
  return files;
}

function showHooks(): void {
  const root = document.body.appendChild(document.createElement('div'));
  createRoot(root).render(createElement(Hooks));
}

const store = {
  loseAnswerOf,
  shownUncommitted,
  showHooks,
  copyFiles,
  write,
  writeOn,
  timed,
  held,
  durability,
  startCheck,
  lookThrough,
  beginAnew,
  beginFromCopy,
  health,
  exportCopy,
  exportLog,
  planImport,
  planRecovery,
  takeIn,
  keepPhoto,
  saveDraft,
  readDraft,
  state: storeState,
  count: () => log.entries.count(),
};

export type PageStore = typeof store;

Object.assign(window, { store });
