/**
 * When the pieces of a batch are to be weighed. Common practice: on hanging, daily in the first week, then weekly. Half a day after
 * hanging stands beside it, since the first hours show most of how hard the air draws at the rim (own simulation; no published rule).
 */
const DAY_MS = 86_400_000;

/** Days after hanging; from the last of them on weekly. */
export const ROUND_DAYS: readonly number[] = [0, 0.5, 1, 2, 3, 4, 5, 6];
export const WEEKLY_DAYS = 7;
/** So long before hanging a weighing still counts as the one on hanging. */
const ON_HANGING_DAYS = 0.5;

/**
 * When the round after the last one is due. A weighing stands for the day of the list that it is nearest to: one that comes early
 * counts, one that comes late moves nothing, and what was not done in the first week is over with it.
 */
export function nextRound({
  hungMs,
  lastMs,
  nowMs,
}: {
  hungMs: number;
  /** Null before the first. */
  lastMs: number | null;
  nowMs: number;
}): { readonly atMs: number; readonly isHalfDay: boolean } {
  if (lastMs === null) return { atMs: hungMs, isHalfDay: false };
  const lastDay = (lastMs - hungMs) / DAY_MS;
  const at = ROUND_DAYS.findIndex(
    (day, index) => lastDay < (day + (ROUND_DAYS[index - 1] ?? -2 * ON_HANGING_DAYS - day)) / 2,
  );
  const day = ROUND_DAYS[at];
  return day === undefined || nowMs >= hungMs + WEEKLY_DAYS * DAY_MS
    ? { atMs: lastMs + WEEKLY_DAYS * DAY_MS, isHalfDay: false }
    : { atMs: hungMs + day * DAY_MS, isHalfDay: at === 1 };
}
