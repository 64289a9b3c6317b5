import type { Source } from '#core/rules/rule.ts';
import type { Amount } from './formula.ts';

/** How much culture, why so much, and how old the pack is. */

export type DoseReason = 'per-kg' | 'pack-share' | 'minimum';

export type StarterDose = {
  readonly doseG: number;
  readonly reason: DoseReason;
  readonly perKgG: number;
  readonly packShareG: number;
  readonly minimumG: number;
  /** Of the pack, after this batch; below zero the pack is too small. */
  readonly leftG: number;
};

/**
 * The dose of a culture: the largest of so much per kg, the least share of its pack, and a plain minimum, with the
 * reason. Of equal ones the first in that order is the reason.
 *
 * Wrong tool: against the maker's sheet; where that says more, it is right. Too little culture leaves the ferment to
 * whatever else lives in the meat.
 *
 * Formula: max(dose x meat, pack x share, minimum).
 * Units: g.
 * Source: packs print it so; minima from forum reports and vendors' sheets (read).
 * @throws RangeError if there is no meat.
 * @example starterDose({ meatG: 1200, amount: { basis: 'pack-share', packG: 25, packFraction: 0.25, doseGPerKg: 0.12, minimumG: 0 }, packLeftG: 25 }).reason // => 'pack-share'
 */
export function starterDose({
  meatG,
  amount,
  packLeftG,
}: {
  meatG: number;
  amount: Extract<Amount, { basis: 'pack-share' }>;
  packLeftG: number;
}): StarterDose {
  if (!(meatG > 0)) throw new RangeError(`starterDose: meatG requires meat above 0 g, got ${meatG}`);
  const perKgG = (meatG * amount.doseGPerKg) / 1000;
  const packShareG = amount.packG * amount.packFraction;
  const { minimumG } = amount;
  const doseG = Math.max(perKgG, packShareG, minimumG);
  const reason = doseG === perKgG ? 'per-kg' : doseG === packShareG ? 'pack-share' : 'minimum';
  return { doseG, reason, perKgG, packShareG, minimumG, leftG: packLeftG - doseG };
}

export type Storage = 'frozen-sealed' | 'frozen-opened' | 'out-of-freezer';

type Keeping = { readonly keepsDays: number; readonly source: Source };

const VENDOR: Source = {
  body: 'spice and culture vendors',
  title: 'When to add meat cultures',
  section: 'storage of sealed and opened packs',
  standing: 'read',
};

/** How long a pack is said to keep: the longer end of what was read. Reports, not limits. */
export const PACK_KEEPS: Readonly<Record<Storage, Keeping>> = {
  'frozen-sealed': { keepsDays: 365, source: VENDOR },
  'frozen-opened': { keepsDays: 60, source: VENDOR },
  'out-of-freezer': {
    keepsDays: 28,
    source: {
      ...VENDOR,
      title: 'Starter culture for sausage, forum thread',
      section: 'left out of the freezer',
    },
  },
};

const DAY_MS = 24 * 60 * 60 * 1000;

/**
 * The age of a pack and whether it is past what packs are said to keep, or past its printed date.
 *
 * Wrong tool: to prove a culture alive; only the pH of the ferment does.
 *
 * Units: days, epoch ms.
 * Source: each storage carries its own in `PACK_KEEPS` (read; vendors and a forum).
 * @throws RangeError if the pack would be from the future.
 * @example packAge({ sinceMs: 0, nowMs: 7776000000, storage: 'frozen-opened', bestBeforeMs: null }) // => { ageDays: 90, keepsDays: 60, flag: 'old' }
 */
export function packAge({
  sinceMs,
  nowMs,
  storage,
  bestBeforeMs,
}: {
  sinceMs: number;
  nowMs: number;
  storage: Storage;
  bestBeforeMs: number | null;
}): { ageDays: number; keepsDays: number; flag: 'expired' | 'old' | null } {
  const ageDays = (nowMs - sinceMs) / DAY_MS;
  if (!(ageDays >= 0)) throw new RangeError(`packAge: sinceMs requires a time before now, got ${sinceMs}`);
  const { keepsDays } = PACK_KEEPS[storage];
  const expired = bestBeforeMs !== null && nowMs > bestBeforeMs;
  return { ageDays, keepsDays, flag: expired ? 'expired' : ageDays > keepsDays ? 'old' : null };
}
