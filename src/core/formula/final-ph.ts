/** Where a ferment ends when all its sugar has turned to lactic acid: a band from the buffering of meat. */

const PKA_LACTIC = 3.86;
const GLUCOSE_G_PER_MOL = 180.16;
/** mmol per kg and pH, mean and one sd, from ferments with 0.25 % and 0.7 % dextrose (read), derived. */
const BUFFER = { mean: 60, sd: 12 } as const;
/** Share of the glucose that becomes lactic acid, mean and one sd (memory-medium). */
const CONVERSION = { mean: 0.9, sd: 0.07 } as const;
/** Below this the usual strains stop by themselves (memory-medium). */
const STRAINS_STOP_PH = 4.4;

/**
 * The pH at which one buffering and one conversion balance.
 *
 * Formula: b (pH0 - pH) = C (1 - 1 / (1 + 10^(pH - 3.86))), C = conversion x 2 x glucose / 180.16.
 * Units: g/kg, mmol per kg and pH.
 * Source: charge balance of a weak acid (derived), pKa of lactic acid 3.86 (memory-high).
 * @throws RangeError if the pH, the sugar or the buffering cannot be.
 * @example finalPh({ startPh: 5.7, dextroseGPerKg: 0, bufferMmolPerKg: 60, conversionFraction: 0.9 }) // => 5.7
 */
export function finalPh({
  startPh,
  dextroseGPerKg,
  bufferMmolPerKg,
  conversionFraction,
}: {
  startPh: number;
  dextroseGPerKg: number;
  bufferMmolPerKg: number;
  conversionFraction: number;
}): number {
  if (!(startPh > 3 && startPh < 8 && dextroseGPerKg >= 0 && bufferMmolPerKg > 0))
    throw new RangeError(
      `finalPh: startPh requires 3 to 8 and dextroseGPerKg 0 or more, got ${startPh} and ${dextroseGPerKg}`,
    );
  const acidMmolPerKg = (conversionFraction * 2 * dextroseGPerKg * 1000) / GLUCOSE_G_PER_MOL;
  const tooAcid = (ph: number) =>
    bufferMmolPerKg * (startPh - ph) > acidMmolPerKg * (1 - 1 / (1 + 10 ** (ph - PKA_LACTIC)));
  let low = 0;
  let high = startPh;
  for (let halving = 0; halving < 60; halving++) {
    const middle = (low + high) / 2;
    if (tooAcid(middle)) low = middle;
    else high = middle;
  }
  return high;
}

/**
 * The band in which a ferment with so much dextrose ends. An estimate: it is not a reading and no verdict rests on it.
 *
 * Wrong tool: for when it gets there, and where nitrate, spice or salt stop the culture early.
 *
 * Formula: `finalPh` at buffering and conversion one sd to either side, and not below where strains stop.
 * Units: g/kg of mix.
 * Valid: dextrose 0 to 10 g/kg, start pH 5.4 to 6.2.
 * Source: buffering derived from Food and Waterborne Parasitology 6-7 (2017) and 12 (2018), tables 1 (read).
 * @throws RangeError as `finalPh`.
 * @example finalPhBand({ startPh: 5.7, dextroseGPerKg: 30 }) // => { lowPh: 4.4, highPh: 4.4, strainsStop: true }
 */
export function finalPhBand({ startPh, dextroseGPerKg }: { startPh: number; dextroseGPerKg: number }): {
  lowPh: number;
  highPh: number;
  /** True where the sugar would carry it lower than the usual strains go. */
  strainsStop: boolean;
} {
  const at = (sign: 1 | -1) =>
    finalPh({
      startPh,
      dextroseGPerKg,
      bufferMmolPerKg: BUFFER.mean + sign * BUFFER.sd,
      conversionFraction: CONVERSION.mean - sign * CONVERSION.sd,
    });
  const lowPh = at(-1);
  return {
    lowPh: Math.max(STRAINS_STOP_PH, lowPh),
    highPh: Math.max(STRAINS_STOP_PH, at(1)),
    strainsStop: lowPh < STRAINS_STOP_PH,
  };
}
