import type { Entry } from './entry.ts';

/** Where a device wrote an entry at an earlier time than the one before it: its clock was wrong on one side of the step. */
export type ClockStep = {
  readonly entry: Entry;
  readonly before: Entry;
  readonly backMs: number;
};

const SLACK_MS = 2 * 60_000;

/** Never a reason to refuse an entry: it is flagged, and put right by an entry of its own. */
export function clockSteps(entries: readonly Entry[]): ClockStep[] {
  const ordered = [...entries].sort((a, b) =>
    a.device < b.device ? -1 : a.device > b.device ? 1 : a.seq - b.seq,
  );
  return ordered.flatMap((entry, index) => {
    const before = ordered[index - 1];
    if (!before || before.device !== entry.device) return [];
    const backMs = before.writtenAtMs - entry.writtenAtMs;
    return backMs > SLACK_MS ? [{ entry, before, backMs }] : [];
  });
}
