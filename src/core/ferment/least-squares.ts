/** Non-linear least squares by Levenberg and Marquardt, for a handful of parameters. */

/** Numbers of mixed meaning: the parameters of a curve, in its own order. */
export type Parameters = readonly number[];
type Curve = (parameters: Parameters, x: number) => number;
type Point = { readonly x: number; readonly value: number };

export type Fit = {
  readonly parameters: Parameters;
  /** The least sum of squared residuals. */
  readonly least: number;
  /** One standard deviation of each parameter; null with no more points than parameters, or where one is not determined. */
  readonly deviations: Parameters | null;
};

const ROUNDS = 500;
/** A gain in the sum below this share of it is noise. */
const SETTLED = 1e-13;
/** Best step of a central difference: the cube root of the last bit. */
const NUDGE = 2 ** -17;

/**
 * The parameters at which a curve lies nearest to points, and how well each is known.
 *
 * Formula: damped normal equations (J'J + lambda diag J'J) step = J'r; J by central differences; deviations from
 * sqrt(diag (J'J)^-1 x squares / (n - p)).
 * Units: those of the curve. Valid: a start near enough that the squares fall all the way down to the least; a flat curve is given
 * back as it is.
 * Source: Marquardt, D. W., J. SIAM 11 (1963) 431 (from memory, high confidence); held in the tests against NIST's certified values.
 * @throws RangeError unless there are points, and the curve is finite at the start.
 * @example leastSquares({ curve: ([slope = 0], x) => slope * x, points: [{ x: 1, value: 2 }, { x: 2, value: 4 }], start: [1] }).parameters // => [2]
 */
export function leastSquares({
  curve,
  points,
  start,
}: {
  curve: Curve;
  points: readonly Point[];
  start: Parameters;
}): Fit {
  const sumAt = (parameters: Parameters): number =>
    points.reduce((sum, { x, value }) => sum + (value - curve(parameters, x)) ** 2, 0);
  let parameters = [...start];
  let least = sumAt(parameters);
  if (!(points.length > 0 && Number.isFinite(least)))
    throw new RangeError(`leastSquares: start requires a finite curve at points, got ${least}`);
  let damping = 1e-3;
  for (let round = 0; round < ROUNDS && damping < 1e16; round++) {
    const { normal, gradient } = normalEquations({ curve, points, parameters });
    const damped = normal.map((row, at) => row.map((value, k) => (k === at ? value * (1 + damping) : value)));
    const step = solve(damped, gradient);
    const next = step?.map((value, at) => (parameters[at] ?? 0) + value) ?? [];
    const nextLeast = step ? sumAt(next) : Number.NaN;
    if (nextLeast < least) {
      const isSettled = least - nextLeast <= SETTLED * least;
      parameters = next;
      least = nextLeast;
      if (isSettled) break;
      damping = Math.max(damping / 10, 1e-12);
    } else damping *= 10;
  }
  return { parameters, least, deviations: deviationsOf({ curve, points, parameters, least }) };
}

function normalEquations({
  curve,
  points,
  parameters,
}: {
  curve: Curve;
  points: readonly Point[];
  parameters: Parameters;
}): { normal: Parameters[]; gradient: Parameters } {
  const normal = parameters.map(() => parameters.map(() => 0));
  const gradient = parameters.map(() => 0);
  for (const { x, value } of points) {
    const slopes = parameters.map((parameter, at) => {
      const nudge = NUDGE * Math.max(Math.abs(parameter), 1e-6);
      const moved = (tilt: number): number =>
        curve(
          parameters.map((each, k) => (k === at ? each + tilt : each)),
          x,
        );
      return (moved(nudge) - moved(-nudge)) / (2 * nudge);
    });
    const miss = value - curve(parameters, x);
    for (const [at, slope] of slopes.entries()) {
      gradient[at] = (gradient[at] ?? 0) + slope * miss;
      const row = normal[at] ?? [];
      for (const [k, other] of slopes.entries()) row[k] = (row[k] ?? 0) + slope * other;
    }
  }
  return { normal, gradient };
}

/** Gauss with the greatest pivot, on rows scaled by their diagonal; null where the equations do not determine the answer. */
function solve(matrix: readonly Parameters[], right: Parameters): Parameters | null {
  const scale = matrix.map((row, at) => Math.sqrt(Math.abs(row[at] ?? 0)) || 1);
  const rows = matrix.map((row, at) => [
    ...row.map((value, k) => value / ((scale[at] ?? 1) * (scale[k] ?? 1))),
    (right[at] ?? 0) / (scale[at] ?? 1),
  ]);
  for (let at = 0; at < rows.length; at++) {
    const below = rows.slice(at).map((row) => Math.abs(row[at] ?? 0));
    const pivotAt = at + below.indexOf(Math.max(...below));
    const pivot = rows[pivotAt] ?? [];
    if (!(Math.abs(pivot[at] ?? 0) > 1e-14)) return null;
    [rows[at], rows[pivotAt]] = [pivot, rows[at] ?? []];
    for (const [k, row] of rows.entries()) {
      if (k === at) continue;
      const share = (row[at] ?? 0) / (pivot[at] ?? 1);
      for (let column = at; column < row.length; column++)
        row[column] = (row[column] ?? 0) - share * (pivot[column] ?? 0);
    }
  }
  return rows.map((row, at) => (row.at(-1) ?? 0) / (row[at] ?? 1) / (scale[at] ?? 1));
}

function deviationsOf({
  curve,
  points,
  parameters,
  least,
}: {
  curve: Curve;
  points: readonly Point[];
  parameters: Parameters;
  least: number;
}): Parameters | null {
  const spare = points.length - parameters.length;
  if (spare <= 0) return null;
  const { normal } = normalEquations({ curve, points, parameters });
  const deviations = parameters.map((_, at) => {
    const column = solve(
      normal,
      parameters.map((__, k) => (k === at ? 1 : 0)),
    );
    return column ? Math.sqrt(((column[at] ?? 0) * least) / spare) : Number.NaN;
  });
  return deviations.every(Number.isFinite) ? deviations : null;
}
