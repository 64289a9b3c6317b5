import type { AirPoint } from '#core/air/air-series.ts';
import { type ChamberAir, chamberAir } from '#record/chamber-air.ts';
import type { Entry, EntryOf } from '#record/entry.ts';
import { latest, ofKind } from '#record/fold.ts';
import type { Check } from '#record/instruments.ts';
import type { Place } from '#record/place.ts';
import { live } from '#record/strikes.ts';
import type { SubjectId } from '#record/subject.ts';
import { decimal, joined, type Quantity, temperature } from '#words/format.ts';

/** A chamber's air as it stands: by hand and by file in one line, the newest of both, and what it was set to last. */
export type Air = ChamberAir & {
  readonly added: EntryOf<'chamber-added'> | null;
  readonly byHand: readonly EntryOf<'air-read'>[];
  readonly last: AirPoint | null;
};

export function airOf(
  chamber: SubjectId,
  entries: readonly Entry[],
  { checks, nowMs }: { checks: readonly Check[]; nowMs: number },
): Air {
  const own = live(entries).filter(({ subject }) => subject === chamber);
  const air = chamberAir(chamber, own, checks);
  return {
    ...air,
    added: latest(own, 'chamber-added'),
    byHand: ofKind(own, 'air-read'),
    last: air.points.findLast(({ atMs }) => atMs <= nowMs) ?? null,
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

export function airText(
  { airC, rhPct }: { airC: number; rhPct?: number | null | undefined },
  place: Place,
): string {
  return rhPct === undefined || rhPct === null
    ? tempText(airC, place)
    : `${tempText(airC, place)} · ${humidityText(rhPct, place)}`;
}
