/** One list over all batches, chambers and the workshop itself, most consequential first. Codes and numbers only. */
import type { Batch } from './batch.ts';
import { type ChamberAir, chamberAir } from './chamber-air.ts';
import { type Due, due, moreConsequential } from './due.ts';
import type { Entry, EntryOf } from './entry.ts';
import type { Unbacked } from './exposure.ts';
import { ofKind } from './fold.ts';
import type { Check } from './instruments.ts';
import type { Chamber } from './place.ts';
import { live } from './strikes.ts';

export type AirDue =
  | {
      readonly code: 'air-warm';
      readonly chamber: Chamber;
      readonly sinceMs: number;
      /** Null while it still is. */
      readonly untilMs: number | null;
      readonly airC: number;
      readonly limitC: number;
    }
  | { readonly code: 'air-unread'; readonly chamber: Chamber; readonly lastAtMs: number | null };

export type AwayDue =
  | { readonly code: 'leave'; readonly fromMs: number; readonly toMs: number }
  | { readonly code: 'returned'; readonly toMs: number };

export type Line =
  | { readonly about: 'batch'; readonly batch: Batch; readonly due: Due }
  | { readonly about: 'chamber'; readonly due: AirDue }
  | { readonly about: 'away'; readonly due: AwayDue }
  | { readonly about: 'back-up'; readonly sinceMs: number; readonly entries: number };

export type Season = {
  readonly batches: readonly Batch[];
  readonly chambers: readonly Chamber[];
  /** Of the workshop itself and of its chambers; more does no harm. */
  readonly entries: readonly Entry[];
  readonly checks: readonly Check[];
  readonly unbacked: Unbacked | null;
  readonly nowMs: number;
};

const HOUR_MS = 3_600_000;
const DAY_MS = 24 * HOUR_MS;
/** Common practice: read by hand daily, a logger's file weekly; leave two days to prepare; keep at most a week in one place. */
export const READ_EVERY_MS = DAY_MS;
export const FILE_EVERY_MS = 8 * DAY_MS;
const LEAVE_AHEAD_MS = 2 * DAY_MS;
const BACK_UP_EVERY_MS = 7 * DAY_MS;
/** So much above what is set a drying chamber is not swinging but failing (common practice); and how long back is looked. */
const WARM_ABOVE_C = 4;
const LOOK_BACK_MS = 14 * DAY_MS;

/** Before anything else of another kind; the dues of batches stand between in their own order. */
const FIRST_OF_BATCHES: readonly Due['code'][] = ['degree-hours-passed'];
const AFTER_BATCHES: readonly Due['code'][] = ['weigh-round', 'look-through'];

export function season(given: Season): Line[] {
  const away = absences(given.entries);
  const isAway = away.some(({ body }) => body.fromMs <= given.nowMs && given.nowMs < body.toMs);
  const ofBatches = given.batches
    .filter(({ stage, decided }) => stage !== 'finished' || !decided)
    .flatMap((batch) => due(batch, given.nowMs).map((each): Line => ({ about: 'batch', batch, due: each })))
    .sort((a, b) => (a.about === 'batch' && b.about === 'batch' ? before(a.due, b.due) : 0));
  const has = (codes: readonly Due['code'][]) => (line: Line) =>
    line.about === 'batch' && codes.includes(line.due.code);
  const air = given.chambers.flatMap((chamber) => airDue(chamber, given));
  const isWarm = (line: Line) => line.about === 'chamber' && line.due.code === 'air-warm';
  const lines = [
    ...ofBatches.filter(has(FIRST_OF_BATCHES)),
    ...air.filter(isWarm),
    ...awayDue(away, given),
    ...ofBatches.filter((line) => !has([...FIRST_OF_BATCHES, ...AFTER_BATCHES])(line)),
    ...ofBatches.filter(has(AFTER_BATCHES)),
    ...air.filter((line) => !isWarm(line)),
    ...backUpDue(given),
  ];
  return isAway ? lines.filter((line) => !waitsForReturn(line)) : lines;
}

/** Of two rounds the one that was longest not done. */
function before(a: Due, b: Due): number {
  const rounds = a.code === 'weigh-round' && b.code === 'weigh-round';
  return rounds ? (a.lastAtMs ?? 0) - (b.lastAtMs ?? 0) : moreConsequential(a, b);
}

/** What can only be done at the chamber, and is not a danger. */
function waitsForReturn(line: Line): boolean {
  return (
    (line.about === 'batch' && (line.due.code === 'weigh-round' || line.due.code === 'half-day')) ||
    (line.about === 'chamber' && line.due.code === 'air-unread')
  );
}

export function absences(entries: readonly Entry[]): EntryOf<'absence-planned'>[] {
  return ofKind(live(entries), 'absence-planned');
}

