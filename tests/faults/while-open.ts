/** What may happen to a store while its page is open. Each returns what it saw and throws where the store did not hold. */
import assert from 'node:assert/strict';
import { execFileSync, spawnSync } from 'node:child_process';
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { BrowserContext, CDPSession, Page } from '@playwright/test';
import { dropProfile, launch, newProfile, pageUrl, tab } from './browser.ts';

const DAY_MS = 86_400_000;

type Open = {
  readonly page: Page;
  readonly cdp: CDPSession;
  readonly context: BrowserContext;
  readonly origin: string;
};

declare global {
  interface Window {
    /** Called for each transaction of the page's databases, before it is made; it may throw in its place. */
    beforeTransaction?: () => void;
    afterTransaction?: (transaction: IDBTransaction) => void;
  }
}

/** Dexie binds this function when it opens a database, so it is put in place before the page's own code runs. */
function watchTransactions(): void {
  const real = IDBDatabase.prototype.transaction;
  IDBDatabase.prototype.transaction = function (...words) {
    window.beforeTransaction?.();
    const transaction = real.apply(this, words);
    window.afterTransaction?.(transaction);
    return transaction;
  };
}

/** A page that has started and holds so many acknowledged entries. */
async function opened(
  count: number,
  work: (open: Open) => Promise<string>,
  profile = newProfile(),
): Promise<string> {
  const url = await pageUrl();
  const context = await launch(profile);
  await context.addInitScript(watchTransactions);
  try {
    const page = await tab(context, url);
    await page.evaluate(async (entries) => {
      await window.store.startCheck();
      for (let number = 0; number < entries; number++) await window.store.write([`before ${number}`]);
    }, count);
    const cdp = await context.newCDPSession(page);
    return await work({ page, cdp, context, origin: new URL(url).origin });
  } finally {
    await context.close();
    dropProfile(profile);
  }
}

/** How many entries a page that is opened now finds, in a whole log. */
async function foundByNewPage(context: BrowserContext): Promise<{ entries: number | null; faults: number }> {
  const page = await tab(context, await pageUrl());
  return page.evaluate(async () => {
    await window.store.startCheck();
    const { entries, faults } = await window.store.health();
    return { entries, faults: faults.length };
  });
}

export function strict(): Promise<string> {
  return opened(1, async ({ page }) => {
    const durability = await page.evaluate(() => window.store.durability());
    assert.equal(durability, 'strict');
    return durability;
  });
}

/** A row that waits to be committed and is then refused must not be seen by a live query meanwhile. */
export function shownUncommitted(): Promise<string> {
  return opened(1, async ({ page }) => {
    assert.equal(await page.evaluate(() => window.store.shownUncommitted()), false);
    return 'a refused row was never seen';
  });
}

/** What screens read follows what was appended, in this tab and in another. */
export function hooks(): Promise<string> {
  return opened(2, async ({ page, context }) => {
    const other = await tab(context, await pageUrl());
    for (const each of [page, other]) await each.evaluate(() => window.store.showHooks());
    const shows = async (count: number) => {
      const said = JSON.stringify({
        start: 'ready',
        entries: count,
        touching: count,
        chosen: false,
        scales: 0,
        formulas: 0,
        batches: 0,
        health: count,
      });
      for (const each of [page, other]) {
        await each.waitForFunction((text) => document.querySelector('output')?.textContent === text, said, {
          timeout: 5000,
        });
      }
      return said;
    };
    await shows(2);
    await page.evaluate(() => window.store.write(['three', 'four']));
    return shows(4);
  });
}

/** Site data of one kind, or of all kinds, are cleared under the open page; the next append must lose nothing. */
export function cleared(storageTypes: string): Promise<string> {
  return opened(25, async ({ page, cdp, context, origin }) => {
    await cdp.send('Storage.clearDataForOrigin', { origin, storageTypes });
    const appended = await page.evaluate(() => window.store.write(['after']));
    assert.ok(appended.ok, JSON.stringify(appended));
    const found = await foundByNewPage(context);
    assert.deepEqual(found, { entries: 26, faults: 0 });
    return `${found.entries} of 26 entries found`;
  });
}

/** The same, and nobody appends: the page that is opened next tells it. */
export function clearedAndClosed(storageTypes: string, expected: 'all' | 'lost' | 'first'): Promise<string> {
  return opened(25, async ({ page, cdp, context, origin }) => {
    await page.goto('about:blank');
    await cdp.send('Storage.clearDataForOrigin', { origin, storageTypes });
    const next = await tab(context, await pageUrl());
    const start = await next.evaluate(() => window.store.startCheck());
    if (expected === 'lost') assert.deepEqual(start, { code: 'lost', missing: 25 });
    else if (expected === 'first') assert.deepEqual(start, { code: 'ready', first: true, told: [] });
    else assert.deepEqual(await foundByNewPage(context), { entries: 25, faults: 0 });
    return JSON.stringify(start);
  });
}

