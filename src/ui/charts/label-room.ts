/** Where the words of a line across fit beside it without lying on a curve. Pure. */
import { axisEnds, type ChartModel, type ChartPoint, type ChartSeries } from './chart-model.ts';

export type LabelPlace = { readonly left: boolean; readonly below: boolean };

/** A small phone's chart within its axes; on a wider one the words take a smaller share. */
const PLOT = { widthPx: 228, heightPx: 196 };
/** Bold words of the chart's size, the gap to the line, and a ring's half. */
const LETTER_PX = 7.6;
const EDGE_PX = 10;
const HEIGHT_PX = 23;
const RING_PX = 7;
/** To the right, above the line, where nothing speaks against it. */
const PLACES: readonly LabelPlace[] = [
  { left: false, below: false },
  { left: false, below: true },
  { left: true, below: true },
  { left: true, below: false },
];

type Rest = Pick<ChartModel, 'xTicks' | 'yTicks' | 'series'>;

/** A line across whose words lie on no reading and no curve; where they would, they stand below the chart. */
export function lineAcross(line: { id: string; y: number; text: string }, rest: Rest): ChartSeries {
  return { kind: 'limit', ...line, ...(labelPlace(line, rest) ?? { beside: true }) };
}

type Box = { readonly x0: number; readonly x1: number; readonly y0: number; readonly y1: number };

/** The first of four places in which the words of a line at `y` lie on no reading and no curve; null where there is none. */
export function labelPlace(
  { text, y }: { text: string; y: number },
  { xTicks, yTicks, series }: Rest,
): LabelPlace | null {
  const [[left, right], [low, high]] = [axisEnds(xTicks), axisEnds(yTicks)];
  const atPx = (point: ChartPoint): ChartPoint => ({
    x: ((point.x - left) / (right - left)) * PLOT.widthPx,
    y: ((point.y - low) / (high - low)) * PLOT.heightPx,
  });
  const curves = series.flatMap((each) =>
    'points' in each && each.kind !== 'window'
      ? [{ points: each.points.map(atPx), isLine: each.kind !== 'doubted' }]
      : [],
  );
  const linePx = atPx({ x: left, y }).y;
  const wide = text.length * LETTER_PX + EDGE_PX;
  if (wide > PLOT.widthPx) return null;
  const isFree = (place: LabelPlace): boolean => {
    const x0 = place.left ? 0 : PLOT.widthPx - wide;
    const y0 = place.below ? linePx - HEIGHT_PX : linePx;
    if (y0 < 0 || y0 + HEIGHT_PX > PLOT.heightPx) return false;
    const box = { x0: x0 - RING_PX, x1: x0 + wide + RING_PX, y0: y0 - RING_PX, y1: y0 + HEIGHT_PX + RING_PX };
    return curves.every(({ points, isLine }) =>
      points.every((point, at) => !meets(box, point, isLine ? (points[at + 1] ?? point) : point)),
    );
  };
  return PLACES.find(isFree) ?? null;
}

/** Whether the stretch from one point to the next goes through the box. */
function meets({ x0, x1, y0, y1 }: Box, from: ChartPoint, to: ChartPoint): boolean {
  const [first, last] = from.x <= to.x ? [from, to] : [to, from];
  const [begin, end] = [Math.max(x0, first.x), Math.min(x1, last.x)];
  if (begin > end) return false;
  const slope = last.x === first.x ? 0 : (last.y - first.y) / (last.x - first.x);
  const heights = [begin, end].map((x) => first.y + slope * (x - first.x));
  const [least, most] =
    last.x === first.x
      ? [Math.min(first.y, last.y), Math.max(first.y, last.y)]
      : [Math.min(...heights), Math.max(...heights)];
  return most >= y0 && least <= y1;
}
