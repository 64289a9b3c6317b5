import { BATCH, book, fileOf, openBatch, START_MS, setUp, stuff } from '../screens/book.ts';
import { HOUR_MS, maker } from './maker.ts';
import { expect, test } from './support/fixtures.ts';

/** Stuffed two hours after the start of the book; readings are invented. */
const STUFFED_MS = START_MS + 2 * HOUR_MS;
const MINUTES = 43_200;

test.use({ timezoneId: 'Etc/UTC' });

function month(): Buffer {
  const rows = Array.from({ length: MINUTES }, (_, minute) => {
    const time = new Date(STUFFED_MS + minute * 60_000).toISOString();
    return `${time.slice(0, 10)} ${time.slice(11, 19)},${(23 + Math.sin(minute / 300)).toFixed(1)},88`;
  });
  return Buffer.from(['Time,Temperature °C,Humidity %', ...rows].join('\n'));
}

test('a month of minutes is read while the page answers, can be given up, and is charted', async ({
  page,
}) => {
  test.setTimeout(90_000);
  await page.addInitScript(() => {
    const noted: number[] = [];
    Object.assign(window, { noted });
    new PerformanceObserver((list) => {
      for (const { duration } of list.getEntries()) noted.push(duration);
    }).observe({ entryTypes: ['longtask'] });
  });
  const longestMs = () =>
    page.evaluate(() => Math.max(0, ...(window as unknown as { noted: number[] }).noted.splice(0)));
  const me = maker(page);
  await page.clock.setFixedTime(STUFFED_MS + 720 * HOUR_MS);
  await me.takeIn(fileOf(stuff(openBatch(setUp(book(), { ruleSet: 'CA' })))));
  const id = BATCH.slice('batch:'.length);
  await me.go(`/batches/${id}/room-file`);
  const file = { name: 'room.csv', mimeType: 'text/csv', buffer: month() };
  const input = page.getByLabel('Choose the file');

  await input.setInputFiles(file);
  await me.press('Stop reading');
  await expect(page.getByText('Stopped. Nothing was saved.')).toBeVisible();

  await input.setInputFiles([]);
  await longestMs();
  const beganMs = performance.now();
  await input.setInputFiles(file);
  await expect(page.getByText('43\u202f200 readings within this ferment')).toBeVisible({ timeout: 30_000 });
  const tookMs = performance.now() - beganMs;
  console.log(`a month read in ${tookMs.toFixed(0)} ms, longest task ${(await longestMs()).toFixed(0)} ms`);

  await me.press(/^Save 43/);
  await expect(page.getByRole('img', { name: /How warm it was since stuffing/ })).toBeVisible({
    timeout: 30_000,
  });
  await expect(page.getByText('degree-hours: deviation')).toBeVisible();

  await me.go(`/batches/${id}`);
  await longestMs();
  await me.go(`/batches/${id}/ferment`);
  await expect(page.getByText('degree-hours: deviation')).toBeVisible();
  console.log(`the page with a month opened, longest task ${(await longestMs()).toFixed(0)} ms`);
});
