/** What a chamber's air did over time. Between two readings a straight line is drawn, across a gap none; no verdict rests on it. */

export type AirPoint = { readonly atMs: number; readonly airC: number; readonly rhPct: number | null };
export type Sample = { readonly atMs: number; readonly value: number };

export type BandHours = {
  readonly belowHours: number;
  readonly inHours: number;
  readonly aboveHours: number;
  /** Between readings too far apart to say. */
  readonly unknownHours: number;
};

const HOUR_MS = 3_600_000;

/**
 * How long a value stood below, in and above a band.
 * The wrong tool for degree-hours: those are summed from readings by their own rules.
 *
 * Straight lines between neighbours no more than `gapHours` apart, cut where they cross the band.
 * Units: epoch ms; value and band in one unit; result hours.
 * Source: definition.
 * @throws RangeError unless low <= high, gapHours > 0 and the samples are in order of time.
 * @example bandHours([{ atMs: 0, value: 10 }, { atMs: 36000000, value: 20 }], { low: 12, high: 16, gapHours: 12 }) // => { belowHours: 2, inHours: 4, aboveHours: 4, unknownHours: 0 }
 */
export function bandHours(
  samples: readonly Sample[],
  { low, high, gapHours }: { low: number; high: number; gapHours: number },
): BandHours {
  if (!(low <= high)) throw new RangeError(`bandHours: low requires low <= high, got ${low} and ${high}`);
  if (!(gapHours > 0)) throw new RangeError(`bandHours: gapHours requires more than 0, got ${gapHours}`);
  const sum = { belowHours: 0, inHours: 0, aboveHours: 0, unknownHours: 0 };
  for (const [from, to] of neighbours('bandHours', samples)) {
    const hours = (to.atMs - from.atMs) / HOUR_MS;
    if (hours > gapHours) {
      sum.unknownHours += hours;
      continue;
    }
    const below = hours * shareBelow(from.value, to.value, low);
    const above = hours * shareBelow(-from.value, -to.value, -high);
    sum.belowHours += below;
    sum.aboveHours += above;
    sum.inHours += hours - below - above;
  }
  return sum;
}

/**
 * The widest swing within so many hours: how far the highest and the lowest reading of any such window lie apart.
 *
 * Units: that of the value.
 * Source: definition.
 * @throws RangeError unless hours > 0 and the samples are in order of time.
 * @example widestSwing([{ atMs: 0, value: 12 }, { atMs: 3600000, value: 14 }, { atMs: 360000000, value: 20 }], { hours: 24 }) // => 2
 */
export function widestSwing(samples: readonly Sample[], { hours }: { hours: number }): number {
  if (!(hours > 0)) throw new RangeError(`widestSwing: hours requires more than 0, got ${hours}`);
  neighbours('widestSwing', samples);
  const high = windowHighs(samples, hours * HOUR_MS);
  const low = windowHighs(
    samples.map(({ atMs, value }) => ({ atMs, value: -value })),
    hours * HOUR_MS,
  );
  return Math.max(0, ...high.map((value, at) => value + (low[at] ?? 0)));
}

/** Steeper than this the air did not change: somebody opened the door. */
const OPEN_DROP_PCT = 5;
const OPEN_MINUTES = 10;
const REST_MINUTES = 20;
const SEEN_EVERY_MINUTES = 10;

/**
 * When the door seems to have been opened: the humidity fell by 5 points or more within 10 minutes. An estimate.
 * The wrong tool for a logger that reads more rarely than every 10 minutes: it answers null, for it cannot see it.
 *
 * Units: epoch ms, % relative humidity.
 * Source: own rule of thumb for a small chamber; no published value.
 * @throws RangeError if the samples are not in order of time.
 * @example doorOpenings([{ atMs: 0, value: 80 }, { atMs: 300000, value: 80 }, { atMs: 600000, value: 71 }, { atMs: 900000, value: 70 }]) // => [600000]
 * @example doorOpenings([{ atMs: 0, value: 80 }, { atMs: 3600000, value: 70 }]) // => null
 */
export function doorOpenings(samples: readonly Sample[]): number[] | null {
  const steps = neighbours('doorOpenings', samples)
    .map(([from, to]) => to.atMs - from.atMs)
    .sort((a, b) => a - b);
  const usualMs = steps[Math.floor(steps.length / 2)];
  if (usualMs === undefined || usualMs > SEEN_EVERY_MINUTES * 60_000) return null;
  const openedMs: number[] = [];
  const highs = windowHighs(samples, OPEN_MINUTES * 60_000);
  for (const [at, { atMs, value }] of samples.entries()) {
    const dropped = (highs[at] ?? value) - value >= OPEN_DROP_PCT;
    const last = openedMs.at(-1);
    if (dropped && (last === undefined || atMs - last > REST_MINUTES * 60_000)) openedMs.push(atMs);
  }
  return openedMs;
}

/** The highest value of the window that ends with each sample. */
function windowHighs(samples: readonly Sample[], windowMs: number): number[] {
  const falling: Sample[] = [];
  let first = 0;
  return samples.map((sample) => {
    while (falling.length > first && (falling.at(-1)?.value ?? sample.value) <= sample.value) falling.pop();
    falling.push(sample);
    while ((falling[first]?.atMs ?? sample.atMs) < sample.atMs - windowMs) first += 1;
    return falling[first]?.value ?? sample.value;
  });
}

/** Of a straight line from x to z, the part that lies below a level. */
function shareBelow(x: number, z: number, level: number): number {
  if (x === z) return x < level ? 1 : 0;
  const share = Math.min(1, Math.max(0, (level - x) / (z - x)));
  return x < z ? share : 1 - share;
}

function neighbours(functionName: string, samples: readonly Sample[]): [Sample, Sample][] {
  return samples.slice(1).map((to, at) => {
    const from = samples[at] ?? to;
    if (!(to.atMs >= from.atMs) || !Number.isFinite(to.value) || !Number.isFinite(from.value))
      throw new RangeError(
        `${functionName}: samples requires order of time, got ${to.atMs} after ${from.atMs}`,
      );
    return [from, to];
  });
}
