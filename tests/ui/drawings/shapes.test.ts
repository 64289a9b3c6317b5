import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { barParts } from '#ui/drawings/bar-parts.ts';
import { chanceFrom } from '#ui/drawings/chance.ts';
import { flecksPath, scatterFlecks } from '#ui/drawings/flecks.ts';
import { sliceStops } from '#ui/drawings/slice-stops.ts';
import { sparkPath } from '#ui/drawings/spark-path.ts';

const share = fc.integer({ min: 0, max: 300 }).map((percent) => percent / 100);

describe('chance for drawings', () => {
  it('is the same for the same seed and another for the next', () => {
    const three = (seed: number) => {
      const chance = chanceFrom(seed);
      return [chance(), chance(), chance()];
    };
    expect(three(7)).toEqual(three(7));
    expect(three(7)).not.toEqual(three(8));
  });

  it('fills the range from 0 up to 1 evenly', () => {
    const chance = chanceFrom(1);
    const tenths = new Array<number>(10).fill(0);
    for (let drawn = 0; drawn < 10_000; drawn++) {
      const tenth = Math.floor(chance() * 10);
      tenths[tenth] = (tenths[tenth] ?? 0) + 1;
    }
    expect(tenths).toHaveLength(10);
    for (const count of tenths) expect(Math.abs(count - 1000)).toBeLessThan(150);
  });
});

describe('flecks', () => {
  const box = { seed: 3, count: 40, width: 50, height: 150, radius: 2 };
  it('lie inside their box', () => {
    const flecks = scatterFlecks(box);
    expect(flecks).toHaveLength(40);
    for (const { x, y } of flecks) {
      expect(x >= 0 && x <= 50 && y >= 0 && y <= 150).toBe(true);
    }
  });
  it('keep apart better than pure chance would', () => {
    const nearest = (spots: readonly { x: number; y: number }[]) =>
      spots.map((one) =>
        Math.min(...spots.filter((each) => each !== one).map(({ x, y }) => Math.hypot(x - one.x, y - one.y))),
      );
    const mean = (values: readonly number[]) => values.reduce((sum, each) => sum + each, 0) / values.length;
    const chance = chanceFrom(3);
    const strewn = Array.from({ length: 40 }, () => ({ x: chance() * 50, y: chance() * 150 }));
    expect(mean(nearest(scatterFlecks(box)))).toBeGreaterThan(1.2 * mean(nearest(strewn)));
  });
  it('stand the same for the same piece', () => {
    expect(flecksPath(scatterFlecks(box), 3)).toBe(flecksPath(scatterFlecks(box), 3));
    expect(flecksPath(scatterFlecks(box), 3).match(/M/g)).toHaveLength(40);
  });
});

describe('the bar to a limit', () => {
  it('is as long as the limit while less is used', () => {
    expect(barParts({ usedShare: 0.25, projectedShare: 0.5 })).toEqual({
      used: 0.25,
      projected: 0.5,
      limit: 1,
    });
  });
  it('grows past the limit, which stays where it is in proportion', () => {
    const { used, projected, limit } = barParts({ usedShare: 1.2 });
    expect(used / limit).toBeCloseTo(1.2, 9);
    expect(projected).toBe(used);
    expect(used).toBeLessThan(1);
  });
  it('never runs out of its picture', () => {
    fc.assert(
      fc.property(share, share, (usedShare, projectedShare) => {
        for (const end of Object.values(barParts({ usedShare, projectedShare }))) {
          expect(end >= 0 && end <= 1).toBe(true);
        }
      }),
    );
  });
});

describe('a slice', () => {
  it('is shaded from the heart outwards, as a gradient is drawn', () => {
    expect(sliceStops([0, 0.5, 1])).toEqual([
      { radiusShare: 0, waterShare: 1 },
      { radiusShare: 0.5, waterShare: 0.5 },
      { radiusShare: 1, waterShare: 0 },
    ]);
  });
  it('of one value is filled with it', () => {
    expect(sliceStops([0.3])).toEqual([{ radiusShare: 1, waterShare: 0.3 }]);
  });
});

describe('a spark', () => {
  it('fills its box, upwards for more', () => {
    const points = [
      { x: 10, y: 5.8 },
      { x: 20, y: 5 },
      { x: 30, y: 5.4 },
    ];
    expect(sparkPath({ points, width: 100, height: 20 })).toEqual({
      line: 'M0 0L50 20L100 10',
      end: '100 10',
    });
  });
  it('lies in the middle where nothing changes', () => {
    const points = [
      { x: 0, y: 4 },
      { x: 1, y: 4 },
    ];
    expect(sparkPath({ points, width: 100, height: 20 }).line).toBe('M0 10L100 10');
  });
  it('of nothing is nothing', () => {
    expect(sparkPath({ points: [], width: 100, height: 20 })).toEqual({ line: '', end: '' });
  });
});
