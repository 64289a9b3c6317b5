import { BATCH, book, fileOf, openBatch, START_MS, setUp, stuff } from '../screens/book.ts';
import { HOUR_MS, maker } from './maker.ts';
import { axe, expect, test } from './support/fixtures.ts';

const DAY_MS = 24 * HOUR_MS;
const ID = BATCH.slice('batch:'.length);

for (const [side, wrongMs] of [
  ['ahead', 400 * DAY_MS],
  ['behind', -400 * DAY_MS],
] as const)
  test(`readings under a clock 400 days ${side} are kept, flagged, and put in order by an entry of their own`, async ({
    page,
  }) => {
    test.setTimeout(120_000);
    const me = maker(page);
    const at = (hours: number, byMs = 0) => page.clock.setFixedTime(START_MS + hours * HOUR_MS + byMs);
    await at(10);
    const of = stuff(openBatch(setUp(book())), { greenG: [800] });
    of.put(9, 'noted', BATCH, { text: 'by another hand' }, { by: 'MK' });
    await me.takeIn(fileOf(of));
    const readRoom = async (degrees: string) => {
      await me.go(`/batches/${ID}/ferment`);
      await page.reload();
      await me.press('Read the room');
      await me.sheet.getByLabel('Temperature of the room').fill(degrees);
      await me.save();
    };
    await readRoom('21');
    for (const [hours, degrees] of [
      [11, '22'],
      [12, '23'],
    ] as const) {
      await at(hours, wrongMs);
      await readRoom(degrees);
    }
    await at(13);
    await readRoom('24');

    const rows = page.getByRole('cell', { name: /^room read: room 2\d/ });
    const record = async () => {
      await me.go(`/batches/${ID}/record`);
      await page.reload();
      await expect(rows).toHaveCount(4);
      return (await rows.allInnerTexts()).map((text) => text.replace(/\u00a0/g, ' '));
    };
    const degrees = (texts: readonly string[]) => texts.map((text) => /room (2\d)/.exec(text)?.[1]);
    const wrong = await record();
    expect(degrees(wrong)).toEqual(side === 'ahead' ? ['21', '24', '22', '23'] : ['22', '23', '21', '24']);
    const doubted = wrong.filter((text) =>
      text.includes(`stood about 400 days ${side}, and was not put right`),
    );
    expect(degrees(doubted)).toEqual(['22', '23']);

    await me.go('/kit/keeping');
    await expect(page.getByText('the clock went back one time')).toBeVisible();
    await page.getByRole('link', { name: /Put the clock of a phone right/ }).click();
    await page.getByRole('button', { name: /^2 entries .*\(likely\)/ }).click();
    await expect(me.sheet.getByText(/^2 entries move (back|forward) by 400 days\./)).toBeVisible();
    await me.press('Put them right');
    await expect(me.sheet.getByText('Why was the clock wrong?')).toBeVisible();
    await me.sheet.getByLabel('Reason').fill('flat battery');
    await me.save('Put them right');
    await expect(page.getByText('No clock went back that is not put right.')).toBeVisible();
    await axe(page);

    const right = await record();
    expect(degrees(right)).toEqual(['21', '22', '23', '24']);
    expect(
      right
        .filter((text) => text.includes('flat battery; the phone showed'))
        .map((text) => text.slice(0, 12)),
    ).toHaveLength(2);
    expect(right.join()).not.toContain('in doubt');

    await page.getByRole('checkbox', { name: /^MK/ }).locator('..').click();
    await expect(page.getByText('Only entries by MK').first()).toBeVisible();
    await expect(page.getByText('by another hand').filter({ visible: true })).toHaveCount(1);
    await expect(rows.filter({ visible: true })).toHaveCount(0);
    await axe(page);
    await page.emulateMedia({ media: 'print' });
    await expect(rows.filter({ visible: true })).toHaveCount(4);
    await expect(page.getByText('Only entries by MK').filter({ visible: true })).toHaveCount(0);
    await page.emulateMedia({ media: 'screen' });
    await me.press('Show every entry');
    await expect(rows.filter({ visible: true })).toHaveCount(4);

    await me.go('/kit/clock');
    await page.getByRole('button', { name: /^this phone, entries/ }).click();
    await me.sheet.getByLabel('Reason').fill('it was right');
    await me.save('Strike it');
    await expect(page.getByText('2 entries may stand at a wrong time.')).toBeVisible();
    expect(degrees(await record())).toEqual(degrees(wrong));
  });
