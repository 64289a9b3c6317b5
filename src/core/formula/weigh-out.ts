import { type Figures, figuresFromGrams } from './figures.ts';
import { amountG, type Formula, type FormulaLine, isCure, isInMix, isMeat, type Role } from './formula.ts';
import { type BenchScale, chooseScale, type Rounding, roundToStep } from './scale.ts';

/** From a formula and the meat on the bench to grams that the scales at hand can show. */

export type WeighOutLine = {
  readonly lineId: string;
  readonly role: Role;
  readonly exactG: number;
  /** What to weigh: whole steps of the scale. */
  readonly roundedG: number;
  readonly rounding: Rounding;
  readonly scaleId: string;
  readonly stepG: number;
  readonly portions: number;
};

export type WeighOut = {
  readonly leanG: number;
  readonly fatG: number;
  readonly pieces: number | null;
  readonly lines: readonly WeighOutLine[];
  /** From the exact grams. */
  readonly exact: Figures;
  /** From the rounded grams: the ones to show and to judge. */
  readonly figures: Figures;
};

function roundingOf(line: FormulaLine): Rounding {
  if (isCure(line)) return 'down';
  return line.role === 'starter' ? 'up' : 'nearest';
}

/** Meat lines share what lies on the bench in the proportion that the formula gives them. */
function meatLineG(line: FormulaLine, formula: Formula, leanG: number, fatG: number): number {
  const shareOf = (one: FormulaLine) => amountG(one.amount, { leanG: 100, fatG: 0, mixG: 100, pieces: 1 });
  const total = formula.lines
    .filter(({ role }) => role === line.role)
    .reduce((sum, one) => sum + shareOf(one), 0);
  return total > 0 ? ((line.role === 'lean' ? leanG : fatG) * shareOf(line)) / total : 0;
}

/**
 * Grams of every line before rounding. A percentage of the whole mix is solved, since the line is part of its base.
 *
 * Formula: mix = (meat + what does not depend on the mix) / (1 - shares of the mix).
 * Units: g.
 * Source: mass balance (derived).
 * @throws RangeError if there is no meat or the shares of the mix reach 100 %.
 * @example exactGrams({ formula: { name: '', kind: 'comminuted', species: [], fatPctOfMeat: 25, lines: [{ id: 'a', name: '', role: 'spice', amount: { basis: 'pct-of-total', amountPct: 20 } }] }, leanG: 600, fatG: 200, pieces: null }) // => [200]
 */
export function exactGrams({
  formula,
  leanG,
  fatG,
  pieces,
}: {
  formula: Formula;
  leanG: number;
  fatG: number;
  pieces: number | null;
}): number[] {
  const meatG = leanG + fatG;
  if (!(leanG >= 0 && fatG >= 0 && meatG > 0))
    throw new RangeError(`exactGrams: leanG and fatG require meat above 0 g, got ${leanG} and ${fatG}`);
  const mixed = formula.lines.filter(({ role }) => isInMix(role) && !isMeat(role));
  const sumAt = (mixG: number) =>
    mixed.reduce((total, { amount }) => total + amountG(amount, { leanG, fatG, mixG, pieces }), 0);
  const fixedG = sumAt(0);
  const mixFraction = mixed.reduce(
    (total, { amount }) => total + (amount.basis === 'pct-of-total' ? amount.amountPct / 100 : 0),
    0,
  );
  if (!(mixFraction < 1))
    throw new RangeError(`exactGrams: shares of the mix require less than 100 %, got ${100 * mixFraction}`);
  const mixG = (meatG + fixedG) / (1 - mixFraction);
  return formula.lines.map((line) =>
    isMeat(line.role)
      ? meatLineG(line, formula, leanG, fatG)
      : amountG(line.amount, { leanG, fatG, mixG, pieces }),
  );
}

/**
 * A formula weighed out for the meat on the bench, in steps of the scales at hand, and every figure recomputed from
 * the rounded grams. A cure is rounded down, a starter up, all else to the nearest step.
 *
 * Each line goes on the finest scale that carries it; `lineScales` names another scale for a line by its id.
 *
 * Units: g.
 * Source: mass balance (derived); rounding of cure down, of starter up: common practice.
 * @throws RangeError if there is no meat, no scale, or a line counts by the piece and `pieces` is null.
 * @example weighOut({ formula: { name: '', kind: 'comminuted', species: [], fatPctOfMeat: 25, lines: [{ id: 's', name: 'salt', role: 'salt', amount: { basis: 'pct-of-meat', amountPct: 2.8 } }] }, leanG: 2411, fatG: 804, pieces: null, scales: [{ id: 'k', stepG: 0.1, capacityG: null }] }).lines[0].roundedG // => 90
 */
export function weighOut({
  formula,
  leanG,
  fatG,
  pieces,
  scales,
  lineScales = {},
}: {
  formula: Formula;
  leanG: number;
  fatG: number;
  pieces: number | null;
  scales: readonly BenchScale[];
  lineScales?: Readonly<Record<string, string>>;
}): WeighOut {
  const exactLineG = exactGrams({ formula, leanG, fatG, pieces });
  const lines = formula.lines.map((line, at): WeighOutLine => {
    const exactG = exactLineG[at] ?? 0;
    const named = scales.filter(({ id }) => id === lineScales[line.id]);
    const { scale, portions } = chooseScale({ massG: exactG, scales: named.length > 0 ? named : scales });
    const rounding = roundingOf(line);
    return {
      lineId: line.id,
      role: line.role,
      exactG,
      roundedG: roundToStep({ massG: exactG, stepG: scale.stepG, rounding }),
      rounding,
      scaleId: scale.id,
      stepG: scale.stepG,
      portions,
    };
  });
  const gramsBy = (massOf: (line: WeighOutLine) => number) =>
    figuresFromGrams({
      leanG,
      fatG,
      lines: lines.map((line, at) => ({
        role: line.role,
        massG: massOf(line),
        cure: formula.lines[at]?.cure,
      })),
    });
  return {
    leanG,
    fatG,
    pieces,
    lines,
    exact: gramsBy(({ exactG }) => exactG),
    figures: gramsBy(({ roundedG }) => roundedG),
  };
}
