import { describe, expect, it } from 'vitest';
import { piece } from '#record/piece.ts';
import { pieceFigures } from '#record/piece-figures.ts';
import { HOUR_MS, START_MS, writer } from './make.ts';

const at = (hours: number) => ({ atMs: START_MS + hours * HOUR_MS });
const ms = (hours: number) => START_MS + hours * HOUR_MS;
const body = { number: 1, grossG: 1012, tareG: 12, diameterMm: 60, casing: '', targetLossPct: 40 };

function hung() {
  const book = writer();
  book.write('piece-stuffed', 'piece:a', body, at(0));
  book.write('weighed', 'piece:a', { grossG: 812, stage: 'round' }, at(100));
  return book;
}
const made = (book: ReturnType<typeof writer>) => {
  const found = piece('piece:a', book.entries);
  if (!found) throw new Error('no piece');
  return found;
};

describe('a piece that was out of the air', () => {
  it('rests while it is bagged, from bag to hook, and again', () => {
    const book = hung();
    book.write('bagged', 'piece:a', { reason: 'to even out' }, at(110));
    expect(made(book).rests).toEqual([{ fromMs: ms(110), toMs: null }]);
    book.write('rehung', 'piece:a', { reason: 'evened out' }, at(200));
    book.write('bagged', 'piece:a', { reason: 'crust' }, at(300));
    expect(made(book).rests).toEqual([
      { fromMs: ms(110), toMs: ms(200) },
      { fromMs: ms(300), toMs: null },
    ]);
    expect(made(book).status).toBe('bagged');
  });

  it('hangs again after it was taken down, and was out of the air meanwhile', () => {
    const book = hung();
    book.write('taken-down', 'piece:a', { why: 'test' }, at(120));
    expect([made(book).status, made(book).takenDown === null]).toEqual(['taken-down', false]);
    book.write('rehung', 'piece:a', { reason: 'soft at the heart' }, at(144));
    expect([made(book).status, made(book).takenDown]).toEqual(['hanging', null]);
    expect(made(book).rests).toEqual([{ fromMs: ms(120), toMs: ms(144) }]);
  });

  it('is one rest from the bag to the hook if it was taken down in between', () => {
    const book = hung();
    book.write('bagged', 'piece:a', { reason: 'to even out' }, at(110));
    book.write('taken-down', 'piece:a', { why: 'other' }, at(120));
    book.write('rehung', 'piece:a', { reason: '' }, at(130));
    expect(made(book).rests).toEqual([{ fromMs: ms(110), toMs: ms(130) }]);
  });
});

describe('a piece that was cut', () => {
  it('keeps its loss: green weight and earlier weighings are those of the part that still hangs', () => {
    const book = hung();
    const whole = pieceFigures(made(book));
    book.write('cut', 'piece:a', { beforeG: 812, afterG: 412 }, at(101));
    expect(made(book).greenG).toBeCloseTo(500, 9);
    expect(pieceFigures(made(book)).lossPct).toBeCloseTo(whole.lossPct ?? Number.NaN, 9);
    expect(pieceFigures(made(book)).targetG).toBeCloseTo(300, 9);
    book.write('weighed', 'piece:a', { grossG: 372, stage: 'round' }, at(200));
    expect(pieceFigures(made(book)).lossPct).toBeCloseTo(28, 9);
    book.write('cut', 'piece:a', { beforeG: 372, afterG: 192 }, at(201));
    expect(pieceFigures(made(book)).lossPct).toBeCloseTo(28, 9);
    expect(made(book).weighings).toHaveLength(2);
  });

  it('is no piece that weighs more after the cut', () => {
    expect(() => hung().write('cut', 'piece:a', { beforeG: 400, afterG: 400 }, at(101))).toThrow();
  });
});
