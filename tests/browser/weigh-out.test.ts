import { BATCH, book, fileOf, openBatch, setUp, weighMeat, weighOutSalt } from '../screens/book.ts';
import { maker } from './maker.ts';
import { printed } from './paper.ts';
import { expect, test } from './support/fixtures.ts';

const thin = (text: string) => text.replaceAll('\u202f', ' ').replaceAll('\u00a0', ' ');

test('3,215 g of meat: 90.0 g of salt, 8.03 g of cure at 156.11 of 156.25 mg/kg; 8.04 g is a deviation', async ({
  page,
}) => {
  test.setTimeout(120_000);
  const me = maker(page);
  await me.go('/');
  await me.setUpBench('United States');
  await me.addScale({ step: '1 g', name: 'Meat scale' });
  await me.addScale({ step: '0.1 g', most: '500', name: 'Bench scale' });
  await me.addScale({ step: '0.01 g', most: '50', name: 'Pocket scale' });
  await me.newFormula({ name: 'Plain, invented', salt: '2.8', cure: '0.25', nitrite: '6.25' });
  await me.openBatch('W-1', ['No starter culture']);
  // The first lean has nothing to be held against but what a tray holds.
  await me.press(/^Lean/);
  await me.keys('24110');
  await me.press('Add this weight');
  await expect(page.getByRole('alertdialog')).toContainText('a tray of meat is mostly');
  await me.press('Change it');
  await me.press('Close');
  await me.weighMeat('2411', '804');

  const line = (name: string) =>
    page.getByRole('list', { name: 'Lines of the formula' }).getByText(name).locator('xpath=ancestor::li');
  await expect(line('Salt').first()).toContainText('90.0 g');
  await expect(line('Curing salt')).toContainText('8.03 g');
  await expect(line('Curing salt')).toContainText('bag: 6.25 % nitrite, rounded down');
  const says = (text: string) =>
    expect.poll(async () => thin((await page.locator('main').textContent()) ?? '')).toContain(text);
  await says('156.11 mg/kg of meat will go in; the limit is 156.25 mg/kg');

  // Two touches a line; killed amid the list it goes on at the same line, with its ticks.
  await me.press('Weigh next line');
  await me.press('It shows 90.0 g');
  await expect(me.sheet.getByRole('heading', { name: 'Weigh Curing salt' })).toBeVisible();
  await page.reload();
  await expect(line('Salt').first().getByRole('checkbox')).toBeChecked();
  await expect(page.getByText('one line to go')).toBeVisible();
  await me.press(/^Strike the last weighing: Salt 90\.0/);
  await me.press('Strike it');
  await expect(page.getByText('2 lines to go')).toBeVisible();
  await expect(line('Salt').first().getByRole('checkbox')).not.toBeChecked();

  await me.weighLinesAsAsked();
  await says('156.11 mg/kg of meat went in; the limit is 156.25 mg/kg');
  await me.press('working');
  const working = thin((await me.sheet.textContent()) ?? '');
  for (const text of ['3 215 g', '8.03 g', '6.25 %', '156.11 mg/kg', 'at most 156.25 mg/kg', '9 CFR'])
    expect(working).toContain(text);
  await me.press('Close');

  await line('Curing salt').getByRole('checkbox').click();
  await me.keys('8.04');
  await me.save();
  await says('156.30 mg/kg of meat, over the limit of 156.25 mg/kg. Do not mix it in. Weigh the cure again.');
  await expect(
    page
      .getByText(/nitrite that goes in/)
      .filter({ hasText: 'deviation' })
      .first(),
  ).toBeVisible();

  await me.go(`/batches/${me.batchId()}/record`);
  const record = thin(await printed(page, 'A4', 'W-1'));
  for (const text of ['156.3 mg/kg', 'weighed again', '8.03 g', '8.04 g', '90.0 g'])
    expect(record).toContain(text);
  await expect(page.locator('s', { hasText: '8.03' })).toHaveCount(1);
});

test('minutes of a step and a tare with a digit too many are asked about before they are written down', async ({
  page,
}) => {
  const me = maker(page);
  const of = weighOutSalt(weighMeat(openBatch(setUp(book()))));
  of.put(0.6, 'cleaned', BATCH, {});
  await me.takeIn(fileOf(of));
  const id = BATCH.slice('batch:'.length);
  await me.go(`/batches/${id}/bench`);
  await me.press('Write down: ground');
  await page.getByLabel('Minutes it took').fill('300');
  await me.press('Save');
  await expect(page.getByRole('alertdialog')).toContainText('300 min for one step');
  await me.press('Change it');
  await page.getByLabel('Minutes it took').fill('30');
  await me.save();
  await me.go(`/batches/${id}/stuffing`);
  await page.getByLabel('Tare').fill('120');
  await me.press('Begin to weigh');
  await expect(page.getByRole('alertdialog')).toContainText('A tare of 120 g');
  await me.press('Change it');
  await me.beginPieces({ tare: '12' });
  await me.heading('Piece 1');
});
