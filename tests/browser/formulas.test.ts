import type { Page } from '@playwright/test';
import jsQR from 'jsqr';
import type { SubjectId } from '#record/subject.ts';
import { LONG_FORMULA } from '../files/long-formula.ts';
import { book, fileOf, setUp } from '../screens/book.ts';
import { maker } from './maker.ts';
import { axe, expect, keptOnPhone, test } from './support/fixtures.ts';

/** Names and amounts are invented; 6.25 % is an example of what a bag prints. */
async function newFormula(page: Page, { salt, cure }: { salt: string; cure: string }): Promise<void> {
  const me = maker(page);
  await me.go('/formulas/new');
  await page.getByLabel('Name', { exact: true }).fill('Plain, invented');
  await page.getByLabel('Fat wanted in the meat').fill('25');
  await me.press(/^Salt/);
  await me.sheet.getByLabel('Amount', { exact: true }).fill(salt);
  await me.save('Done');
  await me.press(/^Curing salt/);
  await me.sheet.getByLabel('Amount', { exact: true }).fill(cure);
  await me.sheet.getByLabel('Nitrite', { exact: true }).fill('6.25');
  await me.sheet.getByLabel('Nitrate', { exact: true }).fill('0');
  await me.save('Done');
}

async function bench(page: Page): Promise<void> {
  const me = maker(page);
  await me.go('/');
  await me.setUpBench('United States');
  await me.addScale({ step: '1 g', name: 'Meat scale' });
  await me.addScale({ step: '0.1 g', most: '500', name: 'Bench scale' });
  await me.addScale({ step: '0.01 g', most: '50', name: 'Pocket scale' });
}

const meat = async (page: Page, lean: string, fat: string) => {
  await page.getByLabel('Lean, trimmed').fill(lean);
  await page.getByLabel('Fat, trimmed').fill(fat);
};
const lines = (page: Page) => page.getByRole('list', { name: /^For / });
const row = (page: Page, name: string) => lines(page).getByRole('listitem').filter({ hasText: name });

test('3,215 g of meat: 90.0 g salt and 8.03 g of a 6.25 % cure at 156.1 mg/kg, while the meat is typed', async ({
  page,
}) => {
  test.setTimeout(90_000);
  await bench(page);
  await newFormula(page, { salt: '2.8', cure: '0.25' });
  await page.getByRole('button', { name: 'Save', exact: true }).click();
  await maker(page).heading('Plain, invented');
  await meat(page, '2411', '804');
  await expect(row(page, 'Salt').first()).toContainText('90.0');
  await expect(row(page, 'Curing salt')).toContainText('8.03');
  await expect(page.getByText('156.11\u00a0mg/kg').first()).toBeVisible();
  await axe(page);
  await meat(page, '2475', '825');
  await expect(row(page, 'Salt').first()).toContainText('92.4');
  await expect(row(page, 'Curing salt')).toContainText('8.25');

  await page.getByRole('button', { name: 'working' }).first().click();
  await expect(page.getByRole('dialog')).toContainText('at most 156.25 mg/kg');
  await axe(page);
});

test('what is half typed in a formula is still there after the page was killed', async ({ page }) => {
  await newFormula(page, { salt: '2.', cure: '0.25' });
  await page.reload();
  await expect(page.getByText('What you were typing is still here.')).toBeVisible();
  await page.getByRole('button', { name: /^Salt/ }).click();
  await expect(page.getByRole('dialog').getByLabel('Amount', { exact: true })).toHaveValue('2.');
});

test('each save is a version; two stand side by side; a batch keeps the one it was opened from', async ({
  page,
}) => {
  test.setTimeout(90_000);
  await bench(page);
  const me = maker(page);
  await me.go('/formulas');
  await me.takeStartingFormula();
  await me.follow('Edit');
  await me.press(/^Salt/);
  await me.sheet.getByLabel('Amount', { exact: true }).fill('2.8');
  await me.save('Done');
  await page.getByLabel('What changed, and why').fill('A little more salt');
  await me.press('Save as version 2');
  await me.heading('Caraway and pepper, invented example');
  await me.press(/^Versions/);
  await expect(me.sheet).toContainText('A little more salt');
  await me.press('Compare two side by side');
  await expect(me.sheet).toContainText('One difference');
  await expect(me.sheet.getByRole('listitem').filter({ hasText: 'changed' })).toContainText(
    '2.55\u00a0% of meat',
  );
  await axe(page);
  await me.press('Close');
  await me.openBatch();
});

const LONG: SubjectId = 'formula:018cdc00-0000-7000-a000-0000000000bb';

