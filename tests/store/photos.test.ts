import { beforeEach, describe, expect, it, vi } from 'vitest';
import { freshDevice } from './fresh-store.ts';

const picture = (seed: number) => Uint8Array.from({ length: 3000 }, (_, at) => (at * 7 + seed) & 0xff);

async function openPhotos() {
  vi.resetModules();
  const { Dexie } = await import('dexie');
  Object.assign(Dexie.dependencies, { indexedDB, IDBKeyRange });
  return { Dexie, ...(await import('#store/photos.ts')) };
}

/** Under the hand of the page, as a bad disk would. */
async function change(sha256: string, bytes: Uint8Array): Promise<void> {
  const { Dexie } = await openPhotos();
  const raw = await new Dexie('greenweight-photos').open();
  await raw.table('photos').put({ sha256, bytes });
  raw.close();
}

beforeEach(() => {
  freshDevice();
  vi.stubGlobal('navigator', { storage: { estimate: async () => ({ quota: 1e9, usage: 1e6 }) } });
});

describe('a photo', () => {
  it('is found by its sum on the next page, byte for byte', async () => {
    const { keepPhoto } = await openPhotos();
    const kept = await keepPhoto(picture(1));
    expect(kept).toMatchObject({ ok: true, bytes: 3000 });
    const { readPhoto, photosHere } = await openPhotos();
    const sha256 = kept.ok ? kept.sha256 : '';
    expect(await readPhoto(sha256)).toEqual({ state: 'here', bytes: picture(1) });
    expect(await photosHere([sha256, 'f'.repeat(64)])).toEqual(new Set([sha256]));
  });

  it('that is not here, or is not as it was, says so and is not shown', async () => {
    const { keepPhoto } = await openPhotos();
    const kept = await keepPhoto(picture(1));
    const sha256 = kept.ok ? kept.sha256 : '';
    const changed = picture(1);
    changed[1500] = 0;
    await change(sha256, changed);
    const { readPhoto } = await openPhotos();
    expect(await readPhoto(sha256)).toEqual({ state: 'damaged' });
    expect(await readPhoto('0'.repeat(64))).toEqual({ state: 'missing' });
  });

  it('is not kept where the room is needed for readings, and that is said', async () => {
    vi.stubGlobal('navigator', { storage: { estimate: async () => ({ quota: 60e6, usage: 12e6 }) } });
    const { keepPhoto } = await openPhotos();
    expect(await keepPhoto(picture(1))).toEqual({ ok: false, code: 'no-room' });
  });

  it('never throws at whoever took it, whatever the store says', async () => {
    vi.stubGlobal('indexedDB', undefined);
    const { keepPhoto, readPhoto, photosHere } = await openPhotos();
    expect(await keepPhoto(picture(1))).toEqual({ ok: false, code: 'not-kept' });
    expect(await readPhoto('0'.repeat(64))).toEqual({ state: 'damaged' });
    expect(await photosHere(['0'.repeat(64)])).toBeNull();
  });
});

describe('photos from a box', () => {
  it('are kept where an entry names their sum; a damaged one is put right; strange ones are left', async () => {
    const { keepPhoto } = await openPhotos();
    const sums: string[] = [];
    for (const seed of [1, 2]) {
      const kept = await keepPhoto(picture(seed));
      if (kept.ok) sums.push(kept.sha256);
    }
    await change(sums[1] ?? '', picture(9));
    const { takeInPhotos, readPhoto } = await openPhotos();
    const taken = await takeInPhotos([picture(1), picture(2), picture(3)], new Set(sums));
    expect(taken).toEqual({ added: 1, here: 1, strange: 1, refused: null });
    expect(await readPhoto(sums[1] ?? '')).toEqual({ state: 'here', bytes: picture(2) });
  });
});
