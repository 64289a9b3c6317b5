import { type Figures, figuresFromGrams } from './figures.ts';
import { type Formula, isCure, isInMix, isMeat } from './formula.ts';
import { figureBounds, weighingErrorG } from './scale-error.ts';

/** From what was really weighed to figures, their bounds by the scales, and whether all that matters was weighed. */

/** One reading of a scale. A line weighed in portions has several. `stepG` null: nobody said which scale. */
export type Weighing = { readonly lineId: string; readonly massG: number; readonly stepG: number | null };

export type WeighedFigures = {
  readonly figures: Figures;
  /** Null while the scale of the meat, of a salt or of a cure is unknown. */
  readonly upper: Figures | null;
  readonly lower: Figures | null;
  /** `planned` until every salt and every cure was weighed: until then no limit is held. */
  readonly stage: 'planned' | 'weighed';
};

/**
 * The figures of a batch as weighed so far. What is not weighed counts as nothing and is named in `figures.missing`.
 *
 * Wrong tool: for the plan; that is `weighOut`.
 *
 * Formula: `figuresFromGrams` and `figureBounds`; errors of several weighings add up. A line other than salt and cure
 * whose scale is unknown may be anything from nothing to twice its grams.
 * Units: g.
 * Source: mass balance and interval arithmetic (derived).
 * @throws RangeError if a weighing names a line that the formula does not have, or there is no meat.
 * @example weighedFigures({ formula: { name: '', kind: 'comminuted', species: [], fatPctOfMeat: 25, lines: [{ id: 's', name: 'salt', role: 'salt', amount: { basis: 'pct-of-meat', amountPct: 2.8 } }] }, leanG: 750, fatG: 250, meatStepsG: [1, 1], weighings: [{ lineId: 's', massG: 28, stepG: 0.1 }] }).stage // => 'weighed'
 */
export function weighedFigures({
  formula,
  leanG,
  fatG,
  meatStepsG,
  weighings,
}: {
  formula: Formula;
  leanG: number;
  fatG: number;
  /** One step for every weighing of lean or fat. */
  meatStepsG: readonly (number | null)[];
  weighings: readonly Weighing[];
}): WeighedFigures {
  const stray = weighings.find(({ lineId }) => !formula.lines.some(({ id }) => id === lineId));
  if (stray)
    throw new RangeError(`weighedFigures: lineId requires a line of the formula, got ${stray.lineId}`);
  const errorG = (stepsG: readonly (number | null)[]): number | null =>
    stepsG.reduce<number | null>(
      (sum, stepG) => (sum === null || stepG === null ? null : sum + weighingErrorG({ stepG, portions: 1 })),
      0,
    );
  const lines = formula.lines
    .filter(({ role }) => isInMix(role) && !isMeat(role))
    .map(({ id, role, cure }) => {
      const own = weighings.filter(({ lineId }) => lineId === id);
      const massG = own.length > 0 ? own.reduce((sum, one) => sum + one.massG, 0) : null;
      return { role, cure, massG, errorG: errorG(own.map(({ stepG }) => stepG)) };
    });
  const decisive = lines.filter((line) => line.role === 'salt' || isCure(line));
  const meatErrorG = meatStepsG.length > 0 ? errorG(meatStepsG) : null;
  const bounds =
    meatErrorG === null || decisive.some((line) => line.errorG === null)
      ? { upper: null, lower: null }
      : figureBounds({
          leanG,
          fatG,
          meatErrorG,
          lines: lines.map((line) => ({ ...line, errorG: line.errorG ?? line.massG ?? 0 })),
        });
  return {
    figures: figuresFromGrams({ leanG, fatG, lines }),
    ...bounds,
    stage: decisive.every(({ massG }) => massG !== null) ? 'weighed' : 'planned',
  };
}
