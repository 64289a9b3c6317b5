/**
 * Where values first pass a level, on a straight line between two of them; `null` if they never do.
 *
 * Units: those of `x`; `level` in those of the values.
 * Source: linear interpolation.
 * @example passes({ x: [0, 10], values: [0, 1], level: 0.5 }) // => 5
 * @example passes({ x: [0, 10], values: [0, 0.4], level: 0.5 }) // => null
 */
export function passes({
  x,
  values,
  level,
}: {
  x: readonly number[];
  values: readonly number[];
  level: number;
}): number | null {
  const at = values.findIndex((value) => value >= level);
  const there = x[at];
  if (there === undefined) return null;
  const [before, low, high] = [x[at - 1], values[at - 1], values[at]];
  if (before === undefined || low === undefined || high === undefined) return there;
  return before + ((there - before) * (level - low)) / (high - low);
}
