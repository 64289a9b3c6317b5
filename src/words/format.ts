/** How a number, a moment or a span is written. Rounding happens here and nowhere else, and the direction is always named. */
import { massFromG, temperatureFromC } from '#core/units.ts';

/** How this maker writes: chosen once, in the kit. */
export type Writing = {
  readonly mass: 'metric' | 'pounds';
  readonly temperature: 'C' | 'F';
  readonly decimal: '.' | ',';
};

export type Rounding = 'nearest' | 'up' | 'down';

const ROUND: Readonly<Record<Rounding, (value: number) => number>> = {
  nearest: Math.round,
  up: Math.ceil,
  down: Math.floor,
};

/** A hair against the noise of binary fractions: 8.03 x 100 must not be rounded up to 804. */
const HAIR = 1e-9;

/** A number with so many places, with the maker's decimal sign, a thin space between thousands and a true minus. */
export function decimal(
  value: number,
  places: number,
  { decimal: sign }: Pick<Writing, 'decimal'>,
  rounding: Rounding = 'nearest',
): string {
  const factor = 10 ** places;
  const scaled = value * factor;
  const hair = Math.max(1, Math.abs(scaled)) * HAIR;
  const nudge = rounding === 'down' ? hair : rounding === 'up' ? -hair : 0;
  const rounded = ROUND[rounding](scaled + nudge) / factor;
  const [whole = '0', fraction] = Math.abs(rounded).toFixed(places).split('.');
  const grouped = whole.replace(/\B(?=(\d{3})+$)/g, '\u202f');
  const minus = rounded < 0 ? '\u2212' : '';
  return `${minus}${grouped}${fraction === undefined ? '' : sign + fraction}`;
}

/** How many places a scale of this step shows: 0.01 g has two, 1 g none, 5 g none. */
export function placesOfStep(stepG: number): number {
  return Math.max(0, Math.ceil(-Math.log10(stepG) - HAIR));
}

export type Quantity = { readonly value: string; readonly unit: string };

/** Mass on a scale that reads in steps of `stepG`. In pounds below a pound it is written in ounces. */
export function mass(
  massG: number,
  stepG: number,
  writing: Writing,
  rounding: Rounding = 'nearest',
): Quantity {
  if (writing.mass === 'metric')
    return { value: decimal(massG, placesOfStep(stepG), writing, rounding), unit: 'g' };
  const unit = massUnit(massG, writing);
  const places = placesOfStep(massFromG({ massG: stepG, unit })) + (unit === 'lb' ? 1 : 0);
  return { value: decimal(massFromG({ massG, unit }), places, writing, rounding), unit };
}

/** The unit in which a mass is typed and shown. */
export function massUnit(massG: number, { mass: system }: Pick<Writing, 'mass'>): 'g' | 'oz' | 'lb' {
  if (system === 'metric') return 'g';
  return massFromG({ massG, unit: 'lb' }) < 1 ? 'oz' : 'lb';
}

/** Temperature to a tenth. */
export function temperature(tempC: number, writing: Writing, places = 1): Quantity {
  return {
    value: decimal(temperatureFromC({ tempC, unit: writing.temperature }), places, writing),
    unit: writing.temperature === 'C' ? '°C' : '°F',
  };
}

/** A quantity as one text with a no-break space, for use inside a sentence. */
export function joined({ value, unit }: Quantity): string {
  return unit === '%' ? `${value}\u00a0%` : `${value}\u00a0${unit}`;
}

/** Minutes by which local time was ahead of UTC, from an offset such as `+01:00`. */
function offsetMinutes(zone: string): number {
  const sign = zone.startsWith('-') ? -1 : 1;
  return sign * (Number(zone.slice(1, 3)) * 60 + Number(zone.slice(4, 6)));
}

/** The wall clock there and then, as a date whose UTC fields are what the clock showed. */
export function wallClock(atMs: number, zone: string): Date {
  return new Date(atMs + offsetMinutes(zone) * 60_000);
}
