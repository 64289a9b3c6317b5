/** Drying time with a chance of 10, 50 and 90 %; `null`: the chance that the target is ever reached is smaller. */
export type DryingDays = {
  readonly p10Days: number | null;
  readonly p50Days: number | null;
  readonly p90Days: number | null;
};

/** What has to happen before and after drying, in whole days each. */
export type StageDays = {
  readonly freezeDays: number;
  readonly thawDays: number;
  readonly fermentDays: number;
  readonly equaliseDays: number;
};

/** Whole days before the date on which all is to be done; 0 is that date. */
export type StartDays = {
  readonly freezeDay: number;
  readonly thawDay: number;
  readonly stuffDay: number;
  readonly hangDay: number;
  readonly downDay: number;
};

export type BackSchedule = {
  /** Begun here, nine in ten are done in time. */
  readonly early: StartDays | null;
  /** Begun here, it is as likely as not. */
  readonly likely: StartDays | null;
  /** Begun here, one in ten is done in time: the last chance. */
  readonly last: StartDays | null;
};

/**
 * From a date backwards through equalising, drying, the ferment and freezing.
 * The wrong tool for a promise: drying time is an estimate with a window.
 *
 * down = equalise; hang = down + drying; stuff = hang + ferment; thaw = stuff + thaw; freeze = thaw + freezing; parts of a
 * day are rounded up.
 * Units: days; result whole days before the date.
 * Source: arithmetic.
 * @throws RangeError if a stage is negative or not a number.
 * @example backSchedule({ freezeDays: 20, thawDays: 2, fermentDays: 2, equaliseDays: 7 }, { p10Days: 38, p50Days: 52, p90Days: null }).likely // => { freezeDay: 83, thawDay: 63, stuffDay: 61, hangDay: 59, downDay: 7 }
 */
export function backSchedule(stages: StageDays, drying: DryingDays): BackSchedule {
  for (const [name, days] of Object.entries(stages))
    if (!(days >= 0 && days < 3650))
      throw new RangeError(`backSchedule: ${name} requires 0 to 3650 days, got ${days}`);
  return {
    early: startDays(stages, drying.p90Days),
    likely: startDays(stages, drying.p50Days),
    last: startDays(stages, drying.p10Days),
  };
}

function startDays(stages: StageDays, dryingDays: number | null): StartDays | null {
  if (dryingDays === null) return null;
  if (!(dryingDays >= 0))
    throw new RangeError(`backSchedule: drying requires 0 days or more, got ${dryingDays}`);
  const downDay = Math.ceil(stages.equaliseDays);
  const hangDay = downDay + Math.ceil(dryingDays);
  const stuffDay = hangDay + Math.ceil(stages.fermentDays);
  const thawDay = stuffDay + Math.ceil(stages.thawDays);
  return { freezeDay: thawDay + Math.ceil(stages.freezeDays), thawDay, stuffDay, hangDay, downDay };
}
