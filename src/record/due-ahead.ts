/** When something will be due, while it is not yet: instants for a calendar, since a web app cannot promise an alarm. */
import type { Batch } from './batch.ts';
import { type ChamberAir, chamberAir } from './chamber-air.ts';
import { lastRoundMs, PH_EVERY_HOURS } from './due.ts';
import { fermentFigures } from './ferment-figures.ts';
import { freezingFigures } from './freezing-figures.ts';
import type { Lot, Place } from './place.ts';
import { nextRound } from './round-rhythm.ts';
import { absences, FILE_EVERY_MS, hangsIn, READ_EVERY_MS, type Season } from './season.ts';
import type { SubjectId } from './subject.ts';

export type DueAhead =
  | {
      readonly code: 'read-ph' | 'runs-out' | 'half-day' | 'weigh-round';
      readonly batch: Batch;
      readonly atMs: number;
    }
  | {
      readonly code: 'read-air';
      readonly chamber: { id: SubjectId; name: string };
      readonly atMs: number;
    }
  | { readonly code: 'leave' | 'back'; readonly entry: string; readonly seq: number; readonly atMs: number }
  | { readonly code: 'frozen'; readonly lot: Lot; readonly atMs: number };

const HOUR_MS = 3_600_000;

/** In order of time; nothing that is due already: that stands in Today. */
export function dueAhead(
  given: Pick<Season, 'batches' | 'chambers' | 'entries' | 'checks' | 'nowMs'> & {
    readonly lots: readonly Lot[];
    readonly ruleSet: Place['ruleSet'];
  },
): DueAhead[] {
  const { batches, chambers, entries, checks, lots, ruleSet, nowMs } = given;
  const all: DueAhead[] = [
    ...batches.flatMap((batch) => ofBatch(batch, nowMs)),
    ...chambers.flatMap((chamber): DueAhead[] => {
      const inside = batches.filter((batch) => hangsIn(batch, chamber));
      const atMs = nextReadingMs(chamberAir(chamber.id, entries, checks), nowMs);
      return inside.length > 0 && atMs !== null ? [{ code: 'read-air', chamber, atMs }] : [];
    }),
    ...absences(entries).flatMap(({ id: entry, seq, body }): DueAhead[] => [
      { code: 'leave', entry, seq, atMs: body.fromMs },
      { code: 'back', entry, seq, atMs: body.toMs },
    ]),
    ...lots.flatMap((lot): DueAhead[] => {
      const own = entries.filter(({ subject }) => subject === lot.id);
      const { species } = lot.received.body;
      const atMs = freezingFigures({ entries: own, ruleSet, species, nowMs }).answer?.dueAtMs ?? null;
      return atMs === null ? [] : [{ code: 'frozen', lot, atMs }];
    }),
  ];
  return all.filter(({ atMs }) => atMs > nowMs).sort((a, b) => a.atMs - b.atMs);
}

function ofBatch(batch: Batch, nowMs: number): DueAhead[] {
  if (batch.stage === 'hanging') {
    const lastMs = lastRoundMs(batch);
    if (batch.hung === null || lastMs === null) return [];
    const { atMs, isHalfDay } = nextRound({ hungMs: batch.hung.atMs, lastMs, nowMs });
    return [{ code: isHalfDay ? 'half-day' : 'weigh-round', batch, atMs }];
  }
  if (batch.stage !== 'ferment' || batch.fermentEnded) return [];
  const clock = fermentFigures(batch, nowMs);
  if (!clock || clock.stop) return [];
  const lastPhMs = batch.ph.at(-1)?.atMs ?? batch.stuffedAtMs ?? nowMs;
  const binds = clock.finding.verdict !== 'does-not-apply';
  const runsOutAtMs = binds ? (clock.ahead?.runsOutAtMs ?? null) : null;
  return [
    { code: 'read-ph', batch, atMs: lastPhMs + PH_EVERY_HOURS * HOUR_MS },
    ...(runsOutAtMs === null ? [] : [{ code: 'runs-out' as const, batch, atMs: runsOutAtMs }]),
  ];
}

function nextReadingMs({ points, files }: ChamberAir, nowMs: number): number | null {
  const last = points.findLast(({ atMs }) => atMs <= nowMs);
  return last ? last.atMs + (files.some(({ atMs }) => atMs <= nowMs) ? FILE_EVERY_MS : READ_EVERY_MS) : null;
}
