/** A culture at the weigh-out: why so much of it, and how old its pack is. */
import type { Amount } from '#core/formula/formula.ts';
import { starterDose } from '#core/formula/starter.ts';
import { ageOfPack } from '#record/culture-pack.ts';
import type { Lot, Place } from '#record/place.ts';
import type { Words } from '#words/en.ts';
import { joined, mass } from '#words/format.ts';
import type { LotChoice } from './weigh-sheet-view.ts';

/** Which of the three decided, and what the others come to. Null where the amount has one base. */
export function doseWhy(amount: Amount, meatG: number, place: Place, words: Words): string | null {
  if (amount.basis !== 'pack-share') return null;
  const { reason, perKgG, packShareG, minimumG } = starterDose({
    ...{ meatG, amount },
    packLeftG: amount.packG,
  });
  const grams = (massG: number) => joined(mass(massG, 0.01, place));
  return words.weighOut.starter.why[reason]({
    perKg: grams(perKgG),
    packShare: grams(packShareG),
    minimum: minimumG > 0 ? grams(minimumG) : null,
  });
}

function ageText(lot: Lot, nowMs: number, words: Words): string {
  const say = words.weighOut.starter;
  const age = ageOfPack(lot, nowMs);
  if (age === null) return say.unknown;
  const days = say.days[age.storage](Math.floor(age.ageDays));
  if (age.flag === 'expired') return say.expired(days);
  return age.flag === 'old' ? say.old(days, age.keepsDays) : days;
}

/** The age of the pack that was taken, or of the only one there is. */
export function packNote(
  lots: readonly Lot[],
  taken: string | undefined,
  nowMs: number,
  words: Words,
): string {
  const lot = taken === undefined && lots.length === 1 ? lots[0] : lots.find(({ id }) => id === taken);
  return lot ? ageText(lot, nowMs, words) : '';
}

export function packChoices(
  choices: readonly LotChoice[],
  lots: readonly Lot[],
  nowMs: number,
  words: Words,
): LotChoice[] {
  return choices.map((choice) => {
    const lot = lots.find(({ id }) => id === choice.value);
    return lot ? { ...choice, note: ageText(lot, nowMs, words) } : choice;
  });
}
