import { useEffect, useMemo, useState } from 'react';
import type { AirWish, Rehearsal } from '#record/drying-rehearsal.ts';
import { useDrying } from '#store/use-drying.ts';
import type { Rehearsed } from './what-if-view.ts';

const STILL_MS = 250;

type Told = {
  /** The newest answer: coarse while a slider moves, fine once it stands still. */
  readonly newest: Rehearsed | null;
  /** The last fine one; the newest where that fails. */
  readonly fine: Rehearsed | null;
  readonly problem: string | null;
};

/**
 * Coarse while a slider moves, fine once it stands still. Each has a thread of its own: a move never waits for the fine run of the
 * one before. What was fitted once is kept.
 */
export function useRehearsal(wish: AirWish): Told {
  const [still, setStill] = useState<AirWish | null>(null);
  const [fitted, setFitted] = useState<number | null>(null);
  useEffect(() => {
    const timer = setTimeout(() => setStill(wish), STILL_MS);
    return () => clearTimeout(timer);
  }, [wish]);
  const { rehearsed: coarse, problem: coarseProblem } = useRun(wish, fitted, false);
  const { rehearsed: fine, problem: fineProblem } = useRun(fitted === null ? null : still, fitted, true);
  const found = coarse?.tried.diffusivity13M2PerS ?? null;
  useEffect(() => {
    if (found !== null) setFitted((before) => before ?? found);
  }, [found]);
  const newest = fine !== null && fine.wish === coarse?.wish ? fine : coarse;
  return { newest, fine: fineProblem === null ? fine : newest, problem: coarseProblem ?? fineProblem };
}

/** The air as it is now, to lay beside what is tried: once, and fine. */
export function useRehearsed(wish: AirWish | null): Rehearsal | null {
  return useRun(wish, null, true).rehearsed?.tried ?? null;
}

function useRun(wish: AirWish | null, diffusivity13M2PerS: number | null, fine: boolean) {
  const task = useMemo(
    () => wish && { sum: 'rehearsal' as const, given: { wish, diffusivity13M2PerS, fine } },
    [wish, diffusivity13M2PerS, fine],
  );
  const { answer: tried, of, problem } = useDrying(task, { atOnce: !fine });
  const rehearsed = useMemo(() => tried && of && { wish: of.given.wish, tried }, [tried, of]);
  return { rehearsed, problem };
}
