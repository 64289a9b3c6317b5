import { HOUR_MS, maker } from './maker.ts';
import { axe, expect, picture, test } from './support/fixtures.ts';

/** Readings here are invented. */
const STUFFED_MS = Date.UTC(2026, 0, 10, 18);

test.use({ timezoneId: 'Etc/UTC' });

/** A room that stood at 31 °C for two days, a row each ten minutes, as a logger in German writes it. */
function loggerFile(): Buffer {
  const rows = Array.from({ length: 48 * 6 + 1 }, (_, at) => {
    const time = new Date(STUFFED_MS + at * 600_000).toISOString();
    return `${time.slice(0, 10)} ${time.slice(11, 19)};31,${at % 3}`;
  });
  return Buffer.from(`\ufeff${['Zeit;Temperatur °C', ...rows].join('\r\n')}`, 'utf8');
}

test('a night: five readings, one absurd, one struck, a logger file, a deviation and its record', async ({
  page,
}) => {
  test.setTimeout(180_000);
  const me = maker(page);
  const atHour = (hours: number) => page.clock.setFixedTime(STUFFED_MS + hours * HOUR_MS);
  await atHour(-1);
  await me.go('/');
  await me.setUpBench('Canada');
  await me.addScale({ step: '0.01 g', most: '200', name: 'Small scale' });
  await me.addScale({ step: '1 g', name: 'Big scale' });
  await me.go('/formulas');
  await me.takeStartingFormula();
  await me.openBatch();
  const id = me.batchId();
  await me.weighMeat('2411', '804');
  await me.weighLinesAsAsked();
  await atHour(0);
  await me.go(`/batches/${id}/bench`);
  await me.press('Write down: cleaned');
  await me.save();
  await me.press('Write down: ground');
  await page.getByLabel('Temperature of the mince').fill('5.1');
  await expect(page.getByText(/stop: 5\.1\s°C is above 4\.0\s°C/)).toBeVisible();
  await me.press('Save');
  await expect(page.getByText('Say why, or chill it first.')).toBeVisible();
  await page.getByLabel('Going on all the same?').fill('last tray');
  await me.save();
  for (const step of ['mixed', 'stuffed']) {
    await me.press(`Write down: ${step}`);
    await me.save();
  }
  await me.go(`/batches/${id}/ferment`);
  await me.readRoom('26');
  await atHour(1);
  await me.readPh('5.78');
  await atHour(6);
  await me.readRoom('26');
  await me.readPh('5.70');
  await expect(page.getByText(/pH 5\.3 (should|may) come/)).toBeVisible();
  await expect(page.getByText(/8 in 10/).first()).toBeVisible();

  await atHour(11);
  await me.press('Read pH');
  await page.getByLabel('pH on the meter').fill('1.2');
  await me.press('Save');
  await expect(page.getByRole('alertdialog')).toContainText('outside what sausage can have');
  await me.press('Change it');
  await page.getByLabel('pH on the meter').fill('5.62');
  await me.save();

  await atHour(12);
  await me.press('Read pH');
  await page.getByLabel('pH on the meter').fill('4.35');
  await me.press('Save');
  await expect(page.getByRole('alertdialog')).toContainText('a culture makes about');
  await me.press('Keep it');
  await expect(me.sheet).toBeHidden();
  await expect(page.getByText('the clock has stopped')).toBeVisible();
  await me.press(/^pH 4\.35/);
  await page.getByLabel('Why').fill('probe was dry');
  await me.save('Strike it');
  await expect(page.getByText('the clock has stopped')).toBeHidden();
  // On a page this tall nothing lies under its foot, half hidden.
  await page.setViewportSize({ width: 390, height: 3200 });
  await axe(page);
  await page.setViewportSize({ width: 390, height: 844 });
  await picture(page, 'ferment-night');

  await atHour(40);
  await me.readRoom('26');
  await me.readPh('5.6');
  await me.press('The pH does not fall');
  await expect(me.sheet.getByText('that is too little')).toBeVisible();
  await me.sheet
    .getByRole('checkbox', { name: /Read again in the lean/ })
    .locator('..')
    .click();
  await axe(page);
  await me.save();

  await atHour(48);
  await me.follow('Room from a logger’s file');
  await page
    .getByLabel('Choose the file')
    .setInputFiles({ name: 'room.csv', mimeType: 'text/csv', buffer: loggerFile() });
  await expect(page.getByText('289 readings within this ferment, of 289 in the file')).toBeVisible();
  await me.press('Save 289 readings');
  await expect(page.getByText('degree-hours: deviation')).toBeVisible();
  await expect(page.getByText(/by the logger beside it/).first()).toBeVisible();

  await me.press('Write down what was done');
  await page
    .getByRole('checkbox', { name: /Hold the whole batch/ })
    .locator('..')
    .click();
  await page.getByLabel('Why it happened').fill('controller stuck at 31 °C');
  await axe(page);
  await me.save();

  await me.go('/after-fault');
  await expect(page.getByText('degree-hours: deviation')).toBeVisible();
  await me.go(`/batches/${id}/record`);
  await expect(page.getByText(/corrective action: .*controller stuck at 31 °C/)).toBeVisible();
  await expect(page.getByText(/pH read: pH 4\.35/)).toBeVisible();
  await expect(page.getByText(/probe was dry/)).toBeVisible();
  await expect(page.getByText(/went on because last tray/)).toBeVisible();
  await expect(page.getByText(/about a pH that does not fall/)).toBeVisible();
});
