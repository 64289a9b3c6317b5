/** What readings leave of the lines that a ferment's pH may follow: weights on a grid, exact in between. */
import { normalCdf } from '#core/drying/normal.ts';
import { type PhPace, type PhShape, phLeft } from './ph-line.ts';
import type { PhPrior } from './ph-prior.ts';

/** Lines of one pace: start and drop are normal around their means, with variances and covariance. */
type PaceNode = {
  readonly pace: PhPace;
  readonly chance: number;
  readonly startPh: number;
  readonly dropPh: number;
  /** Variance of the start, covariance, variance of the drop. */
  readonly covariance: readonly [number, number, number];
};
export type PhPosterior = readonly PaceNode[];

export type WarmReading = {
  readonly warmHours: number;
  readonly ph: number;
  readonly method: 'meter' | 'strip';
};

const SHAPES: readonly PhShape[] = ['steady', 'exponential', 'logistic'];
const REACH_SD = 2.5;
const LAG_NODES = 11;
const HALF_NODES = 17;
/** A meter reading around the line: meter, sample and what no such line can follow (tuned on invented ferments). */
const METER_SD_PH = 0.06;
const STRIP_SD_PH = 0.25;
/** An error that all of a meter's readings share, and the line from sample to sausage. */
const SHARED_SD_PH = 0.03;
/** Paces that together make no difference to a window. */
const NEGLIGIBLE = 1e-5;

/**
 * The posterior of the pH line given readings: three shapes, a grid of lags and half times; for each, start and drop in closed form.
 *
 * Formula: pH = start - drop (1 - left); normal prior and error make start and drop normal, and give each pace its weight.
 * Units: warm hours; pH. Valid: readings that are believed, and strips (which count for little); none gives the prior.
 * Source: conjugate normal regression (derived); errors: tuned on invented ferments.
 * @throws RangeError unless the readings are finite numbers.
 * @example phPosterior({ prior: { lagHours: 5, lagSdHours: 2, halfHours: 10, halfSpreadRatio: 0.4, startPh: 5.8, startSdPh: 0.1, dropPh: 0.8, dropSdPh: 0.1 }, readings: [] })[0]?.startPh // => 5.8
 */
export function phPosterior({
  prior,
  readings,
}: {
  prior: PhPrior;
  readings: readonly WarmReading[];
}): PhPosterior {
  for (const { warmHours, ph } of readings)
    if (!Number.isFinite(warmHours) || !Number.isFinite(ph))
      throw new RangeError(`phPosterior: readings requires finite numbers, got ${ph} at ${warmHours}`);
  const paces = SHAPES.flatMap((shape) =>
    steps(LAG_NODES).flatMap((lagZ) =>
      steps(HALF_NODES).map((halfZ) => ({
        pace: {
          shape,
          lagHours: Math.max(0, prior.lagHours + lagZ * prior.lagSdHours),
          halfHours: prior.halfHours * Math.exp(halfZ * prior.halfSpreadRatio),
        },
        level: -(lagZ ** 2 + halfZ ** 2) / 2,
      })),
    ),
  );
  const nodes = paces.map(({ pace, level }) => regress({ pace, level, prior, readings }));
  const highest = Math.max(...nodes.map((node) => node.level));
  const kept = nodes
    .map(({ level, ...node }) => ({ ...node, chance: Math.exp(level - highest) }))
    .filter((node) => node.chance > NEGLIGIBLE);
  const total = kept.reduce((sum, node) => sum + node.chance, 0);
  return kept.map((node) => ({ ...node, chance: node.chance / total }));
}

/** The pH after so many warm hours: a mixture of normal distributions. */
export type PhSpread = readonly { readonly chance: number; readonly ph: number; readonly sdPh: number }[];

/**
 * How the true pH is spread after so many warm hours (Infinity: in the end).
 *
 * Formula: for each pace, start - drop (1 - left) with its standard deviation, and an error that all readings share.
 * Units: warm hours; pH. Valid: as the posterior. Source: derived; the shared error: tuned on invented ferments.
 * @example phSpread([], 9) // => []
 */
export function phSpread(posterior: PhPosterior, warmHours: number): PhSpread {
  return posterior.map(({ pace, chance, startPh, dropPh, covariance }) => {
    const done = 1 - phLeft(pace, warmHours);
    const [startVar, both, dropVar] = covariance;
    const variance = startVar - 2 * done * both + done * done * dropVar + SHARED_SD_PH ** 2;
    return { chance, ph: startPh - done * dropPh, sdPh: Math.sqrt(variance) };
  });
}

/**
 * The chance, 0 to 1, that the true pH lies at or below a value.
 *
 * Formula: sum over paces of weight x normal distribution function. Units: pH. Valid: as the posterior. Source: derived.
 * @example phChance([{ chance: 1, ph: 5.3, sdPh: 0.1 }], 5.3) // => 0.5
 */
export function phChance(spread: PhSpread, value: number): number {
  return spread.reduce((sum, { chance, ph, sdPh }) => sum + chance * normalCdf((value - ph) / sdPh), 0);
}

function steps(count: number): readonly number[] {
  return Array.from({ length: count }, (_, at) => REACH_SD * ((2 * at) / (count - 1) - 1));
}

function regress({
  pace,
  level,
  prior,
  readings,
}: {
  pace: PhPace;
  level: number;
  prior: PhPrior;
  readings: readonly WarmReading[];
}): Omit<PaceNode, 'chance'> & { readonly level: number } {
  const [startTrust, dropTrust] = [prior.startSdPh ** -2, prior.dropSdPh ** -2];
  let [p11, p12, p22] = [startTrust, 0, dropTrust];
  let [b1, b2] = [startTrust * prior.startPh, dropTrust * prior.dropPh];
  let misfit = startTrust * prior.startPh ** 2 + dropTrust * prior.dropPh ** 2;
  for (const { warmHours, ph, method } of readings) {
    const trust = (method === 'meter' ? METER_SD_PH : STRIP_SD_PH) ** -2;
    const done = 1 - phLeft(pace, warmHours);
    p11 += trust;
    p12 -= trust * done;
    p22 += trust * done * done;
    b1 += trust * ph;
    b2 -= trust * done * ph;
    misfit += trust * ph * ph;
  }
  const determinant = p11 * p22 - p12 * p12;
  const startPh = (p22 * b1 - p12 * b2) / determinant;
  const dropPh = (p11 * b2 - p12 * b1) / determinant;
  return {
    pace,
    startPh,
    dropPh,
    covariance: [p22 / determinant, -p12 / determinant, p11 / determinant],
    level: level - (misfit - b1 * startPh - b2 * dropPh) / 2 - Math.log(determinant) / 2,
  };
}
