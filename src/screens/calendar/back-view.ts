import { type BackSchedule, backSchedule, type StartDays } from '#core/drying/back-schedule.ts';
import { freezingTable } from '#core/rules/freezing.ts';
import type { PlanAhead, StillMakesIt, Wish } from '#record/drying-ahead.ts';
import type { Place } from '#record/place.ts';
import { type CalendarDay, daysBefore, daysBetween, noonMs } from '#words/days.ts';
import type { Words } from '#words/en.ts';
import { decimal, joined, temperature } from '#words/format.ts';
import type { Said } from '#words/said.ts';
import { type Lot, roomFor } from './lot-view.ts';

/** Common practice: a day out of the freezer, two days of ferment, a week to even out. */
const THAW_DAYS = 2;
const FERMENT_DAYS = 2;
const EQUALISE_DAYS = 7;
/** The thickest that the first column of the table of the US covers. */
const PORK_MM = 150;
const DAY_HOURS = 24;
/** Own batches that change less than this dried as was to be expected. */
const SAME_SHARE = 0.03;

export type BackView = {
  readonly schedule: BackSchedule;
  readonly sentence: Said;
  readonly rows: readonly { key: keyof BackSchedule; title: string; note: string; steps: string }[];
  readonly room: readonly Said[];
  /** Null while it is in time and has room as it is. */
  readonly still: readonly string[] | null;
  readonly history: string | null;
  readonly counted: string;
};

export type BackWish = {
  readonly date: CalendarDay;
  readonly today: CalendarDay;
  readonly wish: Wish;
  readonly plan: PlanAhead;
  readonly freezeDays: number;
  readonly lot: Lot | null;
};

/** The warmest row of the table: what a household freezer holds. Null where the rule set has none. */
export function freezing(ruleSet: Place['ruleSet']): { days: number; atC: number } | null {
  const row = ruleSet && freezingTable({ ruleSet, method: 'room', thicknessMm: PORK_MM })?.rows[0];
  return row ? { days: Math.ceil(row.hours / DAY_HOURS), atC: row.atC } : null;
}

/** Days before and after drying. */
function stagesOf(freezeDays: number) {
  return {
    freezeDays,
    thawDays: freezeDays > 0 ? THAW_DAYS : 0,
    fermentDays: FERMENT_DAYS,
    equaliseDays: EQUALISE_DAYS,
  };
}

/** What is left for drying, if all begins today. */
export function leftForDrying({
  date,
  today,
  freezeDays,
}: Pick<BackWish, 'date' | 'today' | 'freezeDays'>): number {
  const others = Object.values(stagesOf(freezeDays)).reduce((sum, days) => sum + days, 0);
  return daysBetween(today, date) - others;
}

export function backView(given: BackWish, { place, words }: { place: Place; words: Words }): BackView {
  const { date, today, wish, plan, freezeDays, lot } = given;
  const { back } = words.calendar;
  const { drying } = plan;
  const schedule = backSchedule(stagesOf(freezeDays), drying);
  const daysLeft = daysBetween(today, date);
  const day = (days: number) => words.dates.fullDay(noonMs(daysBefore(date, days)), '+00:00');
  const begin = (start: StartDays | null) => start && day(start.freezeDay);
  const { early, likely, last } = schedule;
  const late = likely === null || likely.freezeDay > daysLeft;
  const room = likely && lot ? roomFor(lot, { date, today, likely, drying, place, words }) : null;
  const still = [...(plan.still ? stillText(plan.still, place, words) : []), ...(room?.smaller ?? [])];
  return {
    schedule,
    sentence:
      last === null || likely === null
        ? back.never
        : late
          ? back.passed({ likely: day(likely.freezeDay), last: begin(last) })
          : back.sentence({ likely: day(likely.freezeDay), early: begin(early), last: begin(last) }),
    rows: (['early', 'likely', 'last'] as const).flatMap((key) => {
      const start = schedule[key];
      return start === null
        ? []
        : [
            {
              key,
              title: `${back.rows[key]}: ${day(start.freezeDay)}`,
              note: back.rowNote[key],
              steps: stepsText(start, day, words),
            },
          ];
    }),
    room: room?.sentences ?? [],
    still: late || room?.isShort ? (still.length > 0 ? still : [back.nothing]) : null,
    history: historyText(plan, place, words),
    counted: back.counted({
      ferment: FERMENT_DAYS,
      equalise: EQUALISE_DAYS,
      air: `${joined(temperature(wish.chamberC, place, 0))}, ${decimal(wish.humidityPct, 0, place)}\u00a0%`,
    }),
  };
}

function stepsText(start: StartDays, day: (days: number) => string, { calendar: { back } }: Words): string {
  const frozen = start.freezeDay !== start.thawDay;
  return back.steps({
    freeze: frozen ? day(start.freezeDay) : null,
    thaw: frozen ? day(start.thawDay) : null,
    stuff: day(start.stuffDay),
    hang: day(start.hangDay),
    down: day(start.downDay),
  });
}

function stillText(
  { diameterMm, targetLossPct }: StillMakesIt,
  place: Place,
  { calendar: { back } }: Words,
): string[] {
  return [
    ...(diameterMm === null ? [] : [back.thinner(`${decimal(diameterMm, 0, place)}\u00a0mm`)]),
    ...(targetLossPct === null ? [] : [back.lower(`${decimal(targetLossPct, 0, place)}\u00a0%`)]),
  ];
}

/** How much own batches move the likely date; null where there are none, or no date to move. */
function historyText(
  { drying: { p50Days }, aloneDays, batches }: PlanAhead,
  place: Place,
  words: Words,
): string | null {
  if (batches === 0 || p50Days === null || aloneDays === null) return null;
  const share = p50Days / aloneDays - 1;
  return words.calendar.back.history({
    batches,
    by: `${decimal(100 * Math.abs(share), 0, place)}\u00a0%`,
    way: Math.abs(share) < SAME_SHARE ? 'same' : share > 0 ? 'longer' : 'shorter',
  });
}
