import type { Batch } from '#record/batch.ts';
import type { Entry } from '#record/entry.ts';
import type { Check } from '#record/instruments.ts';
import type { Chamber, Place } from '#record/place.ts';
import type { SubjectId } from '#record/subject.ts';
import type { Words } from '#words/en.ts';
import { temperature } from '#words/format.ts';
import type { Said } from '#words/said.ts';
import { airOf, humidityText } from './air.ts';

/** A reading older than a day says little of the air now (common practice: read daily). */
export const STALE_MS = 24 * 3_600_000;

export type ChamberRow = {
  readonly key: string;
  readonly href: string;
  readonly title: string;
  readonly note: string;
  readonly figure: { readonly figure: string; readonly unit: string; readonly figureNote?: string } | null;
};

export type ChambersView = { readonly sentence: Said; readonly rows: readonly ChamberRow[] };

export function chamberHref(id: SubjectId): string {
  return `#/chambers/${id.slice('chamber:'.length)}`;
}

/** What hangs in a chamber now: hung there, and not all taken down. */
export function hangingIn(chamber: SubjectId, batches: readonly Batch[]): Batch[] {
  return batches.filter(({ hung, stage }) => hung?.body.chamber === chamber && stage === 'hanging');
}

export function chambersView({
  chambers,
  entries,
  batches,
  checks,
  place,
  nowMs,
  words,
}: {
  chambers: readonly Chamber[];
  entries: readonly Entry[];
  batches: readonly Batch[];
  checks: readonly Check[];
  place: Place;
  nowMs: number;
  words: Words;
}): ChambersView {
  const say = words.chambers;
  const all = chambers.map((chamber) => ({
    chamber,
    last: airOf(chamber.id, entries, { checks, nowMs }).last,
  }));
  const unread = all.find(({ last }) => last === null);
  const stale = all
    .flatMap(({ chamber, last }) => (last && nowMs - last.atMs > STALE_MS ? [{ chamber, last }] : []))
    .sort((a, b) => a.last.atMs - b.last.atMs);
  const oldest = stale.at(0);
  return {
    sentence:
      chambers.length === 0
        ? say.none
        : unread
          ? say.unread(unread.chamber.name)
          : oldest
            ? say.stale(oldest.chamber.name, words.dates.ago(oldest.last.atMs, nowMs), stale.length - 1)
            : say.sentence(chambers.length),
    rows: all.map(({ chamber, last }) => {
      const hanging = hangingIn(chamber.id, batches).length;
      return {
        key: chamber.id,
        href: chamberHref(chamber.id),
        title: chamber.name,
        note: [
          last ? words.dates.ago(last.atMs, nowMs) : say.notRead,
          hanging === 0 ? say.empty : say.hanging(hanging),
        ].join(' · '),
        figure: last
          ? {
              figure: temperature(last.airC, place).value,
              unit: place.temperature === 'C' ? '°C' : '°F',
              ...(last.rhPct === null ? {} : { figureNote: humidityText(last.rhPct, place) }),
            }
          : null,
      };
    }),
  };
}
