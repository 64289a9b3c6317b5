import type { Source } from '#core/rules/rule.ts';

/** Humidity to hold: so many points under the pieces' water activity times 100. */
export const UNDER_AW_POINTS: { readonly least: number; readonly most: number; readonly source: Source } = {
  least: 3,
  most: 5,
  source: {
    body: 'Informationsportal Ökolandbau',
    title: 'ripening of raw sausage: humidity always 3 to 5 points below water activity times 100',
    section: 'raw sausage',
    standing: 'read',
  },
};

export type HumidityToSet = {
  readonly lowPct: number;
  readonly highPct: number;
  /** Pieces whose water activity lies so far below the wettest that this air would wet them. */
  readonly pieces: number;
};

/**
 * The humidity that dries the wettest piece without crusting it.
 * The wrong tool for a verdict: water activity is an estimate here, good to about 0.02.
 *
 * 100 aw - 5 to 100 aw - 3 of the wettest piece.
 * Units: aw 0..1; result % relative humidity.
 * Source: `UNDER_AW_POINTS`.
 * @throws RangeError if there is no piece, or a water activity is not within 0..1.
 * @example humidityToSet({ allAw: [0.96, 0.92] }) // => { lowPct: 91, highPct: 93, pieces: 1 }
 */
export function humidityToSet({ allAw }: { allAw: readonly number[] }): HumidityToSet {
  if (allAw.length === 0 || allAw.some((aw) => !(aw > 0 && aw <= 1)))
    throw new RangeError(`humidityToSet: allAw requires pieces with 0 < aw <= 1, got ${allAw}`);
  const wettest = Math.max(...allAw);
  const highPct = 100 * wettest - UNDER_AW_POINTS.least;
  return {
    lowPct: 100 * wettest - UNDER_AW_POINTS.most,
    highPct,
    pieces: allAw.filter((aw) => 100 * aw < highPct).length,
  };
}
