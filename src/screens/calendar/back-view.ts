import { type BackSchedule, backSchedule, type StartDays } from '#core/drying/back-schedule.ts';
import { freezingTable } from '#core/rules/freezing.ts';
import { dryingAhead, stillMakesIt, type Wish } from '#record/drying-ahead.ts';
import type { Place } from '#record/place.ts';
import { type CalendarDay, daysBefore, daysBetween, noonMs } from '#words/days.ts';
import type { Words } from '#words/en.ts';
import { decimal, joined, temperature } from '#words/format.ts';
import type { Said } from '#words/said.ts';

/** Common practice: a day out of the freezer, two days of ferment, a week to even out. */
const THAW_DAYS = 2;
const FERMENT_DAYS = 2;
const EQUALISE_DAYS = 7;
/** The thickest that the first column of the table of the US covers. */
const PORK_MM = 150;
const DAY_HOURS = 24;

export type BackView = {
  readonly sentence: Said;
  readonly rows: readonly { key: keyof BackSchedule; title: string; note: string; steps: string }[];
  /** Null while it is in time as it is. */
  readonly still: readonly string[] | null;
  readonly counted: string;
};

/** The warmest row of the table: what a household freezer holds. Null where the rule set has none. */
export function freezing(ruleSet: Place['ruleSet']): { days: number; atC: number } | null {
  const row = ruleSet && freezingTable({ ruleSet, method: 'room', thicknessMm: PORK_MM })?.rows[0];
  return row ? { days: Math.ceil(row.hours / DAY_HOURS), atC: row.atC } : null;
}

export function backView({
  date,
  today,
  wish,
  freezeDays,
  place,
  words,
}: {
  date: CalendarDay;
  today: CalendarDay;
  wish: Wish;
  freezeDays: number;
  place: Place;
  words: Words;
}): BackView {
  const { back } = words.calendar;
  const stages = {
    freezeDays,
    thawDays: freezeDays > 0 ? THAW_DAYS : 0,
    fermentDays: FERMENT_DAYS,
    equaliseDays: EQUALISE_DAYS,
  };
  const schedule = backSchedule(stages, dryingAhead(wish));
  const daysLeft = daysBetween(today, date);
  const day = (days: number) => words.dates.fullDay(noonMs(daysBefore(date, days)), '+00:00');
  const begin = (start: StartDays | null) => start && day(start.freezeDay);
  const { early, likely, last } = schedule;
  const late = likely === null || likely.freezeDay > daysLeft;
  const sentence =
    last === null
      ? back.never
      : likely === null
        ? back.never
        : late
          ? back.passed({ likely: day(likely.freezeDay), last: begin(last) })
          : back.sentence({ likely: day(likely.freezeDay), early: begin(early), last: begin(last) });
  const { freezeDays: _, ...others } = stages;
  const before = Object.values(others).reduce((sum, days) => sum + days, freezeDays);
  return {
    sentence,
    rows: (['early', 'likely', 'last'] as const).flatMap((key) => {
      const start = schedule[key];
      if (start === null) return [];
      const frozen = start.freezeDay !== start.thawDay;
      return [
        {
          key,
          title: `${back.rows[key]}: ${day(start.freezeDay)}`,
          note: back.rowNote[key],
          steps: back.steps({
            freeze: frozen ? day(start.freezeDay) : null,
            thaw: frozen ? day(start.thawDay) : null,
            stuff: day(start.stuffDay),
            hang: day(start.hangDay),
            down: day(start.downDay),
          }),
        },
      ];
    }),
    still: late ? stillText(stillMakesIt(wish, { leftDays: daysLeft - before }), place, words) : null,
    counted: back.counted({
      ferment: FERMENT_DAYS,
      equalise: EQUALISE_DAYS,
      air: `${joined(temperature(wish.chamberC, place, 0))}, ${decimal(wish.humidityPct, 0, place)}\u00a0%`,
    }),
  };
}

function stillText(
  { diameterMm, targetLossPct }: ReturnType<typeof stillMakesIt>,
  place: Place,
  { calendar: { back } }: Words,
): string[] {
  const made = [
    ...(diameterMm === null ? [] : [back.thinner(`${decimal(diameterMm, 0, place)}\u00a0mm`)]),
    ...(targetLossPct === null ? [] : [back.lower(`${decimal(targetLossPct, 0, place)}\u00a0%`)]),
  ];
  return made.length > 0 ? made : [back.nothing];
}
