import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { checkChains } from '#record/chain.ts';
import { clockDoubts, doubted } from '#record/clock-steps.ts';
import { clockSubject, putRight } from '#record/put-right.ts';
import { type Block, paginate, rowLines, type TableBlock } from '#screens/record/paginate.ts';
import { recordView } from '#screens/record/record-view.ts';
import { en as words } from '#words/en.ts';
import { plainText } from '#words/said.ts';
import {
  BATCH,
  type Book,
  batchOf,
  book,
  ferment,
  HOUR_MS,
  kitOf,
  openBatch,
  pieceId,
  placeOf,
  START_MS,
  setUp,
  stuff,
  touching,
  weighMeat,
  weighOutSalt,
  weighRound,
  ZONE,
} from './book.ts';

function viewOf(of: Book, hours = 24 * 60, changed: Partial<Parameters<typeof recordView>[0]> = {}) {
  return recordView({
    batch: batchOf(of),
    entries: touching(of, BATCH),
    heads: checkChains(of.lines).heads,
    doubted: new Map(),
    kit: kitOf(of),
    place: placeOf(of),
    nowMs: START_MS + hours * HOUR_MS,
    zone: ZONE,
    build: '0.1.0+test',
    words,
    ...changed,
  });
}
type View = ReturnType<typeof viewOf>;

/** All rows of a table, over the sheets that it was parted to. */
function rows({ sheets }: View, title: string): TableBlock['rows'] {
  return sheets
    .flatMap(({ blocks }) => blocks)
    .flatMap((block) => (block.kind === 'table' && block.title === title ? block.rows : []));
}
const cells = (view: View, title: string) => rows(view, title).map((row) => row.cells);
const lines = ({ sheets }: View, title: string) =>
  sheets
    .flatMap(({ blocks }) => blocks)
    .flatMap((block) => (block.kind === 'text' && block.title === title ? block.lines : []));

const hung = (setting: Parameters<typeof setUp>[1] = {}) =>
  weighRound(
    ferment(stuff(weighOutSalt(weighMeat(openBatch(setUp(book(), setting)))))),
    33.5,
    [800, 790, 795, 810],
    {
      stage: 'to-drying',
    },
  );

