import type { Entry, EntryId, EntryOf } from './entry.ts';
import { latest, ofKind, unknownOf } from './fold.ts';
import { live } from './strikes.ts';
import type { SubjectId } from './subject.ts';

export type Weighing = {
  readonly entry: EntryId;
  readonly atMs: number;
  readonly netG: number;
  readonly stage: 'to-drying' | 'round' | 'taken-down';
};

/** A piece as it stands. `netG` is without the tare (hook, tag, string) that was stated when it was stuffed. */
export type Piece = {
  readonly id: SubjectId;
  readonly number: number;
  readonly stuffed: EntryOf<'piece-stuffed'>;
  readonly greenG: number;
  readonly tareG: number;
  readonly diameterMm: number;
  readonly targetLossPct: number;
  readonly weighings: readonly Weighing[];
  readonly status: 'hanging' | 'bagged' | 'taken-down';
  readonly takenDown: EntryOf<'taken-down'> | null;
  readonly unknown: number;
};

/** Null while no standing entry says that it was stuffed (struck, or of a newer build). */
export function piece(id: SubjectId, entries: readonly Entry[]): Piece | null {
  const standing = live(entries);
  const stuffed = latest(standing, 'piece-stuffed');
  if (!stuffed) return null;
  const { grossG, tareG, diameterMm } = stuffed.body;
  const takenDown = latest(standing, 'taken-down');
  const bagged = latest(standing, 'bagged');
  const rehung = latest(standing, 'rehung');
  return {
    id,
    number: stuffed.body.number,
    stuffed,
    greenG: grossG - tareG,
    tareG,
    diameterMm,
    targetLossPct: latest(standing, 're-targeted')?.body.targetLossPct ?? stuffed.body.targetLossPct,
    weighings: ofKind(standing, 'weighed').map(({ id: entry, atMs, body }) => ({
      entry,
      atMs,
      netG: body.grossG - tareG,
      stage: body.stage,
    })),
    status: takenDown
      ? 'taken-down'
      : bagged && !(rehung && rehung.atMs >= bagged.atMs)
        ? 'bagged'
        : 'hanging',
    takenDown,
    unknown: unknownOf(standing).length,
  };
}
