/** How long a formula of 25 lines keeps a typing thumb waiting: `node --import tsx tests/bench/rescale.ts`, on the built app. */
import { chromium } from '@playwright/test';
import { maker } from '../browser/maker.ts';
import { appServer } from '../browser/support/app-server.ts';
import { LONG_FORMULA } from '../files/long-formula.ts';
import { findBrowser } from '../run/find-browser.ts';
import { book, fileOf, setUp } from '../screens/book.ts';

const SUBJECT = 'formula:018cdc00-0000-7000-a000-0000000000bb';
const RUNS = [
  { name: 'as the machine is', slowdown: 1 },
  { name: '6 times slower', slowdown: 6 },
] as const;
const GOAL_MS = 200;
/** Typed over each other, so that every key changes the grams of every line. */
const TYPED = ['24115', '3100', '98765'];

const executablePath = process.env.CHROME_PATH ?? (await findBrowser());
const server = await appServer('/');
const browser = await chromium.launch(executablePath ? { executablePath } : {});
const context = await browser.newContext({ viewport: { width: 390, height: 844 }, baseURL: server.url });
const page = await context.newPage();
const me = maker(page);
const pages = setUp(book());
pages.put(0, 'formula-saved', SUBJECT, { formula: LONG_FORMULA, note: '' });
await me.takeIn(fileOf(pages));
await me.go(`/formulas/${SUBJECT.slice('formula:'.length)}`);
await page.getByLabel('Pieces', { exact: true }).fill('12');
const lean = page.getByLabel('Lean, trimmed');
const devtools = await context.newCDPSession(page);

/** The longest wait of each interaction, from the key to the next paint. What is under 16 ms is not told apart. */
async function watch(): Promise<void> {
  await page.evaluate(() => {
    const waits = new Map<number, number>();
    new PerformanceObserver((list) => {
      for (const entry of list.getEntries() as (PerformanceEntry & { interactionId?: number })[])
        if (entry.interactionId)
          waits.set(entry.interactionId, Math.max(waits.get(entry.interactionId) ?? 0, entry.duration));
      document.documentElement.dataset.waits = JSON.stringify([...waits]);
    }).observe({ type: 'event', durationThreshold: 16 } as PerformanceObserverInit);
  });
}

await watch();
for (const { name, slowdown } of RUNS) {
  await devtools.send('Emulation.setCPUThrottlingRate', { rate: slowdown });
  await page.evaluate(() => {
    document.documentElement.dataset.from = document.documentElement.dataset.waits ?? '[]';
  });
  let keys = 0;
  for (const text of TYPED) {
    await lean.fill('');
    await lean.focus();
    await page.keyboard.type(text, { delay: 150 });
    keys += text.length;
  }
  await page.waitForTimeout(1000);
  const { from, waits } = await page.evaluate(() => ({ ...document.documentElement.dataset }));
  const before = new Map<number, number>(JSON.parse(from ?? '[]'));
  const own = (JSON.parse(waits ?? '[]') as [number, number][])
    .filter(([id]) => !before.has(id))
    .map(([, waitedMs]) => waitedMs)
    .sort((a, b) => a - b);
  const middle = own[Math.floor(own.length / 2)];
  const most = own.at(-1);
  console.log(
    own.length === 0
      ? `rescale, ${LONG_FORMULA.lines.length} lines, ${name}: every one of ${keys} keys under 16 ms`
      : `rescale, ${LONG_FORMULA.lines.length} lines, ${name}: key to next paint middle ${middle} ms, most ${most} ms of ${own.length} told of ${keys} keys (goal at most ${GOAL_MS} ms)`,
  );
}
await browser.close();
await server.stop();
