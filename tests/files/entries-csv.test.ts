import fc from 'fast-check';
import Papa from 'papaparse';
import { describe, expect, it } from 'vitest';
import { type CsvCell, csvText } from '#files/csv-text.ts';
import { entriesCsv, entriesJson } from '#files/entries-csv.ts';
import { clockSubject } from '#record/put-right.ts';
import { lineOf, newer, writer } from '../record/make.ts';
import { correction, DAY_MS, phone } from '../record/wrong-clock.ts';
import { LONG_FORMULA } from './long-formula.ts';

const POINT = { decimal: '.', byteOrderMark: false } as const;
const COMMA = { decimal: ',', byteOrderMark: true } as const;
const one = (value: CsvCell) => csvText([[value, 'end']], POINT);

describe('a cell', () => {
  it('is quoted as RFC 4180 has it', () => {
    expect(one('plain')).toBe('plain,end\r\n');
    expect(one('a,b')).toBe('"a,b",end\r\n');
    expect(one('say "so"')).toBe('"say ""so""",end\r\n');
    expect(one('two\r\nlines')).toBe('"two\r\nlines",end\r\n');
    expect(one('')).toBe(',end\r\n');
    expect(one(null)).toBe(',end\r\n');
    expect(one(true)).toBe('true,end\r\n');
  });

  it.each(['=', '+', '-', '@', '\t', '\r', '\n', '\0', '＝', '＋', '－', '＠'])(
    'of text that begins with %j is never run',
    (sign) => {
      const [row] = Papa.parse<string[]>(one(`${sign}cmd|' /C calc'!A0`)).data;
      expect(row).toEqual([`'${sign}cmd|' /C calc'!A0`, 'end']);
    },
  );

  it('of text that has such a sign further in is left alone', () => {
    for (const text of ['a=b', "'=b", '2-3', 'x@y']) expect(one(text)).toBe(`${text},end\r\n`);
  });

  it('of a number stays a number, its minus and all', () => {
    expect(csvText([[-2.5, 1e-7, 0, 1234567.25]], POINT)).toBe('-2.5,1e-7,0,1234567.25\r\n');
    expect(csvText([[-2.5, 1.5e-7, 0, 'a,b']], COMMA)).toBe('\uFEFF-2,5;1,5e-7;0;"a,b"\r\n');
  });

  it('comes back from a reader of CSV as it went, whatever stands in it', () => {
    const cell = fc.string({ unit: fc.constantFrom(...'ab ;,"\r\n=+-@\t\'é\u{1F9C2}'), maxLength: 12 });
    const table = fc.array(fc.tuple(cell, cell, cell), { minLength: 1, maxLength: 5 });
    fc.assert(
      fc.property(table, fc.constantFrom(POINT, COMMA), (rows, style) => {
        const text = csvText(
          rows.map((row) => [...row, 'end']),
          style,
        ).slice(style.byteOrderMark ? 1 : 0);
        const read = Papa.parse<string[]>(text, {
          delimiter: style.decimal === ',' ? ';' : ',',
          newline: '\r\n',
        });
        const meant = rows.map((row) => [
          ...row.map((each) => (/^[=+\-@\t\r\n]/.test(each) ? `'${each}` : each)),
          'end',
        ]);
        expect(read.data.slice(0, -1)).toEqual(meant);
        expect(read.errors).toEqual([]);
      }),
      { numRuns: 500 },
    );
  });
});

