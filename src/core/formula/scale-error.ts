import { type Figures, figuresFromGrams, type LineGrams } from './figures.ts';
import { isCure } from './formula.ts';
import type { BenchScale } from './scale.ts';

/** How far a weighing can be off because of the scale's step, and what that does to the figures. */

/**
 * Half a step: how far the reading alone can be off. It is what a maker sees as the scale's coarseness.
 *
 * Units: g. Source: rounding of a display (derived).
 * @throws RangeError if the step is not above zero.
 * @example readingErrorG({ stepG: 1, portions: 1 }) // => 0.5
 */
export function readingErrorG({ stepG, portions }: { stepG: number; portions: number }): number {
  if (!(stepG > 0)) throw new RangeError(`readingErrorG: stepG requires a step above 0, got ${stepG}`);
  return (portions * stepG) / 2;
}

/**
 * The most that a weighing can be off by the scale's step: half a step at the reading and half at the tare, added,
 * for every portion. Verdicts rest on this one; two errors that happen to cancel are nobody's right.
 *
 * Wrong tool: for a scale that is out of adjustment; only a check weight shows that.
 *
 * Units: g. Source: worst case of two rounded displays (derived).
 * @throws RangeError if the step is not above zero.
 * @example weighingErrorG({ stepG: 0.01, portions: 1 }) // => 0.01
 */
export function weighingErrorG({ stepG, portions }: { stepG: number; portions: number }): number {
  return 2 * readingErrorG({ stepG, portions });
}

export type LineGramsWithError = LineGrams & { readonly errorG: number };

/**
 * The figures with every weighing at the end of its error that raises, or lowers, the shares of salt and cure.
 *
 * Formula: raised = salt and cure + error, meat and all else - error; lowered = the reverse.
 * Units: as `figuresFromGrams`. Source: interval arithmetic (derived).
 * @example figureBounds({ leanG: 1000, fatG: 0, meatErrorG: 0, lines: [{ role: 'salt', massG: 28, errorG: 1 }] }).upper.saltPctOfMeat // => 2.9
 */
export function figureBounds({
  leanG,
  fatG,
  meatErrorG,
  lines,
}: {
  leanG: number;
  fatG: number;
  meatErrorG: number;
  lines: readonly LineGramsWithError[];
}): { upper: Figures; lower: Figures } {
  const meatG = leanG + fatG;
  const at = (sign: 1 | -1): Figures => {
    const meatFactor = (meatG - sign * meatErrorG) / meatG;
    return figuresFromGrams({
      leanG: leanG * meatFactor,
      fatG: fatG * meatFactor,
      lines: lines.map(({ role, massG, cure, errorG }) => {
        const towards = role === 'salt' || isCure({ role, cure }) ? sign : -sign;
        return { role, cure, massG: massG === null ? null : Math.max(0, massG + towards * errorG) };
      }),
    });
  };
  return { upper: at(1), lower: at(-1) };
}

export type LineError = {
  /** Half a step against the grams: what the step alone does. Null for an amount of nothing. */
  readonly readingPct: number | null;
  /** Reading and tare together. */
  readonly weighingPct: number | null;
  readonly weighingG: number;
  /** Reading and tare, in mg of nitrite per kg of meat; null for a line that is not a labelled cure. */
  readonly nitriteMgPerKg: number | null;
};

/**
 * What the scale's step does to one line.
 *
 * Units: percent of the line, g, mg/kg of green meat.
 * Source: rounding of a display (derived).
 * @throws RangeError if the step or the meat is not above zero.
 * @example lineError({ massG: 2.5, stepG: 1, portions: 1, meatG: 1000, nitritePct: 6.25 }).readingPct // => 20
 */
export function lineError({
  massG,
  stepG,
  portions,
  meatG,
  nitritePct,
}: {
  massG: number;
  stepG: number;
  portions: number;
  meatG: number;
  nitritePct: number | null;
}): LineError {
  if (!(meatG > 0)) throw new RangeError(`lineError: meatG requires meat above 0 g, got ${meatG}`);
  const weighingG = weighingErrorG({ stepG, portions });
  const of = (errorG: number) => (massG > 0 ? (100 * errorG) / massG : null);
  return {
    readingPct: of(readingErrorG({ stepG, portions })),
    weighingPct: of(weighingG),
    weighingG,
    nitriteMgPerKg: nitritePct === null ? null : (weighingG * nitritePct * 10000) / meatG,
  };
}

/** How near each kind of line should be weighed, percent (from memory, medium: a tolerance of the bench, never a limit). */
export const BENCH_TOLERANCE_PCT = { salt: 1, cure: 5, sugar: 5, starter: 10, other: 10 } as const;

/**
 * The scales that weigh a line within its tolerance, coarsest first: the coarsest is the quickest that will do.
 *
 * Units: percent of the line.
 * @example fitScales({ massG: 90, tolerancePct: 1, scales: [{ id: 'k', stepG: 1, capacityG: null }, { id: 'p', stepG: 0.1, capacityG: 500 }] }).length // => 1
 */
export function fitScales({
  massG,
  tolerancePct,
  scales,
}: {
  massG: number;
  tolerancePct: number;
  scales: readonly BenchScale[];
}): readonly BenchScale[] {
  return scales
    .filter(({ capacityG }) => capacityG === null || capacityG >= massG)
    .filter(({ stepG }) => 100 * weighingErrorG({ stepG, portions: 1 }) <= tolerancePct * massG)
    .toSorted((one, other) => other.stepG - one.stepG);
}
