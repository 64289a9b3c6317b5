import type { FormulaLine } from '#core/formula/formula.ts';
import { premixWithin } from '#core/formula/premix.ts';
import { BENCH_TOLERANCE_PCT, lineError } from '#core/formula/scale-error.ts';
import type { WeighOutLine } from '#core/formula/weigh-out.ts';
import { decimal, joined, mass } from '#words/format.ts';
import type { FormulaPlan } from './formula-plan.ts';
import type { ViewGiven } from './formula-view.ts';

type Line = FormulaLine & { readonly weighed: WeighOutLine };

/** What a small thing is stirred into: a culture into sugar, since salt is hard on it; all else into salt (common practice). */
const CARRIERS = { cure: ['salt'], starter: ['sugar'], other: ['salt', 'sugar'] } as const;

/**
 * The way out of a scale that is too coarse for a line: stir it into salt or sugar first. No carrier is given out twice, or what
 * is left of it to weigh by itself would be wrong.
 */
export function premixTexts(given: ViewGiven, plan: FormulaPlan): string[] {
  const lines = given.formula.lines.flatMap((line, at): Line[] => {
    const weighed = plan.out.lines[at];
    return weighed ? [{ ...line, weighed }] : [];
  });
  const taken = new Set<string>();
  return (['cure', 'starter', 'other'] as const).flatMap((role) => {
    const parts = lines.filter((line) => line.role === role);
    // Of two curing salts neither is the one: that is asked about before anything is weighed.
    if (role === 'cure' && (parts.length > 1 || parts.some(({ cure }) => cure === undefined))) return [];
    return parts.flatMap((part) => {
      const carrier = lines
        .filter((line) => CARRIERS[role].some((each) => each === line.role) && !taken.has(line.id))
        .toSorted((one, other) => other.weighed.exactG - one.weighed.exactG)[0];
      const text = carrier && premixText(part, carrier, role, plan, given);
      if (!carrier || !text) return [];
      taken.add(carrier.id);
      return [text];
    });
  });
}

function premixText(
  { name, amount, weighed: { exactG, roundedG, stepG, portions } }: Line,
  carrier: Line,
  role: keyof typeof CARRIERS,
  { out }: FormulaPlan,
  { place, words }: ViewGiven,
): string | null {
  const tolerancePct = BENCH_TOLERANCE_PCT[role];
  const meatG = out.leanG + out.fatG;
  const { weighingPct } = lineError({ massG: roundedG, stepG, portions, meatG, nitritePct: null });
  if (!(exactG > 0) || (weighingPct !== null && weighingPct <= tolerancePct)) return null;
  const made = premixWithin({
    ...{ partG: exactG, carrierG: carrier.weighed.exactG, stepG, tolerancePct },
    // A whole pack holds what is printed on it, whatever the scale.
    ...(amount.basis === 'pack-share' && amount.packG > 0 ? { makePartG: amount.packG } : {}),
  });
  if (made === null) return null;
  const on = (massG: number) => joined(mass(massG, stepG, place));
  const say = words.formulas.premix;
  return [
    say.text({
      part: `${on(made.makePartG)} ${name}`,
      carrier: `${on(made.makeCarrierG)} ${carrier.name}`,
      use: on(made.useRoundedG),
      rest: `${on(made.restRoundedG)} ${carrier.name}`,
      off: decimal(made.readingPct, 0, place, 'up'),
    }),
    say.left[role],
  ].join(' ');
}
