import { expect, test } from 'vitest';
import { costOfFinished } from '#core/formula/cost.ts';

const COSTS = [
  { id: 'meat', priceCents: 5 * 800 },
  { id: 'all else', priceCents: 1400 },
];

test('5 kg at 8 and 14 other, 5.2 kg green, 38 % loss, 3 % sampled: 17.27 a kilo (arithmetic, derived)', () => {
  const cost = costOfFinished({ costs: COSTS, greenG: 5200, lossPct: 38, sampledPct: 3, pieces: 8 });
  expect(cost.centsPerKg / 100).toBeCloseTo(17.27, 2);
  expect(cost.centsPerPiece).toBe(675);
});

test('nothing left has no price', () => {
  expect(() =>
    costOfFinished({ costs: COSTS, greenG: 5200, lossPct: 100, sampledPct: 0, pieces: null }),
  ).toThrow(RangeError);
});
