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

/** Out of the air: bagged, or taken down and hung again. Open-ended where `toMs` is null. */
export type Rest = { readonly fromMs: number; readonly toMs: number | null };

/**
 * A piece as it stands. `netG` is without the tare (hook, tag, string) that was stated when it was stuffed. Once it was
 * cut, green weight and earlier weighings are those of the part that still hangs: its losses go on as they were.
 */
export type Piece = {
  readonly id: SubjectId;
  readonly number: number;
  readonly stuffed: EntryOf<'piece-stuffed'>;
  readonly greenG: number;
  readonly tareG: number;
  readonly diameterMm: number;
  readonly targetLossPct: number;
  readonly weighings: readonly Weighing[];
  readonly rests: readonly Rest[];
  readonly status: 'hanging' | 'bagged' | 'taken-down';
  /** Null while it hangs: a piece that was hung again is not down. */
  readonly takenDown: EntryOf<'taken-down'> | null;
  readonly unknown: number;
};

/** Null while no standing entry says that it was stuffed (struck, or of a newer build). */
export function piece(id: SubjectId, entries: readonly Entry[]): Piece | null {
  const standing = live(entries);
  const stuffed = latest(standing, 'piece-stuffed');
  if (!stuffed) return null;
  const { grossG, tareG, diameterMm } = stuffed.body;
  const cuts = ofKind(standing, 'cut');
  const leftAfter = (atMs: number) =>
    cuts
      .filter((cut) => cut.atMs > atMs)
      .reduce((share, { body }) => (share * (body.afterG - tareG)) / (body.beforeG - tareG), 1);
  const outs = standing.filter(isOut);
  const last = outs.at(-1);
  return {
    id,
    number: stuffed.body.number,
    stuffed,
    greenG: (grossG - tareG) * leftAfter(Number.NEGATIVE_INFINITY),
    tareG,
    diameterMm,
    targetLossPct: latest(standing, 're-targeted')?.body.targetLossPct ?? stuffed.body.targetLossPct,
    weighings: ofKind(standing, 'weighed').map(({ id: entry, atMs, body }) => ({
      entry,
      atMs,
      netG: (body.grossG - tareG) * leftAfter(atMs),
      stage: body.stage,
    })),
    rests: restsOf(outs),
    status: last?.kind === 'taken-down' ? 'taken-down' : last?.kind === 'bagged' ? 'bagged' : 'hanging',
    takenDown: last?.kind === 'taken-down' ? last : null,
    unknown: unknownOf(standing).length,
  };
}

type Out = EntryOf<'bagged' | 'rehung' | 'taken-down'>;

function isOut(entry: Entry): entry is Entry & Out {
  return entry.kind === 'bagged' || entry.kind === 'rehung' || entry.kind === 'taken-down';
}

function restsOf(outs: readonly Out[]): Rest[] {
  const rests: { fromMs: number; toMs: number | null }[] = [];
  for (const { kind, atMs } of outs) {
    const open = rests.at(-1)?.toMs === null ? rests.at(-1) : undefined;
    if (kind !== 'rehung') {
      if (!open) rests.push({ fromMs: atMs, toMs: null });
    } else if (open) open.toMs = atMs;
  }
  return rests;
}
