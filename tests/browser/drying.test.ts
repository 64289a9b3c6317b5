import {
  BATCH,
  book,
  ferment,
  fileOf,
  openBatch,
  pieceId,
  START_MS,
  setUp,
  stuff,
  weighMeat,
  weighOutSalt,
  weighRound,
} from '../screens/book.ts';
import { HOUR_MS, maker } from './maker.ts';
import { expect, test } from './support/fixtures.ts';

const DAY = 24;
const HUNG = 33;
const id = BATCH.slice('batch:'.length);

/** Eight pieces hung in a draught: 5 % gone after half a day, 9 % after one. */
function draught() {
  const greenG = Array.from({ length: 8 }, (_, at) => 800 + 10 * at);
  const of = ferment(stuff(weighOutSalt(weighMeat(openBatch(setUp(book())))), { greenG }));
  for (const [hours, lossPct] of [
    [0, 1.5],
    [12, 6.5],
    [24, 10.5],
  ] as const)
    weighRound(
      of,
      HUNG + hours,
      greenG.map((each) => Math.round(each * (1 - lossPct / 100))),
      hours === 0 ? { stage: 'to-drying' } : {},
    );
  return of;
}

test('haste is told with its dose, a measured value comes before a computed one, a slider moves the date', async ({
  page,
}) => {
  test.setTimeout(90_000);
  const me = maker(page);
  await page.clock.setFixedTime(START_MS + (HUNG + DAY + 2) * HOUR_MS);
  await me.takeIn(fileOf(draught()));

  await me.go(`/batches/${id}/hanging`);
  await expect(page.getByText('All 8 dry too fast')).toBeVisible({ timeout: 30_000 });
  await expect(page.getByText('Drying too fast: all 8 pieces')).toBeVisible();
  await expect(page.getByText(/^Set ~8\d|^Set ~9\d/)).toBeVisible();

  await me.follow('What the target means');
  await expect(page.getByText('an estimate')).toBeVisible();
  await me.press('Enter a measured value');
  await me.choose('Water activity');
  await me.sheet.getByLabel('Value').fill('0.91');
  await me.sheet.getByLabel('By').fill('own meter');
  await me.save();
  await expect(page.getByText('It counts before anything computed.')).toBeVisible();

  await me.go('/what-if');
  const days = page.getByText(/about \d+ days/);
  await expect(days).toBeVisible({ timeout: 30_000 });
  const usual = await days.textContent();
  await page.getByRole('slider', { name: 'Diameter' }).press('Home');
  await expect(days).not.toHaveText(usual ?? '');
  await expect(page.getByRole('img', { name: /^Slice on day/ })).toHaveCount(3);

  await me.go(`/pieces/${pieceId(1).slice('piece:'.length)}`);
  await me.press('Cut and hang on');
  await me.sheet.getByLabel('On the scale before the cut').fill('716');
  await me.sheet.getByLabel('On the scale after it').fill('358');
  await me.save('It hangs again');
  await expect(page.getByText('10.5\u00a0%').first()).toBeVisible();
  await expect(page.getByText('400', { exact: true })).toBeVisible();
});
