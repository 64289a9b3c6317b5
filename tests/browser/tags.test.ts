import type { Locator, Page } from '@playwright/test';
import jsQR from 'jsqr';
import {
  BATCH,
  book,
  ferment,
  fileOf,
  openBatch,
  pieceId,
  setUp,
  stuff,
  weighMeat,
  weighOutSalt,
} from '../screens/book.ts';
import { maker } from './maker.ts';
import { axe, expect, keptOnPhone, picture, test } from './support/fixtures.ts';

const hung = () => fileOf(ferment(stuff(weighOutSalt(weighMeat(openBatch(setUp(book())))))));
const bare = (id: string) => id.slice(id.indexOf(':') + 1);

/** What a camera makes of a part of the page. */
async function decoded(page: Page, what: Locator): Promise<string | null> {
  const png = (await what.screenshot()).toString('base64');
  const { width, height, values } = await page.evaluate(async (base64) => {
    const bytes = Uint8Array.from(atob(base64), (sign) => sign.charCodeAt(0));
    const image = await createImageBitmap(new Blob([bytes], { type: 'image/png' }));
    const canvas = new OffscreenCanvas(image.width, image.height);
    const context = canvas.getContext('2d');
    if (!context) throw new Error('decoded: no canvas');
    context.drawImage(image, 0, 0);
    const { data } = context.getImageData(0, 0, image.width, image.height);
    return { width: image.width, height: image.height, values: [...data] };
  }, png);
  return jsQR(new Uint8ClampedArray(values), width, height)?.data ?? null;
}

test('the code of a printed tag, read back from the page, opens its piece with no signal', async ({
  page,
  server,
}) => {
  test.setTimeout(90_000);
  const me = maker(page);
  await me.go('/');
  await keptOnPhone(page);
  await me.takeIn(hung());
  await me.go(`/batches/${bare(BATCH)}/tags`);
  const codes = page.getByRole('img', { name: /^QR code/ });
  await expect(codes).toHaveCount(4);
  await axe(page);
  await picture(page, 'tags');

  await page.emulateMedia({ media: 'print' });
  await page.setViewportSize({ width: 680, height: 960 });
  const read: string[] = [];
  for (const code of await codes.all()) read.push((await decoded(page, code)) ?? 'not readable');
  expect(read).toEqual([1, 2, 3, 4].map((number) => `${server.url}#/pieces/${bare(pieceId(number))}`));
  await expect(page.getByText('green', { exact: true }).first()).toBeVisible();

  await page.emulateMedia({ media: 'screen' });
  await server.stop();
  await page.goto('about:blank');
  await page.goto(read[2] ?? '');
  await me.heading('Piece 3');
});

test('in a round, a tag before the camera brings its piece, and one of another batch does not', async ({
  page,
}) => {
  // No browser here reads codes: what one would read is told, the camera is a canvas, all behind them is the app's own.
  await page.addInitScript(() => {
    const detect = async () => {
      const text = document.documentElement.dataset.seen;
      return text ? [{ rawValue: text }] : [];
    };
    const makes: unknown = function makes() {
      return { detect };
    };
    Reflect.set(globalThis, 'BarcodeDetector', makes);
    const canvas = document.createElement('canvas');
    let at = 0;
    setInterval(() => canvas.getContext('2d')?.fillRect(at++ % 99, 0, 9, 9), 50);
    Object.defineProperty(navigator, 'mediaDevices', {
      value: { getUserMedia: async () => canvas.captureStream(5) },
    });
  });
  const holdUp = (address: string) =>
    page.evaluate((text) => {
      document.documentElement.dataset.seen = text;
    }, address);
  const me = maker(page);
  await me.go('/');
  await me.takeIn(hung());
  await me.go(`/batches/${bare(BATCH)}/round`);
  await expect(page.getByText('piece 1 of 4')).toBeVisible();
  await me.press('Find another piece');
  await me.press('Use the camera');
  await expect(page.getByLabel('The camera looks for a code.')).toBeVisible();
  await holdUp('https://elsewhere.example/#/pieces/00000000-0000-7000-8000-000000000000');
  await expect(page.getByText('That tag is of no piece that hangs in this batch.')).toBeVisible();
  await holdUp(`https://elsewhere.example/#/pieces/${bare(pieceId(3))}`);
  await expect(page.getByText('piece 3 of 4')).toBeVisible();
  await expect(me.sheet).toBeHidden();
});

test('the short code on a tag opens its piece where no camera reads codes', async ({ page }) => {
  const me = maker(page);
  await me.go('/');
  await me.takeIn(hung());
  await me.go('/tag');
  const field = page.getByLabel('Code on the tag');
  await field.fill('12');
  await me.press('Open the piece');
  await expect(page.getByText('Six signs: digits and A to F.')).toBeVisible();
  await field.fill('FFFFFF');
  await me.press('Open the piece');
  await expect(page.getByText('No piece in this book has that code.')).toBeVisible();
  await field.fill(pieceId(2).slice(-6).toLowerCase());
  await me.press('Open the piece');
  await me.heading('Piece 2');
});
