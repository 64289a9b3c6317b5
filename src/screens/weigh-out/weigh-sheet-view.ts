import { massFromG } from '#core/units.ts';
import type { Place } from '#record/place.ts';
import type { SubjectId } from '#record/subject.ts';
import type { Words } from '#words/en.ts';
import { decimal, joined, mass, massUnit } from '#words/format.ts';

/** A lot to take it from; the note says what bears on it, such as the age of a pack. */
export type LotChoice = { readonly value: string; readonly label: string; readonly note?: string };

/** What is weighed next. Without a target (meat as it comes) any weight is added to what was weighed before. */
export type ToWeigh = {
  readonly key: string;
  readonly name: string;
  readonly note: string;
  readonly targetG: number | null;
  readonly target: { readonly value: string; readonly text: string } | null;
  /** What the scale showed before, where it is weighed again. */
  readonly before: string | null;
  readonly scale: SubjectId | null;
  /** For meat: what was weighed of it so far, and the fat that the formula wants in it. */
  readonly meat: {
    readonly part: 'lean' | 'fat';
    readonly leanG: number;
    readonly fatG: number;
    readonly wantedFatPct: number;
    /** Lean and fat in all, if it was said at opening. */
    readonly plannedMeatG: number | null;
    /** The most that any scale here carries; null where one carries anything. */
    readonly mostOnScaleG: number | null;
  } | null;
  readonly lots: readonly LotChoice[];
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
/** So many times more or less fat to lean than the formula wants is a digit too many, not another cut. */
const UNLIKELY_RATIO = 3;

/** A tray of meat on a bench of 1 to 25 kg batches (common practice): with nothing else to hold it against, it is asked about beyond. */
const TRAY_G = [200, 15_000] as const;

/** What is asked once about an unlikely weight; null where it is likely enough. `typed` with its unit. */
export function weighQuestion(
  massG: number,
  typed: string,
  what: ToWeigh,
  place: Place,
  words: Words,
): string | null {
  const { sheet } = words.weighOut;
  const { target, targetG, meat } = what;
  if (target && targetG !== null)
    return massG < targetG * UNLIKELY_BELOW || massG > targetG * UNLIKELY_ABOVE
      ? sheet.unlikely(typed, target.text)
      : null;
  if (massG === 0) return sheet.nothing(typed);
  if (meat === null) return null;
  const leanG = meat.leanG + (meat.part === 'lean' ? massG : 0);
  const fatG = meat.fatG + (meat.part === 'fat' ? massG : 0);
  const shown = (some: number) => joined(mass(some, 1, place));
  const { wantedFatPct, plannedMeatG, mostOnScaleG, part } = meat;
  const times = fatG / leanG / (wantedFatPct / (100 - wantedFatPct));
  const both = times > 0 && Number.isFinite(times);
  if (both && (times > UNLIKELY_RATIO || times < 1 / UNLIKELY_RATIO))
    return sheet.fatShare(
      typed,
      decimal((100 * fatG) / (leanG + fatG), 0, place),
      words.workings.exactly(wantedFatPct, place),
    );
  if (mostOnScaleG !== null && massG > mostOnScaleG) return sheet.overScale(typed, shown(mostOnScaleG));
  const [leastG, mostG] = TRAY_G;
  const tray = sheet.tray(typed, shown(leastG), shown(mostG));
  if (plannedMeatG === null) return both || (massG >= leastG && massG <= mostG) ? null : tray;
  const wantedG = (plannedMeatG * (part === 'fat' ? wantedFatPct : 100 - wantedFatPct)) / 100;
  const sumG = part === 'fat' ? fatG : leanG;
  if (sumG > UNLIKELY_ABOVE * wantedG)
    return sheet.overPlan(typed, shown(sumG), words.weighOut.meat[part], shown(wantedG));
  return sumG < leastG && leastG < wantedG ? tray : null;
}
