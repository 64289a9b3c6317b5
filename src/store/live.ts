/** What screens read. Each hook answers anew when the log has grown; undefined while it loads. Nothing is shown unchecked. */
import { useLiveQuery } from 'dexie-react-hooks';
import { useEffect, useSyncExternalStore } from 'react';
import type { Batch } from '#record/batch.ts';
import type { Entry } from '#record/entry.ts';
import type { Unbacked } from '#record/exposure.ts';
import { type Check, checks, withChecks } from '#record/instruments.ts';
import {
  type Chamber,
  chambers,
  type Lot,
  lots,
  type Meter,
  meters,
  type Place,
  place,
  type Scale,
  scales,
} from '#record/place.ts';
import { inOrder } from '#record/strikes.ts';
import { isSubject, PLACE, type SubjectId } from '#record/subject.ts';
import type { Row } from './database.ts';
import { entriesNow } from './entries.ts';
import { lookThrough, startCheck } from './open.ts';
import { allRows, rowsAbout, rowsTouching } from './rows.ts';
import { onState, type StartState, storeState } from './state.ts';
import { batchesNow } from './summaries.ts';
import { unbackedNow } from './unbacked.ts';

/** When the maker has what he came for, the old lines are looked through. */
const LOOK_AFTER_MS = 3000;

/** How the store began; asking begins the check. */
export function useStart(): StartState {
  useEffect(() => {
    void startCheck();
    const timer = setTimeout(() => void lookThrough(), LOOK_AFTER_MS);
    return () => clearTimeout(timer);
  }, []);
  return useSyncExternalStore(onState, () => storeState().start);
}

/**
 * All entries whose subject or reference this is, in order; for a batch also those of its pieces, which refer to it, and the
 * checks of the instruments that it was read with.
 */
export function useTouching(subject: SubjectId): readonly Entry[] | undefined {
  const isBatch = isSubject(subject, 'batch');
  return useRows(
    async () => [...(await rowsTouching([subject])), ...(isBatch ? await rowsAbout('instrument') : [])],
    (entries) => ordered(isBatch ? joined(subject, entries) : entries),
    subject,
  );
}

function joined(subject: SubjectId, entries: readonly Entry[]): Entry[] {
  const own = entries.filter((entry) => entry.subject === subject || entry.refs.includes(subject));
  return withChecks(own, entries);
}

export function useSubjects(subjects: readonly SubjectId[]): readonly Entry[] | undefined {
  return useRows(() => rowsTouching(subjects), ordered, subjects.join(' '));
}

export function useAllEntries(): readonly Entry[] | undefined {
  return useRows(every, ordered, '');
}

/** What is about the workshop itself, its chambers and the air in them. */
export function useWorkshop(): readonly Entry[] | undefined {
  return useRows(
    async () => [...(await rowsTouching([PLACE])), ...(await rowsAbout('chamber'))],
    ordered,
    '',
  );
}

export function usePlace(): Place | undefined {
  return useRows(() => rowsTouching([PLACE]), place, '');
}

export type Kit = {
  readonly lots: readonly Lot[];
  readonly scales: readonly Scale[];
  readonly meters: readonly Meter[];
  readonly chambers: readonly Chamber[];
};

export function useKit(): Kit | undefined {
  return useRows(kitRows, kitOf, '');
}

/** Standing checks of all instruments, in order. */
export function useChecks(): readonly Check[] | undefined {
  return useRows(() => rowsAbout('instrument'), checks, '');
}

/** Every batch as it stands, the last opened first. */
export function useBatches(): readonly Batch[] | undefined {
  const open = useOpen();
  return useLiveQuery(async () => (open ? batchesNow() : undefined), [open]);
}

/** What was written since the last backup, and since when. */
export function useUnbacked(): Unbacked | null | undefined {
  const open = useOpen();
  return useLiveQuery(async () => (open ? unbackedNow() : undefined), [open]);
}

/** Reads are let through once the check at the start has passed; before that an emptied store would look like a fresh one. */
export function useRows<T>(
  read: () => Promise<readonly Row[]>,
  make: (entries: Entry[]) => T,
  key: string,
): T | undefined {
  const open = useOpen();
  return useLiveQuery(async () => (open ? make(await entriesNow(await read())) : undefined), [open, key]);
}

export function useOpen(): boolean {
  const { code } = useStart();
  return code === 'ready' || code === 'newer-open';
}

async function every(): Promise<readonly Row[]> {
  return (await allRows()).rows;
}

function ordered(entries: Entry[]): readonly Entry[] {
  return entries.sort(inOrder);
}

async function kitRows(): Promise<readonly Row[]> {
  const rows = await Promise.all(['lot', 'instrument', 'chamber'].map(rowsAbout));
  return rows.flat();
}

function kitOf(entries: Entry[]): Kit {
  return {
    lots: lots(entries),
    scales: scales(entries),
    meters: meters(entries),
    chambers: chambers(entries),
  };
}
