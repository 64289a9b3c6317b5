import { expect, test } from 'vitest';
import { photoGroups, photosOfPiece, readingChoices } from '#screens/mould/photos-view.ts';
import { en as words } from '#words/en.ts';
import {
  BATCH,
  batchOf,
  book,
  HOUR_MS,
  openBatch,
  pieceId,
  readPh,
  START_MS,
  setUp,
  stuff,
  touching,
  ZONE,
} from './book.ts';

const seen = { nowMs: START_MS + 30 * HOUR_MS, zone: ZONE, words };

test('a photo belongs to what was last written down of its subject, and stands beside the earlier ones', () => {
  const of = readPh(stuff(openBatch(setUp(book()))), 12, 5.6);
  const look = of.put(
    13,
    'mould-looked',
    pieceId(2),
    { colour: 'none', texture: 'powder', spread: 'spots', action: 'left' },
    { refs: [BATCH] },
  );
  const body = { bytes: 9000, mime: 'image/jpeg' as const };
  of.put(14, 'photographed', pieceId(2), { ...body, sha256: 'a'.repeat(64), of: look.id }, { refs: [BATCH] });
  of.put(20, 'photographed', pieceId(2), { ...body, sha256: 'b'.repeat(64) }, { refs: [BATCH] });
  of.put(21, 'photographed', BATCH, { ...body, sha256: 'c'.repeat(64) });
  const batch = batchOf(of);
  const entries = touching(of, BATCH);
  expect(
    readingChoices(batch, entries, seen)
      .slice(0, 3)
      .map(({ label, reading }) => [label, reading]),
  ).toEqual([
    ['The batch', 'pH read, 20:00 yesterday'],
    ['1', 'piece stuffed, 10:06 yesterday'],
    ['2', 'mould looked at, 21:00 yesterday'],
  ]);
  expect(
    photoGroups(batch, entries, seen).map(({ title, photos }) => [
      title,
      photos.map(({ sha256 }) => sha256[0]),
    ]),
  ).toEqual([
    ['The batch', ['c']],
    ['Piece 2', ['b', 'a']],
  ]);
  expect(photosOfPiece({ id: pieceId(2), number: 2 }, entries, seen).map(({ caption }) => caption)).toEqual([
    '04:00 today',
    '22:00 yesterday · mould looked at',
  ]);
});
