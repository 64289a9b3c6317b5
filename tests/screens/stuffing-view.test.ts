import { describe, expect, it } from 'vitest';
import { medianG, pieceQuestion, sharedSoFar, stuffingView } from '#screens/stuffing/stuffing-view.ts';
import { en as words } from '#words/en.ts';
import { plainText } from '#words/said.ts';
import {
  BATCH,
  BENCH,
  BIG,
  type Book,
  batchOf,
  book,
  kitOf,
  openBatch,
  pieceId,
  placeOf,
  SMALL,
  setUp,
  stuff,
  weighMeat,
} from './book.ts';

function viewOf(of: Book, place = placeOf(of)) {
  return stuffingView({ batch: batchOf(of), scales: kitOf(of).scales, place, words });
}
const opened = () => weighMeat(openBatch(setUp(book())));
const some = () => stuff(opened());

describe('weighing the pieces as they are stuffed', () => {
  it('asks for the first as it hangs', () => {
    const view = viewOf(opened());
    expect(plainText(view.sentence)).toBe('Weigh the first piece as it hangs: string and clip on, tag off.');
    expect([view.next, view.previous]).toEqual([1, null]);
  });

  it('counts on from the last, shows what that weighed, and the newest first', () => {
    const view = viewOf(some());
    expect([view.next, view.previous]).toEqual([5, 'piece 4: 820\u00a0g']);
    expect(plainText(view.sentence)).toBe('4 pieces, 3\u202f235\u00a0g in all.');
    expect(view.rows.map(({ title, figure }) => [title, figure])).toEqual([
      ['Piece 4', '820'],
      ['Piece 3', '805'],
      ['Piece 2', '798'],
      ['Piece 1', '812'],
    ]);
  });

  it('counts a struck piece no more, and gives its number again', () => {
    const of = some();
    const last = batchOf(of).pieces.at(-1);
    if (!last) throw new Error('no piece');
    of.put(2.2, 'struck', last.id, {}, { refs: [BATCH], strikes: last.stuffed.id });
    expect(viewOf(of).next).toBe(4);
    expect(viewOf(of).rows.length).toBe(3);
  });

  it('takes the finest scale that carries the pieces, with a fifth to spare', () => {
    expect(viewOf(opened()).scale?.id).toBe(BIG);
    expect(viewOf(stuff(opened(), { greenG: [380, 390, 400] })).scale?.id).toBe(BENCH);
    expect(viewOf(stuff(opened(), { greenG: [420, 425, 430] })).scale?.id).toBe(BIG);
    expect(viewOf(stuff(opened(), { greenG: [30] })).scale?.id).toBe(SMALL);
  });

  it('says what the pieces share: the last said, or the plan', () => {
    expect(sharedSoFar(batchOf(opened()))).toEqual({
      diameterMm: 55,
      casing: '',
      targetLossPct: 38,
      tareG: 0,
    });
    const of = some();
    const body = {
      number: 5,
      grossG: 830,
      tareG: 12,
      diameterMm: 60,
      casing: 'beef middle',
      targetLossPct: 40,
    };
    of.put(2.3, 'piece-stuffed', pieceId(5), body, { refs: [BATCH] });
    expect(sharedSoFar(batchOf(of))).toEqual({
      diameterMm: 60,
      casing: 'beef middle',
      targetLossPct: 40,
      tareG: 12,
    });
  });

  const asked = (massG: number, of: Book) =>
    pieceQuestion(massG, `${massG} g`, { batch: batchOf(of), diameterMm: 55, place: placeOf(of), words });

  it('asks about a piece beyond a third or three times its fellows', () => {
    expect(medianG(batchOf(some()))).toBe(812);
    expect([270, 271, 2436, 2437].map((massG) => asked(massG, some()) !== null)).toEqual([
      true,
      false,
      false,
      true,
    ]);
  });

  it('asks about a first piece that would be longer than any hangs, as with a digit too many', () => {
    expect(asked(812, opened())).toBeNull();
    // 8120 g / 1.05 g/ml / (pi / 4 x 5.5 cm x 5.5 cm) = 325.5 cm
    expect(asked(8120, opened())).toBe(
      '8120 g: at 55\u00a0mm it would be 3.3\u00a0m long. Is that what the scale shows?',
    );
  });

  it('speaks ounces and pounds where the maker does', () => {
    const pounds = { ...placeOf(some()), mass: 'pounds' } as const;
    expect(viewOf(some(), pounds)).toMatchObject({ unit: 'lb', most: '44 lb' });
    expect(viewOf(stuff(opened(), { greenG: [300] }), pounds).unit).toBe('oz');
  });
});
