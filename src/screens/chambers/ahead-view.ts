import { UNDER_AW_POINTS } from '#core/air/humidity-to-set.ts';
import type { Batch } from '#record/batch.ts';
import type { ChamberAir } from '#record/chamber-air.ts';
import {
  addedGPerDay,
  loads,
  mostCarried,
  WEEKS_AHEAD_DAYS,
  type WeekAhead,
  weeksAhead,
} from '#record/chamber-figures.ts';
import type { BatchAhead } from '#record/drying-batch.ts';
import type { Place } from '#record/place.ts';
import type { Words } from '#words/en.ts';
import { decimal, joined, mass } from '#words/format.ts';
import type { Said } from '#words/said.ts';

export type ChamberAhead = {
  readonly sentence: Said;
  readonly wetted: string | null;
  readonly weeks: readonly { key: number; when: string; humidity: string; water: string }[];
  readonly carried: Said;
  readonly over: Said | null;
  readonly source: string;
  /** What so much more would mean. */
  readonly withMore: (addedG: number) => { sentence: Said; verdict: Said | null } | null;
};

const WEEK_DAYS = 7;

/** What hangs here, and what is expected of each; null while nothing hangs or nothing can be expected. `ahead` undefined: being worked out. */
export function chamberAhead({
  inside,
  everInside,
  air,
  place,
  nowMs,
  zone,
  words,
}: {
  inside: readonly { readonly batch: Batch; readonly ahead: BatchAhead | null | undefined }[];
  everInside: readonly Batch[];
  air: ChamberAir;
  place: Place;
  nowMs: number;
  zone: string;
  words: Words;
}): ChamberAhead | null {
  const say = words.chamberAhead;
  const grams = (gPerDay: number, rounding: 'up' | 'down' | 'nearest' = 'nearest') =>
    joined(mass(gPerDay, 1, place, rounding));
  const most = mostCarried(everInside);
  const carried = most
    ? say.carried(grams(most.gPerDay, 'down'), words.dates.day(most.untilMs, zone, nowMs))
    : say.carriedNone;
  const { text, standing } = words.workings.source(UNDER_AW_POINTS.source);
  const told = { carried, source: say.source(`${text} (${standing})`) };
  if (inside.some(({ ahead }) => ahead === undefined))
    return {
      ...told,
      sentence: say.working,
      wetted: null,
      weeks: WEEKS_AHEAD_DAYS.map((days) => ({
        key: days,
        when: say.when(days / WEEK_DAYS),
        humidity: say.unknown,
        water: say.unknown,
      })),
      over: null,
      withMore: () => null,
    };
  const weeks = weeksAhead(loads(inside), nowMs);
  const [now] = weeks;
  if (!now) return null;
  const humidity = ({ humidity: { lowPct, highPct } }: WeekAhead) =>
    [lowPct, highPct].map((pct) => decimal(pct, 0, place));
  const [low = '', high = ''] = humidity(now);
  const lastPct = air.points.findLast(({ rhPct, atMs }) => rhPct !== null && atMs <= nowMs)?.rhPct ?? null;
  const overBy = (gPerDay: number) =>
    most !== null && gPerDay > most.gPerDay ? say.over(`~${grams(gPerDay - most.gPerDay)}`) : null;
  return {
    ...told,
    sentence: say.sentence({
      low: `~${low}`,
      high: `${high}\u00a0%`,
      now: lastPct === null ? null : `${decimal(lastPct, 0, place)}\u00a0%`,
      water: `~${grams(now.waterGPerDay)}`,
    }),
    wetted: now.humidity.pieces > 0 ? say.wetted(now.humidity.pieces) : null,
    weeks: weeks.map((week) => ({
      key: week.aheadDays,
      when: say.when(week.aheadDays / WEEK_DAYS),
      humidity: `~${humidity(week).join(' to ')}\u00a0%`,
      water: `~${grams(week.waterGPerDay)}`,
    })),
    over: overBy(now.waterGPerDay),
    withMore: (addedG) => {
      const added = addedGPerDay(everInside[0] ?? null, addedG);
      if (added === null) return null;
      const total = now.waterGPerDay + added;
      return {
        sentence: say.more.sentence({ added: `~${grams(added)}`, total: `~${grams(total)}` }),
        verdict: most === null ? null : (overBy(total) ?? say.more.fits),
      };
    },
  };
}
