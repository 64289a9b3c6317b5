/** A disk without a free byte, in a file system of its own; null where none can be mounted. */
import assert from 'node:assert/strict';
import { execFileSync, spawnSync } from 'node:child_process';
import { mkdirSync, mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { BrowserContext, Page } from '@playwright/test';
import { launch, pageUrl, tab } from './browser.ts';

type Disk = {
  /** Until nothing more goes in. */
  readonly fill: () => Promise<void>;
  readonly free: () => void;
  /** Ends the browser and starts it again. */
  readonly restart: () => Promise<Page>;
};

/**
 * A browser that did not grant persistence may throw away all that a site keeps when its disk is full: no site can stop that. Then
 * the next start must say that a book is lost, and the case is tried again; how often it came to that is told.
 */
const THROWN_AWAY = 'the browser threw everything away, and the start said so';
const TRIES = 3;

async function onSmallDisk(work: (page: Page, disk: Disk) => Promise<string>): Promise<string | null> {
  for (let thrownAway = 0; ; thrownAway++)
    try {
      const said = await onFreshDisk(work);
      return thrownAway > 0 ? `${said} (${thrownAway} times before it ${THROWN_AWAY})` : said;
    } catch (error) {
      if (!(error instanceof Error && error.message === THROWN_AWAY) || thrownAway + 1 === TRIES) throw error;
    }
}

async function onFreshDisk(work: (page: Page, disk: Disk) => Promise<string>): Promise<string | null> {
  const folder = mkdtempSync(join(tmpdir(), 'faults-disk-'));
  if (spawnSync('mount', ['-t', 'tmpfs', '-o', 'size=120m', 'tmpfs', folder]).status !== 0) return null;
  const profile = join(folder, 'profile');
  const filler = join(folder, 'filler');
  const url = await pageUrl();
  mkdirSync(filler);
  let parts = 0;
  let context: BrowserContext = await launch(profile);
  const disk: Disk = {
    // More than once: a browser that sees a full disk throws away what it only kept to be quick.
    async fill() {
      for (let again = 0; again < 3; again++) {
        spawnSync('dd', ['if=/dev/zero', `of=${join(filler, String(++parts))}`, 'bs=4k']);
        await new Promise((resolve) => setTimeout(resolve, 500));
      }
    },
    free() {
      rmSync(filler, { recursive: true });
      mkdirSync(filler);
    },
    async restart() {
      await context.close().catch(() => undefined);
      context = await launch(profile);
      return tab(context, url);
    },
  };
  try {
    return await work(await tab(context, url), disk);
  } finally {
    await context.close().catch(() => undefined);
    execFileSync('umount', ['-l', folder]);
    rmSync(folder, { recursive: true, force: true });
  }
}

async function store(page: Page, count: number): Promise<void> {
  await page.evaluate(async (entries) => {
    await window.store.startCheck();
    const some = Array.from({ length: 50 }, (_, number) => `${number} ${'x'.repeat(1500)}`);
    for (let stored = 0; stored < entries; stored += 50) await window.store.write(some);
  }, count);
}

/** Stored and looked through, with room held back. */
async function begin(page: Page, count: number): Promise<void> {
  await store(page, count);
  await page.evaluate(() => window.store.lookThrough());
  await page.waitForFunction(() => window.store.state().room === 'kept');
}

async function found(page: Page) {
  const seen = await page.evaluate(async () => {
    const start = await window.store.lookThrough();
    const { entries, faults } = await window.store.health();
    return { start: start.code, entries, faults: faults.length };
  });
  if (seen.start === 'lost' && seen.entries === 0) throw new Error(THROWN_AWAY);
  return seen;
}

/** What was held back must let the maker write on and take a backup out; a photo does not get it. */
export function diskFull(): Promise<string | null> {
  return onSmallDisk(async (page, disk) => {
    await begin(page, 50);
    await disk.fill();
    const seen = await page.evaluate(async () => {
      const photo = await window.store.keepPhoto(new Uint8Array(200_000).map((_, at) => (at * at) & 0xff));
      const before = window.store.state().room;
      // Until what was held is given back, and a good while on.
      let [stored, since] = [0, 0];
      let problem: unknown = null;
      while (since < 300 && stored < 5000 && problem === null) {
        const appended = await window.store.write([`${stored} ${'x'.repeat(1500)}`]);
        if (appended.ok) stored += 1;
        else problem = appended.problem;
        if (window.store.state().room === 'used') since += 1;
      }
      const exported = await window.store.exportLog().then(({ entries }) => entries, String);
      return { photo, before, after: window.store.state().room, stored, since, problem, exported };
    });
    disk.free();
    const later = await found(await disk.restart());
    assert.deepEqual([seen.photo.ok, seen.before, seen.after], [false, 'kept', 'used'], JSON.stringify(seen));
    assert.deepEqual([seen.since, seen.exported], [300, 50 + seen.stored], JSON.stringify(seen));
    assert.deepEqual([later.entries, later.faults], [50 + seen.stored, 0], JSON.stringify(later));
    return `no room for a photo, then ${seen.since} entries stored in what was held back, ${seen.exported} exported; ${later.entries} found later`;
  });
}

/**
 * Written on until it is refused: the end of the disk is not come up against a second time, and nothing that was acknowledged is
 * gone. When there is room again, so does the writing go on.
 */
export function writtenUntilRefused(): Promise<string | null> {
  return onSmallDisk(async (page, disk) => {
    await begin(page, 1000);
    await disk.fill();
    const written = await page.evaluate(async () => {
      const some = Array.from({ length: 20 }, (_, number) => `${number} ${'y'.repeat(1500)}`);
      for (let stored = 0; stored < 9000; stored += some.length) {
        const appended = await window.store.write(some);
        if (!appended.ok) return { stored, code: appended.problem.code };
      }
      return { stored: 9000, code: 'never refused' };
    });
    assert.equal(written.code, 'full', JSON.stringify(written));
    assert.ok(written.stored >= 500, JSON.stringify(written));
    disk.free();
    const again = await page.evaluate(() => window.store.write(['after']));
    assert.ok(again.ok, JSON.stringify(again));
    const later = await found(await disk.restart());
    assert.deepEqual(later, { start: 'ready', entries: 1000 + written.stored + 1, faults: 0 });
    return `${written.stored} entries stored in what was held back, then refused; with room one more, ${later.entries} found later`;
  });
}

/** The browser starts when no byte is free: what was held back at the last start is given back before anything is said. */
export function startedFull(): Promise<string | null> {
  return onSmallDisk(async (page, disk) => {
    await begin(page, 3000);
    await page.context().close();
    await disk.fill();
    const full = await disk.restart();
    await disk.fill();
    const seen = await full.evaluate(async () => {
      const start = await window.store.startCheck();
      const appended = await window.store.write(['on a full disk']);
      const copied = await window.store.exportCopy('test');
      return { start: start.code, ok: appended.ok, copied: copied?.entries, room: window.store.state().room };
    });
    assert.deepEqual(seen, { start: 'ready', ok: true, copied: 3001, room: 'used' });
    disk.free();
    const later = await found(await disk.restart());
    assert.deepEqual(later, { start: 'ready', entries: 3001, faults: 0 });
    return 'opened, one entry stored in what was held back, 3001 read from the second copy and found later';
  });
}

/** As before, and nothing was ever held back: whether it opens or says that it cannot, both copies stay as they are. */
export function startedFullWithoutReserve(): Promise<string | null> {
  return onSmallDisk(async (page, disk) => {
    await store(page, 3000);
    await page.context().close();
    await disk.fill();
    const full = await disk.restart();
    await disk.fill();
    const seen = await full.evaluate(async () => {
      const start = await window.store.startCheck();
      const copied = await window.store.exportCopy('test');
      return { start, copied: copied?.entries };
    });
    disk.free();
    const later = await found(await disk.restart());
    assert.deepEqual([later.start, later.entries], ['ready', 3000], JSON.stringify({ seen, later }));
    return `${JSON.stringify(seen.start)}, ${seen.copied} read from the second copy; ${later.entries} found later`;
  });
}
