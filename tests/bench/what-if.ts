/** How long a maker who moves a slider of What if waits for the sentence that answers: `node --import tsx tests/bench/what-if.ts`, on the built app. */
import { loadavg } from 'node:os';
import { chromium, type Page, type Worker as Thread } from '@playwright/test';
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
  weighRound,
} from '../screens/book.ts';

const SLOWDOWN = 6;
const GOAL_MS = 200;
/** To and fro, so that every move changes the answer. */
const MOVES = 20;
/** Before the next move: so long that all is still, or as it comes, into the fine run and the drawing of the move before. */
const GAPS = [
  { name: 'from rest', gapMs: () => 2500 },
  { name: 'at any time', gapMs: (at: number) => 60 + ((137 * at) % 700) },
] as const;
const DAY = 24;
const PAGES = [
  { name: 'a batch that hangs', hash: `/batches/${BATCH.slice('batch:'.length)}/what-if` },
  { name: 'a batch that does not exist yet', hash: '/what-if' },
] as const;

declare global {
  interface Window {
    waitedMs: Promise<number>;
  }
}
/** What a worker of drying is seen through. */
type Desk = { onmessage: (event: MessageEvent) => void; tookMs: number[] };

/** The thread that answers a move: the first of its kind that a page opens. Notes from now on how long each of its sums takes. */
async function coarseDesk(page: Page): Promise<Thread> {
  const desk = page.workers().find((worker) => worker.url().includes('drying-worker'));
  if (desk === undefined) throw new Error('the page opened no thread for drying');
  await desk.evaluate(() => {
    const own = self as unknown as Desk;
    const sum = own.onmessage;
    own.tookMs = [];
    own.onmessage = (event) => {
      const fromMs = performance.now();
      sum.call(own, event);
      own.tookMs.push(performance.now() - fromMs);
    };
  });
  return desk;
}

/** A tenth of the first slider by its own key; until the sentence that says another day is drawn. */
async function move(page: Page, key: 'PageDown' | 'PageUp'): Promise<number> {
  await page.evaluate(() => {
    const sentence = document.querySelector('main header') ?? document.body;
    const before = sentence.textContent;
    window.waitedMs = new Promise((tell) => {
      let fromMs = Number.NaN;
      document.addEventListener(
        'input',
        ({ timeStamp }) => {
          fromMs = timeStamp;
        },
        { once: true, capture: true },
      );
      const watch = new MutationObserver(() => {
        if (Number.isNaN(fromMs) || sentence.textContent === before) return;
        watch.disconnect();
        // The frame after the one in which it is put: then it is drawn.
        requestAnimationFrame(() => {
          const drawn = new MessageChannel();
          drawn.port1.onmessage = () => tell(performance.now() - fromMs);
          drawn.port2.postMessage(null);
        });
      });
      watch.observe(sentence, { childList: true, subtree: true, characterData: true });
    });
  });
  await page.getByRole('slider').first().press(key);
  return page.evaluate(() => window.waitedMs);
}

const LOOP = 'let s = 0; const t = performance.now(); for (let i = 0; i < 1e8; i++) s += i % 7;';
const LOOP_FILES: Readonly<Record<string, { contentType: string; body: string }>> = {
  '/loop.html': { contentType: 'text/html', body: '<!doctype html><script src="/page.js"></script>' },
  '/page.js': {
    contentType: 'text/javascript',
    body: `function onPage() { ${LOOP} return performance.now() - t + 0 * s; }`,
  },
  '/worker.js': {
    contentType: 'text/javascript',
    body: `${LOOP} postMessage(performance.now() - t + 0 * s);`,
  },
};

/** A fixed loop on a page and in its worker, by hand: what the throttle does to each. */
async function loopMs(page: Page): Promise<{ pageMs: number; workerMs: number }> {
  return page.evaluate(async () => {
    const pageMs = (window as Window & { onPage?: () => number }).onPage?.() ?? Number.NaN;
    const worker = new Worker('/worker.js');
    const workerMs = await new Promise<number>((tell) => {
      worker.onmessage = ({ data }: MessageEvent<number>) => tell(data);
    });
    worker.terminate();
    return { pageMs, workerMs };
  });
}

