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
 * @example humidityToSet({ awOfPieces: [0.96, 0.92] }) // => { lowPct: 91, highPct: 93, pieces: 1 }
 */
export function humidityToSet({ awOfPieces }: { awOfPieces: readonly number[] }): HumidityToSet {
  if (awOfPieces.length === 0 || awOfPieces.some((aw) => !(aw > 0 && aw <= 1)))
    throw new RangeError(`humidityToSet: awOfPieces requires pieces with 0 < aw <= 1, got ${awOfPieces}`);
  const wettest = Math.max(...awOfPieces);
  const highPct = 100 * wettest - UNDER_AW_POINTS.least;
  return {
    lowPct: 100 * wettest - UNDER_AW_POINTS.most,
    highPct,
    pieces: awOfPieces.filter((aw) => 100 * aw < highPct).length,
  };
}
