import { readFileSync } from 'node:fs';
import type { Page } from '@playwright/test';
import { maker } from './maker.ts';
import { axe, expect, keptOnPhone, test } from './support/fixtures.ts';

test.describe.configure({ timeout: 90_000 });

/** Names and amounts are invented; the percentages are examples of what a bag prints. */
const alert = (page: Page, text: string) => page.getByRole('alert').filter({ hasText: text });

async function fillBag(page: Page, nitrite: string): Promise<void> {
  await page.getByLabel('Nitrite', { exact: true }).fill(nitrite);
  await page.getByLabel('Nitrate', { exact: true }).fill('4');
  await page.getByLabel('Name', { exact: true }).fill('Cure, invented');
  await page.getByLabel('Their lot number').fill('B-1107');
}

/** The backup of this phone, as its maker would find it among the downloads. */
async function backUp(page: Page): Promise<string> {
  const me = maker(page);
  await page.addInitScript(() => Object.defineProperty(window, 'showSaveFilePicker', { value: undefined }));
  await me.go('/kit/keeping');
  await keptOnPhone(page);
  await page.reload();
  await me.press('Back up now');
  await expect(page.getByText('It was read back:')).toBeVisible();
  const [download] = await Promise.all([
    page.waitForEvent('download'),
    me.press(/^(Save as a file|Share it)$/),
  ]);
  expect(download.suggestedFilename()).toMatch(/^greenweight-log-\d{4}-\d\d-\d\d-\d{4}\.txt$/);
  await expect(page.getByText('Handed to the downloads of this phone.')).toBeVisible();
  return readFileSync(await download.path(), 'utf8');
}

async function takeFile(page: Page, text: string): Promise<void> {
  const file = { name: 'log.txt', mimeType: 'text/plain', buffer: Buffer.from(text) };
  await page.getByLabel('Choose a file').setInputFiles(file);
}

test('the bench is set up once, nothing is chosen for the maker, and it goes on to the scale', async ({
  page,
}) => {
  const me = maker(page);
  await me.go('/kit/bench');
  await me.press('Save, then the scale');
  await expect(alert(page, 'Choose how you weigh.')).toBeVisible();
  await expect(alert(page, 'Choose a rule set.')).toBeVisible();
  await me.choose(/^Pounds/);
  await expect(page.getByRole('radio', { name: '°F', exact: true })).toBeChecked();
  await me.choose(/^Canada/);
  await keptOnPhone(page);
  await page.reload();
  await expect(page.getByRole('radio', { name: /^Canada/ })).toBeChecked();
  await me.press('Save, then the scale');
  await me.heading('Scales and meters');

  await me.press('Add a scale');
  await me.press('Save');
  await expect(alert(page, 'Choose the step that its display shows.')).toBeVisible();
  await me.choose('0.01 g');
  await me.save();
  await expect(page.getByText('Saved on this phone')).toBeVisible();
  await page.getByRole('button', { name: /^Least curing salt/ }).click();
  await expect(me.sheet).toContainText('0.2 g');
  await me.press('Close');
  await axe(page);
});

test('a scale is struck with a reason, and is no longer offered', async ({ page }) => {
  const me = maker(page);
  await me.go('/kit/scales');
  await me.addScale({ step: '0.1 g', most: '500', name: 'Pocket' });
  await me.press(/^Pocket/);
  await me.press('Strike it');
  await expect(alert(page, 'Choose one.')).toBeVisible();
  await me.choose('broken');
  await me.save('Strike it');
  await expect(page.getByRole('button', { name: /^Pocket/ })).toBeHidden();
});

test('a bag of curing salt goes by its percentages: a share is asked about, a kill loses nothing, a correction shows what was', async ({
  page,
}) => {
  const me = maker(page);
  await me.go('/kit/received');
  await me.follow('The curing salt');
  await me.press('Save');
  await expect(alert(page, 'Type a number here.').first()).toBeVisible();
  await fillBag(page, '0.0625');
  await keptOnPhone(page);
  await page.reload();
  await expect(page.getByLabel('Their lot number')).toHaveValue('B-1107');
  await me.press('Save');
  await expect(page.getByRole('alertdialog')).toContainText('If the bag says 6.25 %, type 6.25.');
  await axe(page);
  await me.press('Change it');
  await expect(page.getByLabel('Nitrite', { exact: true })).toHaveValue('0.0625');
  await page.getByLabel('Nitrite', { exact: true }).fill('5.88');
  await me.press('Save');
  await me.heading('What came in');
  await page.getByRole('link', { name: /^Cure, invented/ }).click();
  await expect(page.getByText('5.88 %')).toBeVisible();

  await me.follow('Correct it');
  await page.getByLabel('Nitrite', { exact: true }).fill('6.25');
  await me.press('Save');
  await expect(alert(page, 'the old values stay visible beside it')).toBeVisible();
  await page.getByLabel('Why is it corrected?').fill('misread the bag');
  await me.press('Save');
  await me.heading('Cure, invented');
  await expect(page.getByText('struck: misread the bag')).toBeVisible();
  await expect(page.getByText('6.25 %')).toBeVisible();
  await expect(page.getByText('5.88 %')).toBeVisible();
  await axe(page);
});

