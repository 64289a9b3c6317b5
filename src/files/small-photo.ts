/** A photo drawn anew, small, and bare of all that a camera writes beside it. What was photographed stays; where does not. */
import { MOST_PHOTO_BYTES } from '#record/photo.ts';
import { bareJpeg } from './jpeg.ts';

/** The longest edge in pixels and the quality, gentlest first: the first that is small enough is taken. */
const TRIES = [
  { edge: 1280, quality: 0.82 },
  { edge: 1280, quality: 0.66 },
  { edge: 1280, quality: 0.5 },
  { edge: 960, quality: 0.5 },
  { edge: 640, quality: 0.4 },
] as const;

/** Null for a file that this browser cannot draw. */
export async function smallPhoto(file: Blob): Promise<Uint8Array<ArrayBuffer> | null> {
  let picture: ImageBitmap;
  try {
    picture = await createImageBitmap(file);
  } catch {
    return null;
  }
  try {
    for (const each of TRIES) {
      const drawn = await encoded(picture, each);
      const bare = drawn && bareJpeg(drawn);
      if (bare && bare.length <= MOST_PHOTO_BYTES) return bare;
    }
    return null;
  } finally {
    picture.close();
  }
}

async function encoded(
  picture: ImageBitmap,
  { edge, quality }: (typeof TRIES)[number],
): Promise<Uint8Array | null> {
  const shrunk = Math.min(1, edge / Math.max(picture.width, picture.height));
  const canvas = document.createElement('canvas');
  canvas.width = Math.max(1, Math.round(picture.width * shrunk));
  canvas.height = Math.max(1, Math.round(picture.height * shrunk));
  const pen = canvas.getContext('2d', { alpha: false });
  if (!pen) return null;
  pen.imageSmoothingQuality = 'high';
  pen.drawImage(picture, 0, 0, canvas.width, canvas.height);
  const blob = await new Promise<Blob | null>((resolve) => canvas.toBlob(resolve, 'image/jpeg', quality));
  return blob && new Uint8Array(await blob.arrayBuffer());
}
