import { describe, expect, it } from 'vitest';
import { apart, moves, onRails } from '#record/rail.ts';
import {
  BATCH,
  batchOf,
  book,
  ferment,
  openBatch,
  pieceId,
  setUp,
  stuff,
  weighRound,
} from '../screens/book.ts';

const stuffed = () => stuff(openBatch(setUp(book())));
const hangs = (of: ReturnType<typeof book>) =>
  onRails(batchOf(of).pieces, of.entries).map(({ piece, rail }) => `${rail}:${piece.number}`);
const place = (of: ReturnType<typeof book>, number: number, rail: number, position: number) =>
  of.put(20, 'rail-placed', pieceId(number), { rail, position }, { refs: [BATCH] });

describe('where pieces hang', () => {
  it('is the order of their numbers while nothing else was written', () => {
    expect(hangs(stuffed())).toEqual(['1:1', '1:2', '1:3', '1:4']);
  });

  it('is what was written last, rail by rail, those of which nothing was written after them', () => {
    const of = stuffed();
    place(of, 3, 1, 1);
    place(of, 1, 2, 1);
    place(of, 1, 2, 4);
    place(of, 4, 2, 2);
    expect(hangs(of)).toEqual(['1:3', '1:2', '2:4', '2:1']);
  });

  it('goes back to what it was when a move is struck', () => {
    const of = stuffed();
    const moved = place(of, 4, 1, 1);
    expect(hangs(of)[0]).toBe('1:4');
    of.put(21, 'struck', pieceId(4), {}, { refs: [BATCH], strikes: moved.id });
    expect(hangs(of)).toEqual(['1:1', '1:2', '1:3', '1:4']);
  });
});

describe('rearranging', () => {
  const write = (of: ReturnType<typeof book>, written: ReturnType<typeof moves>) => {
    for (const { piece, ...body } of written) of.put(22, 'rail-placed', piece, body, { refs: [BATCH] });
  };
  const now = (of: ReturnType<typeof book>) => onRails(batchOf(of).pieces, of.entries);
  const order = (numbers: readonly number[], lower: readonly number[] = []) => [
    ...numbers.map((number) => ({ piece: pieceId(number), rail: 1 })),
    ...lower.map((number) => ({ piece: pieceId(number), rail: 2 })),
  ];

  it('is written down, and then they hang as was wanted', () => {
    const of = stuffed();
    write(of, moves(now(of), order([2, 1, 3], [4])));
    expect(hangs(of)).toEqual(['1:2', '1:1', '1:3', '2:4']);
    expect(moves(now(of), order([2, 1, 3], [4]))).toEqual([]);
  });

  it('a second time writes down only what hangs elsewhere than before', () => {
    const of = stuffed();
    write(of, moves(now(of), order([2, 1, 3, 4])));
    const again = moves(now(of), order([2, 1, 4, 3]));
    expect(again.map(({ piece, position }) => [piece, position])).toEqual([
      [pieceId(4), 3],
      [pieceId(3), 4],
    ]);
  });

  it('into the same order writes nothing', () => {
    expect(moves(now(stuffed()), order([1, 2, 3, 4]))).toEqual([]);
  });
});

describe('a piece that dries apart', () => {
  const weighed = (lossesPct: readonly number[]) => {
    const greenG = lossesPct.map(() => 800);
    const of = ferment(stuff(openBatch(setUp(book())), { greenG }));
    const massesG = lossesPct.map((lossPct) => 800 * (1 - lossPct / 100));
    return [...apart(batchOf(weighRound(of, 200, massesG)).pieces)].map(([id, how]) => [id.slice(-1), how]);
  };

  it('is told from its fellows by more than three points', () => {
    expect(weighed([30, 30.5, 31, 24, 30.2])).toEqual([['4', 'slow']]);
    expect(weighed([30, 30.5, 36, 31, 30.2])).toEqual([['3', 'fast']]);
    expect(weighed([30, 30.5, 32.9, 31, 30.2])).toEqual([]);
  });

  it('is not told where all differ, or where there are few', () => {
    expect(weighed([20, 25, 30, 35, 40])).toEqual([]);
    expect(weighed([30, 30, 20])).toEqual([]);
  });
});
