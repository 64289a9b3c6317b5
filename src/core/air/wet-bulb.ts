import { dewPointC, saturationPressurePa, vapourPressurePa } from './psychro.ts';

/** Standard atmosphere at sea level. */
const SEA_LEVEL_PA = 101_325;
const WATER_TO_AIR = 0.621945;

/**
 * Mass of water vapour that goes with a kilogram of dry air.
 *
 * W = 0.621945 e / (p - e), e the vapour pressure.
 * Units: °C, %, Pa; result kg/kg.
 * Source: ASHRAE Handbook: Fundamentals (2017), ch. 1, eq. 20, read second-hand in an open implementation.
 * @throws RangeError outside -100..200 °C or 0..100 %, or where the vapour pressure reaches that of the air.
 * @example humidityRatio({ tempC: 13, humidityPct: 0 }) // => 0
 */
export function humidityRatio({
  tempC,
  humidityPct,
  pressurePa = SEA_LEVEL_PA,
}: {
  tempC: number;
  humidityPct: number;
  pressurePa?: number;
}): number {
  const vapourPa = vapourPressurePa({ tempC, humidityPct });
  if (!(pressurePa > vapourPa))
    throw new RangeError(
      `humidityRatio: pressurePa requires more than the vapour's ${vapourPa}, got ${pressurePa}`,
    );
  return (WATER_TO_AIR * vapourPa) / (pressurePa - vapourPa);
}

/**
 * The temperature to which a wet surface cools in moving air: near it fresh pieces hang, colder than the thermometer says.
 * The wrong tool for a piece with a dry skin, which is warmer.
 *
 * W = ((2501 - 2.326 t) Ws(t) - 1.006 (T - t)) / (2501 + 1.86 T - 4.186 t), over ice ((2830 - 0.24 t) Ws(t) - 1.006 (T - t)) /
 * (2830 + 1.86 T - 2.1 t), solved for t by halving to 1e-9 °C between dew point and T.
 * Units: °C, %, Pa; result °C.
 * Valid: -40 to 60 °C.
 * Source: ASHRAE Handbook: Fundamentals (2017), ch. 1, eqs 33 and 35, read second-hand in an open implementation.
 * @throws RangeError outside the valid range, or if the air has no dew point above -100 °C.
 * @example Math.round(wetBulbC({ tempC: 13, humidityPct: 100 }) * 1e6) // => 13000000
 */
export function wetBulbC({
  tempC,
  humidityPct,
  pressurePa = SEA_LEVEL_PA,
}: {
  tempC: number;
  humidityPct: number;
  pressurePa?: number;
}): number {
  if (!(tempC >= -40 && tempC <= 60)) throw new RangeError(`wetBulbC: tempC requires -40..60, got ${tempC}`);
  const ratio = humidityRatio({ tempC, humidityPct, pressurePa });
  let lowC = dewPointC({ tempC, humidityPct });
  let highC = tempC;
  while (highC - lowC > 1e-9) {
    const middleC = (lowC + highC) / 2;
    if (ratioAt({ tempC, bulbC: middleC, pressurePa }) < ratio) lowC = middleC;
    else highC = middleC;
  }
  return (lowC + highC) / 2;
}

function ratioAt({ tempC, bulbC, pressurePa }: { tempC: number; bulbC: number; pressurePa: number }): number {
  const saturatedPa = saturationPressurePa({ tempC: bulbC });
  const saturated = (WATER_TO_AIR * saturatedPa) / (pressurePa - saturatedPa);
  const sensible = 1.006 * (tempC - bulbC);
  return bulbC >= 0
    ? ((2501 - 2.326 * bulbC) * saturated - sensible) / (2501 + 1.86 * tempC - 4.186 * bulbC)
    : ((2830 - 0.24 * bulbC) * saturated - sensible) / (2830 + 1.86 * tempC - 2.1 * bulbC);
}
