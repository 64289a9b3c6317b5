import type { Sample } from './air-series.ts';

/**
 * A long series as few enough samples to draw, with every extreme that the eye would look for.
 * The wrong tool for figures: those are taken from all samples.
 *
 * The samples in `most` / 2 runs of equal length; of each run the lowest and the highest, in order of time.
 * Units: those of the samples.
 * Source: definition.
 * @throws RangeError unless most >= 2.
 * @example thinned([{ atMs: 0, value: 1 }, { atMs: 1, value: 9 }, { atMs: 2, value: 2 }], { most: 2 }) // => [{ atMs: 0, value: 1 }, { atMs: 1, value: 9 }]
 */
export function thinned<S extends Sample>(samples: readonly S[], { most }: { most: number }): readonly S[] {
  if (!(most >= 2)) throw new RangeError(`thinned: most requires 2 or more, got ${most}`);
  if (samples.length <= most) return samples;
  const runs = Math.floor(most / 2);
  return Array.from({ length: runs }, (_, run) => {
    const inRun = samples.slice(
      Math.floor((run * samples.length) / runs),
      Math.floor(((run + 1) * samples.length) / runs),
    );
    const low = inRun.reduce((least, each) => (each.value < least.value ? each : least));
    const high = inRun.reduce((greatest, each) => (each.value > greatest.value ? each : greatest));
    if (low === high) return [low];
    return low.atMs <= high.atMs ? [low, high] : [high, low];
  }).flat();
}
