import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { ChartModel } from '#ui/charts/chart-model.ts';
import { labelPlace } from '#ui/charts/label-room.ts';

const ticks = (ats: readonly number[]) => ats.map((at) => ({ at, text: String(at) }));
const chart = (
  points: readonly { x: number; y: number }[],
): Pick<ChartModel, 'xTicks' | 'yTicks' | 'series'> => ({
  xTicks: ticks([0, 12, 24, 36]),
  yTicks: ticks([4.8, 5.2, 5.6, 6]),
  series: [{ kind: 'measured', id: 'ph', points }],
});
const stop = { text: '5.3 stops the clock', y: 5.3 };

describe('the words of a line across', () => {
  it('stand at the right above it while the curve is far above', () => {
    expect(
      labelPlace(
        stop,
        chart([
          { x: 0, y: 5.8 },
          { x: 12, y: 5.7 },
        ]),
      ),
    ).toEqual({ left: false, below: false });
  });

  it('go to the left and below where the curve comes down at the right', () => {
    const falling = [
      { x: 0, y: 5.8 },
      { x: 30, y: 5.75 },
      { x: 36, y: 4.9 },
    ];
    expect(labelPlace(stop, chart(falling))).toEqual({ left: true, below: true });
  });

  it('have no place where the curve goes through the midst, nor where they are wider than the chart', () => {
    expect(
      labelPlace(
        stop,
        chart([
          { x: 0, y: 5.8 },
          { x: 18, y: 5.3 },
          { x: 36, y: 5.2 },
        ]),
      ),
    ).toBeNull();
    expect(labelPlace({ text: 'x'.repeat(40), y: 5.3 }, chart([{ x: 0, y: 5.8 }]))).toBeNull();
  });

  it('never lie on a point of the curve, looked for by small steps along it', () => {
    const point = fc.record({ x: fc.integer({ min: 0, max: 360 }), y: fc.integer({ min: 480, max: 600 }) });
    fc.assert(
      fc.property(fc.uniqueArray(point, { minLength: 1, maxLength: 6, selector: ({ x }) => x }), (raw) => {
        const points = raw.map(({ x, y }) => ({ x: x / 10, y: y / 100 })).sort((a, b) => a.x - b.x);
        const place = labelPlace(stop, chart(points));
        if (place === null) return;
        // Of a chart 228 px wide and 196 px high: 19 bold letters and their height, without any margin.
        const x = place.left ? [0, 22.5] : [13.5, 36];
        const y = place.below ? [5.2, 5.3] : [5.3, 5.4];
        for (const [at, from] of points.entries()) {
          const to = points[at + 1] ?? from;
          for (let step = 0; step <= 50; step++) {
            const here = {
              x: from.x + ((to.x - from.x) * step) / 50,
              y: from.y + ((to.y - from.y) * step) / 50,
            };
            const isInside =
              here.x >= (x[0] ?? 0) &&
              here.x <= (x[1] ?? 0) &&
              here.y >= (y[0] ?? 0) &&
              here.y <= (y[1] ?? 0);
            expect(isInside).toBe(false);
          }
        }
      }),
    );
  });
});
