/** When each reading was: by what the cells or the head say of their zone, else by the clocks of the place. */
import {
  type ClockChoices,
  type ClockHabit,
  type ClockQuestion,
  clockTimes,
  usualStep,
} from './logger-clock.ts';
import type { RawReading } from './logger-row.ts';
import type { Reading } from './logger-series.ts';
import { HOUR_MS } from './logger-when.ts';
import type { OffsetMsAt } from './zone-offset.ts';

/** A reading with the time that it shows, taken as if it were UTC. */
export type Shown = RawReading & { readonly wallMs: number };

export type InstantCode = 'mixed-zones' | 'no-such-hour' | 'repeated-hour-unclear';

export type Instants =
  | {
      state: 'known';
      readings: readonly Reading[];
      clock: ClockHabit | 'unchanged' | 'told';
      newestFirst: boolean;
      /** Rows that only say again what the row before said. */
      repeats: number;
    }
  | { state: 'asked'; question: ClockQuestion }
  | { state: 'refused'; row: number; code: InstantCode };

export type Zone = {
  /** What the head says the times are ahead of UTC. */
  readonly toldMs: number | null;
  readonly offsetAt: OffsetMsAt;
};

export function instantsOf(
  inFile: readonly Shown[],
  { toldMs, offsetAt }: Zone,
  choices: ClockChoices,
): Instants {
  const newestFirst = isNewestFirst(inFile);
  const shown = withoutRepeats(newestFirst ? inFile.toReversed() : inFile);
  const repeats = inFile.length - shown.length;
  const [first] = inFile;
  const mixed = inFile.find(({ offsetMs }) => (offsetMs === null) !== (first?.offsetMs === null));
  if (mixed) return { state: 'refused', row: mixed.row, code: 'mixed-zones' };
  if (toldMs !== null || first?.offsetMs !== null) {
    const readings = shown.map((each) => readingAt(each, each.wallMs - (each.offsetMs ?? toldMs ?? 0)));
    return { state: 'known', readings, clock: 'told', newestFirst, repeats };
  }
  const clocked = clockTimes(shown, offsetAt, choices);
  if (clocked.state === 'asked') return clocked;
  if (clocked.state === 'refused') return { state: 'refused', ...clocked.refusal };
  const readings = shown.map((each, at) => readingAt(each, clocked.atMs[at] ?? Number.NaN));
  return { state: 'known', readings, clock: clocked.clock, newestFirst, repeats };
}

function readingAt({ row, valueDeg, rhPct }: Shown, atMs: number): Reading {
  return { row, atMs, valueDeg, rhPct };
}

/** Of readings an hour or more apart, two that are alike may be the hour that clocks showed twice. */
function withoutRepeats(shown: readonly Shown[]): readonly Shown[] {
  const stepMs = usualStep(shown.map(({ wallMs }) => wallMs));
  if (stepMs !== null && stepMs >= HOUR_MS) return shown;
  return shown.filter((each, at) => {
    const before = shown[at - 1];
    return before?.wallMs !== each.wallMs || before.valueDeg !== each.valueDeg || before.rhPct !== each.rhPct;
  });
}

function isNewestFirst(shown: readonly Shown[]): boolean {
  const steps = shown.slice(1).map(({ wallMs }, at) => Math.sign(wallMs - (shown[at]?.wallMs ?? wallMs)));
  return steps.reduce((sum, step) => sum + step, 0) < 0;
}
