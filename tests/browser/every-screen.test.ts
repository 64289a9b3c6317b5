import type { Page } from '@playwright/test';
import { routes } from '../../src/app/routes.tsx';
import {
  BATCH,
  book,
  CHAMBER,
  CURE_LOT,
  FORMULA,
  ferment,
  fileOf,
  METER,
  openBatch,
  pieceId,
  readRoom,
  START_MS,
  setUp,
  stuff,
  weighMeat,
  weighOutSalt,
  weighRound,
} from '../screens/book.ts';
import { HOUR_MS, maker } from './maker.ts';
import { asksOf, axe, expect, test } from './support/fixtures.ts';

const RUNNING: `batch:${string}` = 'batch:018cdc00-0000-7000-a000-0000000000c1';
const ENDED: `batch:${string}` = 'batch:018cdc00-0000-7000-a000-0000000000c2';
const OPENED: `batch:${string}` = 'batch:018cdc00-0000-7000-a000-0000000000c3';
const idOf = (subject: string) => subject.slice(subject.indexOf(':') + 1);

/** Twelve pieces on the rail, one at target weight; a ferment whose limit is passed; one that is over; one at its weigh-out. */
function fullBook(): string {
  const greenG = Array.from({ length: 12 }, (_, at) => 800 + 7 * at);
  const of = stuff(weighOutSalt(weighMeat(openBatch(setUp(book(), { ruleSet: 'CA' })))), { greenG });
  weighRound(ferment(of), 80, [490, ...greenG.slice(1).map((greenOf) => Math.round(greenOf * 0.9))]);
  for (const [number, id, lot] of [
    [2, RUNNING, 'R-1'],
    [3, ENDED, 'E-1'],
  ] as const)
    stuff(weighMeat(openBatch(of, { id, lot }), { id }), { id, number });
  for (let hours = 2; hours <= 86; hours += 6) readRoom(of, hours, 24, RUNNING);
  of.put(4, 'ferment-ended', ENDED, { reason: 'no-warm-stage' });
  return fileOf(weighMeat(openBatch(of, { id: OPENED, lot: 'O-1' }), { id: OPENED }));
}

/** What stands for `:id` under each beginning. */
const IDS: Readonly<Record<string, string>> = {
  batches: idOf(BATCH),
  pieces: idOf(pieceId(2)),
  formulas: idOf(FORMULA),
  chambers: idOf(CHAMBER),
  lots: idOf(CURE_LOT),
  kit: idOf(CURE_LOT),
  instruments: idOf(METER),
};
const addresses = routes.map(({ path }) => path.replace(':id', IDS[path.split('/')[1] ?? ''] ?? 'none'));

/** Sheets, by the page on which they open and what opens them. */
const SHEETS: readonly (readonly [string, string | RegExp])[] = [
  [`/batches/${idOf(BATCH)}`, 'Write a note'],
  [`/batches/${idOf(OPENED)}/weigh-out`, /^Lean/],
  [`/batches/${idOf(OPENED)}/weigh-out`, 'Weigh next line'],
  [`/batches/${idOf(OPENED)}/weigh-out`, 'working'],
  [`/batches/${idOf(OPENED)}/weigh-out`, /^total salt/],
  [`/batches/${idOf(OPENED)}/bench`, /^Ground/],
  [`/batches/${idOf(RUNNING)}/ferment`, 'Read pH'],
  [`/batches/${idOf(RUNNING)}/ferment`, 'Read the room'],
  [`/batches/${idOf(RUNNING)}/ferment`, 'The pH does not fall'],
  [`/batches/${idOf(RUNNING)}/ferment`, 'Write down smoke'],
  [`/batches/${idOf(RUNNING)}/ferment`, 'End the ferment'],
  [`/batches/${idOf(RUNNING)}/ferment`, 'Write down what was done'],
  [`/batches/${idOf(RUNNING)}/ferment`, 'working'],
  [`/batches/${idOf(ENDED)}/ferment`, 'Move to drying'],
  [`/batches/${idOf(BATCH)}/hanging`, 'Take down'],
  [`/pieces/${idOf(pieceId(2))}`, 'Change target'],
  [`/pieces/${idOf(pieceId(2))}`, 'Take down'],
  [`/batches/${idOf(BATCH)}/tasting`, 'Mark it'],
  [`/batches/${idOf(BATCH)}/dryness`, 'Enter a measured value'],
  [`/chambers/${idOf(CHAMBER)}`, 'Read the air'],
  [`/chambers/${idOf(CHAMBER)}`, 'Set the air'],
  [`/instruments/${idOf(METER)}`, 'Check in buffers'],
  ['/absence', 'Plan an absence'],
  ['/kit/clock', 'Put other entries right'],
  ['/kit/clock', /^\d+ entries before it/],
  ['/kit/scales', 'Add a scale'],
  ['/kit/scales', 'Add a meter'],
];

