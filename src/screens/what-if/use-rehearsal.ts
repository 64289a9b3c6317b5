import { useEffect, useMemo, useState } from 'react';
import type { RehearsalGiven } from '#record/drying-rehearsal.ts';
import { useDrying } from '#store/use-drying.ts';

const STILL_MS = 250;

/** Coarse while a slider moves, fine once it stands still. What was fitted once is kept. */
export function useRehearsal(wish: Omit<RehearsalGiven, 'fine' | 'diffusivity13M2PerS'> | null) {
  const [still, setStill] = useState<typeof wish>(null);
  const [fitted, setFitted] = useState<number | null>(null);
  useEffect(() => {
    const timer = setTimeout(() => setStill(wish), STILL_MS);
    return () => clearTimeout(timer);
  }, [wish]);
  const task = useMemo(
    () =>
      wish && {
        sum: 'rehearsal' as const,
        given: { ...wish, diffusivity13M2PerS: fitted, fine: wish === still },
      },
    [wish, still, fitted],
  );
  const told = useDrying(task);
  const found = told.answer?.diffusivity13M2PerS ?? null;
  useEffect(() => {
    if (found !== null) setFitted(found);
  }, [found]);
  return told;
}
