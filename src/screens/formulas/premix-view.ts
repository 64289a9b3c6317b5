import { premixWithin } from '#core/formula/premix.ts';
import { BENCH_TOLERANCE_PCT } from '#core/formula/scale-error.ts';
import { decimal, joined, mass } from '#words/format.ts';
import type { FormulaPlan } from './formula-plan.ts';
import type { ViewGiven } from './formula-view.ts';

/** The way out of a scale that is too coarse for the curing salt: stir it into the salt first. Null where none is needed. */
export function premixText({ formula, place, words }: ViewGiven, plan: FormulaPlan): string | null {
  const { lines } = plan.out;
  const cures = lines.filter(({ role }) => role === 'cure');
  const salts = lines.filter(({ role }) => role === 'salt');
  const [cure, salt] = [cures[0], salts[0]];
  const label = formula.lines.find(({ id }) => id === cure?.lineId)?.cure;
  const alone = cures.length === 1 && salts.length === 1 && label !== undefined;
  if (!alone || !cure || !salt || !(cure.exactG > 0)) return null;
  if (plan.cureOffPct === null || plan.cureOffPct <= BENCH_TOLERANCE_PCT.cure) return null;
  const made = premixWithin({
    partG: cure.exactG,
    carrierG: salt.exactG,
    stepG: cure.stepG,
    tolerancePct: BENCH_TOLERANCE_PCT.cure,
  });
  if (made === null) return null;
  const on = (massG: number) => joined(mass(massG, cure.stepG, place));
  return words.formulas.premix({
    cure: on(made.makePartG),
    salt: on(made.makeCarrierG),
    use: on(made.useRoundedG),
    rest: on(made.restRoundedG),
    off: decimal(made.readingPct, 0, place, 'up'),
  });
}
