import { useMemo } from 'react';
import { type ClockSide, clockDoubts, doubted } from '#record/clock-steps.ts';
import type { EntryId } from '#record/entry.ts';
import { useAllEntries } from './live.ts';

const MINUTE_MS = 60_000;

/** Every entry that a wrong clock may have written and that is not put right: only the whole book tells. */
export function useDoubted(nowMs: number): ReadonlyMap<EntryId, ClockSide> | undefined {
  const entries = useAllEntries();
  const minuteMs = Math.floor(nowMs / MINUTE_MS) * MINUTE_MS;
  return useMemo(
    () => (entries ? doubted(entries, clockDoubts(entries, minuteMs)) : undefined),
    [entries, minuteMs],
  );
}
