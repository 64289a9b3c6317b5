/** Moist air: what a thermometer and a hygrometer say together. */

/** Specific gas constant of water vapour, J/(kg K). */
const VAPOUR_J_PER_KG_K = 461.522;
const ZERO_C_K = 273.15;
/** Below the triple point the air is saturated over ice. */
const TRIPLE_POINT_C = 0.01;

/**
 * Saturation pressure of water vapour, over water from the triple point up and over ice below it.
 *
 * Over water: ln p = C8/T + C9 + C10 T + C11 T² + C12 T³ + C13 ln T.
 * Units: °C; result Pa.
 * Valid: -100 to 200 °C.
 * Source: Hyland, R. W. & Wexler, A. (1983), as in ASHRAE Handbook: Fundamentals (2017), ch. 1, eqs 5 and 6, read
 * second-hand in an open implementation.
 * @throws RangeError outside the valid range.
 * @example saturationPressurePa({ tempC: 13 }) // => 1497.8108432903555
 */
export function saturationPressurePa({ tempC }: { tempC: number }): number {
  requireTemperature('saturationPressurePa', tempC);
  const tempK = tempC + ZERO_C_K;
  const ln =
    tempC <= TRIPLE_POINT_C
      ? -5674.5359 / tempK +
        6.3925247 +
        tempK * (-9.677843e-3 + tempK * (6.2215701e-7 + tempK * (2.0747825e-9 - 9.484024e-13 * tempK))) +
        4.1635019 * Math.log(tempK)
      : -5800.2206 / tempK +
        1.3914993 +
        tempK * (-4.8640239e-2 + tempK * (4.1764768e-5 - 1.4452093e-8 * tempK)) +
        6.5459673 * Math.log(tempK);
  return Math.exp(ln);
}

/**
 * Partial pressure of water vapour in the air.
 *
 * Units: °C, % relative humidity; result Pa.
 * Source: definition of relative humidity; saturation as in `saturationPressurePa`.
 * @throws RangeError outside -100..200 °C or 0..100 %.
 * @example vapourPressurePa({ tempC: 13, humidityPct: 0 }) // => 0
 */
export function vapourPressurePa({ tempC, humidityPct }: { tempC: number; humidityPct: number }): number {
  requireHumidity('vapourPressurePa', humidityPct);
  return (saturationPressurePa({ tempC }) * humidityPct) / 100;
}

/**
 * Temperature at which this air would start to wet a cold surface (below 0.01 °C: to frost it).
 *
 * The temperature at which saturation equals the vapour pressure, by halving to 1e-9 °C.
 * Units: °C, %; result °C.
 * Source: definition; saturation as in `saturationPressurePa`.
 * @throws RangeError outside -100..200 °C, or if the air holds too little water for a dew point above -100 °C.
 * @example Math.round(dewPointC({ tempC: 13, humidityPct: 100 }) * 1e6) // => 13000000
 */
export function dewPointC({ tempC, humidityPct }: { tempC: number; humidityPct: number }): number {
  const vapourPa = vapourPressurePa({ tempC, humidityPct });
  let lowC = -100;
  let highC = tempC;
  if (!(vapourPa >= saturationPressurePa({ tempC: lowC })))
    throw new RangeError(`dewPointC: humidityPct requires a dew point above -100 °C, got ${humidityPct}`);
  while (highC - lowC > 1e-9) {
    const middleC = (lowC + highC) / 2;
    if (saturationPressurePa({ tempC: middleC }) < vapourPa) lowC = middleC;
    else highC = middleC;
  }
  return (lowC + highC) / 2;
}

/**
 * What the air could still take up: saturation less vapour pressure. It drives a wet surface's drying.
 *
 * Units: °C, %; result Pa.
 * Source: definition; saturation as in `saturationPressurePa`.
 * @throws RangeError outside -100..200 °C or 0..100 %.
 * @example vapourPressureDeficitPa({ tempC: 13, humidityPct: 100 }) // => 0
 */
export function vapourPressureDeficitPa({
  tempC,
  humidityPct,
}: {
  tempC: number;
  humidityPct: number;
}): number {
  return saturationPressurePa({ tempC }) - vapourPressurePa({ tempC, humidityPct });
}

/**
 * Grams of water vapour in a cubic metre of air.
 *
 * 1000 e / (Rv T), Rv = 461.522 J/(kg K).
 * Units: °C, %; result g/m³.
 * Source: ideal gas; saturation as in `saturationPressurePa`.
 * @throws RangeError outside -100..200 °C or 0..100 %.
 * @example absoluteHumidityGPerM3({ tempC: 13, humidityPct: 0 }) // => 0
 */
export function absoluteHumidityGPerM3({
  tempC,
  humidityPct,
}: {
  tempC: number;
  humidityPct: number;
}): number {
  return (1000 * vapourPressurePa({ tempC, humidityPct })) / (VAPOUR_J_PER_KG_K * (tempC + ZERO_C_K));
}

function requireTemperature(functionName: string, tempC: number): void {
  if (!(tempC >= -100 && tempC <= 200))
    throw new RangeError(`${functionName}: tempC requires -100..200, got ${tempC}`);
}

function requireHumidity(functionName: string, humidityPct: number): void {
  if (!(humidityPct >= 0 && humidityPct <= 100))
    throw new RangeError(`${functionName}: humidityPct requires 0..100, got ${humidityPct}`);
}
