import type { Entry, EntryOf } from './entry.ts';
import { latest, ofKind, unknownOf } from './fold.ts';
import { type Check, isCheck } from './instruments.ts';
import type { BenchStep, Plan } from './kinds.ts';
import { type Piece, piece } from './piece.ts';
import { live, rivals } from './strikes.ts';
import { isSubject, type SubjectId } from './subject.ts';

/** The stages a batch goes through, each begun by an entry. */
export type Stage = 'weigh-out' | 'bench' | 'ferment' | 'hanging' | 'finished';

/** A batch as it stands: the batch's own entries and those of its pieces, folded. */
export type Batch = {
  readonly id: SubjectId;
  readonly opened: EntryOf<'batch-opened'>;
  readonly plan: Plan;
  readonly stage: Stage;
  readonly meat: readonly EntryOf<'meat-weighed'>[];
  readonly countKept: EntryOf<'count-kept'> | null;
  readonly leanG: number;
  readonly fatG: number;
  /** The last standing weighing of each line of the formula. */
  readonly weighedOut: ReadonlyMap<string, EntryOf<'weighed-out'>>;
  readonly steps: readonly EntryOf<BenchStep>[];
  readonly stuffedAtMs: number | null;
  readonly stuffingPlanned: EntryOf<'stuffing-planned'> | null;
  readonly timers: readonly EntryOf<'timer-set'>[];
  readonly priced: EntryOf<'priced'> | null;
  readonly casingUsed: EntryOf<'casing-used'> | null;
  readonly fermentSet: EntryOf<'ferment-set'> | null;
  readonly room: readonly EntryOf<'room-read'>[];
  readonly logged: readonly EntryOf<'room-logged'>[];
  readonly ph: readonly EntryOf<'ph-read'>[];
  /** Checks of the instruments that were read, as far as they bear on these readings. */
  readonly checks: readonly Check[];
  readonly smoked: readonly EntryOf<'smoked'>[];
  readonly fermentEnded: EntryOf<'ferment-ended'> | null;
  readonly hung: EntryOf<'hung'> | null;
  /** Water activity and moisture to protein, by meter or laboratory. */
  readonly measured: readonly EntryOf<'product-measured'>[];
  readonly notes: readonly EntryOf<'noted'>[];
  readonly tasted: readonly EntryOf<'tasted'>[];
  readonly actions: readonly EntryOf<'action-taken'>[];
  readonly decided: EntryOf<'decided'> | null;
  /** In the order of their numbers: the order in which they hang. */
  readonly pieces: readonly Piece[];
  /** How many standing entries this build cannot read; more than none means that no verdict is complete. */
  readonly unknown: number;
  readonly rivals: readonly (readonly Entry[])[];
};

/** Null when no standing entry opens the batch. `entries` are all that touch it, in any order. */
export function batch(id: SubjectId, entries: readonly Entry[]): Batch | null {
  const standing = live(entries);
  const opened = ofKind(standing, 'batch-opened').find((entry) => entry.subject === id);
  if (!opened) return null;
  const own = standing.filter((entry) => entry.subject === id);
  const meat = ofKind(own, 'meat-weighed');
  const steps = own.filter((entry): entry is EntryOf<BenchStep> => isStep(entry.kind));
  const pieces = piecesOf(standing);
  const stuffed = latest(own, 'stuffed');
  const decided = latest(own, 'decided');
  const fermentEnded = latest(own, 'ferment-ended');
  const hung = latest(own, 'hung');
  return {
    id,
    opened,
    plan: latest(own, 'plan-changed')?.body.plan ?? opened.body.plan,
    stage: stageOf({
      finished: pieces.length > 0 && pieces.every((each) => each.status === 'taken-down'),
      hung: hung !== null,
      stuffed: stuffed !== null,
      begun: steps.some((step) => step.kind !== 'cleaned'),
    }),
    meat,
    countKept: latest(own, 'count-kept'),
    leanG: total(meat, 'lean'),
    fatG: total(meat, 'fat'),
    weighedOut: new Map(ofKind(own, 'weighed-out').map((entry) => [entry.body.line, entry])),
    steps,
    stuffedAtMs: stuffed?.atMs ?? null,
    stuffingPlanned: latest(own, 'stuffing-planned'),
    timers: ofKind(own, 'timer-set'),
    priced: latest(own, 'priced'),
    casingUsed: latest(own, 'casing-used'),
    fermentSet: latest(own, 'ferment-set'),
    room: ofKind(own, 'room-read'),
    logged: ofKind(own, 'room-logged'),
    ph: ofKind(own, 'ph-read'),
    checks: standing.filter(isCheck),
    smoked: ofKind(own, 'smoked'),
    fermentEnded,
    hung,
    measured: ofKind(own, 'product-measured'),
    notes: ofKind(own, 'noted'),
    tasted: ofKind(own, 'tasted'),
    actions: ofKind(own, 'action-taken'),
    decided,
    pieces,
    unknown: unknownOf(standing).length,
    rivals: [
      ...rivals(entries),
      ...standing.flatMap(({ clock }) => (clock?.disputed ? [clock.corrections] : [])),
    ],
  };
}

function isStep(kind: string | null): kind is BenchStep {
  return kind === 'cleaned' || kind === 'ground' || kind === 'mixed' || kind === 'stuffed';
}

function total(meat: readonly EntryOf<'meat-weighed'>[], part: 'lean' | 'fat'): number {
  return meat.filter(({ body }) => body.part === part).reduce((sumG, { body }) => sumG + body.massG, 0);
}

function stageOf(reached: { finished: boolean; hung: boolean; stuffed: boolean; begun: boolean }): Stage {
  if (reached.finished) return 'finished';
  if (reached.hung) return 'hanging';
  if (reached.stuffed) return 'ferment';
  return reached.begun ? 'bench' : 'weigh-out';
}

function piecesOf(standing: readonly Entry[]): Piece[] {
  const byPiece = new Map<SubjectId, Entry[]>();
  for (const entry of standing) {
    if (!isSubject(entry.subject, 'piece')) continue;
    const list = byPiece.get(entry.subject);
    if (list) list.push(entry);
    else byPiece.set(entry.subject, [entry]);
  }
  return [...byPiece]
    .map(([id, own]) => piece(id, own))
    .filter((each) => each !== null)
    .sort((a, b) => a.number - b.number || (a.id < b.id ? -1 : 1));
}