describe('the record of a batch', () => {
  it('shows both times of what a wrong clock wrote, by whom it was put right, and until then that it is in doubt', () => {
    const of = hung();
    const wrongHours = 400 * 24;
    of.put(40 + wrongHours, 'noted', BATCH, { text: 'with a wrong date' });
    of.put(41, 'noted', BATCH, { text: 'with the right one' });
    const own = touching(of, BATCH);
    const wrong = own.at(-2);
    if (!wrong) throw new Error('no entry');
    const given = {
      entries: own,
      doubted: doubted(of.entries, clockDoubts(of.entries, START_MS + 50 * HOUR_MS)),
    };
    const row = (view: View) => rows(view, 'Every entry').find(({ key }) => key === wrong.id)?.cells;
    const before = viewOf(of, 50, given);
    expect(row(before)?.[0]).toMatch(/^13 February 2025, /);
    expect(row(before)?.[1]).toBe(
      'note: with a wrong date\ntime in doubt: the clock of the phone may have stood about 400 days ahead, and was not put right',
    );
    const inDoubt = own.filter(({ id }) => given.doubted.has(id)).length;
    expect(lines(before, 'Cautions')).toContain(words.clock.onRecord.count(inDoubt));
    const body = { device: wrong.device, fromSeq: wrong.seq, toSeq: wrong.seq, reason: 'flat battery' };
    const shiftMs = -wrongHours * HOUR_MS;
    of.put(42, 'clock-corrected', clockSubject(wrong.device), { ...body, shiftMs }, { by: 'MK' });
    const all = putRight(of.entries, of.entries);
    const entries = all.filter(({ subject, refs }) => [subject, ...refs].includes(BATCH));
    const after = viewOf(of, 50, {
      entries,
      doubted: doubted(all, clockDoubts(all, START_MS + 50 * HOUR_MS)),
    });
    expect(row(after)).toEqual([
      '10 January 2024, 00:00',
      'note: with a wrong date\nclock put right back by 400 days by MK: flat battery; the phone showed 13 February 2025, 00:00',
      'HK',
    ]);
    expect(rows(after, 'Every entry').at(-2)?.key).toBe(wrong.id);
    expect(lines(after, 'Cautions')).toContain(words.clock.onRecord.count(inDoubt - 1));
    const right = viewOf(of, 50, { entries });
    expect(lines(right, 'Cautions').join()).not.toMatch(/in doubt|not looked at/);
    expect(lines(viewOf(of, 50, { doubted: null }), 'Cautions')).toContain(words.clock.onRecord.notKnown);
  });

  it('has every entry once, in the order in which things were true', () => {
    const of = hung();
    of.put(40, 'noted', BATCH, { text: 'read late' }, { lateHours: 2 });
    of.put(0.4, 'noted', BATCH, { text: 'forgotten' }, { lateHours: 30 });
    const view = viewOf(of);
    const entries = touching(of, BATCH);
    expect(
      rows(view, 'Every entry')
        .map(({ key }) => key)
        .sort(),
    ).toEqual(entries.map(({ id }) => id).sort());
    expect(plainText(view.sentence)).toContain(`${entries.length} entries on ${view.sheets.length} sheets.`);
    const what = cells(view, 'Every entry').map(([, text]) => text);
    expect(what.indexOf('note: forgotten')).toBeLessThan(what.indexOf('cleaned'));
    expect(what.at(-1)).toBe('note: read late');
  });

  it('says when an entry was written down, where that was later than it was true', () => {
    const of = hung();
    of.put(40, 'noted', BATCH, { text: 'read late' }, { lateHours: 2 });
    const [when] = cells(viewOf(of), 'Every entry').at(-1) ?? [];
    expect(when).toBe('10 January 2024, 00:00\nentered 10 January 2024, 02:00');
    expect(cells(viewOf(of), 'Every entry')[0]?.[0]).toBe('8 January 2024, 08:00');
  });

  it('keeps a struck weighing visible, with why, by whom and when', () => {
    const of = hung();
    const last = batchOf(of).pieces[1]?.weighings.at(-1);
    if (!last) throw new Error('no weighing');
    of.put(34, 'struck', pieceId(2), {}, { refs: [BATCH], strikes: last.entry });
    const view = viewOf(of);
    const struck = rows(view, 'Every entry').filter((row) => row.struck);
    expect(struck.map((row) => row.cells[1])).toEqual([
      'piece 2, piece weighed: on the scale 790\u00a0g, on moving to drying\nstruck 9 January 2024, 18:00 by HK: weighed by mistake',
    ]);
    expect(cells(view, 'Pieces')[1]?.slice(3)).toEqual(['', '', 'hanging']);
  });

  it('shows numbers as they were typed, in the unit in which they were', () => {
    const of = hung();
    of.put(40, 'room-read', BATCH, { roomC: 23.333333333, typed: { roomC: { text: '74', unit: 'F' } } });
    expect(cells(viewOf(of), 'Every entry').at(-1)?.[1]).toBe('room read: room 74\u00a0°F');
  });

  it('holds what went in, and the ferment, against the rules, each with its source and how that is known', () => {
    const view = viewOf(hung({ ruleSet: 'US' }));
    const found = new Map(cells(view, 'Held against the rules').map(([rule, ...rest]) => [rule, rest]));
    expect(found.get('nitrite that goes in')).toEqual([
      '156.2 mg/kg',
      'at most 156.25 mg/kg',
      'no reading, the scale is too coarse to tell',
    ]);
    // 8.4 °C above 15.6 °C; in °F 15.2 above 60, for 30 h.
    expect(found.get('degree-hours')?.[0]).toMatch(/^456\.0/);
    expect(found.get('degree-hours')?.[2]).toBe('within limit');
    const judged = [...found.values()].filter(([, , verdict]) => verdict !== 'does not apply');
    for (const [, limit] of judged) expect(limit).toMatch(/\d/);
    expect(lines(view, words.workings.words.sources).length).toBe(judged.length);
  });

  it('has of each line what was asked, what was weighed, as fine as its scale, and the lot that was in the hand', () => {
    expect(cells(viewOf(hung()), 'Weighed out')).toEqual([
      ['Salt', '90.0\u00a0g', '90.0\u00a0g', 'lot not entered'],
      [
        'Curing salt\nbag: 6.25 % nitrite',
        '8.03\u00a0g',
        '8.03\u00a0g',
        'Curing salt, C-77, Invented supplier',
      ],
    ]);
    const bare = viewOf(weighMeat(openBatch(setUp(book()))));
    expect(cells(bare, 'Weighed out').map((row) => row[2])).toEqual(['none', 'none']);
  });

  it('has of each piece its green weight, its last weight and its loss rounded down', () => {
    expect(cells(viewOf(hung()), 'Pieces')[0]).toEqual([
      '1',
      '812\u00a0g',
      '55\u00a0mm',
      '800\u00a0g',
      '1.4\u00a0%',
      'hanging',
    ]);
  });

  it('ends with the cautions and a line to sign', () => {
    const view = viewOf(hung());
    expect(lines(view, 'Cautions').slice(0, -1)).toEqual([...words.record.cautions]);
    expect(lines(view, 'Cautions').at(-1)).toMatch(/^Reviewed by, date: _+$/);
  });

  it('has lot and page on each sheet, on either paper, and more sheets where there is more', () => {
    for (const paper of ['A4', 'Letter'] as const) {
      const of = hung({ paper });
      for (let round = 1; round <= 60; round += 1)
        weighRound(
          of,
          round * 24,
          [800, 790, 795, 810].map((g) => g - round),
        );
      const view = viewOf(of, 24 * 61);
      expect(touching(of, BATCH).length).toBeGreaterThan(250);
      expect(view.sheets.map(({ foot }) => foot)).toEqual(
        view.sheets.map((_, at) => `lot 240108 · page ${at + 1} of ${view.sheets.length}`),
      );
      expect(view.sheets.length).toBeGreaterThan(6);
      expect(rows(view, 'Every entry').length).toBe(touching(of, BATCH).length);
    }
  });
});

