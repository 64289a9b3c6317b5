import { BATCH, book, fileOf, openBatch, setUp, weighMeat } from '../screens/book.ts';
import { maker } from './maker.ts';
import { axe, expect, test } from './support/fixtures.ts';

const PAGE = `/batches/${BATCH.slice('batch:'.length)}`;
const TEXT = 'The cellar door stood open all night.';

test('a note that the phone cannot keep stays, is passed on as text, and is kept when there is room again', async ({
  page,
}) => {
  const me = maker(page);
  await page.context().grantPermissions(['clipboard-read', 'clipboard-write']);
  await me.takeIn(fileOf(weighMeat(openBatch(setUp(book())))));
  await me.go(PAGE);
  await page.evaluate(() => {
    const real = IDBObjectStore.prototype.add;
    Object.assign(window, { full: true });
    IDBObjectStore.prototype.add = function (...row) {
      if ('full' in window && window.full) throw new DOMException('no room', 'QuotaExceededError');
      return real.apply(this, row);
    };
  });
  await me.press('Write a note');
  await me.sheet.getByRole('textbox').fill(TEXT);
  await me.press('Save');
  await expect(me.sheet.getByText('This phone has no room left.')).toBeVisible();
  await expect(me.sheet.getByRole('textbox').first()).toHaveValue(TEXT);
  await me.press('Pass on as text');
  await expect(me.sheet.getByText('Copied. Paste it where it cannot be lost.')).toBeVisible();
  expect(await page.evaluate(() => navigator.clipboard.readText())).toContain(TEXT);
  await axe(page);
  await page.evaluate(() => Object.assign(window, { full: false }));
  await me.press('Save');
  await expect(me.sheet).toBeHidden();
  await me.go(`${PAGE}/record`);
  await expect(page.getByText(TEXT)).toBeVisible();
});

test('a store that was cleared is filled again from the second copy, and the maker is told', async ({
  page,
}) => {
  const me = maker(page);
  await me.takeIn(fileOf(weighMeat(openBatch(setUp(book())))));
  const cdp = await page.context().newCDPSession(page);
  const { origin } = new URL(page.url());
  await page.goto('about:blank');
  await cdp.send('Storage.clearDataForOrigin', { origin, storageTypes: 'indexeddb' });
  await me.go('/');
  await expect(page.getByText(/entries were restored from the second copy\./)).toBeVisible();
  await axe(page);
  await me.press('Seen');
  await expect(page.getByText(/restored from the second copy/)).toBeHidden();
  await me.go('/kit/keeping');
  await expect(page.getByText(/entries were restored from the second copy\./)).toBeVisible();
});

test('a locked backup brings a lost book back, and opens to its passphrase alone', async ({ page }) => {
  const me = maker(page);
  await page.addInitScript(() => Reflect.deleteProperty(window, 'showSaveFilePicker'));
  await me.takeIn(fileOf(weighMeat(openBatch(setUp(book())))));
  await me.go('/kit/keeping');
  await me.press('Back up now');
  await page.getByLabel(/^Passphrase, if/).fill('seven12');
  await me.press('Lock the file');
  await expect(page.getByText('Eight characters or more.', { exact: true })).toBeVisible();
  await page.getByLabel(/^Passphrase, if/).fill('caraway and pepper');
  await me.press('Lock the file');
  await expect(page.getByText('The file is locked, and was opened again')).toBeVisible();
  const download = page.waitForEvent('download');
  await me.press('Save as a file');
  const file = await (await download).path();
  await expect(page.getByText('Handed to the downloads of this phone.')).toBeVisible();

  const cdp = await page.context().newCDPSession(page);
  const { origin } = new URL(page.url());
  await page.goto('about:blank');
  await cdp.send('Storage.clearDataForOrigin', { origin, storageTypes: 'indexeddb,file_systems' });
  await me.go('/');
  await me.heading('The book on this phone is gone');
  await axe(page);
  await page.getByLabel('Choose the file').setInputFiles(file);
  await page.getByLabel('The passphrase of this file').fill('caraway and paprika');
  await me.press('Open it');
  await expect(page.getByText('It does not open')).toBeVisible();
  await page.getByLabel('The passphrase of this file').fill('caraway and pepper');
  await me.press('Open it');
  await me.press('Bring them back');
  await me.heading('Today');
  await me.go(PAGE);
  await expect(page.getByText('240108').first()).toBeVisible();
});
