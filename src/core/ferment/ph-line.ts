/** Shapes that pH falls by, on a clock of warm hours, and the one that lies nearest to readings. */
import { leastSquares, type Parameters } from './least-squares.ts';

export type PhShape = 'steady' | 'exponential' | 'logistic';

/** `lagHours`: until the fall sets in. `halfHours`: from there until half of it is done. In warm hours (at 24 °C). */
export type PhPace = { readonly shape: PhShape; readonly lagHours: number; readonly halfHours: number };

/** The fall of one ferment: from `startPh` by `dropPh` in the end. */
export type PhLine = PhPace & { readonly startPh: number; readonly dropPh: number };

/**
 * The share of the whole fall that is still to come: 1 at stuffing, towards 0.
 *
 * Formula: steady after a lag: 1 - (t - lag) / (2 half), within 0 to 1; exponential after a lag: 2^(-(t - lag) / half), 1 before; logistic: 1 / (1 + e^(2 (t - lag - half) / half)), over its value
 * at 0, so that its steepest tangent leaves the start at the lag.
 * Units: warm hours. Valid: halfHours > 0; a lag below 0 is for fitting only.
 * Source: exponential and logistic are the usual shapes for acidification (from memory, high confidence); steady is acid made at one rate
 * until the sugar is gone; this form of the logistic: derived.
 * @throws RangeError unless halfHours > 0.
 * @example phLeft({ shape: 'exponential', lagHours: 4, halfHours: 10 }, 14) // => 0.5
 */
export function phLeft({ shape, lagHours, halfHours }: PhPace, warmHours: number): number {
  if (!(halfHours > 0)) throw new RangeError(`phLeft: halfHours requires a number > 0, got ${halfHours}`);
  if (shape === 'exponential') return warmHours <= lagHours ? 1 : 2 ** (-(warmHours - lagHours) / halfHours);
  if (shape === 'steady') return Math.min(1, Math.max(0, 1 - (warmHours - lagHours) / (2 * halfHours)));
  const at = (hours: number): number => 1 / (1 + Math.exp((2 * (hours - lagHours - halfHours)) / halfHours));
  return at(warmHours) / at(0);
}

/**
 * pH on a line at a time.
 *
 * Formula: start - drop x (1 - phLeft). Units: pH; warm hours. Valid: as phLeft.
 * Source: as phLeft.
 * @throws RangeError unless halfHours > 0.
 * @example phOnLine({ shape: 'exponential', lagHours: 4, halfHours: 10, startPh: 5.8, dropPh: 0.8 }, 14) // => 5.4
 */
export function phOnLine(line: PhLine, warmHours: number): number {
  return line.startPh - line.dropPh * (1 - phLeft(line, warmHours));
}

/** Where the search sets out from, as shares of the time that was read. */
const LAG_SHARES = [0, 0.05, 0.15, 0.35] as const;
const HALF_SHARES = [0.08, 0.2, 0.5] as const;

/**
 * The line of one shape that lies nearest to the readings of a finished ferment, for comparing batches and for a maker's own pace. Not
 * for looking ahead with a few readings: the forecast is.
 *
 * Formula: least squares of start, drop, lag and half time, from twelve starts; the best is kept.
 * Units: warm hours (or plain hours in a room of one temperature); pH.
 * Valid: five readings and more; null with fewer, or where none of the starts leads to a fall.
 * Source: derived; the least squares hold NIST's certified values.
 * @throws RangeError unless the readings are finite numbers.
 * @example fitPhLine({ shape: 'logistic', readings: [{ warmHours: 0, ph: 5.8 }] }) // => null
 */
export function fitPhLine({
  shape,
  readings,
}: {
  shape: PhShape;
  readings: readonly { readonly warmHours: number; readonly ph: number }[];
}): (PhLine & { readonly rmsePh: number }) | null {
  const points = readings.map(({ warmHours, ph }) => ({ x: warmHours, value: ph }));
  const [first, last] = [points[0], points.at(-1)];
  if (points.length < 5 || first === undefined || last === undefined) return null;
  const spanHours = last.x - first.x;
  // A half time beyond what a number can hold is no line at all, and so no better fit.
  const curve = ([startPh = 0, dropPh = 0, lagHours = 0, lnHalf = 0]: Parameters, x: number): number => {
    const halfHours = Math.exp(lnHalf);
    if (!(halfHours > 0)) return Number.NaN;
    return phOnLine({ shape, startPh, dropPh, lagHours, halfHours }, x);
  };
  const fits = LAG_SHARES.flatMap((lagShare) =>
    HALF_SHARES.map((halfShare) => {
      const start = [
        first.value,
        first.value - last.value,
        lagShare * spanHours,
        Math.log(halfShare * spanHours),
      ];
      return leastSquares({ curve, points, start });
    }),
  );
  const best = fits.reduce((nearest, fit) => (fit.least < nearest.least ? fit : nearest));
  const [startPh = 0, dropPh = 0, lagHours = 0, lnHalf = 0] = best.parameters;
  if (!(dropPh > 0)) return null;
  return {
    shape,
    startPh,
    dropPh,
    lagHours,
    halfHours: Math.exp(lnHalf),
    rmsePh: Math.sqrt(best.least / points.length),
  };
}