function quantile(values: readonly number[], share: number): string {
  const sorted = [...values].sort((a, b) => a - b);
  return (sorted[Math.min(sorted.length - 1, Math.ceil(share * sorted.length) - 1)] ?? Number.NaN).toFixed(0);
}

const of = ferment(stuff(weighOutSalt(weighMeat(openBatch(setUp(book()))))));
for (const [day, lossPct] of [
  [2, 6],
  [5, 13],
  [9, 19],
] as const)
  weighRound(
    of,
    33 + DAY * day,
    [800, 790, 795, 810].map((greenG) => Math.round(greenG * (1 - lossPct / 100))),
  );
const executablePath = process.env.CHROME_PATH ?? (await findBrowser());
const server = await appServer('/');
const browser = await chromium.launch(executablePath ? { executablePath } : {});
const context = await browser.newContext({ viewport: { width: 390, height: 844 }, baseURL: server.url });
const page = await context.newPage();
const me = maker(page);
const nowMs = START_MS + (33 + DAY * 10) * HOUR_MS;
await page.clock.setFixedTime(nowMs);
await me.takeIn(fileOf(of));
const throttle = async (on: Page, rate: number) => {
  const devtools = await context.newCDPSession(on);
  await devtools.send('Emulation.setCPUThrottlingRate', { rate });
};
const load = () =>
  loadavg()
    .map((each) => each.toFixed(1))
    .join(' ');

const bare = await context.newPage();
// An origin of its own, past the app's service worker.
await bare.route('http://loop.invalid/**', (route) =>
  route.fulfill(LOOP_FILES[new URL(route.request().url()).pathname] ?? { status: 404 }),
);
await bare.goto('http://loop.invalid/loop.html');
// Once to warm up.
await loopMs(bare);
const free = await loopMs(bare);
await throttle(bare, SLOWDOWN);
const held = await loopMs(bare);
await bare.close();
const pageTimes = held.pageMs / free.pageMs;
const workerTimes = held.workerMs / free.workerMs;
console.log(
  `a fixed loop, throttled ${SLOWDOWN} times (load ${load()}): the page takes ${pageTimes.toFixed(1)} times as long, its worker ${workerTimes.toFixed(1)} times`,
);
/** What the worker's part is to be taken times, so that it is as slow as the page. */
const owed = Math.max(1, SLOWDOWN / Math.max(1, workerTimes));

for (const { name, hash } of PAGES)
  for (const { name: gap, gapMs } of GAPS) {
    await throttle(page, 1);
    await me.go('/kit');
    await me.go(hash);
    await page.getByText('about', { exact: false }).first().waitFor();
    await throttle(page, SLOWDOWN);
    await page.waitForTimeout(4000);
    const desk = await coarseDesk(page);
    const seen: number[] = [];
    for (let at = 0; at < MOVES; at++) {
      seen.push(await move(page, at % 2 === 0 ? 'PageDown' : 'PageUp'));
      await page.waitForTimeout(gapMs(at));
    }
    const sums = await desk.evaluate(() => (self as unknown as Desk).tookMs);
    const whole = seen.map((allMs, at) => allMs + (owed - 1) * (sums[at] ?? Number.NaN));
    console.log(
      `what if, ${name}, ${gap}, ${SLOWDOWN} times slower (load ${load()}): slider to sentence p50 ${quantile(seen, 0.5)} ms, p95 ${quantile(seen, 0.95)} ms of ${MOVES}; the worker's sum p50 ${quantile(sums, 0.5)} ms, and were it ${owed.toFixed(1)} times as long p50 ${quantile(whole, 0.5)} ms, p95 ${quantile(whole, 0.95)} ms (goal ${GOAL_MS} ms)`,
    );
  }
await browser.close();
await server.stop();
