import type { Amount, CureLabel } from '#core/formula/formula.ts';
import { massFromG } from '#core/units.ts';
import type { Place } from '#record/place.ts';
import type { Words } from '#words/en.ts';

/** An amount as it was written, with its base; a mass inside it in the maker's small unit. */
export function amountText(amount: Amount, place: Place, words: Words): string {
  const exactly = (value: number) => words.workings.exactly(value, place);
  const mass = (massG: number) => smallMass(massG, place, words);
  const say = words.formulas.amount;
  switch (amount.basis) {
    case 'pct-of-meat':
    case 'pct-of-lean':
    case 'pct-of-total':
      return say[amount.basis](exactly(amount.amountPct));
    case 'g-per-kg-meat':
      return say['g-per-kg-meat'](exactly(amount.doseGPerKg));
    case 'fixed':
      return say.fixed(mass(amount.amountG));
    case 'at-least':
      return say['at-least'](exactly(amount.doseGPerKg), mass(amount.minimumG));
    case 'per-piece':
      return say['per-piece'](mass(amount.pieceG));
    case 'pack-share':
      return say['pack-share'](
        exactly(amount.packFraction * 100),
        mass(amount.packG),
        exactly(amount.doseGPerKg),
      );
  }
}

/** What is printed on the bag, in words. */
export function labelText(label: CureLabel, place: Place, words: Words): string {
  const exactly = (value: number) => words.workings.exactly(value, place);
  return words.formulas.label(
    exactly(label.nitritePct),
    label.nitratePct > 0 ? exactly(label.nitratePct) : null,
  );
}

export function smallMass(massG: number, place: Place, words: Words): string {
  const unit = place.mass === 'metric' ? 'g' : 'oz';
  return `${words.workings.exactly(massFromG({ massG, unit }), place)}\u00a0${unit}`;
}