/** What a camera would read of the code on the screen. */
async function scanned(page: Page): Promise<string | undefined> {
  const code = page.getByRole('img', { name: 'Code to scan with another phone' });
  await expect(code).toBeVisible();
  const bars = await code.locator('path').first().getAttribute('d');
  const side = Number((await code.getAttribute('viewBox'))?.split(' ')[2]);
  const pixels = 3;
  const width = side * pixels;
  const image = new Uint8ClampedArray(width * width * 4).fill(255);
  for (const [, x, y, length] of (bars ?? '').matchAll(/M(\d+) (\d+)h(\d+)v1h-\d+z/g))
    for (let row = Number(y) * pixels; row < (Number(y) + 1) * pixels; row += 1)
      for (let at = Number(x) * pixels; at < (Number(x) + Number(length)) * pixels; at += 1)
        image.fill(0, (row * width + at) * 4, (row * width + at) * 4 + 3);
  return jsQR(image, width, width)?.data;
}

test('a formula of 25 lines goes by link and by code to a phone without a signal, and gives the same grams there', async ({
  page,
  context,
  browser,
  server,
}) => {
  test.setTimeout(90_000);
  await context.grantPermissions(['clipboard-read', 'clipboard-write']);
  const me = maker(page);
  const pages = setUp(book());
  pages.put(0, 'formula-saved', LONG, { formula: LONG_FORMULA, note: '' });
  await me.takeIn(fileOf(pages));
  await me.go(`/formulas/${LONG.slice('formula:'.length)}`);
  const weighed = async (on: Page) => {
    await meat(on, '2175', '825');
    await on.getByLabel('Pieces', { exact: true }).fill('12');
    // The grams follow the keys a moment later.
    await expect(on.getByText(/^For 3\s?000\sg of meat/)).toBeVisible();
    await expect(lines(on).getByRole('listitem')).toHaveCount(LONG_FORMULA.lines.length);
    return (await lines(on).textContent()) ?? '';
  };
  const here = await weighed(page);
  // A dash stands where there are no grams.
  expect(here).not.toContain('–');
  await me.press(/^Pass it on/);
  await me.press('Copy the link');
  await expect(me.button('Copied')).toBeVisible();
  const link = await page.evaluate(() => navigator.clipboard.readText());
  expect(await scanned(page)).toBe(link);

  const other = await (await browser.newContext({ baseURL: server.url })).newPage();
  const you = maker(other);
  await you.takeIn(fileOf(setUp(book())));
  await keptOnPhone(other);
  await server.stop();
  await other.goto(link);
  await expect(other.getByText('Nothing is kept yet.')).toBeVisible();
  await you.press('Keep this formula');
  await expect(other.getByLabel('Lean, trimmed')).toBeVisible();
  expect(await weighed(other)).toBe(here);
  await you.press(/^Versions/);
  await expect(you.sheet).toContainText('made from a formula that is not in this book');
  await other.context().close();
});

const MARKUP = '<img src=x onerror="alert(1)"> <script>alert(2)</script>';

test('a formula of 25 lines follows the keys, and a name that is markup stays text', async ({ page }) => {
  await bench(page);
  const me = maker(page);
  await me.go('/formulas');
  const spices = Array.from({ length: 24 }, (_, at) => ({
    id: `spice-${at}`,
    name: `Spice ${at}`,
    role: 'spice',
    amount: { basis: 'pct-of-meat', amountPct: 0.1 },
  }));
  const salt = { id: 'salt', name: 'Salt', role: 'salt', amount: { basis: 'pct-of-meat', amountPct: 2.8 } };
  const formula = {
    name: MARKUP,
    kind: 'comminuted',
    species: ['pork'],
    fatPctOfMeat: 25,
    lines: [salt, ...spices],
  };
  await page.locator('input[type=file]').setInputFiles({
    name: 'long.json',
    mimeType: 'application/json',
    buffer: Buffer.from(JSON.stringify({ format: 'greenweight-formula', version: 1, formula, note: '' })),
  });
  // A name is text, whatever it says: shown as it stands, and nothing of it runs.
  await me.heading(MARKUP);
  await expect(page.locator('img')).toHaveCount(0);
  await me.press('Keep this formula');
  await expect(page.getByLabel('Lean, trimmed')).toBeVisible();
  await me.heading(MARKUP);
  await expect(lines(page).getByRole('listitem')).toHaveCount(25);
  await page.getByLabel('Lean, trimmed').fill('');
  for (const key of '2411') await page.keyboard.press(key);
  await expect(row(page, 'Salt').first()).toContainText('74.5');
});
