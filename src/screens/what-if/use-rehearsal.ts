import { useEffect, useMemo, useState } from 'react';
import type { Rehearsal, RehearsalGiven } from '#record/drying-rehearsal.ts';
import { useDrying } from '#store/use-drying.ts';

const STILL_MS = 250;

type Wish = Omit<RehearsalGiven, 'fine' | 'diffusivity13M2PerS'>;
type Told = { readonly answer: Rehearsal | null; readonly problem: string | null };

/**
 * Coarse while a slider moves, fine once it stands still. Each has a thread of its own: a move never waits for the fine run of the
 * one before. What was fitted once is kept.
 */
export function useRehearsal(wish: Wish): Told {
  const [still, setStill] = useState<Wish | null>(null);
  const [fitted, setFitted] = useState<number | null>(null);
  useEffect(() => {
    const timer = setTimeout(() => setStill(wish), STILL_MS);
    return () => clearTimeout(timer);
  }, [wish]);
  const coarse = useDrying(useTask(wish, fitted, false));
  const fineTask = useTask(fitted === null ? null : still, fitted, true);
  const fine = useDrying(fineTask);
  const found = coarse.answer?.diffusivity13M2PerS ?? null;
  useEffect(() => {
    if (found !== null) setFitted((before) => before ?? found);
  }, [found]);
  const isFine = still === wish && fineTask !== null && fine.of === fineTask;
  return { answer: isFine ? fine.answer : coarse.answer, problem: coarse.problem ?? fine.problem };
}

/** The air as it is now, to lay beside what is tried: once, and fine. */
export function useRehearsed(wish: Wish | null): Rehearsal | null {
  return useDrying(useTask(wish, null, true)).answer;
}

function useTask(wish: Wish | null, diffusivity13M2PerS: number | null, fine: boolean) {
  return useMemo(
    () => wish && { sum: 'rehearsal' as const, given: { ...wish, diffusivity13M2PerS, fine } },
    [wish, diffusivity13M2PerS, fine],
  );
}
