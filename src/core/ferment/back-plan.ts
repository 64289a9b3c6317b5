/** Things that take time and must all be done by one moment, planned backwards from it. */

export type BackTask = { readonly id: string; readonly durationMinutes: number };

/** What runs up to stuffing: common practice; the pack of a culture or mould comes first. */
export const BEFORE_STUFFING: readonly BackTask[] = [
  { id: 'mould', durationMinutes: 300 },
  { id: 'casings', durationMinutes: 120 },
  { id: 'culture', durationMinutes: 30 },
];

export type PlannedTask = BackTask & {
  readonly startAtMs: number;
  /** Started now it would not be done in time; `lateMinutes` says by how much. */
  readonly isLate: boolean;
  readonly lateMinutes: number;
};

/**
 * When to start each task so that all are done at one moment, the earliest first. Times, not counters: they hold through a closed app.
 *
 * Formula: start = finish - duration. Units: min; epoch ms. Valid: durations of 0 and more.
 * Source: derived; the durations of BEFORE_STUFFING are common practice.
 * @throws RangeError unless each durationMinutes >= 0 and the times are finite.
 * @example backPlan({ finishAtMs: 7200000, tasks: [{ id: 'culture', durationMinutes: 30 }], nowMs: 0 })[0]?.startAtMs // => 5400000
 */
export function backPlan({
  finishAtMs,
  tasks,
  nowMs,
}: {
  finishAtMs: number;
  tasks: readonly BackTask[];
  nowMs: number;
}): PlannedTask[] {
  if (!Number.isFinite(finishAtMs) || !Number.isFinite(nowMs))
    throw new RangeError(
      `backPlan: finishAtMs and nowMs requires finite numbers, got ${finishAtMs}, ${nowMs}`,
    );
  return tasks
    .map((task) => {
      if (!(task.durationMinutes >= 0 && Number.isFinite(task.durationMinutes)))
        throw new RangeError(`backPlan: durationMinutes requires a number >= 0, got ${task.durationMinutes}`);
      const startAtMs = finishAtMs - task.durationMinutes * 60_000;
      const lateMinutes = Math.max(0, (nowMs - startAtMs) / 60_000);
      return { ...task, startAtMs, isLate: lateMinutes > 0, lateMinutes };
    })
    .sort((a, b) => a.startAtMs - b.startAtMs);
}