describe('parting into sheets', () => {
  const WIDTHS = [24, 62, 8];
  const text = fc.integer({ min: 1, max: 400 }).map((length) => 'x'.repeat(length));
  const row = fc.tuple(text, fc.boolean()).map(([what, struck]) => ({ cells: ['when', what, 'AB'], struck }));
  const table = fc.array(row, { maxLength: 90 }).map(
    (list): Block => ({
      kind: 'table',
      key: 'table',
      title: 'Table',
      columns: ['When', 'What', 'By'],
      widths: WIDTHS,
      rows: list.map((each, at) => ({ ...each, key: `row-${at}` })),
    }),
  );
  const prose = fc
    .array(text, { maxLength: 30 })
    .map((list): Block => ({ kind: 'text', key: 'text', title: 'Text', lines: list }));
  const photos = fc.integer({ min: 0, max: 40 }).map(
    (count): Block => ({
      kind: 'photos',
      key: 'photos',
      title: 'Photos',
      photos: Array.from({ length: count }, (_, at) => ({
        key: `photo-${at}`,
        sha256: '',
        alt: '',
        caption: '',
      })),
    }),
  );
  const blocks = fc.array(fc.oneof(table, prose, photos), { maxLength: 5 });
  const flat = (list: readonly Block[]) =>
    list.flatMap((block) => {
      if (block.kind === 'text') return [...block.lines];
      return (block.kind === 'table' ? block.rows : block.photos).map(({ key }) => key);
    });
  const height = (block: Block) => {
    if (block.kind === 'photos') return 2.2 + 18 * Math.ceil(block.photos.length / 3);
    return block.kind === 'table'
      ? 3.7 + block.rows.reduce((sum, { cells: each }) => sum + rowLines(each, block.widths), 0)
      : 2.2 + block.lines.reduce((sum, line) => sum + Math.ceil(line.length / 96) + 0.1, 0);
  };

  it('loses no row, prints none twice, and keeps their order', () => {
    fc.assert(
      fc.property(blocks, fc.constantFrom('A4' as const, 'Letter' as const), (given, paper) => {
        expect(paginate(given, paper).flatMap(flat)).toEqual(flat(given));
      }),
    );
  });

  it('fills no sheet beyond its lines', () => {
    const most = { A4: 57, Letter: 53 };
    fc.assert(
      fc.property(blocks, fc.constantFrom('A4' as const, 'Letter' as const), (given, paper) => {
        for (const sheet of paginate(given, paper))
          expect(sheet.reduce((sum, block) => sum + height(block), 0)).toBeLessThanOrEqual(
            most[paper] + 1e-9,
          );
      }),
    );
  });

  it('lets what is higher than a sheet go on on the next one, without losing a letter', () => {
    const sign = fc.constantFrom('W', 'i', ' ', 'M', '\n', '重', 'a');
    const long = fc.array(sign, { minLength: 1500, maxLength: 6000 }).map((signs) => signs.join(''));
    const bare = (text: string) => text.replaceAll('\n', '');
    fc.assert(
      fc.property(long, fc.boolean(), (what, struck) => {
        const row = { key: 'row', cells: ['when', what, 'AB'], struck };
        const given: Block = {
          kind: 'table',
          key: 't',
          title: 'T',
          columns: ['a', 'b', 'c'],
          widths: WIDTHS,
          rows: [row],
        };
        const sheets = paginate([given], 'A4');
        const rows = sheets.flat().flatMap((block) => (block.kind === 'table' ? block.rows : []));
        expect(bare(rows.map(({ cells: [, text] }) => text).join(''))).toBe(bare(what));
        expect(rows.map(({ cells: [when] }) => when).join('')).toBe('when');
        for (const sheet of sheets)
          expect(sheet.reduce((sum, block) => sum + height(block), 0)).toBeLessThan(57);
        expect(rows.filter((each) => each.struck).length > 0).toBe(struck);
      }),
      { numRuns: 60 },
    );
  });

  it('counts wide letters as wide', () => {
    expect(rowLines(['', 'i'.repeat(620), ''], WIDTHS)).toBeCloseTo(10.32);
    expect(rowLines(['', 'W'.repeat(600), ''], WIDTHS)).toBeCloseTo(16.32);
  });

  it('repeats the head of a table on each sheet, and leaves no title without a row', () => {
    const long: Block = {
      kind: 'table',
      key: 'long',
      title: 'Long',
      columns: ['When', 'What', 'By'],
      widths: WIDTHS,
      rows: Array.from({ length: 100 }, (_, at) => ({
        key: `row-${at}`,
        cells: ['a', 'b', 'c'],
        struck: false,
      })),
    };
    const sheets = paginate([long], 'A4');
    expect(sheets.length).toBe(3);
    for (const [block] of sheets) {
      expect(block?.kind === 'table' && block.columns).toEqual(['When', 'What', 'By']);
      expect(block?.kind === 'table' && block.rows.length > 0).toBe(true);
    }
  });

  it('fits fewer on Letter than on A4', () => {
    const long: Block = {
      kind: 'text',
      key: 'long',
      title: 'Long',
      lines: Array.from({ length: 1000 }, () => 'x'),
    };
    expect(paginate([long], 'Letter').length).toBeGreaterThan(paginate([long], 'A4').length);
  });
});

