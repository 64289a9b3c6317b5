import { xy } from './round.ts';

export type SparkPoint = { x: number; y: number };

/** A line through points, stretched to fill a box; y points up. A flat line lies in the middle. */
export function sparkPath({
  points,
  width,
  height,
}: {
  points: readonly SparkPoint[];
  width: number;
  height: number;
}): { line: string; end: string } {
  const along = spread(points.map(({ x }) => x));
  const up = spread(points.map(({ y }) => y));
  const spots = points.map(({ x, y }) => xy(along(x) * width, (1 - up(y)) * height));
  return { line: spots.length > 0 ? `M${spots.join('L')}` : '', end: spots.at(-1) ?? '' };
}

function spread(values: readonly number[]): (value: number) => number {
  const least = Math.min(...values);
  const range = Math.max(...values) - least;
  return (value) => (range > 0 ? (value - least) / range : 0.5);
}
