import { describe, expect, it } from 'vitest';
import { compareView, others } from '#screens/compare/compare-view.ts';
import { plates, tastingView } from '#screens/tasting/tasting-view.ts';
import { en as words } from '#words/en.ts';
import { plainText } from '#words/said.ts';
import {
  BATCH,
  type Book,
  batchOf,
  book,
  DAY_HOURS,
  ferment,
  HOUR_MS,
  kitOf,
  openBatch,
  placeOf,
  SALAME,
  START_MS,
  setUp,
  stuff,
  weighMeat,
  weighOutSalt,
} from './book.ts';

const OTHER = 'batch:018cdc00-0000-7000-a000-0000000000d1';
const NOW_MS = START_MS + 60 * DAY_HOURS * HOUR_MS;

function whole(of: Book, id: typeof BATCH, number: number, cureG = 8.03): Book {
  weighOutSalt(weighMeat(openBatch(of, { id, lot: `L-${number}` }), { id }), { id, cureG });
  return ferment(stuff(of, { id, number }), { id });
}
const twoBatches = (cureG?: number) => whole(whole(setUp(book()), BATCH, 1), OTHER, 2, cureG);
const view = (of: Book) =>
  compareView(batchOf(of), batchOf(of, OTHER), NOW_MS, { place: placeOf(of), words, ...kitOf(of) });

describe('side by side', () => {
  it('names what differs where it is one thing, and does not call it proven', () => {
    const { sentence, differs } = view(twoBatches(7.5));
    expect(plainText(sentence)).toBe(
      'Of what was written down only one thing differs: Curing salt. One batch of each cannot prove that it made the difference. One more was not written down.',
    );
    expect(differs).toEqual([
      { key: 'line Curing salt', label: 'Curing salt', one: '0.25\u00a0%', two: '0.23\u00a0%' },
    ]);
  });

  it('says that nothing differs only of what was written down', () => {
    const { sentence, unwritten } = view(twoBatches());
    expect(plainText(sentence)).toContain('Of what was written down nothing differs');
    expect(unwritten.map(({ label }) => label)).toEqual(['casing']);
  });

  it('leaves out what neither of them came to', () => {
    expect(view(twoBatches()).cameOut.map(({ label }) => label)).toEqual([
      'last pH',
      'stuffing to pH 5.3, as read',
    ]);
  });

  it('offers batches of the same formula first, and none before its pieces are stuffed', () => {
    const of = twoBatches();
    const third = 'batch:018cdc00-0000-7000-a000-0000000000d2';
    const fourth = 'batch:018cdc00-0000-7000-a000-0000000000d3';
    stuff(openBatch(of, { id: third, lot: 'L-3', formula: { ...SALAME, name: 'Another' } }), {
      id: third,
      number: 3,
    });
    openBatch(of, { id: fourth, lot: 'L-4' });
    const all = [fourth, third, OTHER, BATCH].map((id) => batchOf(of, id as typeof BATCH));
    expect(others(batchOf(of), all).map(({ id }) => id)).toEqual([OTHER, third]);
  });
});

describe('tasting', () => {
  const marks = { look: 3, smell: 4, bite: 2, taste: 5, overall: 4 };

  it('warns before the batch is released, and no longer after', () => {
    const of = twoBatches();
    const before = tastingView({ batch: batchOf(of), batches: [batchOf(of)], place: placeOf(of), words });
    expect(before.caution).toBe(words.tasting.notReleased);
    of.put(1000, 'decided', BATCH, {
      decision: 'release',
      verdicts: [],
      ruleSet: 'US',
      build: 'test',
      gaps: [],
    });
    of.put(1001, 'tasted', BATCH, { taster: 'HK', ...marks });
    of.put(1002, 'tasted', BATCH, { taster: 'MB', ...marks, overall: 3, blind: true });
    const after = tastingView({ batch: batchOf(of), batches: [batchOf(of)], place: placeOf(of), words });
    expect(after.caution).toBe(null);
    expect(plainText(after.sentence)).toBe('3.5 of 5 overall, the middle of 2 tasters.');
    expect(after.rows.find(({ key }) => key === 'overall')?.note).toBe('tasters one apart');
    expect(plates([batchOf(of), batchOf(of, OTHER)], words)).toEqual([
      { id: BATCH, code: expect.stringMatching(/^\d{3}$/), note: 'one taster' },
    ]);
  });
});
