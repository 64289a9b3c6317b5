import type { Page } from '@playwright/test';
import { kill } from '../faults/browser.ts';
import { maker } from './maker.ts';
import { axe, expect, picture, test } from './support/fixtures.ts';

/** Weights are invented: green, on moving to drying, and a round later. */
const greenOf = (at: number) => String(780 + ((at * 37) % 70));
const hungOf = (at: number) => String(761 + ((at * 37) % 70));

/** Taps of the thumb, counted in the page. */
async function countTaps(page: Page): Promise<() => Promise<number>> {
  await page.evaluate(() => {
    const counting = 'taps' in document.documentElement.dataset;
    document.documentElement.dataset.taps = '0';
    if (counting) return;
    document.addEventListener(
      'click',
      ({ isTrusted }) => {
        const { dataset } = document.documentElement;
        if (isTrusted) dataset.taps = String(Number(dataset.taps) + 1);
      },
      true,
    );
  });
  return () => page.evaluate(() => Number(document.documentElement.dataset.taps));
}

/** Every key and act lies on the screen, large enough, with nothing scrolled and no keyboard of the phone called. */
async function underTheThumb(page: Page, least: { width: number; height: number }): Promise<void> {
  const size = page.viewportSize() ?? { width: 0, height: 0 };
  const keys = await page.getByRole('group', { name: 'Number keys' }).getByRole('button').all();
  expect(keys).toHaveLength(12);
  for (const key of [
    ...keys,
    page.getByRole('button', { name: /^Save, / }),
    page.getByRole('button', { name: 'Skip' }),
  ]) {
    const box = await key.boundingBox();
    if (!box) throw new Error('underTheThumb: a key is not drawn');
    expect(box.y).toBeGreaterThanOrEqual(0);
    expect(box.y + box.height).toBeLessThanOrEqual(size.height);
    expect(box.x + box.width).toBeLessThanOrEqual(size.width);
  }
  for (const key of keys) {
    const box = await key.boundingBox();
    expect(Math.round((box?.width ?? 0) * 10) / 10).toBeGreaterThanOrEqual(least.width);
    expect(Math.round((box?.height ?? 0) * 10) / 10).toBeGreaterThanOrEqual(least.height);
  }
  const stands = await page.evaluate(() => ({
    scrolled: window.scrollY,
    tooTall: document.documentElement.scrollHeight - window.innerHeight,
    typing: document.activeElement?.matches('input, textarea') ?? false,
  }));
  expect(stands).toEqual({ scrolled: 0, tooTall: 0, typing: false });
}

for (const { width, height, pieces, least } of [
  { width: 390, height: 844, pieces: 24, least: { width: 114, height: 74 } },
  { width: 320, height: 568, pieces: 12, least: { width: 88, height: 56 } },
])
  test.describe(`at ${width} x ${height}`, () => {
    test.use({ viewport: { width, height } });

    test(`${pieces} pieces are stuffed and weighed with a tap a digit and one a piece`, async ({
      page,
      profile,
    }) => {
      test.setTimeout(180_000);
      const phone = await profile.open();
      const first = await phone.newPage();
      await page.close();
      let me = maker(first);
      await me.go('/');
      await me.setUpBench('Canada');
      await me.addScale({ step: '1 g', name: 'Big scale' });
      await me.go('/formulas');
      await me.takeStartingFormula();
      await me.openBatch();
      const id = me.batchId();
      await me.weighMeat('9000', '3000');
      await me.go(`/batches/${id}/bench`);
      await me.benchSteps('3.5');

      await me.go(`/batches/${id}/stuffing`);
      const stuffing = await countTaps(first);
      await me.press('Begin to weigh');
      await me.weighPieces(Array.from({ length: pieces }, (_, at) => greenOf(at)));
      expect(await stuffing()).toBeLessThanOrEqual(pieces * (3 + 1) + 10);

      await me.follow('All weighed');
      await me.readRoom('24');
      await me.readPh('5.25');
      await me.endFerment('pH reached');
      await me.hang({ airC: '13', rhPct: '80' });

      const half = pieces / 2;
      const taps = await countTaps(first);
      for (let at = 0; at < half; at++) {
        await underTheThumb(first, least);
        await me.keys(hungOf(at));
        await expect(first.getByText(/lost/)).toBeVisible();
        await me.press(`Save, next is ${at + 2}`);
        await expect(first.getByText(`piece ${at + 2} of ${pieces}`)).toBeVisible();
      }
      expect(await taps()).toBe(half * (3 + 1));
      await picture(first, `round-${width}`);
      await axe(first);

      // The browser is killed with a number half typed: what was saved is on disk, and the round goes on with the same piece.
      await me.keys('76');
      await kill(profile.folder);
      await phone.close().catch(() => undefined);
      const second = await (await profile.open()).newPage();
      me = maker(second);
      await me.go(`/batches/${id}/round`);
      await expect(second.getByText(`piece ${half + 1} of ${pieces}`)).toBeVisible();

      await me.press('Find another piece');
      await expect(second.getByRole('button', { name: /, weighed in this round$/ })).toHaveCount(half);
      await me.press('Close');

      await me.press(`Strike piece ${half}`);
      await expect(second.getByText(`piece ${half} of ${pieces}`)).toBeVisible();
      await me.press('Skip');
      await me.press('Find another piece');
      await me.press(`Piece ${pieces}`);
      await expect(second.getByText(`piece ${pieces} of ${pieces}`)).toBeVisible();
      await me.keys(`1${hungOf(pieces - 1)}`);
      await me.press(/^Save, /);
      await expect(second.getByRole('alertdialog')).toContainText('Is that what the scale shows?');
      await me.press('Change it');
      for (let sign = 0; sign < 4; sign++) await me.press('delete the last digit');
      await me.keys(hungOf(pieces - 1));
      await me.press(/^Save, /);
      await expect(second.getByText(`Piece ${pieces}: ${hungOf(pieces - 1)}\u00a0g saved`)).toBeVisible();
    });
  });
