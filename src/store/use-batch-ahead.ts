import { useMemo } from 'react';
import type { Batch } from '#record/batch.ts';
import { chamberAir } from '#record/chamber-air.ts';
import { knownAir } from '#record/drying-air.ts';
import type { BatchAhead } from '#record/drying-batch.ts';
import type { SubjectId } from '#record/subject.ts';
import { useBatches, useChecks, useTouching } from './live.ts';
import { useDrying } from './use-drying.ts';

const HOUR_MS = 3_600_000;
const LAST_BATCHES = 5;
/** No chamber has this id: what is asked for while the batch hangs nowhere. */
const NOWHERE: SubjectId = 'chamber:0';

/**
 * What is expected of a batch, worked out by another thread: anew after each entry and each hour, since it moves by days.
 * `ahead` null while it is not there, or where nothing can be expected.
 */
export function useBatchAhead(batch: Batch | null, nowMs: number) {
  const chamber = batch?.hung?.body.chamber ?? NOWHERE;
  const entries = useTouching(chamber);
  const batches = useBatches();
  const checks = useChecks();
  const hourMs = Math.ceil(nowMs / HOUR_MS) * HOUR_MS;
  const known = useMemo(() => {
    if (!entries || !batches || !checks) return null;
    const finished = batches
      .filter(({ stage, hung }) => stage === 'finished' && hung?.body.chamber === chamber)
      .slice(0, LAST_BATCHES);
    return { air: knownAir(chamberAir(chamber, entries, checks)), finished };
  }, [entries, batches, checks, chamber]);
  const task = useMemo(
    () =>
      batch?.hung && known
        ? {
            sum: 'batch' as const,
            given: {
              batch,
              air: known.air,
              others: known.finished.filter(({ id }) => id !== batch.id),
              nowMs: hourMs,
            },
          }
        : null,
    [batch, known, hourMs],
  );
  const scoring = useMemo(
    () =>
      known && known.finished.length > 0
        ? { sum: 'score' as const, given: known.finished.map((each) => ({ batch: each, air: known.air })) }
        : null,
    [known],
  );
  const told = useDrying(task);
  const score = useDrying(scoring);
  const isOf = told.of?.given.batch.id === batch?.id;
  const ahead: BatchAhead | null = isOf ? told.answer : null;
  return { ahead, working: told.working, failed: told.problem !== null, score: score.answer };
}
