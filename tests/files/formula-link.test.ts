import fc from 'fast-check';
import { deflateSync } from 'fflate';
import { describe, expect, it } from 'vitest';
import { exactGrams } from '#core/formula/weigh-out.ts';
import { FORMULA_ROUTE, MOST_LINK_CHARS, readFormulaLink, writeFormulaLink } from '#files/formula-link.ts';
import { LINK_DICTIONARY } from '#files/link-dictionary.ts';
import { hashLine } from '#record/entry.ts';
import { PLAIN_FORMULAS, REFUSED_FORMULAS } from './hostile-formulas.ts';
import { LONG_FORMULA, SHORT_FORMULA } from './long-formula.ts';

const BASE = 'https://book.example.org/';
const PARENT = {
  formula: 'formula:018cdc00-0000-7000-a000-0000000000bb',
  entry: '018cdc00-0000-7000-8000-00000000000c',
} as const;
/** Made by the first build that made links. */
const GIVEN_OUT = `${BASE}#/formulas/from/AWtJgCpDBFROYmYeqLQjvp4hrmYBl1nUK5YDwIFBhTCIrQUA`;

function link(bytes: readonly number[]): string {
  return `${BASE}${FORMULA_ROUTE}${Buffer.from(bytes).toString('base64url')}`;
}

/** A link as ours is made, its sum right, whatever the text says. */
function linkOf(text: string, packed?: Uint8Array): string {
  const sum = [0, 2, 4, 6].map((at) => Number.parseInt(hashLine(text).slice(at, at + 2), 16));
  const dictionary = Buffer.from(LINK_DICTIONARY);
  return link([1, ...sum, ...(packed ?? deflateSync(Buffer.from(text), { level: 9, dictionary }))]);
}

async function written(formula = LONG_FORMULA): Promise<string> {
  const made = await writeFormulaLink({ formula, base: BASE });
  if (!made.ok) throw new Error(made.problem.code);
  return made.link;
}

async function codeOf(text: string): Promise<string> {
  const read = await readFormulaLink(text);
  return read.ok ? 'ok' : read.problem.code;
}

describe('a formula in a link', () => {
  it('comes back as it went, and weighs out the very same grams', async () => {
    const read = await readFormulaLink(await written());
    if (!read.ok) throw new Error(read.problem.code);
    expect(read.formula).toEqual(LONG_FORMULA);
    const bench = { leanG: 2175.5, fatG: 824.5, pieces: 7 };
    expect(exactGrams({ formula: read.formula, ...bench })).toEqual(
      exactGrams({ formula: LONG_FORMULA, ...bench }),
    );
  });

  it('leaves out how its lines were counted, and counts them anew', async () => {
    const read = await readFormulaLink(await written(SHORT_FORMULA));
    const lines = SHORT_FORMULA.lines.map((line, at) => ({ ...line, id: String(at + 1) }));
    expect(read).toEqual({ ok: true, formula: { ...SHORT_FORMULA, lines } });
  });

  it('is all in the fragment, and read from the whole address or from the fragment alone', async () => {
    const whole = await written(SHORT_FORMULA);
    expect(whole.split('#')[0]).toBe(BASE);
    expect(whole).toMatch(/^[\x21-\x7e]+$/);
    expect(await readFormulaLink(whole.slice(whole.indexOf('#')))).toEqual(await readFormulaLink(whole));
  });

  it('says which version of which formula it was made from, and its sum covers that too', async () => {
    const made = await writeFormulaLink({ formula: LONG_FORMULA, base: BASE, from: PARENT });
    if (!made.ok) throw new Error(made.problem.code);
    expect(await readFormulaLink(made.link)).toEqual({ ok: true, formula: LONG_FORMULA, from: PARENT });
    const start = made.link.indexOf(FORMULA_ROUTE) + FORMULA_ROUTE.length;
    for (let at = start; at < start + 56; at += 1) {
      const other = made.link[at] === 'A' ? 'B' : 'A';
      expect(await codeOf(made.link.slice(0, at) + other + made.link.slice(at + 1))).not.toBe('ok');
    }
  });

  it('goes without a parent that has no UUID', async () => {
    const from = { formula: 'formula:invented', entry: PARENT.entry } as const;
    const made = await writeFormulaLink({ formula: SHORT_FORMULA, base: BASE, from });
    expect(made).toEqual(await writeFormulaLink({ formula: SHORT_FORMULA, base: BASE }));
  });

  it('of version 1 that was given out once is read for ever', async () => {
    expect(await readFormulaLink(GIVEN_OUT)).toEqual(await readFormulaLink(await written(SHORT_FORMULA)));
    expect(await codeOf(GIVEN_OUT)).toBe('ok');
  });

  it('keeps any formula that its schema takes', async () => {
    await fc.assert(
      fc.asyncProperty(
        fc.array(
          fc.record({
            name: fc.string({ minLength: 1, maxLength: 30 }),
            note: fc.string({ maxLength: 100 }),
            thousandths: fc.integer({ min: 0, max: 100_000 }),
          }),
          { maxLength: 25 },
        ),
        async (typed) => {
          const lines = typed.map(({ name, note, thousandths }, at) => ({
            id: String(at + 1),
            name,
            note,
            role: 'spice' as const,
            amount: { basis: 'pct-of-meat' as const, amountPct: thousandths / 1000 },
          }));
          const formula = { ...SHORT_FORMULA, lines };
          expect(await readFormulaLink(await written(formula))).toEqual({ ok: true, formula });
        },
      ),
      { numRuns: 50 },
    );
  });

  it('is refused and not made when it would be too long to be read', async () => {
    const lines = Array.from({ length: 60 }, (_, at) => ({
      ...LONG_FORMULA.lines[1],
      id: String(at),
      name: `Fat ${at}`,
      role: 'fat' as const,
      amount: { basis: 'fixed' as const, amountG: 1 },
      note: hashLine(String(at)).repeat(6),
    }));
    const made = await writeFormulaLink({ formula: { ...LONG_FORMULA, lines }, base: BASE });
    expect(made.ok).toBe(true);
    const longer = lines.map((line, at) => ({
      ...line,
      note: [1, 2, 3, 4, 5, 6].map((part) => hashLine(`${at} ${part}`)).join(''),
    }));
    expect(await writeFormulaLink({ formula: { ...LONG_FORMULA, lines: longer }, base: BASE })).toEqual({
      ok: false,
      problem: { code: 'too-long' },
    });
  });
});

