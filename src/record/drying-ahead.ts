/** How long a batch that is not begun yet should dry: the same belief as for one that hangs, before any weighing. */
import type { DryingDays } from '#core/drying/back-schedule.ts';
import { dryingPace } from '#core/drying/clock.ts';
import { type DryingEvidence, informedPrior } from '#core/drying/evidence.ts';
import { daysToTarget } from '#core/drying/forecast.ts';
import { dryingPosterior } from '#core/drying/posterior.ts';
import { dryingPrior } from '#core/drying/prior.ts';
import { type MixFractions, mixAw } from '#core/drying/water-activity.ts';

export type Wish = {
  readonly mix: MixFractions;
  readonly diameterMm: number;
  readonly targetLossPct: number;
  readonly chamberC: number;
  readonly humidityPct: number;
};

/** Days in steady air, by chance, as own batches dried; all null where such air dries nothing. */
export function dryingAhead(wish: Wish, history: readonly DryingEvidence[] = []): DryingDays {
  const { mix, diameterMm, targetLossPct, chamberC, humidityPct } = wish;
  const pace = dryingPace({ startAw: mixAw({ mix, lossPct: 0 }), humidityPct, chamberC });
  if (!(pace > 0)) return { p10Days: null, p50Days: null, p90Days: null };
  const prior = dryingPrior({ diameterMm, mix, humidityPct });
  const own = informedPrior({ prior, siblings: [], earlierBatches: history });
  const posterior = dryingPosterior({ prior: own, weighIns: [] });
  const target = daysToTarget(posterior, { targetLossPct });
  const inDays = (referenceDays: number | null) => (referenceDays === null ? null : referenceDays / pace);
  return {
    p10Days: inDays(target.p10Days),
    p50Days: inDays(target.p50Days),
    p90Days: inDays(target.p90Days),
  };
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
  { leftDays, history = [] }: { leftDays: number; history?: readonly DryingEvidence[] },
): StillMakesIt {
  const inTime = (changed: Partial<Wish>) => {
    const { p50Days } = dryingAhead({ ...wish, ...changed }, history);
    return p50Days !== null && Math.ceil(p50Days) <= leftDays;
  };
  const steps = (high: number, low: number, value: number) =>
    Array.from({ length: Math.max(0, Math.ceil((high - low) / value)) }, (_, at) => high - (at + 1) * value);
  return {
    diameterMm: firstOf(steps(wish.diameterMm, LEAST_MM, STEP_MM), (diameterMm) => inTime({ diameterMm })),
    targetLossPct: firstOf(steps(wish.targetLossPct, LEAST_LOSS_PCT, 1), (targetLossPct) =>
      inTime({ targetLossPct }),
    ),
  };
}

/** The first that holds, where all after one that holds do so too: thinner, or less to lose, is never later. */
function firstOf(values: readonly number[], holds: (value: number) => boolean): number | null {
  let [from, to] = [0, values.length];
  while (from < to) {
    const middle = Math.floor((from + to) / 2);
    if (holds(values[middle] ?? 0)) to = middle;
    else from = middle + 1;
  }
  return values[from] ?? null;
}
