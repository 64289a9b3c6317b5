/** A cell of a logger's table, cleaned, and the number in it if it holds one. */
import type { TemperatureUnit } from '#core/units.ts';

export type NumberCell = {
  readonly value: number;
  /** The decimal mark that it shows, or null when it shows none. */
  readonly mark: '.' | ',' | null;
  readonly unit: TemperatureUnit | null;
};

/** What loggers write where the sensor gave nothing. */
const NO_READING = new Set(
  ['', '-', '--', '---', '----', '*', '**', '***', '?', 'nan', 'na', 'n/a', 'null', 'none', 'no data'].concat(
    [
      'nodata',
      'err',
      'error',
      'fault',
      'open',
      'short',
      'ol',
      'or',
      'lo',
      'hi',
      'logged',
      '#n/a',
      '#num!',
      '#value!',
    ],
  ),
);
const NUMBER =
  /^([+-]?(?:\d{1,9}(?:[.,]\d{0,12})?|[.,]\d{1,12})(?:e[+-]?\d{1,2})?) ?(?:(%)(?: ?r\.? ?[hf]\.?)?|(?:[°º˚\ufffd]|deg\.? ?)?([cf])|(℃)|(℉))?$/;
const MOST_CHARACTERS = 200;

/** One space for any space, one minus for any minus. A cell longer than any time or number keeps a mark that neither has. */
export function cleaned(cell: string): string {
  if (cell.length > MOST_CHARACTERS) return `${cell.slice(0, MOST_CHARACTERS)}…`;
  return cell
    .replace(/[\s\u00a0\u2000-\u200b\u202f\ufeff]+/g, ' ')
    .replace(/[\u2212\u2010\u2011]/g, '-')
    .trim();
}

export function isNoReading(cell: string): boolean {
  return NO_READING.has(cleaned(cell).toLowerCase());
}

/** Null when the cell is not one number and nothing else: no thousands, no formula, no quotation marks. */
export function numberIn(cell: string): NumberCell | null {
  const [, digits, , letter, celsius, fahrenheit] = NUMBER.exec(cleaned(cell).toLowerCase()) ?? [];
  if (digits === undefined) return null;
  const value = Number(digits.replace(',', '.'));
  const mark = digits.includes(',') ? ',' : digits.includes('.') ? '.' : null;
  const unit = letter === 'c' || celsius ? 'C' : letter === 'f' || fahrenheit ? 'F' : null;
  return Number.isFinite(value) ? { value, mark, unit } : null;
}