test('a chamber is added, its air read and set; two swapped numbers are asked about', async ({ page }) => {
  const me = maker(page);
  await me.go('/chambers');
  await me.press('Add a chamber');
  await me.press('Save');
  await expect(alert(page, 'Fill this in.')).toBeVisible();
  await page.getByLabel('Name', { exact: true }).fill('Old fridge');
  await me.press('Save');
  await me.heading('Old fridge');

  await me.press('Set the air');
  await me.sheet.getByLabel('Air temperature').fill('13');
  await me.sheet.getByLabel('Relative humidity').fill('80');
  await me.save();
  await me.press('Read the air');
  await me.sheet.getByLabel('Air temperature').fill('73');
  await me.sheet.getByLabel('Relative humidity').fill('15,5');
  await me.press('Save');
  await expect(page.getByRole('alertdialog')).toContainText('could the two be swapped?');
  await me.press('Change it');
  await me.sheet.getByLabel('Air temperature').fill('15,5');
  await me.sheet.getByLabel('Relative humidity').fill('73');
  await me.save();
  await expect(page.getByText('It is 2.5 °C warmer than set and 7 points drier than set.')).toBeVisible();
  await page.getByRole('button', { name: /^Dew point/ }).click();
  await expect(me.sheet).toContainText('saturation pressure');
  await axe(page);
  await me.press('Close');

  await me.press(/^15\.5/);
  await page.getByLabel('Why', { exact: true }).fill('the door was open');
  await me.save('Strike it');
  await expect(page.getByText('No reading yet.')).toBeVisible();
});

test('a backup is read back, another phone takes it in, and one changed letter is refused by its line', async ({
  page,
  browser,
  baseURL,
}) => {
  const me = maker(page);
  await me.go('/kit/scales');
  await me.addScale({ step: '1 g', name: 'Kitchen scale' });
  await me.addScale({ step: '0.01 g', name: 'Pocket scale' });
  const text = await backUp(page);
  await expect(page.getByText('Every entry is in the backup of')).toBeVisible();
  await takeFile(page, text);
  await expect(page.getByText('Nothing new in this file.')).toBeVisible();
  await axe(page);

  const other = await (await browser.newContext(baseURL ? { baseURL } : {})).newPage();
  const they = maker(other);
  await they.go('/kit/keeping');
  await takeFile(other, text.replace('Pocket scale', 'Packet scale'));
  await expect(other.getByText('Line 3: the line is not as it was written')).toBeVisible();
  await expect(they.button(/^Take in/)).toBeHidden();
  await they.press('Recover what can be proved');
  await expect(other.getByText('What can be recovered')).toBeVisible();
  await they.press('Take in one entry');
  await expect(other.getByText('One entry was taken in and saved on this phone.')).toBeVisible();
  await takeFile(other, text);
  await they.press('Take in one entry');
  await expect(other.getByText('One entry was taken in and saved on this phone.')).toBeVisible();
  await they.go('/kit/scales');
  await expect(they.button(/^Kitchen scale/)).toBeVisible();
  await expect(they.button(/^Pocket scale/)).toBeVisible();
});

test('a file of something else is refused in a sentence, and nothing is lost by it', async ({ page }) => {
  await maker(page).go('/kit/keeping');
  await takeFile(page, 'date;weight\n2024-01-08;553\n');
  await expect(page.getByText('This is no backup of this app.')).toBeVisible();
  await expect(page.getByText('nothing of it was taken in')).toBeVisible();
});

test('the hazards lead to each other, and the page can be read by everybody', async ({ page }) => {
  // Every contrast of the longest page of the app is measured, which takes a slow machine minutes.
  test.setTimeout(300_000);
  const me = maker(page);
  await me.go('/hazards');
  await me.press('Trichinella');
  const heading = page.getByRole('heading', { name: 'Trichinella', exact: true });
  await expect(heading).toBeFocused();
  await expect(heading).toBeInViewport();
  await expect(page.getByText('It does not make food safe')).toHaveCount(1);
  await axe(page);
});

test('the limits of a rule set open under its name, each rule set never compared', async ({ page }) => {
  await maker(page).go('/limits');
  await expect(page.getByText('Never compared with the official text.')).toHaveCount(3);
  await page.getByRole('heading', { name: 'European Union', exact: true }).click();
  await expect(page.getByText('Applies from 9 October 2025.')).toBeVisible();
  await axe(page);
});
