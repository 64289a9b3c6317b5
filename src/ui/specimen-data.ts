/** Invented figures for the specimen page. Nothing here was measured. */
import type { ChartModel } from './charts/chart-model.ts';
import type { RailPiece } from './drawings/RailDrawing.tsx';
import type { WorkingText } from './Working.tsx';

const PIECES: readonly (readonly [lossFraction: number, toGo: string, lengthMm: number])[] = [
  [0.38, '0 g', 310],
  [0.37, '9 g', 330],
  [0.385, '0 g', 320],
  [0.37, '7 g', 335],
  [0.36, '16 g', 325],
  [0.27, '112 g', 315],
  [0.355, '19 g', 300],
];

export const RAIL: readonly RailPiece[] = PIECES.map(([lossFraction, toGo, lengthMm], at) => ({
  id: String(at),
  number: String(at + 1),
  toGo,
  lossFraction,
  targetFraction: 0.38,
  lengthMm,
  diameterMm: 55,
  seed: at + 1,
  outlier: at === 5,
  href: '#/specimen',
  label: `Piece ${at + 1}, ${toGo} to go${lossFraction >= 0.38 ? ', at target weight' : ''}`,
  ...(lossFraction >= 0.38 ? { tag: 'at target' } : {}),
}));

export const FULL_RAIL: readonly RailPiece[] = Array.from({ length: 24 }, (_, at) => ({
  id: String(at),
  number: String(at + 1),
  toGo: `${(at * 37) % 140} g`,
  lossFraction: at === 11 ? null : 0.1 + 0.012 * at,
  targetFraction: 0.38,
  lengthMm: 180 + ((at * 53) % 200),
  diameterMm: [32, 45, 60, 75][at % 4] ?? 45,
  seed: 100 + at,
  label: `Piece ${at + 1}`,
}));

const days = Array.from({ length: 27 }, (_, at) => at * 2);
const loss = (day: number) => 42 * (1 - Math.exp(-day / 23)) + Math.sin(day) * 0.4;

export const LOSS: ChartModel = {
  xTitle: 'day',
  yTitle: 'loss, % of green weight',
  xTicks: [0, 14, 28, 42, 56, 70].map((at) => ({ at, text: String(at) })),
  yTicks: [0, 10, 20, 30, 40].map((at) => ({ at, text: String(at) })),
  series: [
    { kind: 'limit', id: 'target', y: 38, text: 'target 38 %', below: true },
    {
      kind: 'window',
      id: 'window',
      points: [52, 58, 64, 70].map((x) => ({
        x,
        lo: loss(52) + (x - 52) * 0.06,
        hi: loss(52) + (x - 52) * 0.16,
      })),
    },
    { kind: 'piece', id: 'slow', points: days.map((x) => ({ x, y: loss(x) * 0.74 })) },
    { kind: 'piece', id: 'quick', points: days.map((x) => ({ x, y: loss(x) * 1.03 })) },
    { kind: 'measured', id: 'middle', points: days.map((x) => ({ x, y: loss(x) })) },
    {
      kind: 'median',
      id: 'ahead',
      points: [52, 58, 64, 70].map((x) => ({ x, y: loss(52) + (x - 52) * 0.07 })),
    },
  ],
  marks: [{ x: 52, text: 'today, day 52' }],
};

export const PH: ChartModel = {
  xTitle: 'hours',
  yTitle: 'pH',
  xTicks: [0, 8, 16, 24, 32, 40].map((at) => ({ at, text: `${at} h` })),
  yTicks: [4.6, 5, 5.4, 5.8, 6.2].map((at) => ({ at, text: at.toFixed(1) })),
  series: [
    { kind: 'band', id: 'band', lo: 4.9, hi: 5.2, text: 'target band 4.9 to 5.2' },
    { kind: 'limit', id: 'limit', y: 5.3, text: '5.3 stops the clock' },
    {
      kind: 'window',
      id: 'window',
      points: [12, 18, 24, 32, 40].map((x) => ({
        x,
        lo: 4.95 + 0.45 * Math.exp((12 - x) / 5),
        hi: 5.1 + 0.38 * Math.exp((12 - x) / 9),
      })),
    },
    {
      kind: 'measured',
      id: 'read',
      points: [
        { x: 0, y: 5.78 },
        { x: 6, y: 5.7 },
        { x: 12, y: 5.46 },
      ],
    },
    {
      kind: 'median',
      id: 'ahead',
      points: [12, 18, 24, 32, 40].map((x) => ({ x, y: 5.03 + 0.43 * Math.exp((12 - x) / 7) })),
    },
  ],
};

export const WORKING: WorkingText = {
  title: 'Degree-hours',
  equation:
    'Hours above 60 °F, each counted by how many degrees above, added up until the pH is 5.3 or lower.',
  rows: [
    { label: 'chamber', value: '74.1 °F', note: 'mean of 4 readings' },
    { label: 'time', value: '12 h 34 min' },
  ],
  result: { label: 'degree-hours', value: '178' },
  limit: { label: 'limit', value: '1200', note: 'below 90 °F' },
  caution: 'Degree-hours speak of one hazard only.',
  sources: [{ text: 'Invented source, table 1', standing: 'specimen only' }],
  words: { close: 'Close', numbers: 'your numbers', limit: 'limit', sources: 'where it was published' },
};
