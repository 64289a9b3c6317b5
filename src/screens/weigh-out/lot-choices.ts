/** Lots that came in and may go into a line. */
import type { FormulaLine } from '#core/formula/formula.ts';
import type { Lot } from '#record/place.ts';
import type { LotChoice } from './weigh-sheet-view.ts';

export const LOT_KINDS: Readonly<
  Partial<Record<FormulaLine['role'], readonly Lot['received']['body']['what'][]>>
> = {
  cure: ['cure'],
  starter: ['culture'],
  mould: ['mould'],
  salt: ['salt'],
  sugar: ['sugar'],
  spice: ['spice'],
};

export function lotsFor(lots: readonly Lot[], kinds: readonly string[]): Lot[] {
  return lots.filter(({ received }) => kinds.includes(received.body.what));
}

export function lotChoices(lots: readonly Lot[]): LotChoice[] {
  return lots.map(({ id, received }) => ({
    value: id,
    label: [received.body.name, received.body.lot].filter(Boolean).join(' '),
  }));
}
