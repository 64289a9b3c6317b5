import { BATCH, book, fileOf, openBatch, setUp, stuff } from '../screens/book.ts';
import { maker } from './maker.ts';
import { expect, test } from './support/fixtures.ts';

test('two tabs that save at the same moment keep one unbroken chain, and each shows what the other saved', async ({
  page,
  context,
}) => {
  test.setTimeout(90_000);
  const id = BATCH.slice('batch:'.length);
  const first = maker(page);
  await first.takeIn(fileOf(stuff(openBatch(setUp(book())), { greenG: [800] })));
  const second = maker(await context.newPage());
  await first.go(`/batches/${id}`);
  await second.go(`/batches/${id}/ferment`);

  for (const degrees of ['20', '21', '22', '23', '24']) {
    await first.press('Write a note');
    await first.sheet.getByLabel('What is worth remembering').fill(`at ${degrees}`);
    await second.press('Read the room');
    await second.sheet.getByLabel('Temperature of the room').fill(degrees);
    await Promise.all([first.save(), second.save()]);
  }
  // 17 entries came in with the book.
  await first.go(`/batches/${id}/record`);
  for (const degrees of ['20', '21', '22', '23', '24']) {
    await expect(first.page.getByRole('cell', { name: `note: at ${degrees}` })).toHaveCount(1);
    await expect(first.page.getByRole('cell', { name: `room read: room ${degrees}` })).toHaveCount(1);
  }
  await expect(second.page.getByText('24.0').filter({ visible: true }).first()).toBeVisible();

  await first.go('/kit/keeping');
  await first.press('Check now');
  await expect(first.page.getByText('Checked just now.')).toBeVisible();
  const held = (label: string) =>
    first.page.getByText(label, { exact: true }).locator('xpath=following::dd[1]');
  await expect(held('Chains')).toHaveText('whole');
  await expect(held('Copies on this phone')).toContainText('two, and equal');
});
