/** What would happen: one piece through the radial model, in air that nobody has set yet. An estimate, for comparing. */
import type { DryingDays } from '#core/drying/back-schedule.ts';
import { type AirStep, dryRadially, type RadialDay } from '#core/drying/radial.ts';
import type { MixFractions } from '#core/drying/water-activity.ts';
import { dryingAhead } from './drying-ahead.ts';

/** What is to be tried. */
export type AirWish = {
  readonly mix: MixFractions;
  readonly diameterMm: number;
  readonly targetLossPct: number;
  readonly chamberC: number;
  readonly humidityPct: number;
  readonly airMPerS: number;
  /** What a batch that hangs has behind it: its air, and its last weighing; from `fromDay` on the air above. */
  readonly past: {
    readonly air: readonly AirStep[];
    readonly fromDay: number;
    readonly lossPct: number | null;
  } | null;
};

export type RehearsalGiven = {
  readonly wish: AirWish;
  /** As fitted before, so that it is done once. */
  readonly diffusivity13M2PerS: number | null;
  /** Coarse while a slider moves: within half a point of loss. */
  readonly fine: boolean;
};

export type SliceAt = Pick<RadialDay, 'day' | 'lossPct' | 'meanAw' | 'skinAw' | 'centreAw' | 'diameterMm'> & {
  /** Water from rim to heart in equal steps of radius, 1 as fresh. */
  readonly waterShare: readonly number[];
};

export type Rehearsal = {
  readonly curve: readonly { readonly day: number; readonly lossPct: number }[];
  readonly slices: readonly SliceAt[];
  /** Null: not within the days told. */
  readonly targetDay: number | null;
  readonly lastDay: number;
  /** The largest difference of mean and skin in water activity still ahead, and when. */
  readonly rim: { readonly aw: number; readonly day: number };
  /** What chambers and mixes may make of it, by diameter and air alone; null while coarse, or for a batch that hangs. */
  readonly window: DryingDays | null;
  readonly diffusivity13M2PerS: number;
  /** False where no mix comes to the last weighing in the air shown. */
  readonly fits: boolean;
};

/** Best of three pairs on seven records, as `dryRadially`. */
const USUAL_M2_PER_S = 8e-11;
/** Mixes lie between a fifth and two and a half times that (published values, read: 1e-11 to 2.5e-10). */
const SLOWEST_M2_PER_S = 1.6e-11;
const FASTEST_M2_PER_S = 2e-10;
/** Further from the last weighing than this, no mix explains it: then the air was another than the one shown. */
const FITS_PCT = 1.5;
const HALVINGS = 9;
const LONGEST_DAYS = 120;
const COARSE = { rings: 12, stepHours: 12 };
const FINE = { rings: 30, stepHours: 2 };
const RADII = 12;

export function rehearse(given: RehearsalGiven): Rehearsal {
  const { wish, fine } = given;
  const { past, targetLossPct } = wish;
  const fromDay = past?.fromDay ?? 0;
  const diffusivity13M2PerS = given.diffusivity13M2PerS ?? fitted(wish);
  const lastDay = fromDay + LONGEST_DAYS;
  const days = run(wish, { diffusivity13M2PerS, lastDay, ...(fine ? FINE : COARSE) });
  const after = days.findIndex(({ day, lossPct }) => day >= fromDay && lossPct >= targetLossPct);
  const there = days[after];
  const before = days[after - 1];
  const targetDay =
    there === undefined
      ? null
      : before === undefined || before.day < fromDay
        ? there.day
        : before.day + (targetLossPct - before.lossPct) / (there.lossPct - before.lossPct);
  const ahead = days.filter(({ day }) => day > fromDay && day <= Math.ceil(targetDay ?? lastDay));
  const rim = ahead.reduce(
    (most, { day, meanAw, skinAw }) => (meanAw - skinAw > most.aw ? { aw: meanAw - skinAw, day } : most),
    { aw: 0, day: fromDay },
  );
  const endDay = Math.round(targetDay ?? lastDay);
  const shown = [fromDay + Math.min(7, (endDay - fromDay) / 3), (fromDay + endDay) / 2, endDay];
  return {
    curve: days.map(({ day, lossPct }) => ({ day, lossPct })),
    slices: [...new Set(shown.map(Math.round))].flatMap((day) => sliceOf(days[day], wish.mix)),
    targetDay,
    lastDay,
    rim,
    window: fine && past === null ? dryingAhead(wish) : null,
    diffusivity13M2PerS,
    fits: past?.lossPct == null || Math.abs((days[fromDay]?.lossPct ?? 0) - past.lossPct) <= FITS_PCT,
  };
}

function run(
  { mix, diameterMm, chamberC, humidityPct, airMPerS, past }: AirWish,
  {
    diffusivity13M2PerS,
    lastDay,
    rings,
    stepHours,
  }: { diffusivity13M2PerS: number; lastDay: number; rings: number; stepHours: number },
): RadialDay[] {
  const fromDay = past?.fromDay ?? 0;
  return dryRadially({
    diameterMm,
    mix,
    air: [
      ...(past?.air ?? []).filter((step) => step.fromDay < fromDay),
      { fromDay, chamberC, humidityPct, airMPerS },
    ],
    airMPerS: USUAL_AIR_M_PER_S,
    days: Array.from({ length: Math.floor(lastDay) + 1 }, (_, day) => day),
    diffusivity13M2PerS,
    rings,
    stepHours,
  });
}

/** Slow air, as in a chamber without a fan on the pieces (common practice: 0.1 to 0.3 m/s). */
export const USUAL_AIR_M_PER_S = 0.2;

/** The diffusivity with which the model comes to the last weighing; the usual one where nothing was weighed. */
function fitted(wish: AirWish): number {
  const { past } = wish;
  if (past === null || past.lossPct === null || past.fromDay < 1) return USUAL_M2_PER_S;
  let low = Math.log(SLOWEST_M2_PER_S);
  let high = Math.log(FASTEST_M2_PER_S);
  for (let halving = 0; halving < HALVINGS; halving++) {
    const middle = (low + high) / 2;
    const [end] = run(wish, {
      diffusivity13M2PerS: Math.exp(middle),
      lastDay: past.fromDay,
      ...COARSE,
    }).slice(-1);
    if ((end?.lossPct ?? 0) < past.lossPct) low = middle;
    else high = middle;
  }
  return Math.exp((low + high) / 2);
}

function sliceOf(day: RadialDay | undefined, { waterFraction }: MixFractions): SliceAt[] {
  if (day === undefined) return [];
  const freshKgPerKg = waterFraction / (1 - waterFraction);
  const rimMm = day.radiusMm.at(-1) ?? 0;
  const at = (radiusMm: number) => {
    const ring = day.radiusMm.findIndex((outerMm) => outerMm >= radiusMm);
    return (day.waterKgPerKg[ring < 0 ? day.waterKgPerKg.length - 1 : ring] ?? 0) / freshKgPerKg;
  };
  const waterShare = Array.from({ length: RADII }, (_, step) => at(rimMm * (1 - step / (RADII - 1))));
  const { lossPct, meanAw, skinAw, centreAw, diameterMm } = day;
  return [{ day: day.day, lossPct, meanAw, skinAw, centreAw, diameterMm, waterShare }];
}
