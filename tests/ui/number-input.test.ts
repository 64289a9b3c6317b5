import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { type DecimalSign, type PadKey, parseNumber, pressKey } from '#ui/number-input.ts';

const SIGNS: readonly DecimalSign[] = [',', '.'];

describe('a typed number', () => {
  // What a maker typed                decimal sign  what it means
  const read: readonly [string, DecimalSign, number][] = [
    ['553', ',', 553],
    ['553', '.', 553],
    ['553,5', ',', 553.5],
    ['553,5', '.', 553.5],
    ['553.5', ',', 553.5],
    ['553.5', '.', 553.5],
    ['  8.03 ', '.', 8.03],
    ['\u00a08,03\u202f', '.', 8.03],
    ['0,234', '.', 0.234], // no group of thousands starts with 0
    ['0.234', ',', 0.234],
    ['1,234', ',', 1.234],
    ['1.234', '.', 1.234],
    ['1,23', '.', 1.23],
    ['1.2345', ',', 1.2345],
    ['1234,567', '.', 1234.567], // four digits before the sign are no group
    [',5', '.', 0.5],
    ['.5', ',', 0.5],
    ['5,', ',', 5],
    ['5.', ',', 5],
    ['007', '.', 7],
    ['-18', '.', -18],
    ['−18,5', ',', -18.5],
    ['– 2', '.', -2],
    ['+4', '.', 4],
    ['٥٥٣', '.', 553],
    ['۵۵۳', '.', 553],
    ['٥٥٣٫٥', '.', 553.5],
    ['۵۵۳٫۵', ',', 553.5],
    ['۱۲,۵', '.', 12.5],
    ['-0', '.', 0],
    ['999999999999999', '.', 999999999999999],
  ];
  it.each(read)('"%s" with the sign "%s" is %d', (text, decimal, value) => {
    expect(parseNumber(text, decimal)).toEqual({ ok: true, value });
  });

  const refused: readonly [string, DecimalSign, string][] = [
    ['', '.', 'empty'],
    ['   ', '.', 'empty'],
    ['abc', '.', 'letters'],
    ['12 g', '.', 'letters'],
    ['1e3', '.', 'letters'],
    ['Infinity', '.', 'letters'],
    ['NaN', '.', 'letters'],
    ['0x10', '.', 'letters'],
    ['5-', '.', 'letters'],
    ['--5', '.', 'letters'],
    ["1'23", '.', 'letters'],
    ['1/2', '.', 'letters'],
    ['½', '.', 'letters'],
    ['5,5,5', ',', 'two-decimals'],
    ['5..5', '.', 'two-decimals'],
    ['5,.5', '.', 'two-decimals'],
    ['0.123.456', '.', 'two-decimals'],
    ['1,234,5', '.', 'two-decimals'],
    ['1,234,', '.', 'two-decimals'],
    ['1 234', '.', 'spaces'],
    ['12 3', '.', 'spaces'],
    ['1\u00a0234', ',', 'spaces'],
    ['-', '.', 'no-digits'],
    ['.', '.', 'no-digits'],
    ['+', ',', 'no-digits'],
    ['1234567890123456', '.', 'too-long'],
  ];
  it.each(refused)('"%s" with the sign "%s" is refused: %s', (text, decimal, problem) => {
    expect(parseNumber(text, decimal)).toEqual({ ok: false, problem });
  });

  const asked: readonly [string, DecimalSign, readonly number[]][] = [
    ['1,234', '.', [1.234, 1234]],
    ['1.234', ',', [1.234, 1234]],
    ['-1,234', '.', [-1.234, -1234]],
    ['123,456', '.', [123.456, 123456]],
    ['1,234.5', '.', [1234.5]],
    ['1.234,5', ',', [1234.5]],
    ['1,234.5', ',', [1234.5]],
    ['1.234.567', ',', [1234567]],
    ['1,234,567.25', '.', [1234567.25]],
    ["12'345", '.', [12345]],
    ['12’345.6', '.', [12345.6]],
    ['١٬٢٣٤', '.', [1234]],
  ];
  it.each(asked)('"%s" with the sign "%s" asks about thousands', (text, decimal, readings) => {
    expect(parseNumber(text, decimal)).toEqual({ ok: false, problem: 'thousands', readings });
  });

  it('never reads a number that is not a finite one, whatever is typed', () => {
    const typed = fc.string({ unit: fc.constantFrom(..."0123456789.,-−+ '’eE٣۴٫٬g\u00a0"), maxLength: 20 });
    fc.assert(
      fc.property(typed, fc.constantFrom(...SIGNS), (text, decimal) => {
        const parsed = parseNumber(text, decimal);
        expect(!parsed.ok || Number.isFinite(parsed.value)).toBe(true);
      }),
    );
  });

  it('reads what is written with the maker’s own sign, to the last decimal, whichever of the two signs it is', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: -9999999, max: 9999999 }),
        fc.integer({ min: 0, max: 3 }),
        fc.constantFrom(...SIGNS),
        (whole, decimals, decimal) => {
          const written = (whole / 10 ** decimals).toFixed(decimals);
          const parsed = parseNumber(written.replace('.', decimal), decimal);
          expect(parsed).toEqual({ ok: true, value: Number(written) + 0 });
        },
      ),
    );
  });

  it('swapping both signs changes nothing', () => {
    const swap = (text: string) => text.replace(/[.,]/g, (sign) => (sign === '.' ? ',' : '.'));
    const typed = fc.string({ unit: fc.constantFrom(...'0123456789.,'), maxLength: 12 });
    fc.assert(
      fc.property(typed, (text) => {
        expect(parseNumber(swap(text), ',')).toEqual(parseNumber(text, '.'));
      }),
    );
  });
});

