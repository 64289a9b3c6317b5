import type { Batch } from '#record/batch.ts';
import type { Chamber } from '#record/place.ts';
import { firstClash, freeFrom, occupancy, type Stay } from '#record/rail-room.ts';
import type { SubjectId } from '#record/subject.ts';
import type { Words } from '#words/en.ts';
import type { Said } from '#words/said.ts';
import { type Ahead, type Axis, endOf, isWaiting } from './calendar-view.ts';

export type RailsRow = {
  readonly key: SubjectId;
  readonly href: string;
  readonly title: string;
  readonly note: string;
  readonly clash: Said | null;
  /** Shares of the width, and of the places, 0 to 100. */
  readonly bars: readonly {
    readonly key: number;
    readonly from: number;
    readonly to: number;
    readonly full: number;
    readonly over: boolean;
  }[];
};

const DAY_MS = 24 * 3_600_000;

/** Where a batch hangs, or will: what ferments goes where there is only one chamber. */
function chamberOf({ hung }: Batch, chambers: readonly Chamber[]): SubjectId | null {
  const only = chambers.length === 1 ? (chambers[0]?.id ?? null) : null;
  return hung ? (hung.body.chamber ?? null) : only;
}

/** A batch takes places from when it was hung, or now, until all of it is at target at the latest. */
export function staysIn(
  chamber: SubjectId,
  { ahead, chambers, nowMs }: { ahead: readonly Ahead[]; chambers: readonly Chamber[]; nowMs: number },
): Stay[] {
  return ahead
    .filter(({ batch }) => chamberOf(batch, chambers) === chamber)
    .map(({ batch, ahead: told }) => ({
      key: batch.id,
      pieces: batch.pieces.filter(({ status }) => status === 'hanging').length,
      fromMs: batch.hung?.atMs ?? nowMs,
      // What is at target hangs until somebody takes it down: today at least.
      untilMs: Math.max(nowMs + DAY_MS, told === undefined ? nowMs : endOf(told, nowMs)),
    }));
}

export function placesOf({ rails, places }: Chamber): number | null {
  return places === null ? null : rails * places;
}

/** The rails of each chamber over time. A chamber of which nobody said how many pieces it holds cannot clash. */
export function railsRows({
  ahead,
  chambers,
  axis,
  nowMs,
  zone,
  words,
}: {
  ahead: readonly Ahead[];
  chambers: readonly Chamber[];
  axis: Axis;
  nowMs: number;
  zone: string;
  words: Words;
}): RailsRow[] {
  const say = words.calendar.rails;
  return chambers.flatMap((chamber) => {
    const stays = staysIn(chamber.id, { ahead, chambers, nowMs });
    if (stays.length === 0) return [];
    const places = placesOf(chamber);
    const spans = occupancy(stays);
    const now = spans.find(({ fromMs, untilMs }) => fromMs <= nowMs && nowMs < untilMs)?.pieces ?? 0;
    const most = Math.max(places ?? 0, ...spans.map(({ pieces }) => pieces));
    return [
      {
        key: chamber.id,
        href: `#/chambers/${chamber.id.slice('chamber:'.length)}`,
        title: chamber.name,
        note: places === null ? say.unknown(now) : say.taken({ now, places }),
        // Nothing is said to be booked twice, or not to be, before every end is known.
        clash: places === null || ahead.some(isWaiting) ? null : clashOf(stays, places),
        bars: spans
          .filter(({ pieces }) => pieces > 0)
          .map(({ fromMs, untilMs, pieces }) => ({
            key: fromMs,
            from: axis.share(fromMs),
            to: axis.share(untilMs),
            full: (100 * pieces) / most,
            over: places !== null && pieces > places,
          })),
      },
    ];
  });

  function clashOf(stays: readonly Stay[], places: number): Said | null {
    const clash = firstClash(stays, { places, nowMs });
    if (clash === null) return null;
    const latest = stays.reduce((last, stay) => (stay.fromMs > last.fromMs ? stay : last));
    const others = stays.filter((stay) => stay !== latest);
    const fromMs = Math.max(nowMs, latest.fromMs);
    const days = (latest.untilMs - fromMs) / DAY_MS;
    const roomMs = freeFrom(others, { places, pieces: latest.pieces, fromMs, days });
    const batch = ahead.find((each) => each.batch.id === latest.key)?.batch;
    return say.clash({
      over: clash.pieces - places,
      from: clash.fromMs <= nowMs ? null : words.dates.day(clash.fromMs, zone, nowMs),
      last: batch ? words.batches.lot(batch.opened.body.lot) : '',
      room: roomMs === null ? null : words.dates.day(roomMs, zone, nowMs),
    });
  }
}
