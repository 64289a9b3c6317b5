/** Casing: how much for a mix, how many pieces, what is left over, and what the maker's own hand puts in a metre. */

/**
 * Mix in a metre of a straight casing stuffed full.
 *
 * Wrong tool: for linked hog and sheep, which take about half; an upper bound there.
 *
 * Formula: pi / 4 x d² x density. Units: mm, kg/L, g per metre.
 * Source: geometry (derived). Density of mix 1.03 to 1.06 kg/L (memory-medium).
 * @throws RangeError if the diameter is not above zero.
 * @example geometricFillGPerM({ diameterMm: 60, densityKgPerL: 1 }) // => 2827.4333882308137
 */
export function geometricFillGPerM({
  diameterMm,
  densityKgPerL,
}: {
  diameterMm: number;
  densityKgPerL: number;
}): number {
  if (!(diameterMm > 0))
    throw new RangeError(`geometricFillGPerM: diameterMm requires more than 0 mm, got ${diameterMm}`);
  return (Math.PI / 4) * diameterMm ** 2 * densityKgPerL;
}

/**
 * Diameter of a casing sold by its flat width.
 *
 * Formula: 2 x flat / pi: twice the flat width is the girth. Units: mm.
 * Source: geometry (derived).
 * @example flatToDiameterMm(100) // => 63.66197723675813
 */
export function flatToDiameterMm(flatMm: number): number {
  return (2 * flatMm) / Math.PI;
}

/**
 * Flat width of a round casing.
 *
 * Formula: pi x d / 2. Units: mm. Source: geometry (derived).
 * @example diameterToFlatMm(200 / Math.PI) // => 100
 */
export function diameterToFlatMm(diameterMm: number): number {
  return (Math.PI * diameterMm) / 2;
}

/**
 * Length of a piece of one green weight.
 *
 * Units: g, g per metre, mm. Source: arithmetic (derived).
 * @throws RangeError if the fill is not above zero.
 * @example pieceLengthMm({ pieceG: 700, fillGPerM: 1400 }) // => 500
 */
export function pieceLengthMm({ pieceG, fillGPerM }: { pieceG: number; fillGPerM: number }): number {
  if (!(fillGPerM > 0))
    throw new RangeError(`pieceLengthMm: fillGPerM requires more than 0 g, got ${fillGPerM}`);
  return (1000 * pieceG) / fillGPerM;
}

export type CasingPlan = {
  readonly pieces: number;
  readonly pieceMm: number;
  /** For the whole pieces, the ends with them. */
  readonly casingM: number;
  /** Mix that makes no whole piece: a short one, or back into the test chub. */
  readonly leftoverG: number;
  readonly leftoverMm: number;
};

/** Slack for 12 pieces of 0.1 kg out of 1.2 kg. */
const SLACK_PIECES = 1e-9;

/**
 * Whole pieces from a mix, the casing they take, and what is left.
 *
 * Formula: pieces = floor((mix - kept) / piece); casing = pieces x (piece / fill + ends).
 * Units: g, g per metre, mm; casing in metres.
 * Source: arithmetic (derived).
 * @throws RangeError if the piece or the fill is not above zero.
 * @example casingPlan({ mixG: 5200, keptG: 0, pieceG: 1300, fillGPerM: 1300, endsMm: 50 }) // => { pieces: 4, pieceMm: 1000, casingM: 4.2, leftoverG: 0, leftoverMm: 0 }
 */
export function casingPlan({
  mixG,
  keptG,
  pieceG,
  fillGPerM,
  endsMm,
}: {
  mixG: number;
  /** For the test chub and the pH sample. */
  keptG: number;
  pieceG: number;
  fillGPerM: number;
  /** Casing lost to knots, both ends of a piece together. */
  endsMm: number;
}): CasingPlan {
  if (!(pieceG > 0)) throw new RangeError(`casingPlan: pieceG requires more than 0 g, got ${pieceG}`);
  const forPiecesG = Math.max(0, mixG - keptG);
  const pieces = Math.floor(forPiecesG / pieceG + SLACK_PIECES);
  const pieceMm = pieceLengthMm({ pieceG, fillGPerM });
  const leftoverG = Math.max(0, forPiecesG - pieces * pieceG);
  return {
    pieces,
    pieceMm,
    casingM: (pieces * (pieceMm + endsMm)) / 1000,
    leftoverG,
    leftoverMm: pieceLengthMm({ pieceG: leftoverG, fillGPerM }),
  };
}

/**
 * Casing for a mix stuffed in one run.
 *
 * Units: g, g per metre, metres. Source: arithmetic (derived).
 * @throws RangeError if the fill is not above zero.
 * @example casingForMixM({ mixG: 5200, fillGPerM: 1300 }) // => 4
 */
export function casingForMixM({ mixG, fillGPerM }: { mixG: number; fillGPerM: number }): number {
  return pieceLengthMm({ pieceG: mixG, fillGPerM }) / 1000;
}

/**
 * The maker's own fill from stuffings of one casing and diameter: all the mix over all the casing. Null before the first.
 *
 * Formula: sum of mix / sum of metres. Units: g per metre.
 * Source: ratio of sums (derived).
 * @example learnedFillGPerM([{ mixG: 5200, usedM: 3.2 }]) // => 1625
 */
export function learnedFillGPerM(stuffings: readonly { mixG: number; usedM: number }[]): number | null {
  const mixG = stuffings.reduce((sum, one) => sum + one.mixG, 0);
  const usedM = stuffings.reduce((sum, one) => sum + one.usedM, 0);
  return mixG > 0 && usedM > 0 ? mixG / usedM : null;
}
