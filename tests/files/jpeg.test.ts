import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { bareJpeg } from '#files/jpeg.ts';

const bytesOf = (text: string) => [...text].map((each) => each.charCodeAt(0));
const segment = (code: number, payload: readonly number[]) => [
  0xff,
  code,
  (payload.length + 2) >> 8,
  (payload.length + 2) & 0xff,
  ...payload,
];
const JFIF = segment(0xe0, bytesOf('JFIF\0\x01\x01'));
const TABLE = segment(
  0xdb,
  Array.from({ length: 65 }, (_, at) => at),
);
const SCAN = [...segment(0xda, [1, 1, 0, 0, 63, 0]), 1, 2, 0xff, 0, 3, 0xff, 0xd9];
const EXIF = segment(0xe1, bytesOf('Exif\0\0II*\0GPSLatitude 46.95 N, 7.44 E, a phone, 2024:01:08'));
const REMARK = segment(0xfe, bytesOf('taken at home'));
const picture = (...between: number[][]) => Uint8Array.from([0xff, 0xd8, ...between.flat(), ...SCAN]);
const text = (bytes: Uint8Array | null) => String.fromCharCode(...(bytes ?? []));

describe('a JPEG as a picture and nothing else', () => {
  it('loses place, remark and colour profile, and keeps the picture byte for byte', () => {
    const profile = segment(0xe2, bytesOf('ICC_PROFILE'));
    const bare = bareJpeg(picture(JFIF, EXIF, profile, TABLE, REMARK));
    expect(bare).toEqual(picture(JFIF, TABLE));
    expect(text(bare)).not.toMatch(/GPS|Exif|home|ICC/);
  });

  it('keeps what says how the colours are to be read', () => {
    const adobe = segment(0xee, bytesOf('Adobe\0d\0\0\0\0\x01'));
    expect(bareJpeg(picture(adobe, EXIF, TABLE))).toEqual(picture(adobe, TABLE));
  });

  it('is as it was the second time, wherever the descriptions stood', () => {
    const kinds = fc.constantFrom(JFIF, EXIF, TABLE, REMARK);
    fc.assert(
      fc.property(fc.array(kinds, { maxLength: 8 }), (between) => {
        const bare = bareJpeg(picture(...between));
        expect(text(bare)).not.toMatch(/GPS|Exif|home/);
        expect(bare && bareJpeg(bare)).toEqual(bare);
      }),
    );
  });

  it('is no picture where it is cut before the picture begins, or was none', () => {
    const whole = picture(JFIF, EXIF, TABLE);
    const scanAt = whole.length - SCAN.length;
    for (let end = 0; end < scanAt; end++) expect(bareJpeg(whole.subarray(0, end))).toBeNull();
    expect(bareJpeg(Uint8Array.from(bytesOf('<svg onload=alert(1)>')))).toBeNull();
    expect(bareJpeg(Uint8Array.from([0xff, 0xd8, 0xff, 0xe1, 0, 1, 0, 0]))).toBeNull();
  });
});
