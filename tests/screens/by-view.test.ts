import { describe, expect, it } from 'vitest';
import { byView } from '#screens/record/by-view.ts';
import { entryRows } from '#screens/record/record-view.ts';
import { en as words } from '#words/en.ts';
import { BATCH, batchOf, book, kitOf, openBatch, placeOf, START_MS, setUp, touching, ZONE } from './book.ts';

function rowsOf(people: readonly string[]) {
  const of = openBatch(setUp(book()));
  const first = people.map((by, at) => of.put(1 + at, 'noted', BATCH, { text: `note ${at}` }, { by }))[0];
  if (first) of.put(90, 'struck', BATCH, {}, { strikes: first.id, by: 'ZZ' });
  return entryRows({
    batch: batchOf(of),
    entries: touching(of, BATCH),
    heads: [],
    doubted: new Map(),
    kit: kitOf(of),
    place: placeOf(of),
    nowMs: START_MS,
    zone: ZONE,
    build: 'test',
    words,
  });
}

describe('the entries by certain initials', () => {
  const rows = rowsOf(['AB', 'CD', 'AB', '']);

  it('are everybody’s at first, with whose there are', () => {
    const view = byView({ rows, chosen: [], words });
    expect(view.people).toEqual([
      { value: 'AB', label: 'AB', note: '2 entries' },
      { value: '', label: 'no initials', note: 'one entry' },
      { value: 'CD', label: 'CD', note: 'one entry' },
      { value: 'HK', label: 'HK', note: 'one entry' },
      { value: 'ZZ', label: 'ZZ', note: 'one entry' },
    ]);
    expect([view.filtered, view.only]).toEqual([null, null]);
  });

  it('are said to be a part, and a struck one stays visible among them with who struck it', () => {
    const { filtered } = byView({ rows, chosen: ['AB'], words });
    expect(filtered?.title).toBe('Only entries by AB');
    expect(filtered?.text).toBe('2 of 6 entries are shown here. The print holds every entry, by whomever.');
    expect(filtered?.rows.map(({ what, struck }) => [what, struck])).toEqual([
      ['note: note 0', true],
      ['note: note 2', false],
    ]);
    expect(filtered?.rows[0]?.more).toMatch(/^struck .* by ZZ: .*\n8 January 2024, 09:00\nAB$/);
  });

  it('can be of several people, and of nobody', () => {
    const { filtered } = byView({ rows, chosen: ['CD', ''], words });
    expect(filtered?.title).toBe('Only entries by no initials, CD');
    expect(filtered?.rows.map(({ what }) => what)).toEqual(['note: note 1', 'note: note 3']);
  });

  it('are not asked for where one person wrote all', () => {
    const view = byView({ rows: rows.filter(({ by }) => by === 'AB'), chosen: [], words });
    expect(view.only).toBe('Every entry is by AB.');
    expect(byView({ rows: [], chosen: [], words })).toEqual({ people: [], only: null, filtered: null });
  });
});
