import type { DryingDays, StartDays } from '#core/drying/back-schedule.ts';
import { massFromG } from '#core/units.ts';
import type { Batch } from '#record/batch.ts';
import type { Load } from '#record/chamber-figures.ts';
import { lotRoom } from '#record/lot-room.ts';
import type { Place } from '#record/place.ts';
import type { Stay } from '#record/rail-room.ts';
import { type CalendarDay, calendarDay, daysAfter, daysBefore, daysBetween, noonMs } from '#words/days.ts';
import type { Words } from '#words/en.ts';
import { decimal, joined, mass } from '#words/format.ts';
import type { Said } from '#words/said.ts';

/** A lot that is wished for, and the chamber where it is to dry. */
export type Lot = {
  readonly pieces: number | null;
  readonly greenG: number | null;
  readonly chamber: {
    readonly name: string;
    readonly places: number | null;
    readonly stays: readonly Stay[];
    readonly hanging: readonly Load[];
    readonly everInside: readonly Batch[];
  };
};

export type RoomView = {
  readonly sentences: readonly Said[];
  readonly isShort: boolean;
  /** What smaller lots would have room. */
  readonly smaller: readonly string[];
};

const OPEN_END_DAYS = 28;
/** Smaller lots are said in steps that a maker would weigh. */
const LOT_STEP = 0.5;

/** What the rails and the air say to a lot that is hung as the likely schedule has it. */
export function roomFor(
  lot: Lot,
  {
    date,
    today,
    likely,
    drying,
    place,
    words,
  }: {
    date: CalendarDay;
    today: CalendarDay;
    likely: StartDays;
    drying: DryingDays;
    place: Place;
    words: Words;
  },
): RoomView {
  const say = words.calendar.back;
  const wished = daysBefore(date, likely.hangDay);
  const hangDay = wished < today ? today : wished;
  const hangMs = noonMs(hangDay);
  const days = drying.p90Days ?? likely.hangDay - likely.downDay + OPEN_END_DAYS;
  const { rails, water } = lotRoom({ ...lot, hangMs, days }, lot.chamber);
  const { name } = lot.chamber;
  const count = (value: number) => decimal(value, 0, place);
  const day = (at: CalendarDay) => words.dates.fullDay(noonMs(at), '+00:00');
  const isFull = rails !== null && lot.pieces !== null && rails.left < lot.pieces;
  const totalG = water && water.addedG + water.hangingG;
  const isWet = water !== null && totalG !== null && totalG > water.mostG;
  const grams = (massG: number, rounding: 'nearest' | 'down' = 'nearest') =>
    joined(mass(massG, 1, place, rounding));
  const later = () => {
    if (rails?.freeFromMs == null) return null;
    const from = calendarDay(rails.freeFromMs, '+00:00');
    return { from: day(from), ready: day(daysAfter(date, daysBetween(wished, from))) };
  };
  const lighter = water && lighterText(water.fitsGreenG, place);
  return {
    sentences: [
      ...(rails === null
        ? []
        : [
            isFull
              ? say.room.short({
                  name,
                  free: count(rails.left),
                  places: count(rails.places),
                  hang: day(hangDay),
                  later: later(),
                })
              : say.room.free({ name, free: count(rails.left), places: count(rails.places) }),
          ]),
      ...(water === null || totalG === null
        ? []
        : [
            (isWet ? say.room.tooWet : say.room.carries)({
              name,
              water: `~${grams(totalG)}`,
              most: grams(water.mostG, 'down'),
            }),
          ]),
    ],
    isShort: isFull || isWet,
    smaller: [
      ...(isFull && rails.left > 0 ? [say.fewer(count(rails.left))] : []),
      ...(isWet && lighter ? [say.lighter(lighter)] : []),
    ],
  };
}

/** Down to half a kilo or a pound; null where not even that fits. */
function lighterText(greenG: number, place: Place): string | null {
  const unit = place.mass === 'metric' ? 'kg' : 'lb';
  const value = Math.floor(massFromG({ massG: greenG, unit }) / LOT_STEP) * LOT_STEP;
  return value > 0 ? `~${joined({ value: decimal(value, 1, place), unit })}` : null;
}