export function hangsIn(batch: Batch, chamber: Chamber): boolean {
  return batch.stage === 'hanging' && batch.hung?.body.chamber === chamber.id;
}

function airDue(chamber: Chamber, { batches, entries, checks, nowMs }: Season): Line[] {
  const inside = batches.filter((batch) => hangsIn(batch, chamber));
  if (inside.length === 0) return [];
  const air = chamberAir(chamber.id, entries, checks);
  const hungMs = Math.min(...inside.map(({ hung }) => hung?.atMs ?? nowMs));
  const limitC = (air.set?.body.airC ?? Math.max(...inside.map(({ plan }) => plan.dryC))) + WARM_ABOVE_C;
  const warm = warmSpell(air, { fromMs: Math.max(hungMs, nowMs - LOOK_BACK_MS), nowMs, limitC });
  const last = air.points.findLast(({ atMs }) => atMs <= nowMs) ?? null;
  const everyMs = air.files.some(({ atMs }) => atMs <= nowMs) ? FILE_EVERY_MS : READ_EVERY_MS;
  const lastAtMs = last?.atMs ?? null;
  const unread = nowMs - (lastAtMs ?? hungMs) >= everyMs;
  return [
    ...(warm
      ? [{ about: 'chamber' as const, due: { code: 'air-warm' as const, chamber, limitC, ...warm } }]
      : []),
    ...(unread
      ? [{ about: 'chamber' as const, due: { code: 'air-unread' as const, chamber, lastAtMs } }]
      : []),
  ];
}

type Spell = { readonly sinceMs: number; readonly untilMs: number | null; readonly airC: number };
type Look = { readonly fromMs: number; readonly nowMs: number; readonly limitC: number };

/** The last spell above the limit that nobody wrote an action about: as it was read, or as an instrument kept it between readings. */
function warmSpell(air: ChamberAir, look: Look): Spell | null {
  const read = readSpell(air, look);
  const kept = keptSpell(air, look);
  const spell =
    read === null || kept === null
      ? (read ?? kept)
      : read.sinceMs > (kept.untilMs ?? look.nowMs)
        ? read
        : read.untilMs !== null && read.untilMs <= kept.sinceMs
          ? kept
          : {
              sinceMs: Math.min(read.sinceMs, kept.sinceMs),
              untilMs: read.untilMs,
              airC: Math.max(read.airC, kept.airC),
            };
  return spell && air.actions.some(({ atMs }) => atMs >= spell.sinceMs) ? null : spell;
}

/** Somewhere between two readings. */
function keptSpell({ extremes }: ChamberAir, { fromMs, nowMs, limitC }: Look): Spell | null {
  const last = extremes.findLast(
    ({ atMs, highC }) => atMs >= fromMs && atMs <= nowMs && (highC ?? limitC) > limitC,
  );
  return last ? { sinceMs: last.sinceMs, untilMs: last.atMs, airC: last.highC ?? limitC } : null;
}

function readSpell({ points }: ChamberAir, { fromMs, nowMs, limitC }: Look): Spell | null {
  let spell: { sinceMs: number; untilMs: number | null; airC: number } | null = null;
  for (const { atMs, airC } of points) {
    if (atMs < fromMs || atMs > nowMs) continue;
    if (airC > limitC) {
      if (spell === null || spell.untilMs !== null) spell = { sinceMs: atMs, untilMs: null, airC };
      else spell.airC = Math.max(spell.airC, airC);
    } else if (spell !== null && spell.untilMs === null) spell.untilMs = atMs;
  }
  return spell;
}

function awayDue(away: readonly EntryOf<'absence-planned'>[], { batches, nowMs }: Season): Line[] {
  const hanging = batches.filter(({ stage }) => stage === 'hanging');
  if (hanging.length === 0) return [];
  const next = away.find(({ body }) => body.fromMs > nowMs && body.fromMs - nowMs <= LEAVE_AHEAD_MS);
  const back = away.findLast(({ body }) => body.toMs <= nowMs && nowMs - body.toMs < LOOK_BACK_MS);
  const seen = (sinceMs: number) =>
    hanging.every(({ pieces }) => pieces.some(({ weighings }) => (weighings.at(-1)?.atMs ?? 0) >= sinceMs));
  return [
    ...(next
      ? [
          {
            about: 'away' as const,
            due: { code: 'leave' as const, fromMs: next.body.fromMs, toMs: next.body.toMs },
          },
        ]
      : []),
    ...(back && !seen(back.body.toMs)
      ? [{ about: 'away' as const, due: { code: 'returned' as const, toMs: back.body.toMs } }]
      : []),
  ];
}

function backUpDue({ unbacked, nowMs }: Season): Line[] {
  return unbacked && nowMs - unbacked.sinceMs >= BACK_UP_EVERY_MS ? [{ about: 'back-up', ...unbacked }] : [];
}
