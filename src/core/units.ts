/** The only place where pounds, ounces and degrees Fahrenheit exist. Inside the app: g, °C, mm, hours, epoch ms. */

export type MassUnit = 'g' | 'kg' | 'oz' | 'lb';
export type TemperatureUnit = 'C' | 'F';
export type LengthUnit = 'mm' | 'in';
export type Unit = MassUnit | TemperatureUnit | LengthUnit | '%' | 'g/kg' | 'pH' | 'h' | 'min' | 'm';

/** Avoirdupois, exact: 1 lb = 453.59237 g (international yard and pound agreement 1959; from memory, high confidence). */
const G_PER: Readonly<Record<MassUnit, number>> = { g: 1, kg: 1000, oz: 28.349523125, lb: 453.59237 };
const MM_PER_INCH = 25.4;

/**
 * Mass in grams.
 *
 * Units: `value` in `unit`; result g.
 * @example massToG({ value: 1, unit: 'lb' }) // => 453.59237
 */
export function massToG({ value, unit }: { value: number; unit: MassUnit }): number {
  return value * G_PER[unit];
}

/**
 * Grams in a maker's unit.
 *
 * @example massFromG({ massG: 453.59237, unit: 'lb' }) // => 1
 */
export function massFromG({ massG, unit }: { massG: number; unit: MassUnit }): number {
  return massG / G_PER[unit];
}

/**
 * Temperature in degrees Celsius: (F - 32) / 1.8, exact by definition.
 *
 * @example temperatureToC({ value: 60, unit: 'F' }) // => 15.555555555555555
 */
export function temperatureToC({ value, unit }: { value: number; unit: TemperatureUnit }): number {
  return unit === 'C' ? value : (value - 32) / 1.8;
}

/**
 * Degrees Celsius in a maker's unit.
 *
 * @example temperatureFromC({ tempC: 15.6, unit: 'F' }) // => 60.08
 */
export function temperatureFromC({ tempC, unit }: { tempC: number; unit: TemperatureUnit }): number {
  return unit === 'C' ? tempC : tempC * 1.8 + 32;
}

/**
 * Length in millimetres.
 *
 * @example lengthToMm({ value: 2, unit: 'in' }) // => 50.8
 */
export function lengthToMm({ value, unit }: { value: number; unit: LengthUnit }): number {
  return unit === 'mm' ? value : value * MM_PER_INCH;
}

/**
 * Millimetres in a maker's unit.
 *
 * @example lengthFromMm({ lengthMm: 50.8, unit: 'in' }) // => 2
 */
export function lengthFromMm({ lengthMm, unit }: { lengthMm: number; unit: LengthUnit }): number {
  return unit === 'mm' ? lengthMm : lengthMm / MM_PER_INCH;
}
