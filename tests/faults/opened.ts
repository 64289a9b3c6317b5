/** A page with a started store, for the tests of what happens while it is open. */
import type { BrowserContext, CDPSession, Page } from '@playwright/test';
import { ownOrigin, sharedBrowser, tab } from './browser.ts';

export type Open = {
  readonly page: Page;
  readonly cdp: CDPSession;
  readonly context: BrowserContext;
  readonly url: string;
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

/** A page that has started and holds so many acknowledged entries, on an origin of its own. */
export async function opened(count: number, work: (open: Open) => Promise<string>): Promise<string> {
  const url = await ownOrigin();
  const context = await sharedBrowser(async (begun) => {
    await begun.addInitScript(watchTransactions);
  });
  try {
    const page = await tab(context, url);
    await page.evaluate(async (entries) => {
      await window.store.startCheck();
      for (let number = 0; number < entries; number++) await window.store.write([`before ${number}`]);
    }, count);
    const cdp = await context.newCDPSession(page);
    return await work({ page, cdp, context, url, origin: new URL(url).origin });
  } finally {
    for (const page of context.pages()) await page.close();
  }
}

/** How many entries a page that is opened now finds, in a whole log. */
export async function foundByNewPage({
  context,
  url,
}: Pick<Open, 'context' | 'url'>): Promise<{ entries: number | null; faults: number }> {
  const page = await tab(context, url);
  return page.evaluate(async () => {
    await window.store.lookThrough();
    const { entries, faults } = await window.store.health();
    return { entries, faults: faults.length };
  });
}
