/** How long a maker waits from the tap on Save until the weight is on disk and said to be: `node --import tsx tests/bench/tap-to-saved.ts`, on the built app. */
import { chromium, type Page } from '@playwright/test';
import { maker } from '../browser/maker.ts';
import { appServer } from '../browser/support/app-server.ts';
import { findBrowser } from '../run/find-browser.ts';
import {
  BATCH,
  book,
  ferment,
  fileOf,
  HOUR_MS,
  openBatch,
  START_MS,
  setUp,
  stuff,
  weighMeat,
  weighOutSalt,
} from '../screens/book.ts';

const PIECES = 24;
const GREEN = Array.from({ length: PIECES }, (_, at) => 800 + 7 * at);
const RUNS = [
  { name: 'as the machine is', slowdown: 1, goalMs: 100, lostShare: 0.05 },
  { name: '6 times slower', slowdown: 6, goalMs: 250, lostShare: 0.1 },
] as const;

declare global {
  interface Window {
    waitedMs: Promise<number>;
  }
}

/** Milliseconds from the thumb leaving Save to the page saying that the piece is saved. What is measured with costs next to nothing. */
async function weigh(page: Page, number: number, grams: string): Promise<number> {
  await maker(page).keys(grams);
  await page.evaluate((piece) => {
    const begins = `Piece ${piece}: `;
    window.waitedMs = new Promise((tell) => {
      let fromMs = Number.NaN;
      document.addEventListener(
        'pointerup',
        ({ timeStamp }) => {
          fromMs = timeStamp;
        },
        { once: true, capture: true },
      );
      const watch = new MutationObserver(() => {
        const text = document.body.textContent ?? '';
        const at = text.indexOf(begins);
        if (Number.isNaN(fromMs) || at < 0 || !text.startsWith(' saved', text.indexOf('g', at) + 1)) return;
        watch.disconnect();
        tell(performance.now() - fromMs);
      });
      watch.observe(document.body, { childList: true, subtree: true, characterData: true });
    });
  }, number);
  await page.getByRole('button', { name: /^Save, / }).click();
  return page.evaluate(() => window.waitedMs);
}

function quantile(values: readonly number[], share: number): number {
  const sorted = [...values].sort((a, b) => a - b);
  return sorted[Math.min(sorted.length - 1, Math.ceil(share * sorted.length) - 1)] ?? Number.NaN;
}

const executablePath = process.env.CHROME_PATH ?? (await findBrowser());
const server = await appServer('/');
const browser = await chromium.launch(executablePath ? { executablePath } : {});
const context = await browser.newContext({ viewport: { width: 390, height: 844 }, baseURL: server.url });
const page = await context.newPage();
const me = maker(page);
await page.clock.setFixedTime(START_MS + 40 * HOUR_MS);
await me.takeIn(fileOf(ferment(stuff(weighOutSalt(weighMeat(openBatch(setUp(book())))), { greenG: GREEN }))));
const devtools = await context.newCDPSession(page);
for (const [run, { name, slowdown, goalMs, lostShare }] of RUNS.entries()) {
  await page.clock.setFixedTime(START_MS + (40 + 48 * run) * HOUR_MS);
  await me.go('/');
  await me.go(`/batches/${BATCH.slice('batch:'.length)}/round`);
  await devtools.send('Emulation.setCPUThrottlingRate', { rate: slowdown });
  const waits: number[] = [];
  for (const [at, greenG] of GREEN.entries())
    waits.push(await weigh(page, at + 1, String(Math.round(greenG * (1 - lostShare)))));
  const [middle, most] = [quantile(waits, 0.5), quantile(waits, 0.95)].map((ms) => ms.toFixed(0));
  console.log(
    `tap to saved, ${name}: p50 ${middle} ms, p95 ${most} ms of ${waits.length} (goal p95 ${goalMs} ms)`,
  );
}
await browser.close();
await server.stop();