describe('a link from a stranger', () => {
  it.each(REFUSED_FORMULAS)('is refused: %s', async (_, text) => {
    expect(await codeOf(linkOf(text))).not.toBe('ok');
    expect(Object.prototype).not.toHaveProperty('lines');
  });

  it.each(PLAIN_FORMULAS)('comes in as plain text: %s', async (_, text, shown) => {
    const read = await readFormulaLink(linkOf(text));
    if (!read.ok) throw new Error(JSON.stringify(read.problem));
    expect(read.formula.lines[0]?.name).toBe(shown);
    expect(read.formula.lines.map(({ id }) => id)).toEqual(
      read.formula.lines.map((_line, at) => String(at + 1)),
    );
  });

  it('that inflates without end is stopped while it inflates', async () => {
    const bomb = (bytes: number, byte: number) => deflateSync(new Uint8Array(bytes).fill(byte), { level: 9 });
    for (const bytes of [300_000, 1_000_000, 6_000_000]) {
      for (const byte of [0, 0x20, 0x5b])
        expect(await codeOf(linkOf('', bomb(bytes, byte)))).toBe('inflates-too-far');
    }
    // Under the limit in bytes, and still far too much for so short a link.
    expect(await codeOf(linkOf('', bomb(200_000, 0x20)))).toBe('inflates-too-far');
    expect(linkOf('', bomb(6_000_000, 0)).length).toBeLessThan(MOST_LINK_CHARS);
  });

  it('with more than 256 KiB in it is refused however well it is filled', async () => {
    const text = Array.from({ length: 5000 }, (_, at) => `${at} `.repeat(14)).join('');
    expect(text.length).toBeGreaterThan(256 * 1024);
    const packed = deflateSync(Buffer.from(text), { level: 9 });
    const code = await codeOf(linkOf(text, packed));
    expect(['inflates-too-far', 'too-long']).toContain(code);
  });

  const broken: readonly (readonly [string, string, string])[] = [
    ['no link', '', 'not-a-link'],
    ['another page of the app', `${BASE}#/today`, 'not-a-link'],
    ['the route with nothing behind it', `${BASE}${FORMULA_ROUTE}`, 'not-a-link'],
    ['signs that no link of ours has', `${BASE}${FORMULA_ROUTE}a+b/c==`, 'not-a-link'],
    ['markup', `${BASE}${FORMULA_ROUTE}<script>`, 'not-a-link'],
    ['a lone character', `${BASE}${FORMULA_ROUTE}A`, 'not-a-link'],
    ['more than 8 KiB', `${BASE}${FORMULA_ROUTE}${'A'.repeat(MOST_LINK_CHARS + 1)}`, 'too-long'],
    ['version nought', link([0, 1, 2, 3, 4, 5, 6]), 'damaged'],
    ['a newer version', link([3, 1, 2, 3, 4, 5, 6]), 'newer-format'],
    ['a parent cut short', link([2, 1, 2, 3, 4, ...Array(31).fill(7)]), 'damaged'],
    ['a parent with nothing after it', link([2, 1, 2, 3, 4, ...Array(32).fill(7)]), 'damaged'],
    ['only the version', link([1]), 'damaged'],
    ['nothing after the sum', link([1, 1, 2, 3, 4]), 'damaged'],
    ['a block type that does not exist', link([1, 1, 2, 3, 4, 7, 7, 7, 7]), 'damaged'],
    ['bytes that are no UTF-8', linkOf('', deflateSync(new Uint8Array([0xff, 0xfe, 0xc0, 0x80]))), 'damaged'],
    ['a stored block cut short', link([1, 1, 2, 3, 4, 1, 255, 0, 0, 255, 65]), 'damaged'],
  ];
  it.each(broken)('is refused: %s', async (_, text, code) => {
    expect(await codeOf(text)).toBe(code);
  });

  it('with any one character changed or cut off is refused: a dose never changes on the way', async () => {
    const whole = await written();
    const start = whole.indexOf(FORMULA_ROUTE) + FORMULA_ROUTE.length;
    // The last character carries bits that no byte uses; a link that differs only there is the same link.
    for (let at = start; at < whole.length - 1; at += 1) {
      const other = whole[at] === 'A' ? 'B' : 'A';
      expect(await codeOf(whole.slice(0, at) + other + whole.slice(at + 1)), `character ${at}`).not.toBe(
        'ok',
      );
    }
    for (let cut = 1; cut < 40; cut += 1)
      expect(await codeOf(whole.slice(0, -cut)), `${cut} cut`).not.toBe('ok');
  });

  it('of any bytes whatever throws nothing', async () => {
    await fc.assert(
      fc.asyncProperty(
        fc.integer({ min: 0, max: 3 }),
        fc.uint8Array({ maxLength: 400 }),
        async (version, bytes) => {
          expect(await codeOf(link([version, ...bytes]))).toMatch(/^[a-z-]+$/);
        },
      ),
      { numRuns: 300 },
    );
  });
});
