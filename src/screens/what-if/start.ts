import { mixFromFat } from '#core/drying/equilibrium.ts';
import { lossPct } from '#core/drying/loss.ts';
import type { Batch } from '#record/batch.ts';
import { dailyAir, type KnownAir, plannedAir } from '#record/drying-air.ts';
import { middleOf } from '#record/drying-batch.ts';
import { type AirWish, USUAL_AIR_M_PER_S } from '#record/drying-rehearsal.ts';
import { mixOf } from '#record/forecast-figures.ts';

export type Start = {
  readonly wish: AirWish;
  /** When the air that is tried begins; null for a batch that does not exist. */
  readonly fromMs: number | null;
};

/** Usual salt and sugar of a dry sausage (common practice), so that only the fat is asked. */
const USUAL = { saltFraction: 0.027, sugarFraction: 0.005 };
export const NEW_FAT_PCT = 25;

export function mixOfFat(fatPct: number) {
  return mixFromFat({ fatFraction: fatPct / 100, ...USUAL });
}

/** A piece of 55 mm in the middle of common practice. */
export const NEW_START: Start = {
  wish: {
    mix: mixOfFat(NEW_FAT_PCT),
    diameterMm: 55,
    targetLossPct: 38,
    chamberC: 13,
    humidityPct: 80,
    airMPerS: USUAL_AIR_M_PER_S,
    past: null,
  },
  fromMs: null,
};

/** The middle piece of a batch, from its last weighing on, in the air as it is now. Null without a piece. */
export function startOf(batch: Batch, air: KnownAir | null, nowMs: number): Start | null {
  const piece = middleOf(batch.pieces.filter(({ status }) => status !== 'taken-down'));
  if (piece === null) return null;
  const last = piece.weighings.findLast(({ netG, atMs }) => netG > 0 && atMs > piece.stuffed.atMs) ?? null;
  const fromMs = last?.atMs ?? Math.min(nowMs, piece.stuffed.atMs);
  const past = dailyAir(batch, piece, air, fromMs);
  return {
    wish: {
      mix: mixOf(batch),
      diameterMm: piece.diameterMm,
      targetLossPct: piece.targetLossPct,
      ...plannedAir(batch, air, nowMs),
      airMPerS: USUAL_AIR_M_PER_S,
      past: {
        air: past,
        // The rehearsal tells whole days.
        fromDay: Math.round(past.at(-1)?.fromDay ?? 0),
        lossPct: last && lossPct({ greenG: piece.greenG, nowG: last.netG }),
      },
    },
    fromMs,
  };
}