/** What reaches beyond the width of the screen, or holds text that is cut off. Rows that scroll by themselves may be wider. */
function outOfSight(): string[] {
  const width = document.documentElement.clientWidth;
  const found: string[] = [];
  if (document.documentElement.scrollWidth > width)
    found.push(`the page scrolls: ${document.documentElement.scrollWidth}`);
  const scrolls = (element: Element | null): boolean =>
    element !== null &&
    element !== document.documentElement &&
    (/auto|scroll/.test(getComputedStyle(element).overflowX) || scrolls(element.parentElement));
  for (const element of document.querySelectorAll('main *, nav *, dialog[open] *')) {
    if (!element.checkVisibility() || element.closest('svg, .heard')) continue;
    const words = [...element.childNodes].some((node) => node.nodeType === 3 && node.textContent?.trim());
    const { left, right } = element.getBoundingClientRect();
    // One pixel: only heard.
    if (!words || right - left <= 1 || scrolls(element)) continue;
    const style = getComputedStyle(element);
    const cut = /hidden|clip/.test(style.overflowX) && element.scrollWidth > element.clientWidth + 1;
    if (left < -1 || right > width + 1 || cut)
      found.push(`${element.textContent?.trim().slice(0, 40)}: ${left} to ${right}`);
  }
  return found;
}

/** Of each pair of colours in the dark: what else axe asks does not hang on colour. */
async function darkContrast(page: Page): Promise<void> {
  await page.emulateMedia({ colorScheme: 'dark' });
  const { violations } = await asksOf(page).withRules(['color-contrast']).analyze();
  await page.emulateMedia({ colorScheme: 'light' });
  expect(violations.flatMap(({ id, nodes }) => nodes.map(({ target }) => `${id}: ${target}`))).toEqual([]);
}

/** Low and narrow it must fit; high enough that nothing lies half under the foot it must be read by everybody. */
async function whole(page: Page): Promise<void> {
  await page.setViewportSize({ width: 390, height: 844 });
  const text = (size: string) =>
    page.evaluate((to) => document.documentElement.style.setProperty('font-size', to), size);
  await text('200%');
  const lost = await page.evaluate(outOfSight);
  await text('');
  expect(lost, 'text at 200 %, 390 wide').toEqual([]);
  await page.setViewportSize({ width: 390, height: 6000 });
  await axe(page);
  await page.setViewportSize({ width: 320, height: 568 });
  expect(await page.evaluate(outOfSight), '320 wide').toEqual([]);
  await page.setViewportSize({ width: 320, height: 6000 });
  await darkContrast(page);
  await page.setViewportSize({ width: 390, height: 844 });
}

const ROOMS: readonly (readonly [string, (address: string) => boolean])[] = [
  ['a batch', (address) => /^\/(batches|pieces|tag)/.test(address)],
  ['a formula', (address) => address.startsWith('/formulas')],
  ['all else', (address) => !/^\/(batches|pieces|tag|formulas)/.test(address)],
];

for (const [room, belongs] of ROOMS)
  test(`every screen of ${room} stands whole, and is read by everybody`, async ({ page }) => {
    test.setTimeout(400_000);
    const me = maker(page);
    await page.clock.setFixedTime(START_MS + 90 * HOUR_MS);
    await me.takeIn(fullBook());
    const here = addresses.filter(belongs);
    expect(here.length).toBeGreaterThan(3);
    for (const address of here)
      await test.step(address, async () => {
        await me.go(address);
        await expect(page.getByText('Drawing', { exact: true })).toHaveCount(0);
        await expect.soft(whole(page), address).resolves.toBeUndefined();
      });
  });

test('every sheet of a batch stands whole, and is read by everybody', async ({ page }) => {
  test.setTimeout(400_000);
  const me = maker(page);
  await page.clock.setFixedTime(START_MS + 90 * HOUR_MS);
  await me.takeIn(fullBook());
  for (const [address, opener] of SHEETS)
    await test.step(`${address} ${opener}`, async () => {
      await me.go('/hazards');
      await me.go(address);
      await me.button(opener).first().click();
      await expect(me.sheet).toBeVisible();
      await expect.soft(whole(page), `${address} ${opener}`).resolves.toBeUndefined();
    });
});
