import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { railColumns } from '#ui/drawings/rail-columns.ts';

describe('pieces side by side', () => {
  // pieces  fit  side by side
  it.each([
    [7, 7, 7],
    [8, 7, 4], // 4 + 4, not 7 + 1
    [7, 6, 4], // 4 + 3
    [24, 7, 6],
    [24, 12, 12],
    [1, 7, 1],
    [0, 7, 0],
  ])('%d pieces where %d fit hang %d to a rail', (count, most, columns) => {
    expect(railColumns({ count, most })).toBe(columns);
  });

  it('never more than fit, never on more rails than needed, and each rail is shorter than the first by less than it has rails', () => {
    fc.assert(
      fc.property(fc.integer({ min: 1, max: 60 }), fc.integer({ min: 3, max: 12 }), (count, most) => {
        const columns = railColumns({ count, most });
        const rails = Math.ceil(count / most);
        expect(columns).toBeLessThanOrEqual(most);
        expect(Math.ceil(count / columns)).toBeLessThanOrEqual(rails);
        expect(columns * rails - count).toBeLessThan(rails);
      }),
    );
  });
});
