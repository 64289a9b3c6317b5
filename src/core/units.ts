/** The only place where pounds, ounces and degrees Fahrenheit exist. Inside the app: g, °C, mm, hours, epoch ms. */

export type MassUnit = 'g' | 'kg' | 'oz' | 'lb';
export type TemperatureUnit = 'C' | 'F';
export type LengthUnit = 'mm' | 'm' | 'in' | 'ft';
export type Unit = MassUnit | TemperatureUnit | LengthUnit | '%' | 'g/kg' | 'pH' | 'h' | 'min';

/** Avoirdupois, exact: 1 lb = 453.59237 g (international yard and pound agreement 1959; from memory, high confidence). */
const G_PER: Readonly<Record<MassUnit, number>> = { g: 1, kg: 1000, oz: 28.349523125, lb: 453.59237 };
/** Exact by the same agreement. */
const MM_PER: Readonly<Record<LengthUnit, number>> = { mm: 1, m: 1000, in: 25.4, ft: 304.8 };

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
  return value * MM_PER[unit];
}

/**
 * Millimetres in a maker's unit.
 *
 * @example lengthFromMm({ lengthMm: 50.8, unit: 'in' }) // => 2
 */
export function lengthFromMm({ lengthMm, unit }: { lengthMm: number; unit: LengthUnit }): number {
  return lengthMm / MM_PER[unit];
}
