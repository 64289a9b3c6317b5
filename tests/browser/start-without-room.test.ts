import { readFileSync } from 'node:fs';
import { readFile } from '#record/file.ts';
import { book, fileOf, openBatch, setUp, stuff } from '../screens/book.ts';
import { maker } from './maker.ts';
import { axe, expect, picture, test } from './support/fixtures.ts';

test('a phone so full that its book cannot be opened says so, and hands out what the second copy holds', async ({
  page,
  context,
}) => {
  const of = stuff(openBatch(setUp(book())));
  await maker(page).takeIn(fileOf(of));

  // What the browser answers on a full disk.
  await context.addInitScript(() => {
    const open = IDBFactory.prototype.open;
    IDBFactory.prototype.open = function (name, version) {
      if (name !== 'greenweight') return open.call(this, name, version);
      const refused = open.call(this, 'refused', 1);
      const error = new DOMException(
        'Encountered full disk while opening backing store',
        'QuotaExceededError',
      );
      Object.defineProperty(refused, 'error', { value: error });
      Object.defineProperty(refused, 'onsuccess', {
        set: () => refused.addEventListener('success', () => refused.dispatchEvent(new Event('error'))),
      });
      return refused;
    };
  });
  await page.reload();
  await expect(page.getByRole('heading', { level: 1 })).toHaveText('The book cannot be opened', {
    timeout: 30_000,
  });
  await expect(page.getByText('This phone has no room left')).toBeVisible();
  await page.getByRole('button', { name: 'Read the second copy' }).click();
  const send = page.getByRole('button', { name: `Send a backup of ${of.lines.length} entries` });
  await expect(send).toBeVisible();
  await axe(page);
  await picture(page, 'start-without-room');
  const [download] = await Promise.all([page.waitForEvent('download'), send.click()]);
  const { lines, problems } = readFile(readFileSync(await download.path(), 'utf8'));
  expect(problems).toEqual([]);
  expect(new Set(lines.map(({ line }) => line))).toEqual(new Set(of.lines.map(({ line }) => line)));
  await expect(page.getByText('Handed over.')).toBeVisible();
});
