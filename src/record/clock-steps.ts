import type { Entry, EntryId } from './entry.ts';

/** Where a device wrote an entry at an earlier time than the one before it: its clock was wrong on one side of the step. */
export type ClockStep = {
  readonly entry: Entry;
  readonly before: Entry;
  readonly backMs: number;
};

/** One side of a step: the entries that were written with a wrong clock if it was wrong on that side. */
export type ClockSide = {
  readonly side: 'ahead' | 'behind';
  readonly device: string;
  readonly first: Entry;
  readonly last: Entry;
  /** What has to be added to their times, at least and at most; null where nothing bounds it. */
  readonly leastMs: number | null;
  readonly mostMs: number | null;
};

export type ClockDoubt = {
  readonly backMs: number;
  /** The likelier side first. */
  readonly sides: readonly [ClockSide, ...ClockSide[]];
  /** Whether the log tells which side it was; where it does not, both stay in doubt. */
  readonly told: boolean;
};

const MINUTE_MS = 60_000;
const SLACK_MS = 2 * MINUTE_MS;
const DAY_MS = 86_400_000;

/** Never a reason to refuse an entry: it is flagged, and put right by an entry of its own. */
export function clockSteps(entries: readonly Entry[]): ClockStep[] {
  return chains(entries).flatMap((chain) =>
    chain.flatMap((entry, at) => {
      const before = chain[at - 1];
      if (!before) return [];
      const backMs = before.writtenAtMs - entry.writtenAtMs;
      return backMs > SLACK_MS ? [{ entry, before, backMs }] : [];
    }),
  );
}

/**
 * Every step that is not put right yet, with the entries on either side of it that cannot be where the other side is right. A
 * clock that runs ahead shows only when it comes back, or by entries that lie ahead of now.
 */
export function clockDoubts(entries: readonly Entry[], nowMs: number): ClockDoubt[] {
  return chains(entries).flatMap((chain) => {
    const timesMs = chain.map(({ writtenAtMs }) => writtenAtMs);
    const notAfter = lastNotAfter([...timesMs, nowMs]);
    const caughtUp = firstNotBefore(timesMs);
    return [...timesMs, nowMs].flatMap((timeMs, at) => {
      const beforeMs = timesMs[at - 1];
      if (beforeMs === undefined || !(beforeMs - timeMs > SLACK_MS)) return [];
      const from = (notAfter[at] ?? -1) + 1;
      const ahead = sideOf('ahead', [chain[from], chain[at - 1]], {
        firstMs: timesMs[from - 1],
        lastMs: timeMs,
      });
      const to = caughtUp[at - 1] ?? chain.length;
      const behind = sideOf('behind', [chain[at], chain[to - 1]], {
        firstMs: beforeMs,
        lastMs: timesMs[to] ?? (nowMs > beforeMs ? nowMs : undefined),
      });
      const isFuture = beforeMs > nowMs + SLACK_MS;
      return ahead
        ? [doubtOf({ ahead, behind, backMs: beforeMs - timeMs, isFuture, hasNext: to < chain.length })]
        : [];
    });
  });
}

/** About what has to be added: whole days where they fit, since a date is most often what was set wrong; or else minutes. */
export function aboutMs({ leastMs, mostMs }: ClockSide): number {
  if (leastMs === null || mostMs === null) return leastMs ?? mostMs ?? 0;
  const middleMs = (leastMs + mostMs) / 2;
  const wholeMs = Math.round(middleMs / DAY_MS) * DAY_MS;
  return wholeMs !== 0 && leastMs <= wholeMs && wholeMs <= mostMs
    ? wholeMs
    : Math.round(middleMs / MINUTE_MS) * MINUTE_MS;
}

