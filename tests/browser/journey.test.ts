import { maker } from './maker.ts';
import { printed } from './paper.ts';
import { expect, keptOnPhone, test } from './support/fixtures.ts';

/** Weights here are invented. */
const GREEN = ['812', '798', '805', '820'];
const HUNG = ['790', '780', '789', '803'];

for (const at of ['/', '/a/b/'])
  test.describe(`under ${at}`, () => {
    test.use({ at });

    test('a maker comes from an empty book to the printed record, half of it without a signal', async ({
      profile,
      server,
    }) => {
      test.setTimeout(120_000);
      const first = await (await profile.open()).newPage();
      let me = maker(first);
      await me.go('/');
      await expect(first.getByText('This book is empty.')).toBeVisible();
      await me.setUpBench('Canada');
      await me.addScale({ step: '0.01 g', most: '200', name: 'Small scale' });
      await me.addScale({ step: '1 g', name: 'Big scale' });
      await me.go('/formulas');
      await me.takeStartingFormula();
      await me.openBatch('J-1');
      const id = me.batchId();
      await me.weighMeat('2411', '804');
      await me.weighLinesAsAsked();
      await keptOnPhone(first);
      await server.stop();

      await first.reload();
      await me.heading('Weigh-out');
      await expect(first.getByRole('checkbox')).toHaveCount(8);
      for (const line of await first.getByRole('checkbox').all()) await expect(line).toBeChecked();
      await me.follow('To the bench');
      await me.benchSteps('3.5');
      await me.follow('Weigh the pieces');
      await me.beginPieces();
      await me.weighPieces(['1205']);
      await me.press('Strike the last');
      await me.heading('Piece 1');
      await me.weighPieces(GREEN.slice(0, 2));

      const second = await (await profile.open()).newPage();
      me = maker(second);
      await me.go(`/batches/${id}/stuffing`);
      await me.heading('Piece 3');
      await me.weighPieces(GREEN.slice(2), 3);
      await me.follow('All weighed');
      await me.readRoom('24');
      await me.readPh('5.25');
      await me.endFerment('pH reached');
      await me.hang({ airC: '13', rhPct: '80' });
      await me.weighRound(HUNG);
      await me.follow('To the rail');
      await expect(second.getByRole('list', { name: '4 pieces on the rail' }).getByRole('link')).toHaveCount(
        4,
      );

      await me.go(`/batches/${id}/record`);
      const record = await printed(second, 'A4', 'J-1');
      for (const text of ['2 411 g', '5.78 g', '3.5 °C', 'pH 5.25', ...GREEN, ...HUNG, 'HK'])
        expect(record.replaceAll('\u202f', ' ').replaceAll('\u00a0', ' ')).toContain(text);
      expect(record).toContain('weighed by mistake');
      await expect(second.locator('s', { hasText: '1205' })).toHaveCount(1);

      await me.go('/kit/bench');
      await me.choose('Letter');
      await me.press('Save');
      await me.heading('Kit');
      await me.go(`/batches/${id}/record`);
      expect(await printed(second, 'Letter', 'J-1')).toContain('weighed by mistake');
    });
  });
