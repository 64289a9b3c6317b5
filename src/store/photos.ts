/**
 * The bytes of photos, in a database of their own beside the log: however broken it is, the log does not notice, and on a full
 * disk nothing is written to it. A photo is found by its sum, which its entry holds, and proved by it whenever it is read.
 */
import { Dexie, type Table } from 'dexie';
import { problemOf } from './problem.ts';
import { takesPhoto } from './reserve.ts';
import { KEPT_FOR_READINGS_BYTES, leftBytes } from './room.ts';

type PhotoRow = { readonly sha256: string; readonly bytes: Uint8Array<ArrayBuffer> };

const photos = new Dexie('greenweight-photos', {
  chromeTransactionDurability: 'strict',
  cache: 'disabled',
}) as Dexie & { readonly photos: Table<PhotoRow, string> };
photos.version(1).stores({ photos: 'sha256' });

export type KeptPhoto =
  | { ok: true; sha256: string; bytes: number }
  | { ok: false; code: 'no-room' | 'not-kept' };

export type FoundPhoto =
  | { state: 'here'; bytes: Uint8Array<ArrayBuffer> }
  /** Never came to this phone, or was cleared here: a backup holds entries, not photos. */
  | { state: 'missing' }
  | { state: 'damaged' };

/** Never throws: a photo that cannot be kept costs nothing but itself. It is read back before it counts as kept. */
export async function keepPhoto(bytes: Uint8Array<ArrayBuffer>): Promise<KeptPhoto> {
  const left = await leftBytes();
  if (left !== null && left - bytes.length < KEPT_FOR_READINGS_BYTES) return { ok: false, code: 'no-room' };
  if (!(await takesPhoto())) return { ok: false, code: 'no-room' };
  try {
    const sha256 = await sumOf(bytes);
    await photos.photos.put({ sha256, bytes });
    const back = await readPhoto(sha256);
    return back.state === 'here'
      ? { ok: true, sha256, bytes: bytes.length }
      : { ok: false, code: 'not-kept' };
  } catch (error) {
    return { ok: false, code: problemOf(error).code === 'full' ? 'no-room' : 'not-kept' };
  }
}

/** Never throws. */
export async function readPhoto(sha256: string): Promise<FoundPhoto> {
  try {
    const row: PhotoRow | undefined = await photos.photos.get(sha256);
    if (!row) return { state: 'missing' };
    return (await sumOf(row.bytes)) === sha256 ? { state: 'here', bytes: row.bytes } : { state: 'damaged' };
  } catch {
    return { state: 'damaged' };
  }
}

/** Which of these sums have bytes here. Null where the store of photos cannot be read at all. */
export async function photosHere(sums: readonly string[]): Promise<ReadonlySet<string> | null> {
  try {
    return new Set(
      (await photos.photos
        .where('sha256')
        .anyOf([...sums])
        .primaryKeys()) as string[],
    );
  } catch {
    return null;
  }
}

/** Bytes from a box: kept when an entry of this book names their sum. A damaged photo here is put right by its whole one. */
export async function takeInPhotos(
  boxed: readonly Uint8Array<ArrayBuffer>[],
  known: ReadonlySet<string>,
): Promise<{ added: number; here: number; strange: number; refused: KeptPhoto | null }> {
  let [added, here, strange] = [0, 0, 0];
  for (const bytes of boxed) {
    const sha256 = await sumOf(bytes);
    if (!known.has(sha256)) strange += 1;
    else if ((await readPhoto(sha256)).state === 'here') here += 1;
    else {
      const kept = await keepPhoto(bytes);
      if (!kept.ok) return { added, here, strange, refused: kept };
      added += 1;
    }
  }
  return { added, here, strange, refused: null };
}

async function sumOf(bytes: Uint8Array<ArrayBuffer>): Promise<string> {
  const sum = new Uint8Array(await crypto.subtle.digest('SHA-256', bytes));
  return [...sum].map((byte) => byte.toString(16).padStart(2, '0')).join('');
}
