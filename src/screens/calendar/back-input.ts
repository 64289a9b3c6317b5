import type { Batch } from '#record/batch.ts';
import type { Place } from '#record/place.ts';
import { type ReadQuantity, readQuantity } from '#ui/quantity-input.ts';
import { type CalendarDay, isCalendarDay } from '#words/days.ts';
import type { Words } from '#words/en.ts';

/** What stands in the fields. */
export type BackTyped = {
  readonly date: string;
  readonly diameter: string;
  readonly target: string;
  readonly humidity: string;
  readonly pieces: string;
  readonly weight: string;
};

export type BackRead = {
  readonly date: CalendarDay;
  readonly diameterMm: number;
  readonly targetLossPct: number;
  readonly humidityPct: number;
  readonly pieces: number | null;
  readonly greenG: number | null;
};

export type BackProblems = Partial<Record<keyof BackTyped, string>>;

/** Where no batch says otherwise. Common practice. */
const USUAL = { diameterMm: 60, targetLossPct: 38, dryC: 13, dryRhPct: 78 };
const MOST_PIECES = 999;
const MOST_G = 1_000_000;

/** What the last batch was, as what the next may be. */
export function givenBy(
  last: Batch | undefined,
  place: Place,
): { readonly typed: BackTyped; readonly chamberC: number } {
  const plan = last?.plan ?? USUAL;
  const text = (value: number) => String(value).replace('.', place.decimal);
  return {
    chamberC: plan.dryC,
    typed: {
      date: '',
      diameter: text(plan.diameterMm),
      target: text(plan.targetLossPct),
      humidity: text(plan.dryRhPct),
      pieces: last && last.pieces.length > 0 ? text(last.pieces.length) : '',
      weight: '',
    },
  };
}

export function readBack(
  typed: BackTyped,
  { today, place, words }: { today: CalendarDay; place: Place; words: Words },
): { ok: true; read: BackRead } | { ok: false; problems: BackProblems } {
  const { decimal } = place;
  const number = (
    text: string,
    unit: Parameters<typeof readQuantity>[0]['unit'],
    least: number,
    most: number,
  ) => readQuantity({ text, unit, decimal, least, most });
  const optional = (text: string, read: () => ReadQuantity) => (text.trim() === '' ? null : read());
  const diameter = number(typed.diameter, 'mm', 30, 110);
  const target = number(typed.target, '%', 10, 60);
  const humidity = number(typed.humidity, '%', 50, 95);
  const pieces = optional(typed.pieces, () => number(typed.pieces, '', 1, MOST_PIECES));
  const unit = place.mass === 'metric' ? 'kg' : 'lb';
  const weight = optional(typed.weight, () => number(typed.weight, unit, 1, MOST_G));
  const dateOk = isCalendarDay(typed.date) && typed.date > today;
  const wholeOk = pieces === null || !pieces.ok || Number.isInteger(pieces.value);
  if (
    dateOk &&
    diameter.ok &&
    target.ok &&
    humidity.ok &&
    pieces?.ok !== false &&
    weight?.ok !== false &&
    wholeOk
  )
    return {
      ok: true,
      read: {
        date: typed.date,
        diameterMm: diameter.value,
        targetLossPct: target.value,
        humidityPct: humidity.value,
        pieces: pieces?.value ?? null,
        greenG: weight?.value ?? null,
      },
    };
  const problem = (read: ReadQuantity | null, least: string, most: string) =>
    read && !read.ok ? words.fields.problem(read.problem, { least, most }) : undefined;
  const problems = {
    date: dateOk ? undefined : words.calendar.back.badDate,
    diameter: problem(diameter, '30 mm', '110 mm'),
    target: problem(target, '10 %', '60 %'),
    humidity: problem(humidity, '50 %', '95 %'),
    pieces: problem(pieces, '1', String(MOST_PIECES)) ?? (wholeOk ? undefined : words.chambers.railsWhole),
    weight: problem(weight, '1 g', unit === 'kg' ? '1000 kg' : '2204 lb'),
  };
  return {
    ok: false,
    problems: Object.fromEntries(Object.entries(problems).filter(([, said]) => said !== undefined)),
  };
}
