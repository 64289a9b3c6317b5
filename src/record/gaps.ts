/** What an inspector would find missing, listed before he does. A gap is no verdict: it is said, and a release keeps it. */
import { isMeat } from '#core/formula/formula.ts';
import type { Batch } from './batch.ts';
import { benchSteps } from './bench-steps.ts';
import type { Entry, EntryId } from './entry.ts';
import { phBandOf } from './ferment-plan.ts';
import { hasFailed } from './instruments.ts';
import { standings } from './strikes.ts';

export type Gap =
  | { readonly code: 'no-initials'; readonly count: number }
  | { readonly code: 'late'; readonly count: number }
  | { readonly code: 'line-not-weighed'; readonly lines: readonly string[] }
  | { readonly code: 'line-without-lot'; readonly lines: readonly string[] }
  | { readonly code: 'meat-without-lot'; readonly count: number }
  | {
      readonly code: 'step-not-written';
      readonly steps: readonly ('cleaned' | 'ground' | 'mixed' | 'stuffed')[];
    }
  | { readonly code: 'no-ph-of-mix' }
  | { readonly code: 'no-ph' }
  | { readonly code: 'no-room-temperature' }
  | { readonly code: 'ph-without-meter'; readonly count: number }
  /** Days on which a meter was read and not checked in buffers. */
  | { readonly code: 'meter-not-checked'; readonly count: number }
  | { readonly code: 'pieces-not-weighed'; readonly count: number }
  | { readonly code: 'deviation-without-action' }
  | { readonly code: 'unreadable'; readonly count: number }
  | { readonly code: 'rival-corrections'; readonly count: number }
  | { readonly code: 'clock-in-doubt'; readonly count: number };

const MINUTE_MS = 60_000;
/** An entry made later than this after it was true was not made at the time: common practice. */
export const LATE_MINUTES = 15;

export function isLate({ atMs, writtenAtMs }: Pick<Entry, 'atMs' | 'writtenAtMs'>): boolean {
  return writtenAtMs - atMs > LATE_MINUTES * MINUTE_MS;
}

const DAY_MINUTES = 24 * 60;

/** The day by the clock on the wall where it was read. */
function wallDay({ atMs, zone }: Pick<Entry, 'atMs' | 'zone'>): number {
  const offset = Number(zone.slice(1, 3)) * 60 + Number(zone.slice(4));
  return Math.floor((atMs / MINUTE_MS + (zone.startsWith('-') ? -offset : offset)) / DAY_MINUTES);
}

/** Each day and meter once. A check that failed is no check: what it says of the readings stands with the verdicts. */
function uncheckedMeterDays({ ph, checks }: Batch): number {
  const checked = new Set(
    checks
      .filter((check) => check.kind === 'meter-checked' && !hasFailed(check))
      .map((check) => `${check.subject} ${wallDay(check)}`),
  );
  const read = ph.flatMap((entry) =>
    entry.body.method === 'meter' && entry.body.meter ? [`${entry.body.meter} ${wallDay(entry)}`] : [],
  );
  return [...new Set(read)].filter((day) => !checked.has(day)).length;
}

/** `deviates`: whether a rule is broken; `doubted`: what a wrong clock may have written. `entries` are all that touch the batch. */
export function gaps({
  batch,
  entries,
  doubted,
  deviates,
}: {
  batch: Batch;
  entries: readonly Entry[];
  doubted: ReadonlyMap<EntryId, unknown>;
  deviates: boolean;
}): Gap[] {
  const standing = standings(entries).filter(({ live }) => live);
  const lines = batch.opened.body.formula.lines.filter(({ role }) => !isMeat(role));
  const named = (some: typeof lines) => some.map(({ name }) => name);
  const unweighed = lines.filter(({ id }) => !batch.weighedOut.has(id));
  const withoutLot = lines.filter(
    ({ id, role, cure }) =>
      (cure !== undefined || role === 'starter') &&
      batch.weighedOut.has(id) &&
      batch.weighedOut.get(id)?.body.lot === undefined,
  );
  const steps = benchSteps(batch).filter((step) => !batch.steps.some(({ kind }) => kind === step));
  /** Nobody asks for the pH of what is not to be soured, nor for the room in which it is not fermented. */
  const souring = phBandOf(batch.plan) !== null;
  const product = batch.ph.filter(({ body }) => body.sample !== 'mix');
  const count = (found: readonly unknown[]) => found.length;
  const noInitials = count(standing.filter(({ entry }) => entry.by === ''));
  const late = count(standing.filter(({ entry }) => isLate(entry)));
  const meatWithoutLot = count(batch.meat.filter(({ body }) => body.lot === undefined));
  const withoutMeter = count(
    product.filter(({ body }) => body.method === 'meter' && body.meter === undefined),
  );
  const uncheckedDays = uncheckedMeterDays(batch);
  const inDoubt = count(standing.filter(({ entry }) => doubted.has(entry.id)));
  const unweighedPieces = count(batch.pieces.filter(({ weighings }) => weighings.length === 0));
  return [
    ...(batch.unknown > 0 ? [{ code: 'unreadable', count: batch.unknown } as const] : []),
    ...(batch.rivals.length > 0 ? [{ code: 'rival-corrections', count: batch.rivals.length } as const] : []),
    ...(inDoubt > 0 ? [{ code: 'clock-in-doubt', count: inDoubt } as const] : []),
    ...(deviates && batch.actions.length === 0 ? [{ code: 'deviation-without-action' } as const] : []),
    ...(unweighed.length > 0 ? [{ code: 'line-not-weighed', lines: named(unweighed) } as const] : []),
    ...(withoutLot.length > 0 ? [{ code: 'line-without-lot', lines: named(withoutLot) } as const] : []),
    ...(meatWithoutLot > 0 ? [{ code: 'meat-without-lot', count: meatWithoutLot } as const] : []),
    ...(steps.length > 0 ? [{ code: 'step-not-written', steps } as const] : []),
    ...(!souring || batch.ph.some(({ body }) => body.sample === 'mix')
      ? []
      : [{ code: 'no-ph-of-mix' } as const]),
    ...(!souring || product.length > 0 ? [] : [{ code: 'no-ph' } as const]),
    ...(!souring || batch.room.length > 0 ? [] : [{ code: 'no-room-temperature' } as const]),
    ...(withoutMeter > 0 ? [{ code: 'ph-without-meter', count: withoutMeter } as const] : []),
    ...(uncheckedDays > 0 ? [{ code: 'meter-not-checked', count: uncheckedDays } as const] : []),
    ...(unweighedPieces > 0 ? [{ code: 'pieces-not-weighed', count: unweighedPieces } as const] : []),
    ...(noInitials > 0 ? [{ code: 'no-initials', count: noInitials } as const] : []),
    ...(late > 0 ? [{ code: 'late', count: late } as const] : []),
  ];
}
