import { lossChance } from '#core/drying/forecast.ts';
import { risingRoot } from '#core/drying/normal.ts';
import type { DryingPosterior } from '#core/drying/posterior.ts';
import type { TargetWindow } from '#core/drying/radial-fan.ts';

const EARLIEST_DAYS = 1e-5;
const LATEST_DAYS = 1e7;

/** When the curve's posterior passes a target, in days on the reference clock: what it is held against check values by. */
export function daysToTarget(
  posterior: DryingPosterior,
  { targetLossPct }: { targetLossPct: number },
): TargetWindow {
  const by = (lnDays: number) =>
    lossChance(posterior, { thetaDays: Math.exp(lnDays), lossPct: targetLossPct });
  const [low, high] = [Math.log(EARLIEST_DAYS), Math.log(LATEST_DAYS)];
  const everFraction = by(high);
  const quantile = (level: number) => {
    const lnDays = level < everFraction ? risingRoot(by, { level, low, high, tolerance: 1e-7 }) : null;
    return lnDays === null ? null : Math.exp(lnDays);
  };
  return {
    p10Days: quantile(0.1),
    p50Days: quantile(0.5),
    p90Days: quantile(0.9),
    neverFraction: 1 - everFraction,
  };
}
