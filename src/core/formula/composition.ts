import { saltPctOfCure } from './cure.ts';
import { cutByFat, cutOf, USUAL_FAT_NDB, USUAL_LEAN_NDB } from './cuts.ts';
import { type Formula, type FormulaLine, isInMix, type MassesG } from './formula.ts';

/** What a mix is made of by the table of cuts, and what that becomes as it dries. Estimates: a cut is not its table. */

/** Parts of the green mass, 0..1. `otherFraction` is spice, ash and all that is not told apart. */
export type Composition = {
  readonly waterFraction: number;
  readonly proteinFraction: number;
  readonly fatFraction: number;
  readonly saltFraction: number;
  readonly sugarFraction: number;
  readonly otherFraction: number;
};

/**
 * `assumed`: `lean-cut`, `fat-cut` where the formula names none of the table, `pork-table` where it is not all pork,
 * `liquid-is-water` where a liquid was taken as water.
 */
export type MixComposition = { readonly composition: Composition; readonly assumed: readonly string[] };

type Parts = { waterG: number; proteinG: number; fatG: number; saltG: number; sugarG: number; massG: number };

function meatParts(massG: number, line: Pick<FormulaLine, 'cutNdb' | 'ownFatPct'>, usualNdb: string): Parts {
  const cut =
    line.ownFatPct !== undefined
      ? cutByFat({ fatPct: line.ownFatPct })
      : (cutOf(line.cutNdb ?? usualNdb) ?? cutOf(usualNdb));
  if (!cut) throw new RangeError(`mixComposition: usualNdb requires a row of the table, got ${usualNdb}`);
  return {
    waterG: (massG * cut.waterPct) / 100,
    proteinG: (massG * cut.proteinPct) / 100,
    fatG: (massG * cut.fatPct) / 100,
    saltG: 0,
    sugarG: 0,
    massG,
  };
}

function dryParts({ role, cure, hiddenSugarPct = 0 }: FormulaLine, massG: number): Parts {
  const sugarG = role === 'sugar' ? massG : (massG * hiddenSugarPct) / 100;
  const saltG = cure ? (massG * saltPctOfCure(cure)) / 100 : role === 'salt' ? massG : 0;
  return { waterG: role === 'liquid' ? massG - sugarG : 0, proteinG: 0, fatG: 0, saltG, sugarG, massG };
}

/**
 * The composition of the whole mix from the cuts and the grams of every line, in the formula's order.
 *
 * Wrong tool: as an analysis; the fat of a cut differs from pig to pig and from knife to knife. Meat's own sodium
 * (0.1 to 0.2 % as salt) is not counted.
 *
 * Formula: sum of mass x share over cuts and lines, divided by the mix.
 * Units: g in, fractions of the green mix out.
 * Source: USDA, Standard Reference release 26 for the cuts (read); mass balance (derived).
 * @throws RangeError if there is no meat or the grams do not match the lines.
 * @example mixComposition({ formula: { name: '', kind: 'comminuted', species: [], fatPctOfMeat: 0, lines: [] }, leanG: 1000, fatG: 0, gramsByLine: [] }).composition.waterFraction // => 0.7317
 */
export function mixComposition({
  formula,
  leanG,
  fatG,
  gramsByLine,
}: {
  formula: Formula;
  leanG: number;
  fatG: number;
  gramsByLine: MassesG;
}): MixComposition {
  if (!(leanG + fatG > 0) || gramsByLine.length !== formula.lines.length)
    throw new RangeError(
      `mixComposition: gramsByLine requires meat and one mass a line, got ${gramsByLine.length} masses`,
    );
  const assumed = new Set<string>();
  if (formula.species.some((species) => species !== 'pork')) assumed.add('pork-table');
  const parts: Parts[] = [];
  for (const [role, massG, usualNdb] of [
    ['lean', leanG, USUAL_LEAN_NDB],
    ['fat', fatG, USUAL_FAT_NDB],
  ] as const) {
    const lines = formula.lines.flatMap((line, at) =>
      line.role === role ? [{ line, massG: gramsByLine[at] ?? 0 }] : [],
    );
    const known = lines.some(
      ({ line }) =>
        line.ownFatPct !== undefined || (line.cutNdb !== undefined && cutOf(line.cutNdb) !== null),
    );
    if (massG > 0 && !known) assumed.add(`${role}-cut`);
    if (lines.length === 0) parts.push(meatParts(massG, {}, usualNdb));
    for (const part of lines) parts.push(meatParts(part.massG, part.line, usualNdb));
  }
  formula.lines.forEach((line, at) => {
    if (line.role === 'lean' || line.role === 'fat' || !isInMix(line.role)) return;
    if (line.role === 'liquid') assumed.add('liquid-is-water');
    parts.push(dryParts(line, gramsByLine[at] ?? 0));
  });
  const sum = (key: keyof Parts) => parts.reduce((total, part) => total + part[key], 0);
  const mixG = sum('massG');
  const known = {
    waterFraction: sum('waterG') / mixG,
    proteinFraction: sum('proteinG') / mixG,
    fatFraction: sum('fatG') / mixG,
    saltFraction: sum('saltG') / mixG,
    sugarFraction: sum('sugarG') / mixG,
  };
  const otherFraction = 1 - Object.values(known).reduce((total, share) => total + share, 0);
  return { composition: { ...known, otherFraction }, assumed: [...assumed] };
}