describe('everything that was written down', () => {
  const log = writer();
  const atMs = Date.UTC(2026, 0, 5, 22, 15);
  log.write('formula-saved', 'formula:1', { formula: { ...LONG_FORMULA, name: '=1+1' }, note: '' }, { atMs });
  const struck = log.write(
    'weighed',
    'piece:1',
    { grossG: 812.5, stage: 'round' },
    { refs: ['batch:1'], atMs },
  );
  log.write('air-read', 'chamber:1', { airC: -2.5, rhPct: 81, typed: { airC: { text: '-2,5', unit: 'C' } } });
  log.write('struck', 'piece:1', {}, { strikes: struck.id });
  const lines = [...log.lines, newer(lineOf(log.lines[2]?.line ?? ''))];

  const rows = (text: string, delimiter: string) => {
    const [head = [], ...body] = Papa.parse<string[]>(text.trimEnd(), { delimiter, newline: '\r\n' }).data;
    return body.map((row) => Object.fromEntries(head.map((name, at) => [name, row[at]])));
  };

  it('stands in one table: a row an entry, a column a fact', () => {
    const [formula, weighed, air] = rows(entriesCsv(lines, POINT), ',');
    expect(weighed).toMatchObject({
      id: struck.id,
      subject: 'piece:1',
      kind: 'weighed',
      version: '1',
      at: '2026-01-05T23:15:00.000+01:00',
      at_utc: '2026-01-05T22:15:00.000Z',
      refs: 'batch:1',
      seq: '2',
      'body.grossG': '812.5',
      'body.stage': 'round',
      'body.airC': '',
    });
    expect(air).toMatchObject({ 'body.airC': '-2.5', 'body.typed.airC.text': "'-2,5", 'body.rhPct': '81' });
    expect(formula).toMatchObject({
      'body.formula.name': "'=1+1",
      'body.formula.species': 'pork; wild-boar',
    });
    expect(JSON.parse(formula?.['body.formula.lines'] ?? '')).toEqual(LONG_FORMULA.lines);
  });

  it('shows a strike, and the facts of a kind that this build does not know', () => {
    const table = rows(entriesCsv(lines, POINT), ',');
    expect(table).toHaveLength(5);
    expect(table[3]).toMatchObject({ kind: 'struck', strikes: struck.id, strike_reason: 'misread' });
    expect(table[4]).toMatchObject({ kind: 'ultrasound-read', 'body.airC': '-2.5' });
  });

  it('comes with comma and semicolon too, its numbers the same', () => {
    const text = entriesCsv(lines, COMMA);
    expect(text.startsWith('\uFEFFid;subject;')).toBe(true);
    expect(rows(text.slice(1), ';')[2]).toMatchObject({ 'body.airC': '-2,5', 'body.rhPct': '81' });
  });

  it('gives the true times of a clock that was put right, in their order, and what it showed', () => {
    const one = phone();
    one.note(1, 'wrong', { aheadMs: 400 * DAY_MS });
    one.note(2, 'right');
    const body = correction(one, { fromSeq: 1, toSeq: 1, shiftMs: -400 * DAY_MS });
    one.write(3, 'clock-corrected', clockSubject(one.device), body);
    const [first, second, third] = one.lines;
    if (!first || !second || !third) throw new Error('three lines');
    const table = rows(entriesCsv([second, third, first], POINT), ',');
    expect(table.map((row) => row['body.text'])).toEqual(['wrong', 'right', '']);
    expect(table[0]).toMatchObject({
      at: '2024-01-08T10:00:00.000+01:00',
      written_utc: '2024-01-08T09:00:00.000Z',
      clock_showed_utc: '2025-02-11T09:00:00.000Z',
    });
    expect(table[1]).toMatchObject({ at_utc: '2024-01-08T10:00:00.000Z', clock_showed_utc: '' });
  });

  it('is nothing when nothing was written', () => {
    expect(entriesCsv([], POINT)).toBe('');
    expect(JSON.parse(entriesJson([]))).toEqual({ format: 'greenweight-entries', version: 1, entries: [] });
  });

  it('as JSON holds every line byte for byte', () => {
    const text = entriesJson(lines);
    expect(JSON.parse(text).entries).toEqual(lines.map(({ line }) => JSON.parse(line)));
    for (const { line } of lines) expect(text).toContain(line);
  });

  it('is written even for the first and the last instant that an entry may hold', () => {
    const edge = writer(9000);
    edge.write('noted', 'batch:1', { text: 'x' }, { atMs: 0 });
    edge.write('noted', 'batch:1', { text: 'y' }, { atMs: 8.64e15 });
    expect(rows(entriesCsv(edge.lines, POINT), ',').map(({ at }) => at)).toEqual([
      '1970-01-01T01:00:00.000+01:00',
      '',
    ]);
  });
});
