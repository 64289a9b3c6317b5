import { equilibriumLossPct } from './equilibrium.ts';
import { type MixFractions, mixAw } from './water-activity.ts';

/**
 * What is believed about a piece before it was ever weighed. Loss = final · (1 - exp(-(theta / tau)^shape)), theta in
 * days on the reference clock (13 °C, air 0.162 below the mix's own water activity).
 */
export type DryingPrior = {
  /** Median of tau, and the sd of its logarithm. */
  readonly tauDays: number;
  readonly tauLnSd: number;
  readonly shapeMean: number;
  readonly shapeSd: number;
  /** Loss at rest with the air, before it is cut to 0..waterPct. */
  readonly finalLossPct: number;
  readonly finalLossSdPct: number;
  /** All the water there is, in % of green weight: no loss passes it. */
  readonly waterPct: number;
};

/** Air at which one day counts as one day on the reference clock. */
const REFERENCE_C = 13;
const REFERENCE_DRIVE = 0.162;

/**
 * How many reference days one day in this air is worth; 0 where the air is as wet as the piece or wetter.
 *
 * (max(0, aw0 - RH) / 0.162)^0.74 · exp(0.041 (T - 13)).
 * Units: aw 0..1, %, °C; result reference days per day.
 * Valid: air between 8 and 20 °C and 70 to 90 %; outside it is carried on by the same law.
 * Source: fitted to 23 runs of the radial model (computed); against it within 2.1 points of loss for humidity let
 * down from 90 to 75 %, within 0.2 for a step from 20 to 13 °C.
 * @throws RangeError if an argument is outside 0..1, 0..100 or not a temperature.
 * @example dryingPace({ startAw: 0.962, humidityPct: 80, chamberC: 13 }) // => 1
 * @example dryingPace({ startAw: 0.962, humidityPct: 97, chamberC: 13 }) // => 0
 */
export function dryingPace({
  startAw,
  humidityPct,
  chamberC,
}: {
  startAw: number;
  humidityPct: number;
  chamberC: number;
}): number {
  if (!(startAw > 0 && startAw <= 1))
    throw new RangeError(`dryingPace: startAw requires 0 < aw <= 1, got ${startAw}`);
  if (!(humidityPct >= 0 && humidityPct <= 100))
    throw new RangeError(`dryingPace: humidityPct requires 0..100, got ${humidityPct}`);
  if (!(chamberC > -50 && chamberC < 100))
    throw new RangeError(`dryingPace: chamberC requires -50..100, got ${chamberC}`);
  const drive = Math.max(0, startAw - humidityPct / 100);
  return (drive / REFERENCE_DRIVE) ** 0.74 * Math.exp(0.041 * (chamberC - REFERENCE_C));
}

/**
 * What to expect of a piece of this diameter and mix in this air, on the reference clock.
 *
 * ln tau ~ N(ln 20 + 1.65 ln(d / 50), 0.50), shape ~ N(0.88, 0.12) within 0.4..1.4,
 * final ~ N(w0 - We(RH), 3.5 + 0.5 sd(RH)) within 0..w0.
 * Units: mm, parts of green mass 0..1, %; result days, %.
 * Valid: 30 to 110 mm; whole muscle and flat pieces are outside it.
 * Source: 13 records of 12 pieces of known diameter, makers' and published (computed from values read; humidity and
 * fat of several assumed): sd(ln tau) 0.45, widened; exponent of the diameter from the radial model. In-sample.
 * @throws RangeError if an argument cannot be.
 * @example dryingPrior({ diameterMm: 50, mix: { waterFraction: 0.6, proteinFraction: 0.16, saltFraction: 0.027, sugarFraction: 0.005 }, humidityPct: 99 }) // => { tauDays: 20, tauLnSd: 0.5, shapeMean: 0.88, shapeSd: 0.12, finalLossPct: 0, finalLossSdPct: 3.5, waterPct: 60 }
 */
export function dryingPrior({
  diameterMm,
  mix,
  humidityPct,
  humiditySdPct = 0,
}: {
  diameterMm: number;
  mix: MixFractions;
  humidityPct: number;
  humiditySdPct?: number;
}): DryingPrior {
  if (!(diameterMm > 0 && diameterMm < Infinity))
    throw new RangeError(`dryingPrior: diameterMm requires a length above 0, got ${diameterMm}`);
  if (!(humiditySdPct >= 0 && humiditySdPct <= 100))
    throw new RangeError(`dryingPrior: humiditySdPct requires 0..100, got ${humiditySdPct}`);
  return {
    tauDays: 20 * (diameterMm / 50) ** 1.65,
    tauLnSd: 0.5,
    shapeMean: 0.88,
    shapeSd: 0.12,
    finalLossPct: equilibriumLossPct({ mix, humidityPct }),
    finalLossSdPct: 3.5 + 0.5 * humiditySdPct,
    waterPct: 100 * mix.waterFraction,
  };
}

/**
 * Reference days that a stretch of unchanging air is worth to this mix.
 *
 * Units: days, parts of green mass 0..1, %, °C; result reference days.
 * Source: as `dryingPace`.
 * @throws RangeError if an argument cannot be.
 * @example referenceDays({ days: 10, mix: { waterFraction: 0.6, proteinFraction: 0.16, saltFraction: 0.027, sugarFraction: 0.005 }, humidityPct: 99, chamberC: 13 }) // => 0
 */
export function referenceDays({
  days,
  mix,
  humidityPct,
  chamberC,
}: {
  days: number;
  mix: MixFractions;
  humidityPct: number;
  chamberC: number;
}): number {
  return days * dryingPace({ startAw: mixAw({ mix, lossPct: 0 }), humidityPct, chamberC });
}
