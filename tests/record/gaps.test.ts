import { describe, expect, it } from 'vitest';
import { batch } from '#record/batch.ts';
import { gaps, isLate, LATE_MINUTES } from '#record/gaps.ts';
import { withChecks } from '#record/instruments.ts';
import { releaseView } from '#screens/release/release-view.ts';
import { en as words } from '#words/en.ts';
import {
  BATCH,
  type Book,
  book,
  METER,
  openBatch,
  readPh,
  START_MS,
  setUp,
  stuff,
  touching,
  weighMeat,
} from '../screens/book.ts';

/** In buffers at 25 °C, exactly as they are printed: the meter passes. */
const PASSES = {
  shownIn: 'pH',
  sevenBuffer: '7.00',
  sevenC: 25,
  sevenShown: 7,
  fourBuffer: '4.01',
  fourC: 25,
  fourShown: 4.01,
} as const;

function view(of: Book) {
  const entries = withChecks(touching(of, BATCH), of.entries);
  const folded = batch(BATCH, entries);
  if (!folded) throw new Error('no batch');
  return { batch: folded, entries };
}
const uncheckedDays = (of: Book) =>
  gaps({ ...view(of), doubted: new Map(), deviates: false }).flatMap((gap) =>
    gap.code === 'meter-not-checked' ? gap.count : [],
  );
/** Hours after Monday 08:00 by the wall there. */
const sausage = () => stuff(weighMeat(openBatch(setUp(book()))));

describe('the meter that day', () => {
  it('is missed for each day on which it was read and not checked in buffers', () => {
    const of = sausage();
    readPh(of, 4, 5.9, { meter: METER });
    readPh(of, 10, 5.7, { meter: METER });
    readPh(of, 30, 5.3, { meter: METER });
    expect(uncheckedDays(of)).toEqual([2]);
    of.put(3, 'meter-checked', METER, PASSES);
    expect(uncheckedDays(of)).toEqual([1]);
    of.put(31, 'meter-checked', METER, PASSES);
    expect(uncheckedDays(of)).toEqual([]);
  });

  it('is that of the wall where it was read: a check before midnight is of the day before', () => {
    const of = sausage();
    of.put(15.9, 'meter-checked', METER, PASSES);
    readPh(of, 16.1, 5.6, { meter: METER });
    expect(uncheckedDays(of)).toEqual([1]);
  });

  it('is not checked by a check that failed, and strips need none', () => {
    const of = sausage();
    readPh(of, 10, 5.7, { method: 'strip' });
    expect(uncheckedDays(of)).toEqual([]);
    readPh(of, 11, 5.7, { meter: METER });
    of.put(3, 'meter-checked', METER, { ...PASSES, sevenShown: 7.6 });
    expect(uncheckedDays(of)).toEqual([1]);
  });

  it('stands before the decision, and no release goes by it without a reason', () => {
    const of = sausage();
    readPh(of, 10, 5.2, { meter: METER });
    const { batch: folded, entries } = view(of);
    const shown = releaseView({
      batch: folded,
      entries,
      doubted: new Map(),
      scales: [],
      nowMs: START_MS + 4e8,
      words,
    });
    expect(shown.gaps.map(({ text }) => text)).toContain(
      'On one day a pH meter was read and not checked in buffers.',
    );
    expect(shown.needsReason).toBe(true);
  });
});

describe('a clock that stood wrong', () => {
  it('is missing on the record until it is put right, for each entry of the batch that stands', () => {
    const of = sausage();
    const [reading, struck] = [20, 21].map((roomC, at) => of.put(10 + at, 'room-read', BATCH, { roomC }));
    if (!reading || !struck) throw new Error('two readings');
    of.put(12, 'struck', BATCH, {}, { strikes: struck.id });
    const { batch: folded, entries } = view(of);
    const textsOf = (ids: readonly string[]) => {
      const doubted = new Map(of.entries.filter(({ id }) => ids.includes(id)).map(({ id }) => [id, true]));
      const given = { batch: folded, entries, doubted, scales: [], nowMs: START_MS + 4e8, words };
      return releaseView(given).gaps.flatMap(({ key, text }) => (key === 'clock-in-doubt' ? text : []));
    };
    expect(textsOf([])).toEqual([]);
    expect(textsOf([reading.id, struck.id, 'of another batch'])).toEqual([
      'One entry stands at a time that is in doubt: see Kit, Backup, clock of the phone.',
    ]);
  });
});

describe('a late entry', () => {
  it('is one that was written more than a quarter of an hour after it was true', () => {
    const writtenAtMs = START_MS + LATE_MINUTES * 60_000;
    expect(isLate({ atMs: START_MS, writtenAtMs })).toBe(false);
    expect(isLate({ atMs: START_MS, writtenAtMs: writtenAtMs + 1 })).toBe(true);
  });
});
