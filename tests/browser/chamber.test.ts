import {
  book,
  CHAMBER,
  ferment,
  fileOf,
  openBatch,
  START_MS,
  setUp,
  stuff,
  weighMeat,
  weighOutSalt,
  weighRound,
} from '../screens/book.ts';
import { HOUR_MS, maker } from './maker.ts';
import { axe, expect, keptOnPhone, picture, test } from './support/fixtures.ts';

test.use({ timezoneId: 'Europe/Berlin' });

const CELLAR = `/chambers/${CHAMBER.slice('chamber:'.length)}`;
const NOW_MS = START_MS + 96 * HOUR_MS;

/** Invented: the last day, minute by minute, as a logger on local time writes it. */
function oneDay(): Buffer {
  const rows = Array.from({ length: 1440 }, (_, minute) => {
    const local = new Date(NOW_MS - 24 * HOUR_MS + minute * 60_000 + HOUR_MS).toISOString();
    return `${local.slice(0, 10)} ${local.slice(11, 19)};${(12.6 + (minute % 9) / 10).toFixed(1)};${78 + (minute % 5)}`;
  });
  return Buffer.from(['Time;Temperature °C;Humidity %', ...rows].join('\r\n'));
}

test('a logger’s day of minutes goes into a chamber with no signal, and a date is counted back', async ({
  page,
  server,
}) => {
  test.setTimeout(60_000);
  const me = maker(page);
  await page.clock.setFixedTime(NOW_MS);
  const of = ferment(stuff(weighOutSalt(weighMeat(openBatch(setUp(book(), { ruleSet: 'US' }))))));
  of.put(0, 'chamber-added', CHAMBER, { name: 'Cellar', rails: 1, places: 5 });
  await me.go('/');
  await keptOnPhone(page);
  await me.takeIn(
    fileOf(
      weighRound(weighRound(of, 34, [790, 778, 784, 799], { stage: 'to-drying' }), 80, [760, 745, 752, 768]),
    ),
  );
  await server.stop();

  await me.go(CELLAR);
  await me.follow('Air from a logger’s file');
  const file = { name: 'cellar.csv', mimeType: 'text/csv', buffer: oneDay() };
  await page.getByLabel('Choose the file').setInputFiles(file);
  await expect(page.getByText('1\u202f440 new readings, of 1\u202f440 in the file')).toBeVisible();
  await axe(page);
  await me.press('Save 1\u202f440 readings');
  await me.heading('Cellar');
  await expect(page.getByText('cellar.csv: 1\u202f440 readings')).toBeVisible();
  await expect(page.getByText('Door openings a day')).toBeVisible();
  await picture(page, 'chamber');

  await me.follow('Air from a logger’s file');
  await page.getByLabel('Choose the file').setInputFiles(file);
  await expect(page.getByText('Nothing new in this file')).toBeVisible();
  await page.getByText('Paste the table instead').click();
  await page.getByLabel('The table as text').fill('Time;Temperature °C\n2024-01-12 07:59:30;12,9');
  await me.press('Read it');
  await expect(page.getByText('One new reading, of 1 in the file')).toBeVisible();

  await me.go('/calendar');
  await page.getByLabel('To be ready on').fill('2024-12-24');
  await page.getByLabel('Diameter as stuffed').fill('60');
  await page.getByLabel('Pieces').fill('12');
  await me.choose(/^20 days at/);
  await me.press('Count back');
  await expect(page.getByText('take down 17 December 2024').first()).toBeVisible();
  await expect(page.getByText('Only 5 of 5 places are free')).toBeVisible();
  await expect(page.getByText('a smaller lot: 5 pieces')).toBeVisible();
  await picture(page, 'calendar');
  await axe(page);
});
