import { describe, expect, it } from 'vitest';
import { median } from '#core/median.ts';
import { blindCodes, tasting } from '#record/tasting.ts';
import { BATCH, batchOf, book, openBatch, setUp } from '../screens/book.ts';

const marks = (mark: number) => ({ look: mark, smell: mark, bite: mark, taste: mark, overall: mark });

function tasted(...all: readonly (readonly [taster: string, mark: number])[]) {
  const of = openBatch(setUp(book()));
  for (const [at, [taster, mark]] of all.entries())
    of.put(2000 + at, 'tasted', BATCH, { taster, ...marks(mark) });
  return tasting(batchOf(of));
}

describe('what tasters found', () => {
  it('is nothing before somebody tasted', () => {
    expect(tasted()).toBe(null);
  });

  it('is the middle mark of three tasters, and how far they are apart', () => {
    const found = tasted(['HK', 2], ['MB', 5], ['JT', 4]);
    expect(found?.marks.overall).toBe(4);
    expect(found?.spread.overall).toBe(3);
    expect(found?.tasters).toEqual(['HK', 'MB', 'JT']);
  });

  it('counts a taster once, with the last marks', () => {
    expect(tasted(['HK', 1], ['MB', 3], ['hk ', 5])?.marks.taste).toBe(4);
  });

  it('takes the middle of two as halfway', () => {
    expect(median([4, 1])).toBe(2.5);
    expect(() => median([])).toThrow(RangeError);
  });
});

describe('the numbers on the plates', () => {
  const ids = (count: number, from = 0) =>
    Array.from({ length: count }, (_, at) => ({
      id: `batch:018cdc00-0000-7000-a000-${(from + at * 900).toString(16).padStart(12, '0')}` as const,
    }));

  it('have three digits and are never shared, even where two ids would give the same', () => {
    const codes = [...blindCodes(ids(50)).values()];
    expect(new Set(codes).size).toBe(50);
    expect(codes.every((code) => code >= 100 && code <= 999)).toBe(true);
  });

  it('stay when a later batch comes', () => {
    const before = blindCodes(ids(5));
    const after = blindCodes(ids(9).reverse());
    for (const [id, code] of before) expect(after.get(id)).toBe(code);
  });
});
