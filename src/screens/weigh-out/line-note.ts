/** What stands beside the grams of a line: how near it is to be weighed, on which scale, and what the scale's step leaves open. */
import type { FormulaLine } from '#core/formula/formula.ts';
import { BENCH_TOLERANCE_PCT, lineError } from '#core/formula/scale-error.ts';
import type { WeighOutLine } from '#core/formula/weigh-out.ts';
import type { Place, Scale } from '#record/place.ts';
import type { Words } from '#words/en.ts';
import { decimal, joined, mass } from '#words/format.ts';

type Given = {
  line: FormulaLine;
  planned: WeighOutLine;
  /** What was weighed; null while it is to be weighed. */
  actualG: number | null;
  scale: Scale | null;
  meatG: number;
  place: Place;
  words: Words;
};

function tolerancePctOf({ role }: FormulaLine): number {
  const tolerances: Readonly<Record<string, number>> = BENCH_TOLERANCE_PCT;
  return tolerances[role] ?? BENCH_TOLERANCE_PCT.other;
}

/** Never finer than one step of the scale: nobody can weigh nearer. */
function toleranceG({ line, planned: { roundedG, stepG } }: Given): number {
  return Math.max(stepG, (roundedG * tolerancePctOf(line)) / 100);
}

/** A curing salt may be short of its target and never over it: over it lies the limit. A culture may be over, and never short. */
function sidesOf({ role }: FormulaLine): 'both' | 'less' | 'more' {
  return role === 'cure' ? 'less' : role === 'starter' ? 'more' : 'both';
}

/** A hair against binary fractions: 8.43 - 8.03 is not more than 0.4. */
const HAIR_G = 1e-9;

export function isOutside(given: Given): boolean {
  const { actualG, planned, line } = given;
  if (actualG === null) return false;
  const sides = sidesOf(line);
  const overG = actualG - planned.roundedG;
  const most = {
    more: sides === 'less' ? 0 : toleranceG(given),
    less: sides === 'more' ? 0 : toleranceG(given),
  };
  return overG > most.more + HAIR_G || -overG > most.less + HAIR_G;
}

export function lineNote(given: Given): string {
  const { planned, actualG, scale, place, words } = given;
  const say = words.weighOut;
  const tolerance = say.tolerance[sidesOf(given.line)](
    joined(mass(toleranceG(given), planned.stepG, place, 'down')),
  );
  if (actualG === null)
    return [tolerance, scale && say.onScale(scale.name), stepText(given)].filter(Boolean).join(', ');
  const target = joined(mass(planned.roundedG, planned.stepG, place));
  return isOutside(given) ? say.outside(target, tolerance) : say.asked(target, tolerance);
}

/** Only where the scale is coarser than the line asks for. */
function stepText({ line, planned, meatG, place, words }: Given): string {
  const { weighingPct } = lineError({ ...gramsOf(planned), meatG, nitritePct: null });
  return weighingPct !== null && weighingPct > tolerancePctOf(line)
    ? words.weighOut.step(decimal(weighingPct, weighingPct < 10 ? 1 : 0, place, 'up'))
    : '';
}

/** What the scale's step does to the nitrite of a cure; empty for another line. */
export function nitriteStepText({ line, planned, meatG, place, words }: Given): string {
  const nitritePct = line.cure?.nitritePct ?? null;
  const { nitriteMgPerKg } = lineError({ ...gramsOf(planned), meatG, nitritePct });
  return nitriteMgPerKg === null || nitriteMgPerKg === 0
    ? ''
    : words.weighOut.stepOfCure(decimal(nitriteMgPerKg, 1, place, 'up'));
}

function gramsOf({ roundedG, stepG, portions }: WeighOutLine) {
  return { massG: roundedG, stepG, portions };
}
