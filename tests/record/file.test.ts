import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { MAX_FILE_CHARS, MAX_FILE_LINES, readFile, writeFile } from '#record/file.ts';
import { deviceOf, newer, writer } from './make.ts';

const MADE = { build: 'test', madeAtMs: 1_700_000_000_000, device: deviceOf(1) };
const book = writer();
// Characters of one to four bytes, what must be escaped, and what some readers take for a line break.
for (const text of ['12 g', 'ü °C', '重さ', '🐖', '"\\\n\r\t', '\u2028\u2029', '\ud800', '']) {
  book.write('noted', 'batch:a', { text }, { device: deviceOf(text.length % 3) });
}
const lines = book.lines;
const { text, hash } = writeFile(lines, MADE);
const bytes = new TextEncoder().encode(text);
const lineOfByte = (at: number) => bytes.subarray(0, at).filter((byte) => byte === 10).length + 1;
const decoded = (changed: Uint8Array) => new TextDecoder('utf-8', { ignoreBOM: true }).decode(changed);

describe('a backup file', () => {
  it('holds every line byte for byte, and reads back as the same lines', () => {
    const file = readFile(text);
    expect(file.problems).toEqual([]);
    expect(file.faults).toEqual([]);
    expect(file.header).toMatchObject({
      format: 'greenweight-log',
      version: 1,
      count: lines.length,
      build: 'test',
    });
    expect(new Set(file.lines.map(({ line }) => line))).toEqual(new Set(lines.map(({ line }) => line)));
    for (const { line, hash: sum } of lines) expect(text).toContain(`\n${sum} ${line}\n`);
    expect(text).toContain(hash);
  });

  it('is the same bytes for the same log, in whatever order it was read', () => {
    fc.assert(
      fc.property(fc.shuffledSubarray([...lines], { minLength: lines.length }), (shuffled) => {
        expect(writeFile(shuffled, MADE).text).toBe(text);
      }),
    );
    expect(writeFile(readFile(text).lines, MADE).text).toBe(text);
  });

  it('is refused for every single changed byte, with the line of that byte', () => {
    for (let at = 0; at < bytes.length; at++) {
      const changed = bytes.slice();
      changed[at] = (changed[at] ?? 0) ^ ([0x01, 0x20, 0x80, 0xff][at % 4] ?? 0);
      const { problems } = readFile(decoded(changed));
      expect(problems.map(({ line }) => line)).toContain(lineOfByte(at));
    }
  });

  it('is refused for every cut, and for anything put in', () => {
    for (let at = 0; at < text.length; at += 3) {
      expect(readFile(text.slice(0, at)).problems.length, `cut at ${at}`).toBeGreaterThan(0);
    }
    fc.assert(
      fc.property(fc.nat(text.length), fc.string({ minLength: 1, maxLength: 3 }), (at, put) => {
        expect(readFile(text.slice(0, at) + put + text.slice(at)).problems.length).toBeGreaterThan(0);
      }),
      { numRuns: 500 },
    );
  });

  it('is refused when whole lines are missing, doubled or changed in order', () => {
    const rows = text.split('\n');
    const [header, first, second, ...rest] = rows;
    const codes = (changed: readonly (string | undefined)[]) =>
      readFile(changed.join('\n')).problems.map(({ code }) => code);
    expect(codes([header, second, ...rest])).toEqual(['not-as-written']);
    expect(codes([header, second, first, ...rest])).toEqual(['not-as-written']);
    expect(codes([header, first, first, second, ...rest])).toContain('twice');
    expect(codes([...rows.slice(0, -2), ''])).toEqual(['no-trailer']);
  });

  it('gives back every untouched line of a damaged one', () => {
    const untouched = fc.uniqueArray(fc.integer({ min: 2, max: lines.length + 1 }), { minLength: 1 });
    fc.assert(
      fc.property(untouched, fc.integer({ min: 0, max: 200 }), (numbers, at) => {
        const rows = text.split('\n').map((row, index) => {
          if (!numbers.includes(index + 1)) return row;
          const place = at % row.length;
          return row.slice(0, place) + (row[place] === 'x' ? 'y' : 'x') + row.slice(place + 1);
        });
        const file = readFile(rows.join('\n'));
        expect(file.lines).toHaveLength(lines.length - numbers.length);
        expect(new Set(file.problems.map(({ line }) => line))).toEqual(new Set(numbers));
      }),
    );
  });

  it('gives back the whole lines of a file that was cut short', () => {
    const half = text.slice(0, text.length >> 1);
    expect(readFile(half).lines).toHaveLength(half.split('\n').length - 2);
  });

  it('gives back all lines of a file whose line ends were changed on the way', () => {
    expect(readFile(text.replaceAll('\n', '\r\n')).lines).toHaveLength(lines.length);
  });

  it('keeps and writes again what a newer build wrote', () => {
    const first = lines[0];
    if (!first) throw new Error('no line');
    const strange = newer(first);
    const file = readFile(writeFile([strange], MADE).text);
    expect(file.problems).toEqual([]);
    expect(file.lines.map(({ line }) => line)).toEqual([strange.line]);
  });

  it('says what is not one of ours, and what is too much', () => {
    expect(readFile('').problems[0]).toEqual({ line: 1, code: 'not-ours' });
    expect(readFile('a;b;c\n1;2;3\n').problems[0]).toEqual({ line: 1, code: 'not-ours' });
    expect(readFile('\n'.repeat(MAX_FILE_LINES + 3)).problems).toEqual([{ line: 0, code: 'too-many-lines' }]);
    expect(readFile('x'.repeat(MAX_FILE_CHARS + 1)).problems).toEqual([{ line: 0, code: 'too-large' }]);
  });
});