/** The browser's handle is dead for the next so many transactions, as after a phone slept. */
export function connectionLost(times: number): Promise<string> {
  return opened(5, async ({ page, context }) => {
    const seen = await page.evaluate(async (lost) => {
      let left = lost;
      window.beforeTransaction = () => {
        left -= 1;
        if (left >= 0) throw new DOMException('Connection to Indexed Database server lost.', 'UnknownError');
      };
      const from = performance.now();
      const appended = await window.store.write(['through it']);
      const tookMs = performance.now() - from;
      const met = Math.min(lost, lost - left);
      window.beforeTransaction = () => undefined;
      const again = await window.store.write(['after it']);
      return {
        ok: appended.ok,
        problem: appended.ok ? '' : appended.problem.code,
        again: again.ok,
        tookMs,
        met,
      };
    }, times);
    assert.ok(seen.met > 0, 'the connection was never lost');
    assert.ok(seen.again, 'did not heal');
    if (!seen.ok) assert.equal(seen.problem, 'connection-lost');
    const found = await foundByNewPage(context);
    assert.deepEqual(found, { entries: seen.ok ? 7 : 6, faults: 0 });
    return `${seen.ok ? 'stored' : 'refused as connection-lost'} after ${seen.met} lost transactions and ${Math.round(seen.tookMs)} ms, then stored`;
  });
}

/** The transaction is done and its answer is lost: what is tried again must not stand twice. */
export function answerLost(): Promise<string> {
  return opened(5, async ({ page, context }) => {
    const [appended, made] = await page.evaluate(async () => {
      let writes = 0;
      window.afterTransaction = (transaction) => {
        if (transaction.mode !== 'readwrite' || transaction.db.name !== 'greenweight') return;
        writes += 1;
        if (writes === 1) window.store.loseAnswerOf(transaction);
      };
      const appended = await window.store.write(['once']);
      window.afterTransaction = () => undefined;
      return [appended, writes] as const;
    });
    assert.ok(made >= 2, 'it was not tried again');
    const found = await foundByNewPage(context);
    assert.deepEqual([appended.ok, found], [true, { entries: 6, faults: 0 }]);
    return '1 entry, not 2';
  });
}

export function quota(): Promise<string> {
  return opened(5, async ({ page, cdp, context, origin }) => {
    await cdp.send('Storage.overrideQuotaForOrigin', { origin, quotaSize: 1_000_000 });
    const seen = await page.evaluate(async () => {
      const long = Array.from({ length: 150 }, (_, number) => `${number} ${'x'.repeat(1900)}`);
      let stored = 0;
      for (let number = 0; number < 400; number++) {
        const appended = await window.store.write(long);
        if (!appended.ok) return { stored, code: appended.problem.code, copies: window.store.state().copies };
        stored += appended.entries.length;
      }
      return { stored, code: 'none', copies: window.store.state().copies };
    });
    await cdp.send('Storage.overrideQuotaForOrigin', { origin });
    assert.equal(seen.code, 'full');
    const again = await page.evaluate(() => window.store.write(['after']));
    assert.ok(again.ok && again.copies === 'both', JSON.stringify(again));
    const found = await foundByNewPage(context);
    assert.deepEqual(found, { entries: 5 + seen.stored + 1, faults: 0 });
    return `${seen.stored} stored (the last in ${seen.copies}), then "full", then stored in both copies again`;
  });
}

