import type { FermentClock } from '#core/ferment/ferment-clock.ts';
import { DEGREE_HOUR_RULES, hoursLeftAt } from '#core/rules/degree-hours.ts';
import type { RuleSetId } from '#core/rules/rule.ts';
import { temperatureFromC, temperatureToC } from '#core/units.ts';
import type { Place } from '#record/place.ts';
import type { Words } from '#words/en.ts';
import { decimal, joined, temperature } from '#words/format.ts';

/** The slider, in the maker's unit. */
export const HOURS_AT = {
  C: { least: 10, most: 45, step: 0.5 },
  F: { least: 50, most: 112, step: 1 },
} as const;

/** What is left from now on if the room stood at a temperature: an estimate, rounded down. */
export function hoursAt(
  clock: FermentClock,
  deg: number,
  { ruleSet, place, words }: { ruleSet: RuleSetId; place: Place; words: Words },
): { temperature: string; left: string; note: string } | null {
  const { ahead, sum, limit, unit } = clock;
  if (ahead === null || sum === null || limit === null) return null;
  const say = words.fermentAhead.hoursAt;
  const tempC = temperatureToC({ value: deg, unit: place.temperature });
  const left = hoursLeftAt({
    ruleSet,
    totalDegreeHours: ahead.nowDegreeHours,
    highestDeg: sum.highestDeg,
    roomDeg: unit === place.temperature ? deg : temperatureFromC({ tempC, unit }),
  });
  const limitText = decimal(left.limit.value, 0, place);
  return {
    temperature: joined(temperature(tempC, place)),
    left:
      left.hours === null ? say.none : left.hours === 0 ? say.over : say.left(words.dates.span(left.hours)),
    note: [
      left.limit.value < limit.value ? say.noteWarmer(limitText) : say.note(limitText),
      ...(DEGREE_HOUR_RULES[ruleSet].binds ? [] : [say.reference]),
    ].join('; '),
  };
}

/** Where the slider stands at first: at the last reading, on a step. */
export function firstDeg(clock: FermentClock, place: Place): number {
  const { least, most, step } = HOURS_AT[place.temperature];
  const roomDeg = clock.ahead?.roomDeg ?? clock.base.value;
  const deg = temperatureFromC({
    tempC: temperatureToC({ value: roomDeg, unit: clock.unit }),
    unit: place.temperature,
  });
  return Math.min(most, Math.max(least, Math.round(deg / step) * step));
}
