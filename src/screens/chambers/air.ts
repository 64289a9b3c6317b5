import type { Entry, EntryOf } from '#record/entry.ts';
import { latest, ofKind } from '#record/fold.ts';
import type { Place } from '#record/place.ts';
import { live } from '#record/strikes.ts';
import type { SubjectId } from '#record/subject.ts';
import { decimal, joined, type Quantity, temperature } from '#words/format.ts';

/** A chamber's air as it stands: the readings that count, in order, and what it was set to last. */
export type Air = {
  readonly added: EntryOf<'chamber-added'> | null;
  readonly readings: readonly EntryOf<'air-read'>[];
  readonly last: EntryOf<'air-read'> | null;
  readonly set: EntryOf<'air-set'> | null;
};

export function airOf(chamber: SubjectId, entries: readonly Entry[]): Air {
  const own = live(entries).filter(({ subject }) => subject === chamber);
  const readings = ofKind(own, 'air-read');
  return {
    added: latest(own, 'chamber-added'),
    readings,
    last: readings.at(-1) ?? null,
    set: latest(own, 'air-set'),
  };
}

export function tempText(airC: number, place: Place): string {
  return joined(temperature(airC, place));
}

/** As read: a whole percent stays whole. */
export function humidity(rhPct: number, place: Place): Quantity {
  return { value: decimal(rhPct, Number.isInteger(rhPct) ? 0 : 1, place), unit: '%' };
}

export function humidityText(rhPct: number, place: Place): string {
  return joined(humidity(rhPct, place));
}

export function airText({ airC, rhPct }: { airC: number; rhPct?: number | undefined }, place: Place): string {
  return rhPct === undefined
    ? tempText(airC, place)
    : `${tempText(airC, place)} · ${humidityText(rhPct, place)}`;
}
