import type { Locator, Page } from '@playwright/test';
import {
  BATCH,
  book,
  ferment,
  fileOf,
  openBatch,
  START_MS,
  setUp,
  stuff,
  weighMeat,
  weighOutSalt,
} from '../screens/book.ts';
import { HOUR_MS, maker } from './maker.ts';
import { expect, test } from './support/fixtures.ts';

test.use({ hasTouch: true });

const GREEN = Array.from({ length: 12 }, (_, at) => 800 + 7 * at);
/** A tenth lost, then a little more: invented. */
const ROUNDS = [0.93, 0.88].map((share) => GREEN.map((greenG) => String(Math.round(share * greenG))));

/** A thumb on what it sees: the whole of the key must be on the screen as it is, under nothing else, and nothing scrolls. */
async function tap(page: Page, what: Locator): Promise<void> {
  const box = await what.boundingBox();
  const screen = page.viewportSize();
  if (!box || !screen) throw new Error('tap: it is not on the page');
  expect(box.x >= 0 && box.y >= 0, 'begins on the screen').toBe(true);
  expect(box.x + box.width, 'ends on the screen').toBeLessThanOrEqual(screen.width);
  expect(box.y + box.height, `ends on the screen: ${await what.textContent()}`).toBeLessThanOrEqual(
    screen.height,
  );
  const [x, y] = [box.x + box.width / 2, box.y + box.height / 2];
  const hit = await what.evaluate((element, at) => element.contains(document.elementFromPoint(at.x, at.y)), {
    x,
    y,
  });
  expect(hit, 'lies under nothing').toBe(true);
  await page.touchscreen.tap(x, y);
}

test('a weigh round of 12 pieces costs 12 x (digits + 1) taps, no scrolling, and never the phone keyboard', async ({
  page,
}) => {
  test.setTimeout(120_000);
  const me = maker(page);
  await page.clock.setFixedTime(START_MS + 40 * HOUR_MS);
  await me.takeIn(
    fileOf(ferment(stuff(weighOutSalt(weighMeat(openBatch(setUp(book())))), { greenG: GREEN }))),
  );
  const pad = page.getByRole('group', { name: 'Number keys' });

  for (const [round, weights] of ROUNDS.entries()) {
    await page.clock.setFixedTime(START_MS + (40 + 48 * round) * HOUR_MS);
    const size = [
      { width: 390, height: 844 },
      { width: 320, height: 568 },
    ][round];
    if (size) await page.setViewportSize(size);
    await me.go(`/batches/${BATCH.slice('batch:'.length)}/round`);
    let taps = 0;
    for (const [at, weight] of weights.entries()) {
      await expect(page.getByText(`piece ${at + 1} of 12`)).toBeVisible();
      for (const digit of weight) {
        await tap(page, pad.getByRole('button', { name: digit, exact: true }));
        taps += 1;
      }
      await tap(page, me.button(/^Save, /));
      taps += 1;
      expect(
        await page.evaluate(() => [window.scrollY, document.activeElement?.matches('input, textarea')]),
      ).toEqual([0, false]);
    }
    await me.heading('Round done');
    expect(taps).toBeLessThanOrEqual(12 * (3 + 1));
    await me.go(`/batches/${BATCH.slice('batch:'.length)}/hanging`);
    await expect(
      page.getByRole('list', { name: '12 pieces on the rail' }).getByRole('link', { name: /to go$/ }),
    ).toHaveCount(12);
  }
  await me.go(`/batches/${BATCH.slice('batch:'.length)}/record`);
  for (const weight of ROUNDS.flat())
    expect(await page.getByRole('cell', { name: `on the scale ${weight}` }).count()).toBeGreaterThan(0);
});
