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
  touching,
  weighMeat,
  weighOutSalt,
  weighRound,
} from '../screens/book.ts';
import { HOUR_MS, maker } from './maker.ts';
import { printed } from './paper.ts';
import { expect, test } from './support/fixtures.ts';

const GREEN = Array.from({ length: 12 }, (_, at) => 800 + 7 * at);

/** Twelve pieces weighed for 24 rounds, one weighing struck, and notes as long as a maker may write. Invented. */
function longBook(paper: 'A4' | 'Letter') {
  const of = ferment(stuff(weighOutSalt(weighMeat(openBatch(setUp(book(), { paper })))), { greenG: GREEN }));
  for (let round = 1; round <= 24; round += 1) {
    const masses = GREEN.map((greenG) => greenG - 10 * round);
    weighRound(of, 48 * round, masses);
  }
  const [last] = of.entries
    .filter(({ kind, subject }) => kind === 'weighed' && subject === pieceId(3))
    .slice(-1);
  if (last) of.put(1200, 'struck', pieceId(3), {}, { refs: [BATCH], strikes: last.id });
  of.put(1201, 'noted', BATCH, { text: 'White bloom, even, dry to the touch; smells of nuts. '.repeat(36) });
  of.put(1202, 'noted', BATCH, { text: 'THE CELLAR WAS TOO WARM, ALL MOVED. '.repeat(50) });
  // As long as an action may be written, and not a space in it: higher than any sheet.
  const unbroken = 'W'.repeat(1000);
  of.put(1203, 'noted', BATCH, { text: 'W'.repeat(1900) });
  of.put(1204, 'action-taken', BATCH, {
    about: 'degree-hours',
    cause: unbroken,
    action: unbroken,
    product: unbroken,
    prevention: unbroken,
  });
  return of;
}

for (const paper of ['A4', 'Letter'] as const)
  test(`a record of more than 300 entries fills ${paper} sheets, and none of them overflows`, async ({
    page,
  }) => {
    test.setTimeout(120_000);
    const me = maker(page);
    await page.clock.setFixedTime(START_MS + 1210 * HOUR_MS);
    const of = longBook(paper);
    expect(touching(of, BATCH).length).toBeGreaterThan(300);
    await me.takeIn(fileOf(of));
    await me.go(`/batches/${BATCH.slice('batch:'.length)}/record`);
    const record = await printed(page, paper, '240108');
    expect(record).toContain('weighed by mistake');
    await expect(page.locator('s')).toHaveCount(1);
    await expect(page.getByRole('cell', { name: 'on the scale' })).toHaveCount(12 + 12 * 24);
  });
