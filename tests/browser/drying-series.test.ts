import { readFileSync } from 'node:fs';
import {
  BATCH,
  book,
  fileOf,
  openBatch,
  START_MS,
  setUp,
  stuff,
  weighMeat,
  weighOutSalt,
} from '../screens/book.ts';
import { HOUR_MS, maker } from './maker.ts';
import { printed } from './paper.ts';
import { expect, test } from './support/fixtures.ts';

type Series = {
  readonly days: readonly number[];
  readonly totalSolidsPct: readonly number[];
  readonly massG: readonly number[];
  readonly lossPct: readonly number[];
};
const series: Series = JSON.parse(readFileSync('fixtures/published/drying-chorizo.json', 'utf8'));
const [solids0 = Number.NaN] = series.totalSolidsPct;
/** The loss as the app shows it: to a tenth of a percent, never more than it was. */
const shown = (lossPct: number) => (Math.floor(lossPct * 10) / 10).toFixed(1);

test('the weights of the series follow from its solids', () => {
  for (const [at, solidsPct] of series.totalSolidsPct.entries()) {
    expect(series.massG[at]).toBeCloseTo((1000 * solids0) / solidsPct, 1);
    expect(series.lossPct[at]).toBeCloseTo(100 * (1 - solids0 / solidsPct), 2);
  }
});

test.describe('a published drying series', () => {
  test.use({ timezoneId: 'Europe/Madrid' });

  test('typed in weigh round by weigh round gives its losses back, with their days', async ({ page }) => {
    test.setTimeout(120_000);
    const me = maker(page);
    const stuffedMs = START_MS + 3 * HOUR_MS;
    const now = (hours: number) => page.clock.setFixedTime(stuffedMs + hours * HOUR_MS);
    await now(0);
    const of = stuff(weighOutSalt(weighMeat(openBatch(setUp(book())))), { greenG: [] });
    of.put(1, 'scale-added', 'instrument:fine-and-large', { name: 'Piece scale', stepG: 0.1, mostG: 3000 });
    await me.takeIn(fileOf(of));
    await me.go(`/batches/${BATCH.slice('batch:'.length)}/stuffing`);
    await me.beginPieces({ target: '46' });
    await me.weighPieces(['1000']);
    await me.follow('All weighed');
    await me.endFerment('no warm stage');
    await me.hang({ airC: '13', rhPct: '80' });

    for (const [at, day] of series.days.entries()) {
      if (day === 0) continue;
      await now(24 * day);
      await me.go(`/batches/${BATCH.slice('batch:'.length)}/hanging`);
      await me.follow('Weigh round');
      await me.keys(String(series.massG[at]));
      await expect(page.getByText(`${shown(series.lossPct[at] ?? 0)}\u00a0% lost`)).toBeVisible();
      await me.press('Save, last one');
      await me.heading('Round done');
    }
    await me.follow('To the rail');
    await page.getByRole('link', { name: 'Piece 1: at target weight' }).click();
    await me.heading('Piece 1');
    await expect(page.getByText(/It has lost/)).toContainText(`${shown(series.lossPct.at(-1) ?? 0)}\u00a0%`);
    const weighings = page.getByRole('list', { name: 'Weighings' }).getByRole('listitem');
    await expect(weighings).toHaveText(
      series.lossPct
        .slice(1)
        .reverse()
        .map((lossPct) => new RegExp(`${shown(lossPct).replace('.', '\\.')}\u00a0%`)),
    );

    await me.go(`/batches/${BATCH.slice('batch:'.length)}/record`);
    const record = await printed(page, 'A4', '240108');
    for (const [at, day] of series.days.entries()) {
      const on = new Intl.DateTimeFormat('en-GB', { dateStyle: 'long', timeZone: 'Europe/Madrid' });
      expect(record).toContain(`${on.format(stuffedMs + 24 * day * HOUR_MS)}, 11:00`);
      expect(record).toContain(`on the scale ${series.massG[at]}`);
    }
  });
});