describe('a decision in the record', () => {
  it('stands with the verdicts, rule set, version and gaps of its day, beside the verdicts of today', () => {
    const of = hung();
    of.put(50, 'decided', BATCH, {
      decision: 'hold',
      verdicts: [
        { rule: 'degree-hours', verdict: 'no-reading', value: 12.5, limit: 33.3, unit: '°C·h' },
        { rule: 'a-rule-of-old', verdict: 'within-limit', value: null, limit: null, unit: '' },
      ],
      ruleSet: 'US',
      build: '0.0.9+old',
      gaps: ['meter-not-checked', 'no-initials'],
      note: 'waits for the laboratory',
    });
    const title = 'On hold 10 January 2024, 10:00 by HK, as known then';
    expect(cells(viewOf(of), title)).toEqual([
      ['degree-hours', '12.5 °C·h', '33.3 °C·h', 'no reading'],
      ['a-rule-of-old', '', '', 'within limit'],
      [
        'rule set, version, reason, missing',
        'United States; 0.0.9+old',
        'waits for the laboratory',
        'missing: check of the meter that day, initials',
      ],
    ]);
    expect(cells(viewOf(of), 'Held against the rules').length).toBeGreaterThan(0);
  });
});

describe('photos in the record', () => {
  it('stand after the entries, each with its sum, struck ones left out', () => {
    const of = hung();
    const photo = (digit: string) => ({
      sha256: digit.repeat(64),
      bytes: 9000,
      mime: 'image/jpeg' as const,
    });
    of.put(40, 'photographed', pieceId(2), photo('a'), { refs: [BATCH] });
    const wrong = of.put(41, 'photographed', BATCH, photo('b'));
    of.put(42, 'struck', BATCH, {}, { strikes: wrong.id });
    const view = viewOf(of);
    const shown = view.sheets.flatMap(({ blocks }) =>
      blocks.flatMap((block) => (block.kind === 'photos' ? block.photos : [])),
    );
    expect(shown.map(({ sha256, caption }) => [sha256[0], caption])).toEqual([
      ['a', 'Piece 2, 10 January 2024, 00:00, HK, sum aaaaaaaaaaaaaaaa'],
    ]);
    expect(cells(view, 'Every entry').map(([, what]) => what)).toContain(
      'piece 2, photo: sum aaaaaaaaaaaaaaaa',
    );
  });
});

describe('the end of the chain', () => {
  it('stands at the foot of each sheet and whole on the last', () => {
    const of = hung();
    const hash = of.lines.at(-1)?.hash ?? '';
    const view = viewOf(of);
    expect(view.chain).toBe(`chain ${hash.slice(0, 16)}`);
    expect(lines(view, 'Ends of the chains')[0]).toContain(`entry ${of.lines.length}: ${hash}`);
  });

  it('is another one when an entry was changed long before', () => {
    const of = hung();
    const other = stuff(weighOutSalt(weighMeat(openBatch(setUp(book(), { ruleSet: 'CA' })))));
    expect(viewOf(other).chain).not.toBe(viewOf(of).chain);
  });
});
