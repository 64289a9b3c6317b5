import { describe, expect, it } from 'vitest';
import { spread } from '#record/spread.ts';

describe('a few that stand for all', () => {
  it('are all of them where they are few, and evenly picked where they are many', () => {
    expect(spread([1, 2, 3], 4)).toEqual([1, 2, 3]);
    expect(spread([], 4)).toEqual([]);
    expect(spread([0, 1, 2, 3, 4, 5, 6, 7], 4)).toEqual([0, 2, 4, 6]);
    expect(spread([0, 1, 2, 3, 4, 5, 6], 3)).toEqual([0, 3, 5]);
    for (let count = 1; count < 40; count++)
      expect(spread(new Array(count).fill(0), 6)).toHaveLength(Math.min(count, 6));
  });
});
