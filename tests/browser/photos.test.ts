import type { Page } from '@playwright/test';
import {
  BATCH,
  book,
  ferment,
  fileOf,
  openBatch,
  START_MS,
  setUp,
  stuff,
  weighMeat,
  weighOutSalt,
} from '../screens/book.ts';
import { HOUR_MS, maker } from './maker.ts';
import { axe, expect, test } from './support/fixtures.ts';

const ID = BATCH.slice('batch:'.length);

/** As a phone hands it over: large, noisy, lying on its side, with the place and the maker's phone beside the picture. */
async function fromCamera(page: Page): Promise<Buffer> {
  const drawn = await page.evaluate(async () => {
    const canvas = document.createElement('canvas');
    [canvas.width, canvas.height] = [1500, 1000];
    const pen = canvas.getContext('2d');
    const noise = new ImageData(1500, 1000);
    for (let at = 0, seed = 1; at < noise.data.length; at += 1) {
      seed = (Math.imul(seed, 1_664_525) + 1_013_904_223) >>> 0;
      noise.data[at] = at % 4 === 3 ? 255 : seed >>> 24;
    }
    pen?.putImageData(noise, 0, 0);
    const blob = await new Promise<Blob | null>((resolve) => canvas.toBlob(resolve, 'image/jpeg', 0.9));
    const bytes = new Uint8Array((await blob?.arrayBuffer()) ?? new ArrayBuffer(0));
    let text = '';
    for (let at = 0; at < bytes.length; at += 8192)
      text += String.fromCharCode(...bytes.subarray(at, at + 8192));
    return btoa(text);
  });
  const picture = Buffer.from(drawn, 'base64');
  const exif = Buffer.concat([
    Buffer.from('Exif\0\0MM\0*\0\0\0\x08', 'latin1'),
    // Two fields: lying on its side (6), and where the place stands.
    Buffer.from(
      '0002' + '0112000300000001' + '00060000' + '8825000400000001' + '00000026' + '00000000',
      'hex',
    ),
    // The place: latitude is north.
    Buffer.from('0001' + '0001000200000002' + '4e000000' + '00000000', 'hex'),
    Buffer.from('GPSLatitude 46.94809 the phone of HK'),
  ]);
  const head = Buffer.from([0xff, 0xe1, (exif.length + 2) >> 8, (exif.length + 2) & 0xff]);
  return Buffer.concat([picture.subarray(0, 2), head, exif, picture.subarray(2)]);
}

/** The bytes as they lie in the phone, each photo one text of single bytes. */
function keptBytes(page: Page): Promise<string[]> {
  return page.evaluate(async () => {
    const open = indexedDB.open('greenweight-photos');
    await new Promise((resolve) => open.addEventListener('success', resolve));
    const all = open.result.transaction('photos').objectStore('photos').getAll();
    await new Promise((resolve) => all.addEventListener('success', resolve));
    open.result.close();
    return (all.result as { bytes: Uint8Array }[]).map(({ bytes }) =>
      new TextDecoder('latin1').decode(bytes),
    );
  });
}

test('a photo comes after what was seen, small and without its place, and never in its way', async ({
  page,
}) => {
  test.setTimeout(120_000);
  const me = maker(page);
  await page.clock.setFixedTime(START_MS + 12 * 24 * HOUR_MS);
  const of = ferment(stuff(weighOutSalt(weighMeat(openBatch(setUp(book()))))));
  await me.takeIn(fileOf(of));

  const look = async (piece: string) => {
    await me.choose(piece);
    await me.choose('white');
    await me.choose('dry, like flour');
    await me.choose('all over');
    await me.choose('left alone');
    await me.press('Write it down');
    await expect(page.getByText(`What was seen on piece ${piece} is on this phone.`)).toBeVisible();
  };
  const photograph = (piece: string, buffer: Buffer) =>
    page
      .getByLabel(`Photograph piece ${piece}`)
      .first()
      .setInputFiles({ name: 'IMG_0001.jpg', mimeType: 'image/jpeg', buffer });
  const beside = page.getByRole('list', { name: 'Piece 2', exact: true }).getByRole('img');

  await me.go(`/batches/${ID}/mould`);
  const camera = await fromCamera(page);
  expect(camera.includes('GPSLatitude')).toBe(true);
  expect(camera.length).toBeGreaterThan(1_000_000);
  for (const times of [1, 2]) {
    await look('2');
    await photograph('2', camera);
    await expect(page.getByText('The photo is on this phone, without its place')).toBeVisible();
    await expect(beside).toHaveCount(times);
    await me.choose('1');
    await me.choose('2');
  }
  const upright = await beside
    .first()
    .evaluate((img: HTMLImageElement) => img.naturalHeight > img.naturalWidth);
  expect(upright, 'it stands as it was held').toBe(true);
  const kept = await keptBytes(page);
  expect(kept).toHaveLength(1);
  for (const bytes of kept) {
    expect(bytes.length).toBeLessThanOrEqual(280_000);
    expect(
      ['Exif', 'GPSLatitude', '46.94809', 'the phone of'].filter((word) => bytes.includes(word)),
    ).toEqual([]);
  }
  await axe(page);

  // A camera that hands over rubbish, then a phone without room: what was seen is saved each time.
  await look('3');
  await photograph('3', Buffer.from('no picture at all'));
  await expect(page.getByText('This picture cannot be read here')).toBeVisible();
  // What is left on a phone belongs to readings; a disk that is really full is among the fault tests.
  await page.evaluate(() => {
    navigator.storage.estimate = async () => ({ quota: 1_000_000, usage: 900_000 });
  });
  await look('4');
  await photograph('4', camera);
  await expect(page.getByText('There is no room for photos on this phone')).toBeVisible();
  await page.reload();
  await expect(page.getByText(/^Piece [234]: white, all over; left alone$/)).toHaveCount(4);

  await me.go(`/batches/${ID}/record`);
  await expect(page.getByRole('img', { name: /^Photo: Piece 2/ })).toHaveCount(2);

  // The pictures go out in a file of their own, and come back from it.
  await me.go('/kit/keeping');
  const download = page.waitForEvent('download');
  await me.press('Save the photos as a file');
  const box = await (await download).path();
  await page.evaluate(
    () =>
      new Promise((resolve) => {
        indexedDB.deleteDatabase('greenweight-photos').addEventListener('success', resolve);
      }),
  );
  await me.go(`/batches/${ID}/record`);
  await page.reload();
  await expect(page.getByText('Photo not on this phone when this was printed.')).toHaveCount(2);
  await me.go('/kit/keeping');
  await page.getByLabel('Take in a file of photos').first().setInputFiles(box);
  await expect(page.getByText('1 taken in, 0 already here, 0 of another book and left.')).toBeVisible();
  await me.go(`/batches/${ID}/record`);
  await expect(page.getByRole('img', { name: /^Photo: Piece 2/ })).toHaveCount(2);
});
