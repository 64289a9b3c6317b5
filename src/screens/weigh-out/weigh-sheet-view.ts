import { massFromG } from '#core/units.ts';
import type { Place } from '#record/place.ts';
import type { SubjectId } from '#record/subject.ts';
import { decimal, massUnit } from '#words/format.ts';

/** What is weighed next. Without a target (meat as it comes) any weight is added to what was weighed before. */
export type ToWeigh = {
  readonly key: string;
  readonly name: string;
  readonly note: string;
  readonly targetG: number | null;
  readonly target: { readonly value: string; readonly text: string } | null;
  readonly scale: SubjectId | null;
  readonly lots: readonly { value: string; label: string }[];
};

/** More than any bench of a small maker takes at once: what is above is a slip of the finger. */
export const MOST_G = 200_000;

/** Meat is typed in kilos' company, so in pounds; a line in the unit of its target. */
export function unitOf({ targetG }: ToWeigh, place: Place): 'g' | 'oz' | 'lb' {
  return massUnit(targetG ?? MOST_G, place);
}

export function mostText(unit: 'g' | 'oz' | 'lb', place: Place): string {
  return `${decimal(massFromG({ massG: MOST_G, unit }), 0, place)} ${unit}`;
}

/** Half or half as much again is no slip of the scale: it is asked about once. */
const UNLIKELY_BELOW = 0.5;
const UNLIKELY_ABOVE = 1.5;

export function isUnlikely(massG: number, { targetG }: ToWeigh): boolean {
  if (targetG === null) return massG === 0;
  return massG < targetG * UNLIKELY_BELOW || massG > targetG * UNLIKELY_ABOVE;
}
