import { describe, expect, it } from 'vitest';
import {
  axisEnds,
  type ChartSeries,
  chartRows,
  chartWords,
  MAX_POINTS,
  thinRows,
} from '#ui/charts/chart-model.ts';

const measured: ChartSeries = {
  kind: 'measured',
  id: 'read',
  points: [
    { x: 6, y: 5.6 },
    { x: 0, y: 5.8 },
  ],
};
const ahead: ChartSeries = {
  kind: 'window',
  id: 'ahead',
  points: [
    { x: 6, lo: 5.5, hi: 5.7 },
    { x: 12, lo: 5.2, hi: 5.5 },
  ],
};
const limit: ChartSeries = { kind: 'limit', id: 'limit', y: 5.3, text: '5.3 stops the clock' };

describe('the rows of a chart', () => {
  it('stand in order, series beside each other, with nothing where nothing was read', () => {
    expect(chartRows([measured, ahead, limit])).toEqual([
      { x: 0, read: 5.8 },
      { x: 6, read: 5.6, ahead: [5.5, 5.7] },
      { x: 12, ahead: [5.2, 5.5] },
    ]);
  });

  it('refuse more points than an old phone draws in time', () => {
    const points = Array.from({ length: MAX_POINTS + 1 }, (_, x) => ({ x, y: 0 }));
    expect(() => chartRows([{ kind: 'piece', id: 'p', points }])).toThrow(RangeError);
    expect(() => chartRows([{ kind: 'measured', id: 'p', points }])).toThrow(RangeError);
    expect(chartRows([{ kind: 'measured', id: 'p', points: points.slice(1) }])).toHaveLength(MAX_POINTS);
  });
});

it('thin lines are one line with gaps between them, and no rows of their own', () => {
  const piece = (id: string, y: number): ChartSeries => ({
    kind: 'piece',
    id,
    points: [
      { x: 0, y: 0 },
      { x: 4, y },
    ],
  });
  const series = [piece('a', 7), measured, piece('b', 9)];
  expect(thinRows(series)).toEqual([
    { x: 0, y: 0 },
    { x: 4, y: 7 },
    { x: 4, y: null },
    { x: 0, y: 0 },
    { x: 4, y: 9 },
    { x: 4, y: null },
  ]);
  expect(chartRows(series)).toEqual(chartRows([measured]));
});

it('an axis runs from its first tick to its last', () => {
  const ticks = [0, 14, 28].map((at) => ({ at, text: String(at) }));
  expect(axisEnds(ticks)).toEqual([0, 28]);
});

it('the words in a picture are its limits, bands and marks', () => {
  expect(chartWords({ series: [measured, limit], marks: [{ x: 3, text: 'today' }] })).toEqual([
    '5.3 stops the clock',
    'today',
  ]);
});
