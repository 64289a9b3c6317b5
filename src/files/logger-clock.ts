/**
 * From what a logger's clock showed to instants. Where clocks were put forward or back while it ran, either the logger's was too
 * (`follows`) or it went on as it was (`stays`). Which of the two is read from the steps between rows, if only one of them makes
 * the steps regular; else it is asked.
 */
import { HOUR_MS } from './logger-when.ts';
import { type OffsetChange, type OffsetMsAt, offsetChanges } from './zone-offset.ts';

export type ClockHabit = 'follows' | 'stays';
export type ClockChoices = {
  readonly clock?: ClockHabit | undefined;
  /** Which of two instants is meant by a time that the clocks showed twice and the file shows once. */
  readonly repeated?: 'earlier' | 'later' | undefined;
};
export type ClockQuestion =
  | {
      readonly code: 'clock';
      readonly row: number;
      readonly changeMs: number;
      readonly options: readonly ClockHabit[];
    }
  | {
      readonly code: 'repeated-hour';
      readonly row: number;
      readonly options: readonly ('earlier' | 'later')[];
    };
export type ClockRefusal = { readonly row: number; readonly code: 'no-such-hour' | 'repeated-hour-unclear' };

/** A row by the time that it shows, taken as if it were UTC. */
export type Wall = { readonly row: number; readonly wallMs: number };

export type Clocked =
  | { state: 'known'; atMs: number[]; clock: ClockHabit | 'unchanged' }
  | { state: 'asked'; question: ClockQuestion }
  | { state: 'refused'; refusal: ClockRefusal };

/** No zone is further from UTC than this. */
const FURTHEST_MS = 26 * HOUR_MS;
/** A logger's steps are alike within a fifth, and within a quarter of what clocks were moved by. */
const STEP_TOLERANCE = 0.2;
const SHIFT_TOLERANCE = 0.25;

/** Rows in the order in which they were written, the oldest first. */
export function clockTimes(rows: readonly Wall[], offsetAt: OffsetMsAt, choices: ClockChoices): Clocked {
  const firstMs = rows.reduce((least, { wallMs }) => Math.min(least, wallMs), Number.POSITIVE_INFINITY);
  const lastMs = rows.reduce((most, { wallMs }) => Math.max(most, wallMs), Number.NEGATIVE_INFINITY);
  const changes = offsetChanges(offsetAt, { fromMs: firstMs - FURTHEST_MS, toMs: lastMs + FURTHEST_MS })
    .map((change) => changeIn(rows, change))
    .filter(({ lowMs, highMs }) => firstMs < highMs && lastMs >= lowMs);
  const [first] = changes;
  if (!first) return shifted(rows, instantsOf(firstMs, offsetAt)[0] ?? firstMs, firstMs, 'unchanged');
  const clock = choices.clock ?? habitOf(changes);
  if (clock === 'follows') return followed(rows, changes, offsetAt, choices);
  if (clock === 'stays') return stayed(rows, firstMs, offsetAt, choices);
  const canFollow = changes.every(({ follows }) => follows !== null);
  const options: ClockHabit[] = canFollow ? ['follows', 'stays'] : ['stays'];
  return {
    state: 'asked',
    question: { code: 'clock', row: first.row, changeMs: first.change.atMs, options },
  };
}

/** A change of offset and the rows about it. */
type ChangeIn = {
  readonly change: OffsetChange;
  /** The times that clocks showed twice (`back`), or never. */
  readonly lowMs: number;
  readonly highMs: number;
  readonly back: boolean;
  /** The first row that it touches. */
  readonly row: number;
  /** Rows within the times shown twice, and where among them time steps back. */
  readonly within: readonly Wall[];
  readonly stepsBack: readonly number[];
  /** How many of `within` come before the change, each count that makes the steps regular; null when rows cannot follow it. */
  readonly follows: readonly number[] | null;
  readonly stays: boolean;
};

function changeIn(rows: readonly Wall[], change: OffsetChange): ChangeIn {
  const { atMs, beforeMs, afterMs } = change;
  const lowMs = atMs + Math.min(beforeMs, afterMs);
  const highMs = atMs + Math.max(beforeMs, afterMs);
  const back = afterMs < beforeMs;
  const start = rows.findIndex(({ wallMs }) => wallMs >= lowMs);
  const end = rows.findIndex(({ wallMs }, at) => at >= start && wallMs >= highMs);
  const near = start < 0 ? [] : rows.slice(Math.max(0, start - 1), end < 0 ? rows.length : end + 1);
  const within = near.filter(({ wallMs }) => wallMs >= lowMs && wallMs < highMs);
  const stepsBack = within.flatMap(({ wallMs }, at) =>
    at > 0 && wallMs <= (within[at - 1]?.wallMs ?? 0) ? [at] : [],
  );
  const stepMs = usualStep(rows.map(({ wallMs }) => wallMs));
  const place = new Map(within.map((row, at) => [row, at]));
  const instant = (row: Wall, counted: number): number => {
    const at = place.get(row);
    const before = at === undefined ? row.wallMs < lowMs : at < counted;
    return row.wallMs - (before ? beforeMs : afterMs);
  };
  const toleranceMs = Math.min((stepMs ?? 0) * STEP_TOLERANCE, (highMs - lowMs) * SHIFT_TOLERANCE);
  const even = (timeOf: (row: Wall) => number) => isEven(near.map(timeOf), { stepMs, toleranceMs });
  const counts =
    stepsBack.length === 0 ? [...new Set([0, within.length])] : stepsBack.length === 1 ? stepsBack : [];
  return {
    change,
    lowMs,
    highMs,
    back,
    row: rows[start]?.row ?? 1,
    within,
    stepsBack,
    follows:
      !back && within.length > 0 ? null : counts.filter((counted) => even((row) => instant(row, counted))),
    stays: even(({ wallMs }) => wallMs),
  };
}