describe('a key of the pad', () => {
  const rules = { decimal: ',', maxDigits: 7, maxDecimals: 2 } as const;
  const type = (...keys: PadKey[]) => keys.reduce((text, key) => pressKey(text, key, rules), '');

  it('writes digits in order', () => expect(type('5', '5', '3')).toBe('553'));
  it('writes the maker’s decimal sign, with a 0 before it where nothing stands', () => {
    expect(type('decimal', '5')).toBe('0,5');
    expect(pressKey('8', 'decimal', { ...rules, decimal: '.' })).toBe('8.');
  });
  it('takes one decimal sign only', () =>
    expect(type('1', 'decimal', 'decimal', '5', 'decimal')).toBe('1,5'));
  it('takes no decimal sign where there are no decimals', () => {
    expect(pressKey('8', 'decimal', { ...rules, maxDecimals: 0 })).toBe('8');
  });
  it('stops at the finest decimal', () => expect(type('1', 'decimal', '2', '3', '4')).toBe('1,23'));
  it('stops at the last digit', () => expect(type('1', '2', '3', '4', '5', '6', '7', '8')).toBe('1234567'));
  it('drops a leading 0', () => expect(type('0', '0', '7')).toBe('7'));
  it('keeps the 0 before the decimals', () => expect(type('0', 'decimal', '0', '7')).toBe('0,07'));
  it('takes the last one back', () => {
    expect(type('5', '5', 'back')).toBe('5');
    expect(type('back')).toBe('');
  });
  it('writes only what parseNumber can read', () => {
    const keys: PadKey[] = ['0', '1', '2', '5', '9', 'decimal', 'back'];
    fc.assert(
      fc.property(
        fc.array(fc.constantFrom(...keys), { maxLength: 14 }),
        fc.constantFrom(...SIGNS),
        (all, decimal) => {
          const text = all.reduce(
            (before, key) => pressKey(before, key, { decimal, maxDigits: 7, maxDecimals: 3 }),
            '',
          );
          expect(text === '' || parseNumber(text, decimal).ok).toBe(true);
        },
      ),
    );
  });
});
