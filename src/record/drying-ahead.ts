/** How long a batch that is not begun yet should dry: by the model of one that hangs, in air as a dial shows it. */
import type { DryingDays } from '#core/drying/back-schedule.ts';
import { type Evidence, offsetBelief } from '#core/drying/belief.ts';
import { DIAL_SD_PCT } from '#core/drying/implied-humidity.ts';
import { fanWindow, radialFan } from '#core/drying/radial-fan.ts';
import { radialSpread } from '#core/drying/radial-fit.ts';
import type { MixFractions } from '#core/drying/water-activity.ts';
import type { Batch } from './batch.ts';
import { dryingHistory } from './drying-history.ts';

export type Wish = {
  readonly mix: MixFractions;
  readonly diameterMm: number;
  readonly targetLossPct: number;
  readonly chamberC: number;
  readonly humidityPct: number;
};

/** What is asked of a plan. Plain: it may be handed to another thread. */
export type PlanGiven = {
  readonly wish: Wish;
  /** The maker's own, whose weighings count; from the chamber, where it is known. */
  readonly batches: readonly Batch[];
  readonly nowMs: number;
  /** For drying alone, until the wished date. */
  readonly leftDays: number;
};

export type PlanAhead = {
  readonly drying: DryingDays;
  /** As likely as not by diameter, mix and air alone; null where the chance is smaller within the days that anyone plans. */
  readonly aloneDays: number | null;
  /** Own batches that moved it. */
  readonly batches: number;
  /** Null where it is as likely as not in time as wished. */
  readonly still: StillMakesIt | null;
};

export function planAhead({ batches, nowMs, ...asked }: PlanGiven): PlanAhead {
  return planFrom({ ...asked, history: dryingHistory(batches, nowMs) });
}

/** `history`: one a batch of the maker's own. */
export function planFrom({
  wish,
  leftDays,
  history,
}: Pick<PlanGiven, 'wish' | 'leftDays'> & { readonly history: readonly Evidence[] }): PlanAhead {
  const drying = dryingAhead(wish, history);
  return {
    drying,
    aloneDays: history.length === 0 ? drying.p50Days : dryingAhead(wish).p50Days,
    batches: history.length,
    still: isInTime(drying, leftDays) ? null : stillMakesIt(wish, { leftDays, history }),
  };
}

/** Days in steady air, by chance, as own batches dried. What the ferment takes off already is not counted. */
export function dryingAhead(
  { mix, diameterMm, targetLossPct, chamberC, humidityPct }: Wish,
  earlierBatches: readonly Evidence[] = [],
): DryingDays {
  const doubt = { humiditySdPct: DIAL_SD_PCT };
  const fan = radialFan({
    piece: { diameterMm, mix, air: [{ fromDay: 0, chamberC, humidityPct }], hungDay: 0, ...doubt },
    believed: offsetBelief({ spread: radialSpread(doubt), siblings: [], earlierBatches }),
    fromDay: 0,
    targetLossPct,
  });
  const { p10Days, p50Days, p90Days } = fanWindow(fan, { targetLossPct });
  return { p10Days, p50Days, p90Days };
}

function isInTime({ p50Days }: DryingDays, leftDays: number): boolean {
  return p50Days !== null && Math.ceil(p50Days) <= leftDays;
}

const STEP_MM = 2;
const LEAST_MM = 30;
const LEAST_LOSS_PCT = 25;

export type StillMakesIt = {
  /** The thickest casing with which it is as likely as not in time; null if none is. */
  readonly diameterMm: number | null;
  readonly targetLossPct: number | null;
};

/** What would still be as likely as not in time, each change by itself. `leftDays`: for drying alone. */
export function stillMakesIt(
  wish: Wish,
  { leftDays, history = [] }: { leftDays: number; history?: readonly Evidence[] },
): StillMakesIt {
  const steps = (high: number, low: number, value: number) =>
    Array.from({ length: Math.max(0, Math.floor((high - low) / value)) }, (_, at) => high - (at + 1) * value);
  const makesIt = (changed: Partial<Wish>) =>
    isInTime(dryingAhead({ ...wish, ...changed }, history), leftDays);
  return {
    diameterMm: firstOf(steps(wish.diameterMm, LEAST_MM, STEP_MM), (diameterMm) => makesIt({ diameterMm })),
    targetLossPct: firstOf(steps(wish.targetLossPct, LEAST_LOSS_PCT, 1), (targetLossPct) =>
      makesIt({ targetLossPct }),
    ),
  };
}

/** One that holds, and the one before it does not; the first of all, where thinner, or less to lose, is never later. */
function firstOf(values: readonly number[], holds: (value: number) => boolean): number | null {
  let [from, to] = [0, values.length];
  while (from < to) {
    const middle = Math.floor((from + to) / 2);
    if (holds(values[middle] ?? 0)) to = middle;
    else from = middle + 1;
  }
  return values[from] ?? null;
}