/** The entries whose time is in doubt, each with the side that says by how much: of several the one that reaches farthest. */
export function doubted(entries: readonly Entry[], doubts: readonly ClockDoubt[]): Map<EntryId, ClockSide> {
  const sides = doubts
    .flatMap(({ sides: [likely, ...others], told }) => (told ? [likely] : [likely, ...others]))
    .sort((a, b) => a.first.seq - b.first.seq);
  const found = new Map<EntryId, ClockSide>();
  for (const chain of chains(entries)) {
    const own = sides.filter(({ device }) => device === chain[0]?.device);
    let next = 0;
    let over: ClockSide | null = null;
    for (const entry of chain) {
      for (let side = own[next]; side && side.first.seq <= entry.seq; side = own[++next])
        if (over === null || side.last.seq > over.last.seq) over = side;
      if (over !== null && over.last.seq >= entry.seq) found.set(entry.id, over);
    }
  }
  return found;
}

/** Each device's entries in its own order. A row that cannot be read does not say when it was written. */
function chains(entries: readonly Entry[]): Entry[][] {
  const byDevice = new Map<string, Entry[]>();
  for (const entry of entries) {
    if (entry.kind === null && entry.named === 'unreadable') continue;
    const chain = byDevice.get(entry.device);
    if (chain) chain.push(entry);
    else byDevice.set(entry.device, [entry]);
  }
  const devices = [...byDevice.keys()].sort();
  return devices.map((device) => (byDevice.get(device) ?? []).sort((a, b) => a.seq - b.seq));
}

type Timed = { readonly timeMs: number; readonly seq: number };

/** The last before each that is not later than it, or none: in one pass, since a clock may step at every entry. */
function lastNotAfter(timesMs: readonly number[]): (number | undefined)[] {
  const earlier: Timed[] = [];
  return timesMs.map((timeMs, at) => {
    while ((earlier.at(-1)?.timeMs ?? timeMs) > timeMs) earlier.pop();
    const found = earlier.at(-1)?.seq;
    earlier.push({ timeMs, seq: at });
    return found;
  });
}

/** The first after each that is not earlier than it. */
function firstNotBefore(timesMs: readonly number[]): (number | undefined)[] {
  const found: (number | undefined)[] = timesMs.map(() => undefined);
  const waiting: Timed[] = [];
  for (const [at, timeMs] of timesMs.entries()) {
    for (let last = waiting.at(-1); last && last.timeMs <= timeMs; last = waiting.at(-1)) {
      found[last.seq] = at;
      waiting.pop();
    }
    waiting.push({ timeMs, seq: at });
  }
  return found;
}

/** All of them were written between the one before the first and the one after the last. */
function sideOf(
  side: ClockSide['side'],
  [first, last]: readonly [Entry | undefined, Entry | undefined],
  between: { firstMs: number | undefined; lastMs: number | undefined },
): ClockSide | null {
  if (!first || !last) return null;
  const { firstMs, lastMs } = between;
  return {
    side,
    device: first.device,
    first,
    last,
    leastMs: firstMs === undefined ? null : firstMs - first.writtenAtMs,
    mostMs: lastMs === undefined ? null : lastMs - last.writtenAtMs,
  };
}

/**
 * A clock that was wrong for a while left the right time by a leap and came back by another: the far end tells. Where only now
 * lies beyond it, nobody may have written for so long, and that tells nothing; nor does a leap of hours on a phone
 * that began with the entries before the step, where the other far end cannot be seen: pauses of hours are common.
 */
function doubtOf(seen: {
  ahead: ClockSide;
  behind: ClockSide | null;
  backMs: number;
  isFuture: boolean;
  hasNext: boolean;
}): ClockDoubt {
  const { ahead, behind, backMs, isFuture, hasNext } = seen;
  if (behind === null) return { backMs, sides: [ahead], told: true };
  const leapt = (farMs: number | null) => farMs !== null && Math.abs(farMs) >= backMs / 2;
  const wasAhead = isFuture || leapt(ahead.leastMs);
  const wasBehind = !isFuture && leapt(behind.mostMs);
  const sides: [ClockSide, ClockSide] = wasBehind && !wasAhead ? [behind, ahead] : [ahead, behind];
  return {
    backMs,
    sides,
    told: wasAhead ? !wasBehind : wasBehind && hasNext && (ahead.leastMs !== null || backMs >= DAY_MS),
  };
}
