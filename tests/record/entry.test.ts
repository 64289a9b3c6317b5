import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { checkDraft, type Draft, hashLine, readLine, writeLine } from '#record/entry.ts';
import { bodySchema, writtenVersion } from '#record/kinds.ts';
import { PLAN, SALAME } from '../screens/book.ts';
import { known, lineOf, newer, writer } from './make.ts';

const { write, lines } = writer();
write('weighed', 'piece:a', { grossG: 412.5, stage: 'round' }, { refs: ['batch:a'] });
const text = lines[0]?.line ?? '';
const problemIn = (line: string) => {
  const read = readLine(line);
  return read.ok ? null : read.problem;
};
const withField = (name: string, value: unknown) => JSON.stringify({ ...JSON.parse(text), [name]: value });

describe('the line of an entry', () => {
  it('is hashed as SHA-256 of its UTF-8 bytes', () => {
    // FIPS 180-2, appendix B.1 and B.2; the empty message: NIST example values.
    expect(hashLine('abc')).toBe('ba7816bf8f01cfea414140de5dae2223b00361a396177a9cb410ff61f20015ad');
    expect(hashLine('abcdbcdecdefdefgefghfghighijhijkijkljklmklmnlmnomnopnopq')).toBe(
      '248d6a61d20638b8e5c026930c3e6039a33ce45964ff2167f6ecedd419db06c1',
    );
    expect(hashLine('')).toBe('e3b0c44298fc1c149afbf4c8996fb92427ae41e4649b934ca495991b7852b855');
  });

  it('reads back and writes again byte for byte, whatever was typed', () => {
    fc.assert(
      fc.property(
        fc.string({ unit: 'binary', maxLength: 300 }),
        fc.string({ unit: 'grapheme', maxLength: 12 }),
        fc.integer({ min: 0, max: 999_999 }),
        (typed, by, grams) => {
          const written = writer();
          written.write('noted', 'batch:a', { text: typed }, { refs: ['piece:b'] });
          written.write('weighed', 'piece:b', {
            grossG: grams / 7,
            stage: 'round',
            typed: { grossG: { text: by, unit: 'g' } },
          });
          for (const { line } of written.lines) {
            const read = readLine(line);
            expect(read.ok).toBe(true);
            expect(line).not.toContain('\n');
            if (read.ok) expect(writeLine(known(read.entry))).toBe(line);
          }
        },
      ),
      { numRuns: 150 },
    );
  });

  it('keeps a kind or version that this build does not know, without its body', () => {
    const kind = newer(lineOf(text)).entry;
    expect(kind).toMatchObject({
      kind: null,
      named: 'ultrasound-read',
      subject: 'piece:a',
      refs: ['batch:a'],
    });
    const version = readLine(withField('v', 2));
    expect(version.ok && version.entry).toMatchObject({ kind: null, named: 'weighed', v: 2 });
  });

  it('is written in the oldest version that takes its body', () => {
    const { fermentC, phLow, phHigh, ...dry } = PLAN;
    const body = { lot: '1', formula: SALAME, ruleSet: 'US', plan: PLAN };
    expect(writtenVersion('batch-opened', body)).toBe(1);
    expect(writtenVersion('batch-opened', { ...body, plan: dry })).toBe(2);
    expect(writtenVersion('plan-changed', { plan: dry, reason: '' })).toBe(2);
    expect(bodySchema('batch-opened', 1)?.safeParse({ ...body, plan: dry }).success).toBe(false);
    expect(bodySchema('batch-opened', 2)?.safeParse(body).success).toBe(true);
    // A plan says all of its ferment or nothing.
    for (const part of [{ fermentC }, { phLow }, { phLow, phHigh }])
      expect(bodySchema('batch-opened', 2)?.safeParse({ ...body, plan: { ...dry, ...part } }).success).toBe(
        false,
      );
    expect(bodySchema('batch-opened', 3)).toBeNull();
    expect(bodySchema('batch-opened', 0)).toBeNull();
  });

  it('refuses what is no entry, and says which field', () => {
    expect(problemIn('{"id":')).toEqual({ code: 'not-json' });
    expect(problemIn('null')).toMatchObject({ code: 'not-an-entry' });
    expect(problemIn(withField('zone', 'Europe/Rome'))).toEqual({ code: 'not-an-entry', field: 'zone' });
    expect(problemIn(withField('seq', 0))).toEqual({ code: 'not-an-entry', field: 'seq' });
    expect(problemIn(withField('more', 1))).toMatchObject({ code: 'not-an-entry' });
    expect(problemIn(withField('body', { grossG: -1, stage: 'round' }))).toEqual({
      code: 'bad-body',
      kind: 'weighed',
      field: 'grossG',
    });
    expect(problemIn(withField('body', { grossG: 1, stage: 'round', __more: 1 }))).toMatchObject({
      code: 'bad-body',
    });
  });

  it('refuses keys that reach a prototype, depth and length', () => {
    expect(problemIn(text.replace('"body":{', '"body":{"__proto__":{},'))).toEqual({ code: 'forbidden-key' });
    expect(problemIn(withField('body', { constructor: 1 }))).toEqual({ code: 'forbidden-key' });
    expect(problemIn(withField('body', JSON.parse('[[[[[[[[[[1]]]]]]]]]]')))).toEqual({
      code: 'forbidden-key',
    });
    expect(problemIn(withField('by', 'x'.repeat(70_000)))).toEqual({ code: 'too-long' });
  });

  it('survives any text without a throw', () => {
    const cut = fc
      .tuple(fc.nat(text.length), fc.string({ maxLength: 5 }))
      .map(([at, put]) => text.slice(0, at) + put + text.slice(at + 1));
    fc.assert(
      fc.property(fc.oneof(fc.string(), fc.json(), cut), (line) => {
        expect(typeof readLine(line).ok).toBe('boolean');
      }),
      { numRuns: 1000 },
    );
  });
});

describe('a draft', () => {
  const draft: Draft = {
    kind: 'weighed',
    subject: 'piece:a',
    atMs: 0,
    zone: '+00:00',
    by: '',
    body: { grossG: 1, stage: 'round' },
  };

  it('is checked with its field', () => {
    expect(checkDraft(draft)).toBeNull();
    for (const grossG of [-1, Number.NaN, Number.POSITIVE_INFINITY, 1_000_001]) {
      expect(checkDraft({ ...draft, body: { grossG, stage: 'round' } } as Draft)).toEqual({
        field: 'grossG',
      });
    }
  });
});
