/** From what was typed in a field to a value in base units, or a named problem. What was typed is kept beside it. Pure. */
import {
  type LengthUnit,
  lengthToMm,
  type MassUnit,
  massToG,
  type TemperatureUnit,
  temperatureToC,
} from '#core/units.ts';
import { type DecimalSign, type NumberProblem, parseNumber } from './number-input.ts';

export type QuantityUnit = MassUnit | TemperatureUnit | LengthUnit | '%' | 'pH' | 'h' | 'min' | 'd' | '';

/** Bounds are in base units, and are what cannot be, not what is unlikely. */
export type Bounds = { readonly least: number; readonly most: number };

export type QuantityProblem = NumberProblem['problem'] | 'negative' | 'too-small' | 'too-large';

export type ReadQuantity =
  | { ok: true; value: number; typed: { text: string; unit: string } }
  | { ok: false; problem: QuantityProblem };

function toBase(value: number, unit: QuantityUnit): number {
  switch (unit) {
    case 'g':
    case 'kg':
    case 'oz':
    case 'lb':
      return massToG({ value, unit });
    case 'C':
    case 'F':
      return temperatureToC({ value, unit });
    case 'mm':
    case 'm':
    case 'in':
    case 'ft':
      return lengthToMm({ value, unit });
    default:
      return value;
  }
}

/**
 * A typed quantity in base units (g, °C, mm, or the unit itself), with its text and unit as typed.
 *
 * @example readQuantity({ text: '3215', unit: 'g', decimal: '.', least: 0, most: 100000 }) // => { ok: true, value: 3215, typed: { text: '3215', unit: 'g' } }
 */
export function readQuantity({
  text,
  unit,
  decimal,
  least,
  most,
}: Bounds & { text: string; unit: QuantityUnit; decimal: DecimalSign }): ReadQuantity {
  const parsed = parseNumber(text, decimal);
  if (!parsed.ok) return { ok: false, problem: parsed.problem };
  const value = toBase(parsed.value, unit);
  if (least >= 0 && parsed.value < 0) return { ok: false, problem: 'negative' };
  if (value < least) return { ok: false, problem: 'too-small' };
  if (value > most) return { ok: false, problem: 'too-large' };
  return { ok: true, value, typed: { text: text.trim(), unit } };
}
