import { readFileSync } from 'node:fs';
import { BATCH, book, fileOf, openBatch, START_MS, setUp, stuff } from '../screens/book.ts';
import { HOUR_MS, maker } from './maker.ts';
import { expect, test } from './support/fixtures.ts';

type Example = {
  readonly id: string;
  readonly ruleSet: 'US' | 'CA';
  readonly unit: 'C' | 'F';
  readonly steps: readonly { readonly hours: number; readonly temperature: number }[];
  readonly totalDegreeHours: number;
  readonly verdict: 'within-limit' | 'deviation';
};
const { examples }: { examples: readonly Example[] } = JSON.parse(
  readFileSync('fixtures/published/ferment-degree-hours.json', 'utf8'),
);
/** One of each rule set, one of each verdict; all eight go through the view-model in tests/screens. */
const SHOWN = ['DH-CA-V1', 'DH-US-V2'];
/** Stuffed two hours after the start of the book. */
const STUFFED_MS = START_MS + 2 * HOUR_MS;
const WORDS = { 'within-limit': 'within limit', deviation: 'deviation' } as const;

for (const { id, ruleSet, unit, steps, totalDegreeHours, verdict } of examples.filter((each) =>
  SHOWN.includes(each.id),
))
  test(`${id}, typed reading by reading at the bench, gives ${totalDegreeHours} and ${verdict}`, async ({
    page,
  }) => {
    test.setTimeout(120_000);
    const me = maker(page);
    const now = (hours: number) => page.clock.setFixedTime(STUFFED_MS + hours * HOUR_MS);
    await now(0.5);
    await me.takeIn(fileOf(stuff(openBatch(setUp(book(), { ruleSet, temperature: unit })))));
    await me.go(`/batches/${BATCH.slice('batch:'.length)}/ferment`);
    await expect(page.getByText('no room temperature since')).toBeVisible();

    let from = 0.5;
    for (const { hours, temperature } of steps) {
      for (let at = 0; at < hours; at += 5) {
        await now(from + at);
        await me.readRoom(String(temperature));
      }
      from += hours;
      await now(from);
      await me.readRoom(String(temperature));
    }
    await me.readPh('5.3');
    const verdictMark = page.getByText(/degree-hours/).filter({ hasText: WORDS[verdict] });
    await expect(verdictMark.first()).toBeVisible();

    await me.press('working');
    const result = me.sheet.getByText('together', { exact: true }).locator('xpath=following::dd[1]');
    await expect(result).toHaveText(totalDegreeHours.toFixed(1).replace(/^(\d)(\d{3})/, '$1\u202f$2'));
  });
