/** Photos as one ZIP file and back. The names in it are for people; what a photo is, its own sum says. */
import { unzipSync, zipSync } from 'fflate';
import { MOST_PHOTO_BYTES } from '#record/photo.ts';

const MOST_BOX_BYTES = 100 * 1024 * 1024;
const MOST_FILES = 2000;

export type NamedPhoto = { readonly name: string; readonly bytes: Uint8Array };

export type OpenedBox =
  | { ok: true; photos: readonly Uint8Array<ArrayBuffer>[]; left: number }
  | { ok: false; code: 'too-large' | 'not-a-box' };

/** A JPEG does not get smaller by being packed, so it is only put in. */
export function photoBox(photos: readonly NamedPhoto[]): Uint8Array<ArrayBuffer> {
  return new Uint8Array(
    zipSync(Object.fromEntries(photos.map(({ name, bytes }) => [name, bytes])), { level: 0 }),
  );
}

/** Takes out what could be a photo of this book by its size, stated and real; all else is left. */
export function openPhotoBox(bytes: Uint8Array): OpenedBox {
  if (bytes.length > MOST_BOX_BYTES) return { ok: false, code: 'too-large' };
  let seen = 0;
  try {
    const files = unzipSync(bytes, {
      filter: ({ originalSize, size, compression }) => {
        seen += 1;
        if (seen > MOST_FILES) throw new RangeError(`openPhotoBox: more than ${MOST_FILES} files`);
        // Only what was put in unpacked: nothing can grow on its way out.
        return compression === 0 && size === originalSize && size > 0 && size <= MOST_PHOTO_BYTES;
      },
    });
    const photos = Object.values(files).map((file) => new Uint8Array(file));
    return { ok: true, photos, left: seen - photos.length };
  } catch {
    return { ok: false, code: 'not-a-box' };
  }
}
