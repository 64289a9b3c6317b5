import { useEffect, useMemo, useState } from 'react';
import type { Batch } from '#record/batch.ts';
import { chamberAir } from '#record/chamber-air.ts';
import { knownAir } from '#record/drying-air.ts';
import { type BatchAhead, type BatchGiven, batchGiven, LAST_BATCHES } from '#record/drying-batch.ts';
import type { SubjectId } from '#record/subject.ts';
import { useBatches, useChecks, useWorkshop } from './live.ts';
import { useDrying } from './use-drying.ts';

const HOUR_MS = 3_600_000;
/** No chamber has this id: what is asked for while the batch hangs nowhere. */
const NOWHERE: SubjectId = 'chamber:0';

/**
 * What is expected of a batch, worked out by another thread: anew after each entry and each hour, since it moves by days.
 * `ahead` null while it is not there, or where nothing can be expected.
 */
export function useBatchAhead(batch: Batch | null, nowMs: number) {
  const chamber = batch?.hung?.body.chamber ?? NOWHERE;
  const entries = useWorkshop();
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
      batch?.hung && known && batches
        ? { sum: 'batch' as const, given: batchGiven(batch, { batches, air: known.air, nowMs: hourMs }) }
        : null,
    [batch, batches, known, hourMs],
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

type Told = { readonly given: BatchGiven; readonly ahead: BatchAhead | null; readonly failed: boolean };

export type BatchesAhead = {
  /** Null where nothing can be expected; none yet while it is worked out. */
  readonly of: (batch: SubjectId) => BatchAhead | null | undefined;
  /** Some have no answer yet. */
  readonly waiting: boolean;
  readonly failed: boolean;
};

/**
 * What is expected of many batches: one after the other by another thread, each filled in as its answer comes. `given` is to stay the same object while it says the same. An
 * answer stands until the one to newer facts comes.
 */
export function useBatchesAhead(given: readonly BatchGiven[]): BatchesAhead {
  const [told, setTold] = useState<ReadonlyMap<SubjectId, Told>>(new Map());
  const next = given.find((each) => !isSame(told.get(each.batch.id)?.given, each)) ?? null;
  const task = useMemo(() => next && { sum: 'batch' as const, given: next }, [next]);
  const { answer, of, failed: wrong } = useDrying(task);
  useEffect(() => {
    const given = (wrong ?? of)?.given;
    if (given)
      setTold((before) =>
        new Map(before).set(given.batch.id, { given, ahead: wrong ? null : answer, failed: wrong !== null }),
      );
  }, [of, answer, wrong]);
  const failed = [...told.values()].some((each) => each.failed);
  return useMemo(() => {
    const known = new Map(
      given.flatMap(({ batch, askedMs }) => {
        const one = told.get(batch.id);
        return one && one.given.askedMs === askedMs ? [[batch.id, one.ahead] as const] : [];
      }),
    );
    return {
      of: (batch) => (failed && !known.has(batch) ? null : known.get(batch)),
      waiting: !failed && known.size < given.length,
      failed,
    };
  }, [given, told, failed]);
}

function isSame(one: BatchGiven | undefined, other: BatchGiven): boolean {
  return (
    one !== undefined &&
    one.batch === other.batch &&
    one.air === other.air &&
    one.nowMs === other.nowMs &&
    one.askedMs === other.askedMs &&
    one.others.length === other.others.length &&
    one.others.every((each, at) => each === other.others[at])
  );
}
