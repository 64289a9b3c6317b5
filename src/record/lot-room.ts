/** Whether a lot that is only wished for has room where it is to hang: places on the rails, and water that must go out. */
import type { Batch } from './batch.ts';
import { addedGPerDay, type Load, mostCarried, waterOn } from './chamber-figures.ts';
import { busiest, freeFrom, type Stay } from './rail-room.ts';

export type LotWish = {
  readonly pieces: number | null;
  readonly greenG: number | null;
  readonly hangMs: number;
  /** How long it takes places. */
  readonly days: number;
};

export type LotRoom = {
  readonly rails: {
    readonly places: number;
    /** As long as the lot would hang. */
    readonly left: number;
    /** Null where so many places are never free. */
    readonly freeFromMs: number | null;
  } | null;
  readonly water: {
    readonly addedG: number;
    readonly hangingG: number;
    readonly mostG: number;
    /** The largest lot with which the chamber carries no more than it did; never below 0. */
    readonly fitsGreenG: number;
  } | null;
};

const DAY_MS = 24 * 3_600_000;

/** Each part is null where what it needs is not known: places of the chamber, a lot's weight, rounds weighed there. */
export function lotRoom(
  { pieces, greenG, hangMs, days }: LotWish,
  chamber: {
    readonly places: number | null;
    readonly stays: readonly Stay[];
    readonly hanging: readonly Load[];
    readonly everInside: readonly Batch[];
  },
): LotRoom {
  const { places, stays } = chamber;
  const untilMs = hangMs + days * DAY_MS;
  const most = mostCarried(chamber.everInside);
  const perKiloG = addedGPerDay(chamber.everInside[0] ?? null, 1000);
  const hangingG = waterOn(chamber.hanging, hangMs);
  return {
    rails:
      places === null || pieces === null
        ? null
        : {
            places,
            left: Math.max(0, places - busiest(stays, { fromMs: hangMs, untilMs })),
            freeFromMs: freeFrom(stays, { places, pieces, fromMs: hangMs, days }),
          },
    water:
      most === null || perKiloG === null || greenG === null || !(perKiloG > 0)
        ? null
        : {
            addedG: (perKiloG * greenG) / 1000,
            hangingG,
            mostG: most.gPerDay,
            fitsGreenG: Math.max(0, ((most.gPerDay - hangingG) / perKiloG) * 1000),
          },
  };
}
