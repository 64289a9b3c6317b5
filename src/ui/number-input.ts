/** Numbers as makers type them. Nothing is guessed: what could mean two things comes back as a question. Pure. */

export type DecimalSign = ',' | '.';

/**
 * `two-decimals`: more than one decimal sign. `thousands`: a sign that could part thousands; `readings` holds what it could mean.
 * `spaces`: a gap inside the number. `no-digits`: only a sign. `too-long`: more digits than can be kept exactly.
 */
export type NumberProblem =
  | { ok: false; problem: 'empty' | 'letters' | 'two-decimals' | 'spaces' | 'no-digits' | 'too-long' }
  | { ok: false; problem: 'thousands'; readings: readonly number[] };

export type ParsedNumber = { ok: true; value: number } | NumberProblem;

/** A double keeps every whole number of 15 digits exactly. */
const MAX_DIGITS = 15;

/** A sign between thousands: one to three digits not starting with 0, then threes; then perhaps another sign and decimals. */
const GROUPED = /^[1-9]\d{0,2}(?:([.,'’٬])\d{3}(?:\1\d{3})*)(?:([.,])\d*)?$/;

function westernDigits(text: string): string {
  return text
    .replace(/[٠-٩]/g, (digit) => String(digit.charCodeAt(0) - 0x0660))
    .replace(/[۰-۹]/g, (digit) => String(digit.charCodeAt(0) - 0x06f0));
}

function fail(problem: Exclude<NumberProblem['problem'], 'thousands'>): NumberProblem {
  return { ok: false, problem };
}

/** What digits parted like thousands could mean; null where they can only be read one way, as decimals. */
function thousandsReadings(digits: string, decimal: DecimalSign): readonly number[] | null {
  const [, sign, tailSign] = GROUPED.exec(digits) ?? [];
  if (sign === undefined || sign === tailSign) return null;
  const exact = Number(digits.replaceAll(sign, '').replace(',', '.'));
  const couldBeDecimals = (sign === ',' || sign === '.') && digits.indexOf(sign) === digits.length - 4;
  if (!couldBeDecimals || digits.indexOf(sign) !== digits.lastIndexOf(sign)) return [exact];
  return sign === decimal ? null : [Number(digits.replace(sign, '.')), exact];
}

/**
 * A typed number. Comma and point both open the decimals, whatever the maker's own sign is; the exception is a number
 * such as `1,234` where the other sign is the maker's decimal sign: that is asked about, never taken for thousands.
 *
 * @example parseNumber('553,5', '.') // => { ok: true, value: 553.5 }
 * @example parseNumber('1,234', ',') // => { ok: true, value: 1.234 }
 * @example parseNumber('1,234', '.') // => { ok: false, problem: 'thousands', readings: [1.234, 1234] }
 */
export function parseNumber(text: string, decimal: DecimalSign): ParsedNumber {
  const trimmed = westernDigits(text).trim();
  if (trimmed === '') return fail('empty');
  const negative = /^[-−–]/.test(trimmed);
  const body = (negative || trimmed.startsWith('+') ? trimmed.slice(1) : trimmed).trim();
  if (!/^[\d.,'’٫٬\s]*$/.test(body)) return fail('letters');
  if (!/\d/.test(body)) return fail('no-digits');
  if (/\s/.test(body)) return fail('spaces');
  if (body.replace(/\D/g, '').length > MAX_DIGITS) return fail('too-long');

  const sign = (value: number) => (negative && value !== 0 ? -value : value);
  const readings = thousandsReadings(body, decimal);
  if (readings) return { ok: false, problem: 'thousands', readings: readings.map(sign) };
  if (/['’٬]/.test(body)) return fail('letters');
  if (body.replace(/[^.,٫]/g, '').length > 1) return fail('two-decimals');
  return { ok: true, value: sign(Number(body.replace(/[,٫]/, '.'))) };
}

export type PadKey = '0' | '1' | '2' | '3' | '4' | '5' | '6' | '7' | '8' | '9' | 'decimal' | 'back';

/**
 * The text after one more key. Written with the maker's decimal sign; what would not lead to a number changes nothing.
 *
 * @example pressKey('55', '3', { decimal: ',', maxDigits: 7, maxDecimals: 2 }) // => '553'
 * @example pressKey('', 'decimal', { decimal: ',', maxDigits: 7, maxDecimals: 2 }) // => '0,'
 */
export function pressKey(
  text: string,
  key: PadKey,
  { decimal, maxDigits, maxDecimals }: { decimal: DecimalSign; maxDigits: number; maxDecimals: number },
): string {
  if (key === 'back') return text.slice(0, -1);
  const [, fraction] = text.split(/[.,]/);
  if (key === 'decimal') {
    if (fraction !== undefined || maxDecimals === 0) return text;
    return `${text === '' ? '0' : text}${decimal}`;
  }
  if (fraction !== undefined && fraction.length >= maxDecimals) return text;
  if (text.replace(/\D/g, '').length >= maxDigits) return text;
  return text === '0' ? key : text + key;
}
