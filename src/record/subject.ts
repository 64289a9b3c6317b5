import * as z from 'zod/mini';

/** What an entry is about. `place` is the workshop itself: its units, rule set and initials. */
export type SubjectType =
  | 'batch'
  | 'piece'
  | 'lot'
  | 'formula'
  | 'chamber'
  | 'instrument'
  | 'place'
  | 'device';
export type SubjectId<T extends SubjectType = SubjectType> = `${T}:${string}`;

const shape = /^(batch|piece|lot|formula|chamber|instrument|place|device):[A-Za-z0-9-]{1,40}$/;

export const subjectId = z.custom<SubjectId>(
  (value) => typeof value === 'string' && shape.test(value),
  'subject',
);

/** One workshop a log: its settings have one subject, so that two phones that merge speak of the same place. */
export const PLACE: SubjectId<'place'> = 'place:here';

export function isSubject<T extends SubjectType>(id: SubjectId, type: T): id is SubjectId<T> {
  return id.startsWith(`${type}:`);
}
