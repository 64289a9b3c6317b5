import { median } from '#core/median.ts';

/** A window that was given once, and what came of it. Days from any one start, the same for all its numbers. */
export type PastWindow = {
  readonly p10Days: number;
  readonly p50Days: number;
  /** `null`: the window was open. */
  readonly p90Days: number | null;
  readonly reachedDays: number;
};

export type WindowScore = {
  readonly count: number;
  /** How many of them held; 80 % should. */
  readonly heldFraction: number;
  /** Half of the middle days were off by less than this part of the time it took. */
  readonly medianErrorFraction: number;
  /** Width in days plus ten times what it missed by, of the closed windows; smaller is better. */
  readonly meanIntervalScoreDays: number | null;
};

/**
 * How a maker's past windows did. The wrong tool for few: under a dozen, four in five is not to be told from chance.
 * `null` for none.
 *
 * Interval score at 80 %: (u - l) + 10 (l - x) below, + 10 (x - u) above.
 * Units: days.
 * Source: Gneiting, T. & Raftery, A., J. Am. Stat. Assoc. 102 (2007) 359, eq. 43, number from memory, medium confidence.
 * @throws RangeError if a number of days is not above zero.
 * @example scoreWindows([{ p10Days: 20, p50Days: 25, p90Days: 30, reachedDays: 32 }]) // => { count: 1, heldFraction: 0, medianErrorFraction: 0.21875, meanIntervalScoreDays: 30 }
 */
export function scoreWindows(windows: readonly PastWindow[]): WindowScore | null {
  for (const { p10Days, p50Days, p90Days, reachedDays } of windows)
    if (!(p10Days > 0 && p50Days >= p10Days && (p90Days ?? Infinity) >= p50Days && reachedDays > 0))
      throw new RangeError(
        `scoreWindows: windows require ascending days above 0, got ${p10Days}, ${p50Days}`,
      );
  if (windows.length === 0) return null;
  const scores = windows.flatMap(({ p10Days, p90Days, reachedDays }) =>
    p90Days === null
      ? []
      : [
          p90Days -
            p10Days +
            10 * Math.max(0, p10Days - reachedDays) +
            10 * Math.max(0, reachedDays - p90Days),
        ],
  );
  const held = windows.filter(
    ({ p10Days, p90Days, reachedDays }) => reachedDays >= p10Days && reachedDays <= (p90Days ?? Infinity),
  );
  return {
    count: windows.length,
    heldFraction: held.length / windows.length,
    medianErrorFraction: median(
      windows.map(({ p50Days, reachedDays }) => Math.abs(p50Days / reachedDays - 1)),
    ),
    meanIntervalScoreDays:
      scores.length > 0 ? scores.reduce((sum, score) => sum + score, 0) / scores.length : null,
  };
}
