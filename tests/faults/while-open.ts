/** What may happen to a store while its page is open. Each returns what it saw and throws where the store did not hold. */
import assert from 'node:assert/strict';
import { tab } from './browser.ts';
import { foundByNewPage, opened } from './opened.ts';

const DAY_MS = 86_400_000;

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
  return opened(2, async ({ page, context, url }) => {
    const other = await tab(context, url);
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
  return opened(25, async ({ page, cdp, context, origin, url }) => {
    await cdp.send('Storage.clearDataForOrigin', { origin, storageTypes });
    const appended = await page.evaluate(() => window.store.write(['after']));
    assert.ok(appended.ok, JSON.stringify(appended));
    const found = await foundByNewPage({ context, url });
    assert.deepEqual(found, { entries: 26, faults: 0 });
    return `${found.entries} of 26 entries found`;
  });
}

/** The same, and nobody appends: the page that is opened next tells it. */
export function clearedAndClosed(storageTypes: string, expected: 'all' | 'lost' | 'first'): Promise<string> {
  return opened(25, async ({ page, cdp, context, origin, url }) => {
    await page.goto('about:blank');
    await cdp.send('Storage.clearDataForOrigin', { origin, storageTypes });
    const next = await tab(context, url);
    const start = await next.evaluate(() => window.store.startCheck());
    if (expected === 'lost') assert.deepEqual(start, { code: 'lost', missing: 25 });
    else if (expected === 'first') assert.deepEqual(start, { code: 'ready', first: true, told: [] });
    else assert.deepEqual(await foundByNewPage({ context, url }), { entries: 25, faults: 0 });
    return JSON.stringify(start);
  });
}

/** The browser's handle is dead for the next so many transactions, as after a phone slept. */
export function connectionLost(times: number): Promise<string> {
  return opened(5, async ({ page, context, url }) => {
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
    const found = await foundByNewPage({ context, url });
    assert.deepEqual(found, { entries: seen.ok ? 7 : 6, faults: 0 });
    return `${seen.ok ? 'stored' : 'refused as connection-lost'} after ${seen.met} lost transactions and ${Math.round(seen.tookMs)} ms, then stored`;
  });
}

/** The transaction is done and its answer is lost: what is tried again must not stand twice. */
export function answerLost(): Promise<string> {
  return opened(5, async ({ page, context, url }) => {
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
    const found = await foundByNewPage({ context, url });
    assert.deepEqual([appended.ok, found], [true, { entries: 6, faults: 0 }]);
    return '1 entry, not 2';
  });
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
