import type { Page } from '@playwright/test';
import { maker } from './maker.ts';
import { axe, expect, test } from './support/fixtures.ts';

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

test('a formula goes to another phone as a link and gives the same grams there', async ({
  page,
  context,
  browser,
  server,
}) => {
  await context.grantPermissions(['clipboard-read', 'clipboard-write']);
  const me = maker(page);
  await me.go('/formulas');
  await me.takeStartingFormula();
  await meat(page, '2250', '750');
  // The grams follow the keys a moment later.
  await expect(lines(page)).toContainText(/2\s?250 g.*750 g/);
  const here = (await lines(page).textContent()) ?? '';
  await me.press(/^Pass it on/);
  await expect(page.getByRole('img', { name: 'Code to scan with another phone' })).toBeVisible();
  await me.press('Copy the link');
  await expect(me.button('Copied')).toBeVisible();
  const link = await page.evaluate(() => navigator.clipboard.readText());

  const other = await (await browser.newContext({ baseURL: server.url })).newPage();
  await other.goto(link);
  await expect(other.getByText('Nothing is kept yet.')).toBeVisible();
  await other.getByRole('button', { name: 'Keep this formula' }).click();
  await expect(other.getByLabel('Lean, trimmed')).toBeVisible();
  await meat(other, '2250', '750');
  await expect(lines(other)).toHaveText(here);
  await other.context().close();
});

test('a formula of 25 lines takes less than 50 ms of the processor for each key', async ({
  page,
  context,
}) => {
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
    name: 'Long, invented',
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
  await me.press('Keep this formula');
  await expect(page.getByLabel('Lean, trimmed')).toBeVisible();
  await expect(lines(page).getByRole('listitem')).toHaveCount(25);
  await page.getByLabel('Lean, trimmed').fill('');

  // Time of the page's own thread, so that a busy machine does not count.
  const devtools = await context.newCDPSession(page);
  await devtools.send('Performance.enable', { timeDomain: 'threadTicks' });
  const busyMs = async () => {
    const { metrics } = await devtools.send('Performance.getMetrics');
    return 1000 * (metrics.find(({ name }) => name === 'TaskDuration')?.value ?? Number.NaN);
  };
  const beforeMs = await busyMs();
  for (const key of '2411') await page.keyboard.press(key);
  await expect(row(page, 'Salt').first()).toContainText('74.5');
  const perKeyMs = ((await busyMs()) - beforeMs) / 4;
  expect(perKeyMs).toBeGreaterThan(0);
  expect(perKeyMs).toBeLessThan(50);
});
