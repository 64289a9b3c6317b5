import { isSubject, type SubjectId } from '#record/subject.ts';
import { type LotUse, usesOfLot } from '#record/trace.ts';
import { useRows } from './live.ts';
import { rowsTouching } from './rows.ts';

/** Every batch that a lot went into, read from what refers to the lot. */
export function useUsesOfLot(lot: SubjectId): readonly LotUse[] | undefined {
  return useRows(
    async () => {
      const rows = await rowsTouching([lot]);
      const batches = rows.map(({ subject }) => subject).filter((subject) => isSubject(subject, 'batch'));
      return rowsTouching([...new Set(batches)]);
    },
    (entries) => usesOfLot(lot, entries),
    lot,
  );
}
