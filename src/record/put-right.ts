/** Times that a wrong clock gave, put right before any fold reads them. The line that was written stays as it is. */
import type { Entry, EntryOf } from './entry.ts';
import { ofKind } from './fold.ts';
import { LATE_MINUTES } from './gaps.ts';
import { live } from './strikes.ts';
import type { SubjectId } from './subject.ts';

export type ClockCorrection = EntryOf<'clock-corrected'>;

const MINUTE_MS = 60_000;
const DAY_MS = 24 * 60 * MINUTE_MS;
const MOST_MS = 8.64e15;
const MOST_ZONES = 20;

/** A correction is about the phone whose clock it was: whoever reads what is about phones has all of them. */
export function clockSubject(device: string): SubjectId<'device'> {
  return `device:${device}`;
}

/** Those that stand, the last written last: of two over one entry that one counts, and both are shown. */
export function clockCorrections(entries: readonly Entry[]): ClockCorrection[] {
  return ofKind(live(entries.map(asWritten)), 'clock-corrected')
    .filter(({ subject, body }) => subject === clockSubject(body.device))
    .sort((a, b) => a.writtenAtMs - b.writtenAtMs || (a.id < b.id ? -1 : 1));
}

/** The entry as its line has it. */
export function asWritten(entry: Entry): Entry {
  if (!entry.clock) return entry;
  const { clock, ...rest } = entry;
  const { atMs, zone, writtenAtMs } = clock;
  return { ...rest, atMs, zone, writtenAtMs };
}

/**
 * `about` holds every correction and what strikes it. Not the sum of two corrections: two phones that put the same clock right
 * apart say the same twice. An entry that none reaches is handed back itself.
 */
export function putRight(entries: readonly Entry[], about: readonly Entry[]): Entry[] {
  const byDevice = new Map<string, ClockCorrection[]>();
  for (const correction of clockCorrections(about)) {
    const { device } = correction.body;
    const others = byDevice.get(device);
    if (others) others.push(correction);
    else byDevice.set(device, [correction]);
  }
  return entries.map((given) => {
    const entry = asWritten(given);
    const corrections = (byDevice.get(entry.device) ?? []).filter(
      ({ body }) => body.fromSeq <= entry.seq && entry.seq <= body.toSeq,
    );
    const last = corrections.at(-1);
    return last ? moved(entry, last, corrections) : entry;
  });
}

function moved(entry: Entry, { body }: ClockCorrection, corrections: readonly ClockCorrection[]): Entry {
  const right = rightBy(entry, body);
  if (right === null) return entry;
  const disputed = new Set(corrections.map((each) => each.body.shiftMs)).size > 1;
  const written = { atMs: entry.atMs, zone: entry.zone, writtenAtMs: entry.writtenAtMs };
  return { ...entry, ...right, clock: { ...written, corrections, disputed } };
}

/** What a correction makes of an entry as it was written; null where that is no time at all. */
export function rightBy(
  entry: Entry,
  { shiftMs, zones }: Pick<ClockCorrection['body'], 'shiftMs' | 'zones'>,
): Pick<Entry, 'atMs' | 'zone' | 'writtenAtMs'> | null {
  const zone = zones?.findLast(({ fromSeq }) => fromSeq <= entry.seq)?.zone ?? entry.zone;
  const writtenAtMs = entry.writtenAtMs + shiftMs;
  const atMs = trueMs(entry, { shiftMs, zone });
  if (![writtenAtMs, atMs].every((ms) => ms >= 0 && ms <= MOST_MS)) return null;
  return { atMs, zone: atMs === entry.atMs ? entry.zone : zone, writtenAtMs };
}

/**
 * The offsets in force at the true times, each from an entry on; undefined where they are those at the wrong times. `zoneAt` is
 * asked of the phone at hand, and counts only where it agrees with what the entry says of its own time.
 */
export function zonesBy(
  entries: readonly Entry[],
  { shiftMs, zoneAt }: { shiftMs: number; zoneAt: (atMs: number) => string },
): ClockCorrection['body']['zones'] {
  const zones = entries.map(({ seq, atMs, zone }) => ({
    fromSeq: seq,
    zone: zoneAt(atMs) === zone ? zoneAt(atMs + shiftMs) : zone,
  }));
  const turns = zones.filter(({ zone }, at) => zone !== zones[at - 1]?.zone);
  return entries.every(({ zone }, at) => zone === zones[at]?.zone) || turns.length > MOST_ZONES
    ? undefined
    : turns;
}

/**
 * A time that the phone gave moves with its clock. One that the maker set was read from a clock on the wall: its hours are
 * right and stay, and only its day moves, which the phone's picker gave. Where it lies nearer to the true day than to the
 * phone's, the maker had set the day too, and all of it stays.
 */
function trueMs({ atMs, zone, writtenAtMs }: Entry, right: { shiftMs: number; zone: string }): number {
  const { shiftMs } = right;
  const beforeMs = writtenAtMs - atMs;
  if (Math.abs(beforeMs) <= LATE_MINUTES * MINUTE_MS) return atMs + shiftMs;
  const days = Math.round(shiftMs / DAY_MS);
  if (days === 0 || Math.abs(beforeMs + shiftMs) < Math.abs(beforeMs)) return atMs;
  return atMs + days * DAY_MS + offsetMs(zone) - offsetMs(right.zone);
}

function offsetMs(zone: string): number {
  const minutes = Number(zone.slice(1, 3)) * 60 + Number(zone.slice(4));
  return (zone.startsWith('-') ? -minutes : minutes) * MINUTE_MS;
}
