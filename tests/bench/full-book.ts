/** How long each page of a book of several years keeps a maker waiting: `node --import tsx tests/bench/full-book.ts`, on the built app. */
import { chromium, type Page } from '@playwright/test';
import { maker } from '../browser/maker.ts';
import { appServer } from '../browser/support/app-server.ts';
import { findBrowser } from '../run/find-browser.ts';
import {
  book,
  CHAMBER,
  DAY_HOURS,
  ferment,
  fileOf,
  HOUR_MS,
  openBatch,
  pieceId,
  START_MS,
  setUp,
  stuff,
  weighMeat,
  weighOutSalt,
  weighRound,
} from '../screens/book.ts';

const BATCHES = 60;
const DAYS_APART = 12;
const ROUNDS = 15;
const PIECES = 12;
const DAYS = BATCHES * DAYS_APART;
const GREEN_G = Array.from({ length: PIECES }, (_, at) => 800 + 7 * at);

const idOf = (at: number) =>
  `batch:018cdc00-0000-7000-a000-${(0xc00 + at).toString(16).padStart(12, '0')}` as const;

/** Five rails of pieces hang at the end; all before them were taken down. Readings are invented. */
function yearsOfBatches() {
  const of = setUp(book(), { ruleSet: 'CA' });
  const happen: { atHours: number; write: () => void }[] = [];
  for (let day = 0; day < DAYS; day++)
    happen.push({
      atHours: day * DAY_HOURS,
      write: () => void of.put(day * DAY_HOURS, 'air-read', CHAMBER, { airC: 13, rhPct: 80 - (day % 5) }),
    });
  for (let at = 0; at < BATCHES; at++) {
    const id = idOf(at);
    const number = at + 1;
    const from = at * DAYS_APART * DAY_HOURS;
    happen.push({
      atHours: from,
      write: () => {
        openBatch(of, { id, lot: `B-${number}`, atHours: from });
        weighOutSalt(weighMeat(of, { id, atHours: from + 0.25 }), { id, atHours: from + 0.5 });
        ferment(stuff(of, { id, atHours: from + 2, greenG: GREEN_G, number }), { id, fromHours: from + 2 });
      },
    });
    for (let round = 1; round <= ROUNDS; round++) {
      const atHours = from + round * 4 * DAY_HOURS;
      const share = 1 - 0.38 * (1 - Math.exp(-round / 6));
      const grams = GREEN_G.map((green) => Math.round(green * share));
      happen.push({ atHours, write: () => void weighRound(of, atHours, grams, { id, number }) });
    }
    const downAt = from + (ROUNDS * 4 + 1) * DAY_HOURS;
    if (downAt < DAYS * DAY_HOURS)
      happen.push({
        atHours: downAt,
        write: () => {
          for (let piece = 1; piece <= PIECES; piece++)
            of.put(
              downAt,
              'taken-down',
              pieceId(piece, number),
              { why: 'at-target', note: '' },
              { refs: [id] },
            );
        },
      });
  }
  for (const { atHours, write } of happen.sort((one, two) => one.atHours - two.atHours))
    if (atHours <= DAYS * DAY_HOURS) write();
  return of;
}

/** Milliseconds until the page has its heading and draws no more waiting, and the longest task on the way. */
async function open(page: Page, address: string): Promise<{ waitMs: number; taskMs: number }> {
  await page.goto('./#/hazards');
  await page.waitForTimeout(500);
  return page.evaluate(async (hash) => {
    let taskMs = 0;
    const watch = new PerformanceObserver((list) => {
      for (const { duration } of list.getEntries()) taskMs = Math.max(taskMs, duration);
    });
    watch.observe({ type: 'longtask' });
    const from = performance.now();
    const was = document.querySelector('h1');
    location.hash = hash;
    for (let drawn = false; !drawn && performance.now() - from < 60_000; ) {
      await new Promise((next) => requestAnimationFrame(next));
      const title = document.querySelector('h1');
      drawn = title !== null && title !== was && !document.body.textContent.includes('Drawing');
    }
    const waitMs = performance.now() - from;
    await new Promise((done) => setTimeout(done, 1500));
    watch.disconnect();
    return { waitMs, taskMs };
  }, address);
}

const executablePath = process.env.CHROME_PATH ?? (await findBrowser());
const server = await appServer('/');
const browser = await chromium.launch(executablePath ? { executablePath } : {});
const context = await browser.newContext({ viewport: { width: 390, height: 844 }, baseURL: server.url });
const page = await context.newPage();
page.setDefaultTimeout(120_000);
await page.clock.setFixedTime(START_MS + DAYS * DAY_HOURS * HOUR_MS);
const of = yearsOfBatches();
console.log(`${of.lines.length} entries, ${BATCHES} batches, five of them hanging`);
const me = maker(page);
page.setDefaultTimeout(300_000);
await me.go('/kit/keeping');
const file = { name: 'book.txt', mimeType: 'text/plain', buffer: Buffer.from(fileOf(of)) };
let fromMs = Date.now();
await page.getByLabel('Choose a file').setInputFiles(file);
await me.button(/^Take in /).waitFor();
console.log(`checked after ${((Date.now() - fromMs) / 1000).toFixed(1)} s`);
fromMs = Date.now();
await me.press(/^Take in /);
await page.getByText('taken in and saved on this phone').waitFor();
console.log(`taken in after ${((Date.now() - fromMs) / 1000).toFixed(1)} s`);
const last = idOf(BATCHES - 1).slice('batch:'.length);
const hanging = idOf(BATCHES - 2).slice('batch:'.length);
const devtools = await context.newCDPSession(page);
for (const slowdown of [1, 6]) {
  await devtools.send('Emulation.setCPUThrottlingRate', { rate: slowdown });
  for (const address of [
    '/',
    '/batches',
    `/batches/${last}`,
    `/batches/${last}/weigh-out`,
    `/batches/${hanging}/hanging`,
    `/batches/${hanging}/round`,
    `/batches/${hanging}/record`,
    `/chambers/${CHAMBER.slice('chamber:'.length)}`,
    '/calendar',
    '/kit',
  ]) {
    const { waitMs, taskMs } = await open(page, address);
    const name = address.replace(/[0-9a-f]{8}-[0-9a-f-]+/, 'of one');
    console.log(
      `${slowdown} times slower  ${name.padEnd(26)} drawn after ${waitMs.toFixed(0)} ms, longest task ${taskMs.toFixed(0)} ms`,
    );
  }
}
await browser.close();
await server.stop();