/** A disk without a free byte, in a file system of its own; null where none can be mounted. */
export async function diskFull(): Promise<string | null> {
  const folder = mkdtempSync(join(tmpdir(), 'faults-disk-'));
  if (spawnSync('mount', ['-t', 'tmpfs', '-o', 'size=90m', 'tmpfs', folder]).status !== 0) return null;
  const profile = join(folder, 'profile');
  const filler = join(folder, 'filler');
  const url = await pageUrl();
  try {
    let context = await launch(profile);
    let page = await tab(context, url);
    await page.evaluate(async () => {
      await window.store.startCheck();
      for (let number = 0; number < 50; number++) await window.store.write([`before ${number}`]);
    });
    spawnSync('dd', ['if=/dev/zero', `of=${filler}`, 'bs=64k']);
    const seen = await page.evaluate(async () => {
      let stored = 0;
      for (let number = 0; number < 300; number++) {
        const appended = await window.store.write([`${number} ${'x'.repeat(1900)}`]);
        if (!appended.ok) return { stored, problem: appended.problem };
        stored += 1;
      }
      return { stored, problem: null };
    });
    await context.close().catch(() => undefined);
    rmSync(filler);
    context = await launch(profile);
    page = await tab(context, url);
    const found = await page.evaluate(async () => {
      const start = await window.store.startCheck();
      const { entries, faults } = await window.store.health();
      return { start, entries, faults: faults.length };
    });
    await context.close();
    assert.ok(seen.problem !== null, 'the disk was never full');
    assert.ok(
      (found.entries ?? 0) >= 50 + seen.stored && found.faults === 0,
      JSON.stringify({ seen, found }),
    );
    return `${seen.stored} stored, then ${JSON.stringify(seen.problem)}; after room was made ${found.entries} found`;
  } finally {
    execFileSync('umount', ['-l', folder]);
    rmSync(folder, { recursive: true, force: true });
  }
}

/** The clock runs wrong by so many days: everything is recorded, and the step is flagged. */
export function clock(days: number): Promise<string> {
  return opened(5, async ({ page }) => {
    const seen = await page.evaluate(async (byMs) => {
      const real = Date.now;
      Date.now = () => real() + byMs;
      const wrong = await window.store.write(['wrong clock']);
      Date.now = real;
      const right = await window.store.write(['right clock']);
      const { clockSteps, faults, entries } = await window.store.health();
      return { stored: wrong.ok && right.ok, steps: clockSteps.length, faults: faults.length, entries };
    }, days * DAY_MS);
    assert.deepEqual(seen, { stored: true, steps: 1, faults: 0, entries: 7 });
    return `${seen.entries} recorded, ${seen.steps} step flagged`;
  });
}

/** Each page leaves a file of the copy behind; they are gathered, and no line is lost on the way. */
export function gathered(): Promise<string> {
  const pages = 20;
  return opened(1, async ({ context }) => {
    for (let number = 0; number < pages; number++) {
      const page = await tab(context, await pageUrl());
      await page.evaluate(async () => {
        await window.store.startCheck();
        await window.store.write(['one of many pages']);
      });
      await page.close();
    }
    const last = await tab(context, await pageUrl());
    const [files, held] = await last.evaluate(async () => {
      await window.store.startCheck();
      return [await window.store.copyFiles(), await window.store.held()] as const;
    });
    assert.deepEqual([held.stored.length, new Set(held.copied).size], [pages + 1, pages + 1]);
    assert.ok(files <= 10, `${files} files`);
    return `${pages + 1} entries of ${pages + 1} pages in ${files} files`;
  });
}

/** How long the check takes on a log of many years. */
export function manyEntries(): Promise<string> {
  const count = 20_000;
  return opened(0, async ({ page, context }) => {
    await page.evaluate(async (entries) => {
      const some = Array.from({ length: 500 }, (_, number) => `${number} ${'x'.repeat(200)}`);
      for (let stored = 0; stored < entries; stored += some.length) await window.store.write(some);
    }, count);
    const next = await tab(context, await pageUrl());
    const [tookMs, entries] = await next.evaluate(async () => {
      const from = performance.now();
      await window.store.startCheck();
      return [performance.now() - from, await window.store.count()] as const;
    });
    assert.equal(entries, count);
    assert.ok(tookMs < 20_000, `${tookMs} ms`);
    return `${count} entries checked in ${Math.round(tookMs)} ms`;
  });
}

/** How long "Saved" takes, at full speed and on a processor slowed down six times. */
export function latency(): Promise<string> {
  return opened(5, async ({ page, cdp }) => {
    const said: string[] = [];
    for (const { rate, limitMs } of [
      { rate: 1, limitMs: 100 },
      { rate: 6, limitMs: 250 },
    ]) {
      await cdp.send('Emulation.setCPUThrottlingRate', { rate });
      const tookMs = (await page.evaluate(() => window.store.timed(100))).sort((a, b) => a - b);
      const p95Ms = tookMs[94] ?? Number.NaN;
      assert.ok(p95Ms <= limitMs, `p95 ${p95Ms} ms at 1/${rate} speed`);
      said.push(`1/${rate} speed: p50 ${(tookMs[49] ?? 0).toFixed(1)} ms, p95 ${p95Ms.toFixed(1)} ms`);
    }
    return said.join('; ');
  });
}
