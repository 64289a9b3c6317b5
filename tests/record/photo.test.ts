import { describe, expect, it } from 'vitest';
import { bySubject, photographable, photoSums, photos } from '#record/photo.ts';
import { BATCH, book, openBatch, pieceId, readPh, setUp, stuff } from '../screens/book.ts';

const sum = (digit: string) => digit.repeat(64);
const photo = (digit: string) => ({ sha256: sum(digit), bytes: 90_000, mime: 'image/jpeg' as const });

function photographed() {
  const of = readPh(stuff(openBatch(setUp(book()))), 12, 5.6);
  of.put(13, 'photographed', pieceId(2), photo('a'), { refs: [BATCH] });
  const wrong = of.put(14, 'photographed', pieceId(2), photo('b'), { refs: [BATCH] });
  of.put(15, 'photographed', pieceId(2), photo('c'), { refs: [BATCH] });
  of.put(16, 'photographed', BATCH, photo('d'));
  of.put(17, 'struck', pieceId(2), {}, { refs: [BATCH], strikes: wrong.id });
  return of;
}

describe('the photos of a batch', () => {
  it('stand in order, by what they show, without struck ones', () => {
    const { entries } = photographed();
    expect(photos(entries).map(({ body }) => body.sha256[0])).toEqual(['a', 'c', 'd']);
    const groups = [...bySubject(entries)].map(([id, list]) => [id, list.map(({ body }) => body.sha256[0])]);
    expect(groups).toEqual([
      [pieceId(2), ['a', 'c']],
      [BATCH, ['d']],
    ]);
  });

  it('prove a picture by its sum even where the photo was struck', () => {
    expect(
      photoSums(photographed().entries)
        .map((each) => each[0])
        .join(''),
    ).toBe('abcd');
  });

  it('belong to a reading or an act, the last one first, and never to another photo', () => {
    const kinds = photographable(photographed().entries).map(({ kind }) => kind);
    expect(new Set(kinds)).toEqual(new Set(['ph-read', 'piece-stuffed', 'stuffed', 'mixed', 'ground']));
    expect(kinds[0]).toBe('ph-read');
  });
});
