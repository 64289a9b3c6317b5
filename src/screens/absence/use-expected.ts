import { useEffect, useState } from 'react';
import { type PieceAway, pieceAway, piecesAway } from '#record/absence-figures.ts';
import type { Batch } from '#record/batch.ts';
import type { KnownAir } from '#record/drying-air.ts';
import type { EntryOf } from '#record/entry.ts';
import type { SubjectId } from '#record/subject.ts';
import type { Expected } from './absence-view.ts';

export type Counting = {
  readonly expected: readonly Expected[];
  readonly done: number;
  readonly of: number;
};

const NOTHING: Counting = { expected: [], done: 0, of: 0 };

/** A forecast takes a phone some 50 ms: piece by piece, so that the page answers meanwhile. */
export function useExpected(
  batches: readonly Batch[] | undefined,
  absence: EntryOf<'absence-planned'> | null,
  { airs, nowMs }: { airs: ReadonlyMap<SubjectId, KnownAir>; nowMs: number },
): Counting {
  const [counting, setCounting] = useState(NOTHING);
  useEffect(() => {
    if (batches === undefined || absence === null) {
      setCounting(NOTHING);
      return;
    }
    const { fromMs, toMs } = absence.body;
    const waiting = batches.flatMap((batch) =>
      piecesAway(batch, absence.body, nowMs).map((piece) => ({ batch, piece })),
    );
    const found = new Map<Batch, PieceAway[]>();
    let done = 0;
    let timer: ReturnType<typeof setTimeout>;
    const step = () => {
      const next = waiting[done];
      if (next) {
        const chamber = next.batch.hung?.body.chamber;
        const air = (chamber && airs.get(chamber)) ?? null;
        const away = pieceAway(next.piece, next.batch, { fromMs, toMs, nowMs, air });
        if (away) found.set(next.batch, [...(found.get(next.batch) ?? []), away]);
        done += 1;
      }
      setCounting({
        expected: [...found].map(([batch, pieces]) => ({ batch, pieces })),
        done,
        of: waiting.length,
      });
      if (done < waiting.length) timer = setTimeout(step);
    };
    step();
    return () => clearTimeout(timer);
  }, [batches, absence, airs, nowMs]);
  return counting;
}
