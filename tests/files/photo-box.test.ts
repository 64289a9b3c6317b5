import { zipSync } from 'fflate';
import { describe, expect, it } from 'vitest';
import { openPhotoBox, photoBox } from '#files/photo-box.ts';
import { MOST_PHOTO_BYTES } from '#record/photo.ts';

const noise = (length: number, seed: number) =>
  Uint8Array.from({ length }, (_, at) => (at * 31 + seed * 97 + (at >> 5)) & 0xff);

describe('photos in a box', () => {
  it('come out as they went in', () => {
    const photos = [1, 2, 3].map((seed) => ({ name: `${seed}.jpg`, bytes: noise(5000 + seed, seed) }));
    const opened = openPhotoBox(photoBox(photos));
    expect(opened).toMatchObject({ ok: true, left: 0 });
    expect(opened.ok && opened.photos).toEqual(photos.map(({ bytes }) => bytes));
  });

  it('leave behind what is too large, empty, or would grow on its way out', () => {
    const bomb = new Uint8Array(10_000_000);
    const box = zipSync({
      'grows.jpg': [bomb, { level: 9 }],
      'large.jpg': [noise(MOST_PHOTO_BYTES + 1, 1), { level: 0 }],
      'empty.jpg': [new Uint8Array(0), { level: 0 }],
      'whole.jpg': [noise(900, 2), { level: 0 }],
    });
    const opened = openPhotoBox(box);
    expect(opened).toMatchObject({ ok: true, left: 3 });
    expect(opened.ok && opened.photos.map(({ length }) => length)).toEqual([900]);
  });

  it('are not looked for in what is no box, is cut short, or holds too many files', () => {
    const box = photoBox([{ name: 'a.jpg', bytes: noise(5000, 1) }]);
    expect(openPhotoBox(noise(400, 3))).toEqual({ ok: false, code: 'not-a-box' });
    expect(openPhotoBox(box.subarray(0, 3000))).toEqual({ ok: false, code: 'not-a-box' });
    const many = Object.fromEntries(Array.from({ length: 2001 }, (_, at) => [`${at}.jpg`, noise(4, at)]));
    expect(openPhotoBox(zipSync(many, { level: 0 }))).toEqual({ ok: false, code: 'not-a-box' });
  });
});