function habitOf(changes: readonly ChangeIn[]): ClockHabit | null {
  const habits = changes.map(({ follows, stays }) => {
    const canFollow = follows !== null && follows.length > 0;
    return canFollow === stays ? null : stays ? 'stays' : 'follows';
  });
  const [habit = null] = habits;
  return habits.every((each) => each === habit) ? habit : null;
}

function followed(
  rows: readonly Wall[],
  changes: readonly ChangeIn[],
  offsetAt: OffsetMsAt,
  choices: ClockChoices,
): Clocked {
  const before = new Map<number, boolean>();
  for (const { back, within, stepsBack, follows } of changes) {
    if (!back || within.length === 0) continue;
    const row = within[stepsBack[1] ?? 0]?.row ?? 1;
    if (stepsBack.length > 1) return { state: 'refused', refusal: { row, code: 'repeated-hour-unclear' } };
    const chosen = choices.repeated && (choices.repeated === 'earlier' ? within.length : 0);
    const count = stepsBack[0] ?? (follows?.length === 1 ? follows[0] : chosen);
    if (count === undefined) return askedWhich(row);
    for (const [at, each] of within.entries()) before.set(each.row, at < count);
  }
  const atMs: number[] = [];
  for (const { row, wallMs } of rows) {
    const instants = instantsOf(wallMs, offsetAt);
    const at = before.get(row) === false ? instants.at(-1) : instants[0];
    if (at === undefined) return { state: 'refused', refusal: { row, code: 'no-such-hour' } };
    atMs.push(at);
  }
  return { state: 'known', atMs, clock: 'follows' };
}

/** The clock was set right when the logger was started, and not again. */
function stayed(
  rows: readonly Wall[],
  firstMs: number,
  offsetAt: OffsetMsAt,
  choices: ClockChoices,
): Clocked {
  const row = rows.find(({ wallMs }) => wallMs === firstMs)?.row ?? 1;
  const [earlierMs, laterMs] = instantsOf(firstMs, offsetAt);
  if (earlierMs === undefined) return { state: 'refused', refusal: { row, code: 'no-such-hour' } };
  if (laterMs !== undefined && !choices.repeated) return askedWhich(row);
  return shifted(rows, choices.repeated === 'later' ? (laterMs ?? earlierMs) : earlierMs, firstMs, 'stays');
}

function shifted(rows: readonly Wall[], atMs: number, wallMs: number, clock: 'unchanged' | 'stays'): Clocked {
  return { state: 'known', atMs: rows.map((row) => row.wallMs - wallMs + atMs), clock };
}

function askedWhich(row: number): Clocked {
  return { state: 'asked', question: { code: 'repeated-hour', row, options: ['earlier', 'later'] } };
}

/** None where clocks skipped this time, two where they showed it twice. */
function instantsOf(wallMs: number, offsetAt: OffsetMsAt): number[] {
  const offsets = new Set([offsetAt(wallMs - FURTHEST_MS), offsetAt(wallMs + FURTHEST_MS)]);
  return [...offsets]
    .map((offsetMs) => wallMs - offsetMs)
    .filter((atMs) => atMs + offsetAt(atMs) === wallMs)
    .sort((a, b) => a - b);
}

/** The middle one of the steps between times; null when there is none. */
export function usualStep(times: readonly number[]): number | null {
  const steps = times.map((timeMs, at) => timeMs - (times[at - 1] ?? timeMs)).filter((stepMs) => stepMs > 0);
  return steps.sort((a, b) => a - b)[Math.floor((steps.length - 1) / 2)] ?? null;
}

type Even = { readonly stepMs: number | null; readonly toleranceMs: number };

function isEven(times: readonly number[], { stepMs, toleranceMs }: Even): boolean {
  if (stepMs === null || times.length < 2) return false;
  const steps = times.slice(1).map((timeMs, at) => timeMs - (times[at] ?? timeMs));
  return steps.every((each) => Math.abs(each - stepMs) <= toleranceMs);
}
