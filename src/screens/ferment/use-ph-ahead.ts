import { useEffect, useState } from 'react';
import type { Batch } from '#record/batch.ts';
import { fermentFigures, roomSeries } from '#record/ferment-figures.ts';
import { ownPaces } from '#record/own-paces.ts';
import { type PhAhead, phAhead } from '#record/ph-ahead.ts';

const QUARTER_MS = 15 * 60_000;
/** Lets the page draw and answer before the next piece of work. */
const breath = () => new Promise((resolve) => setTimeout(resolve, 0));

/**
 * What lies ahead, from the readings and the maker's own earlier ferments, after the page was drawn: it takes some tens of milliseconds on a desk, more on a phone. Anew after each entry and
 * each quarter of an hour; null while it is not there, or belongs to another state of the batch.
 */
export function usePhAhead(
  batch: Batch | null,
  batches: readonly Batch[] | undefined,
  nowMs: number,
): PhAhead | null {
  const [held, setHeld] = useState<{ batch: Batch; ahead: PhAhead | null } | null>(null);
  const quarterMs = Math.floor(nowMs / QUARTER_MS) * QUARTER_MS;
  const running =
    batch !== null && batch.stuffedAtMs !== null && batch.fermentEnded === null && batch.hung === null;
  useEffect(() => {
    if (!running || batch === null || batches === undefined) return;
    let isCurrent = true;
    const look = async () => {
      await breath();
      const paces = await ownPaces(batches, batch, breath);
      if (!isCurrent) return;
      const lastMs = Math.max(batch.ph.at(-1)?.atMs ?? 0, roomSeries(batch).readings.at(-1)?.atMs ?? 0);
      const atMs = Math.max(quarterMs, lastMs);
      const clock = fermentFigures(batch, atMs);
      setHeld({ batch, ahead: clock && phAhead(batch, clock, atMs, paces) });
    };
    void look();
    return () => {
      isCurrent = false;
    };
  }, [batch, batches, running, quarterMs]);
  return held !== null && held.batch === batch ? held.ahead : null;
}
