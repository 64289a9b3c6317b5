import { readFileSync } from 'node:fs';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import * as z from 'zod/mini';
import { exactGrams } from '#core/formula/weigh-out.ts';
import { readFormulaFile, writeFormulaFile } from '#files/formula-file.ts';
import { isPlainText, shortLine } from '#files/plain-text.ts';
import { formulaSchema } from '#record/formula-schema.ts';
import { type Case, inFile, PLAIN_FORMULAS, REFUSED_FILES, REFUSED_FORMULAS } from './hostile-formulas.ts';
import { LONG_FORMULA, SHORT_FORMULA } from './long-formula.ts';

const PARENT = { formula: 'formula:018cdc00-0000-7000-8000-000000000001', entry: 'e'.repeat(36) } as const;

const REFUSED: readonly Case[] = [
  ...REFUSED_FILES,
  ...REFUSED_FORMULAS.map(([name, text]) => [`a formula: ${name}`, inFile(text)] as const),
];

/** The file as a schema; what it says is published, and what is published is held against what the reader takes. */
const FILE = z.strictObject({
  format: z.literal('greenweight-formula'),
  version: z.literal(1),
  formula: formulaSchema,
  note: z.string().check(z.maxLength(400)),
  from: z.optional(
    z.strictObject({
      formula: z.string().check(z.regex(/^formula:[A-Za-z0-9-]{1,40}$/)),
      entry: z.string().check(z.maxLength(36)),
    }),
  ),
});

describe('a formula as a file', () => {
  it('comes back as it went, with what it was made from', () => {
    for (const from of [PARENT, undefined]) {
      const file = { formula: LONG_FORMULA, note: 'Less pepper than before.', from };
      expect(readFormulaFile(writeFormulaFile(file))).toEqual({ ok: true, ...file });
    }
  });

  it('weighs out the very same grams on the phone that it came to', () => {
    const bench = { leanG: 2175.5, fatG: 824.5, pieces: 7 };
    const read = readFormulaFile(writeFormulaFile({ formula: LONG_FORMULA, note: '' }));
    if (!read.ok) throw new Error(read.problem.code);
    expect(exactGrams({ formula: read.formula, ...bench })).toEqual(
      exactGrams({ formula: LONG_FORMULA, ...bench }),
    );
  });

  it('keeps every name that can be typed', () => {
    const name = fc
      .string({ unit: 'grapheme', minLength: 1, maxLength: 20 })
      .filter((text) => text.length <= 80 && isPlainText(text));
    fc.assert(
      fc.property(name, fc.integer({ min: 0, max: 100_000 }), (typed, thousandths) => {
        const formula = { ...SHORT_FORMULA, name: typed, fatPctOfMeat: thousandths / 1000 };
        expect(readFormulaFile(writeFormulaFile({ formula, note: typed }))).toEqual({
          ok: true,
          formula,
          note: typed,
        });
      }),
      { numRuns: 300 },
    );
  });
});

describe('a formula from a stranger', () => {
  it('is tried with a hundred bad files and more', () => {
    expect(REFUSED.length).toBeGreaterThanOrEqual(100);
    expect(new Set(REFUSED.map(([, text]) => text)).size).toBe(REFUSED.length);
  });

  it.each(REFUSED)('is refused: %s', (_, text) => {
    const read = readFormulaFile(text);
    expect(read).toMatchObject({ ok: false, problem: { code: expect.stringMatching(/^[a-z-]+$/) } });
    expect(Object.prototype).not.toHaveProperty('isAdmin');
    expect(Object.prototype).not.toHaveProperty('polluted');
  });

  it.each(PLAIN_FORMULAS)('comes in as plain text: %s', (_, text, shown) => {
    for (const mark of ['', '\uFEFF']) {
      const read = readFormulaFile(mark + inFile(text));
      if (!read.ok) throw new Error(JSON.stringify(read.problem));
      expect(read.formula.lines[0]?.name).toBe(shown);
      expect(new Set(Object.keys(read.formula.lines[0] ?? {}))).toEqual(
        new Set(['amount', 'id', 'name', 'role']),
      );
    }
  });

  it('says which field was refused', () => {
    const wrong = {
      ...SHORT_FORMULA,
      lines: [{ ...SHORT_FORMULA.lines[0], amount: { basis: 'fixed', amountG: -1 } }],
    };
    const text = JSON.stringify({ format: 'greenweight-formula', version: 1, formula: wrong, note: '' });
    expect(readFormulaFile(text)).toEqual({
      ok: false,
      problem: { code: 'bad-formula', field: 'lines.0.amount.amountG' },
    });
    expect(readFormulaFile(text.replace('"version":1', '"version":2'))).toEqual({
      ok: false,
      problem: { code: 'newer-format' },
    });
  });

  it('that was cut or changed anywhere throws nothing', () => {
    const whole = writeFormulaFile({ formula: SHORT_FORMULA, note: 'n', from: PARENT });
    fc.assert(
      fc.property(
        fc.nat(whole.length),
        fc.string({ unit: 'binary', maxLength: 4 }),
        fc.nat(3),
        (at, put, out) => {
          const read = readFormulaFile(whole.slice(0, at) + put + whole.slice(at + out));
          expect(typeof read.ok).toBe('boolean');
        },
      ),
      { numRuns: 500 },
    );
  });
});

describe('the published JSON Schema', () => {
  it('is the one that the reader keeps to', () => {
    const made = {
      ...z.toJSONSchema(FILE),
      title: 'Greenweight formula, version 1',
      description:
        'One formula for dry-cured sausage. Amounts are shares of the meat, which is lean plus fat, unless they say otherwise.',
    };
    const published = readFileSync('public/schemas/formula-1.json', 'utf8');
    expect(JSON.parse(published)).toEqual(JSON.parse(JSON.stringify(made)));
  });

  it('takes what the reader takes, and nothing that the reader refuses for its shape', () => {
    const parsed = [
      ...REFUSED,
      ...PLAIN_FORMULAS.map(([name, text]) => [name, inFile(text)] as const),
    ].flatMap(([name, text]) => {
      try {
        return [{ name, taken: readFormulaFile(text), value: JSON.parse(text) as unknown }];
      } catch {
        return [];
      }
    });
    const shaped = parsed.filter(
      ({ taken }) => taken.ok || !['odd-text', 'forbidden-key', 'too-large'].includes(taken.problem.code),
    );
    expect(shaped.length).toBeGreaterThan(60);
    const differ = shaped.filter(({ taken, value }) => FILE.safeParse(value).success !== taken.ok);
    // No schema can say that ids differ.
    expect(differ.map(({ name }) => name)).toEqual(['two lines of one id']);
  });
});

describe('plain text', () => {
  it('holds no control character, no overridden direction and no half of a character', () => {
    expect(
      ['Salt\tand\npepper', 'Knoblauch, süß', '\u{1F9C2}', '', '\u2066ab\u2069'].every(isPlainText),
    ).toBe(true);
    expect(
      ['\u0000', '\u001b[31m', '\u007f', '\u009b', '\ud800', '\udfff', '\u202e', '\u2028', '\ufeff'].some(
        isPlainText,
      ),
    ).toBe(false);
  });
  it('for a label is one short line', () => {
    expect(shortLine('  Temp\u0000 \n\u202e °C\t ', 80)).toBe('Temp °C');
    expect(shortLine('abcdef', 3)).toBe('abc');
  });
});
