/** What lies ready at opening, if the maker says so: meat in all, and how many trays or lots of it. Both may stay empty. */
import { massFromG } from '#core/units.ts';
import type { Place } from '#record/place.ts';
import { readQuantity } from '#ui/quantity-input.ts';
import type { Words } from '#words/en.ts';
import { decimal, massUnit } from '#words/format.ts';

export type MeatTexts = { readonly meat: string; readonly trays: string };

export type MeatRead =
  | {
      readonly ok: true;
      readonly body: { readonly plannedMeatG?: number; readonly plannedTrays?: number };
      readonly typed: Readonly<Record<string, { text: string; unit: string }>>;
    }
  | { readonly ok: false; readonly problems: { readonly [Field in keyof MeatTexts]?: string } };

const MOST_G = 500_000;
const MOST_TRAYS = 99;

export function meatUnit(place: Place): 'g' | 'oz' | 'lb' {
  return massUnit(MOST_G, place);
}

export function readMeat({ meat, trays }: MeatTexts, place: Place, words: Words): MeatRead {
  const unit = meatUnit(place);
  const { decimal: sign } = place;
  const mass =
    meat.trim() === '' ? null : readQuantity({ text: meat, unit, decimal: sign, least: 1, most: MOST_G });
  const count =
    trays.trim() === ''
      ? null
      : readQuantity({ text: trays, unit: '', decimal: sign, least: 1, most: MOST_TRAYS });
  const whole = !count?.ok || Number.isInteger(count.value);
  const most = `${decimal(massFromG({ massG: MOST_G, unit }), 0, place)}\u00a0${unit}`;
  const problems = {
    ...(mass && !mass.ok ? { meat: words.fields.problem(mass.problem, { least: '1', most }) } : {}),
    ...(count && !count.ok
      ? { trays: words.fields.problem(count.problem, { least: '1', most: String(MOST_TRAYS) }) }
      : {}),
    ...(whole ? {} : { trays: words.openBatch.wholeTrays }),
  };
  if (Object.keys(problems).length > 0) return { ok: false, problems };
  return {
    ok: true,
    body: {
      ...(mass?.ok ? { plannedMeatG: mass.value } : {}),
      ...(count?.ok ? { plannedTrays: count.value } : {}),
    },
    typed: {
      ...(mass?.ok ? { plannedMeatG: mass.typed } : {}),
      ...(count?.ok ? { plannedTrays: count.typed } : {}),
    },
  };
}
