/** How far a place's clocks are ahead of UTC at an instant, by the name of its zone. */
export type OffsetMsAt = (atMs: number) => number;

/** No zone has changed its offset but at a quarter of an hour. */
const STEP_MS = 15 * 60_000;

/** @throws RangeError for a name that is no zone. */
export function offsetOf(zone: string | OffsetMsAt): OffsetMsAt {
  if (typeof zone === 'function') return zone;
  const parts = {
    year: 'numeric',
    month: 'numeric',
    day: 'numeric',
    hour: 'numeric',
    minute: 'numeric',
    second: 'numeric',
  } as const;
  const format = new Intl.DateTimeFormat('en-US', { ...parts, timeZone: zone, hourCycle: 'h23' });
  const known = new Map<number, number>();
  return (atMs) => {
    const stepMs = Math.floor(atMs / STEP_MS) * STEP_MS;
    const offsetMs = known.get(stepMs) ?? wallOf(format, stepMs) - stepMs;
    known.set(stepMs, offsetMs);
    return offsetMs;
  };
}

function wallOf(format: Intl.DateTimeFormat, atMs: number): number {
  const part = Object.fromEntries(format.formatToParts(atMs).map(({ type, value }) => [type, Number(value)]));
  const { year = 0, month = 0, day = 0, hour = 0, minute = 0, second = 0 } = part;
  return Date.UTC(year, month - 1, day, hour, minute, second);
}

export type OffsetChange = { readonly atMs: number; readonly beforeMs: number; readonly afterMs: number };

const DAY_MS = 24 * 3_600_000;

/** Where clocks were put forward or back between two instants. A zone does so at most once a day. */
export function offsetChanges(
  offsetAt: OffsetMsAt,
  { fromMs, toMs }: { fromMs: number; toMs: number },
): OffsetChange[] {
  const changes: OffsetChange[] = [];
  for (let lowMs = fromMs; lowMs < toMs; lowMs += DAY_MS) {
    const highMs = Math.min(lowMs + DAY_MS, toMs);
    if (offsetAt(lowMs) !== offsetAt(highMs)) changes.push(changeBetween(offsetAt, lowMs, highMs));
  }
  return changes;
}

function changeBetween(offsetAt: OffsetMsAt, fromMs: number, toMs: number): OffsetChange {
  const beforeMs = offsetAt(fromMs);
  let [lowMs, highMs] = [fromMs, toMs];
  while (highMs - lowMs > 1) {
    const middleMs = Math.floor((lowMs + highMs) / 2);
    if (offsetAt(middleMs) === beforeMs) lowMs = middleMs;
    else highMs = middleMs;
  }
  return { atMs: highMs, beforeMs, afterMs: offsetAt(toMs) };
}
