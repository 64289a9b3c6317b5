import { describe, expect, it } from 'vitest';
import type { SubjectId } from '#record/subject.ts';
import { batchesView } from '#screens/batches/batches-view.ts';
import { todayView } from '#screens/today/today-view.ts';
import { en as words } from '#words/en.ts';
import { plainText } from '#words/said.ts';
import {
  BATCH,
  type Book,
  batchOf,
  book,
  ferment,
  HOUR_MS,
  openBatch,
  pieceId,
  placeOf,
  readRoom,
  START_MS,
  setUp,
  stuff,
  weighMeat,
  weighOutSalt,
  weighRound,
  ZONE,
} from './book.ts';

const SECOND: SubjectId = 'batch:018cdc00-0000-7000-a000-0000000000b2';
const THIRD: SubjectId = 'batch:018cdc00-0000-7000-a000-0000000000b3';

const at = (hours: number) => ({ nowMs: START_MS + hours * HOUR_MS, zone: ZONE, words });
function today(of: Book, hours: number, ids: readonly SubjectId[] = [BATCH]) {
  return todayView({ batches: ids.map((id) => batchOf(of, id)), place: placeOf(of), ...at(hours) });
}
function batches(of: Book, hours: number, ids: readonly SubjectId[] = [BATCH]) {
  return batchesView({ batches: ids.map((id) => batchOf(of, id)), ...at(hours) });
}
const stuffed = () => stuff(weighOutSalt(weighMeat(openBatch(setUp(book(), { ruleSet: 'CA' })))));
const hung = () => weighRound(ferment(stuffed()), 33.5, [800, 790, 795, 810], { stage: 'to-drying' });

describe('today', () => {
  it('leads somebody with an empty book to the bench', () => {
    const view = today(book(), 0, []);
    expect(plainText(view.sentence)).toContain('Set up the bench');
    expect(view.act).toEqual({ href: '#/kit/bench', label: 'Set up the bench' });
  });

  it('leads somebody without a batch to the formulas', () => {
    expect(today(setUp(book()), 0, []).act?.href).toBe('#/formulas');
  });

  it('says of each batch what it waits for, and leads to where that is done', () => {
    const waits = (of: Book, hours: number) =>
      today(of, hours).lines.map(({ text, href }) => [text, href.slice('#/batches/'.length + 36)]);
    const opened = openBatch(setUp(book()));
    expect(waits(opened, 0)).toEqual([['Weigh the meat', '/weigh-out']]);
    expect(waits(weighMeat(opened), 1)).toEqual([['Weigh out 2 lines more', '/weigh-out']]);
    expect(waits(weighOutSalt(opened), 1)).toEqual([['Grind, mix and stuff', '/bench']]);
    expect(waits(stuffed(), 3)).toEqual([['Read the room: the clock has no temperature', '/ferment']]);
    expect(waits(readRoom(stuffed(), 2, 24), 3)).toEqual([]);
    expect(waits(ferment(stuffed()), 34)).toEqual([['First weigh round', '/round']]);
    expect(waits(hung(), 34)).toEqual([]);
    expect(waits(hung(), 34 + 24)).toEqual([['Weigh round; the last was 24 hours ago', '/round']]);
  });

  it('puts what is most consequential first, across batches', () => {
    const of = stuff(openBatch(setUp(book(), { ruleSet: 'CA' })));
    for (let hours = 2; hours <= 86; hours += 6) readRoom(of, hours, 24);
    openBatch(of, { id: SECOND, lot: '240109' });
    stuff(openBatch(of, { id: THIRD, lot: '240110', atHours: 80 }), { id: THIRD, atHours: 85, number: 3 });
    const view = today(of, 90, [SECOND, THIRD, BATCH]);
    expect(view.lines.map(({ text, note }) => [text, note.slice(-6)])).toEqual([
      ['Degree-hours passed: hold it, and decide', '240108'],
      ['Read the room: the clock has no temperature', '240110'],
      ['Read the room: the clock has no temperature', '240108'],
      ['Read the pH; the hours ran out 22:00 yesterday', '240108'],
      ['Weigh the meat', '240109'],
    ]);
    expect(plainText(view.sentence)).toBe('5 things are due in 3 batches.');
  });

  it('says that nothing is due rather than showing an empty list', () => {
    expect(plainText(today(hung(), 34).sentence)).toBe('One batch is under way; nothing is due.');
  });
});

describe('the list of batches', () => {
  it('has the last opened first, each with its lot, its stage, its day and what it waits for', () => {
    const of = hung();
    openBatch(of, { id: SECOND, lot: '240201', atHours: 24 * 24 });
    const view = batches(of, 24 * 24 + 1, [BATCH, SECOND]);
    expect(view.rows.map(({ note, value }) => [note, value])).toEqual([
      ['lot 240201 · weigh-out · Weigh the meat', 'day 0'],
      ['lot 240108 · hanging · Weigh round; the last was 22 days ago', 'day 24'],
    ]);
    expect(plainText(view.sentence)).toBe('2 batches under way.');
  });

  it('counts a batch whose pieces are all down as finished', () => {
    const of = hung();
    for (const number of [1, 2, 3, 4])
      of.put(900, 'taken-down', pieceId(number), { why: 'test' }, { refs: [BATCH] });
    const view = batches(of, 901);
    expect(plainText(view.sentence)).toBe('No batch under way, one finished.');
    expect(view.rows[0]?.note).toContain('lot 240108 · finished');
  });

  it('says where a batch comes from while there is none', () => {
    expect(plainText(batches(book(), 0, []).sentence)).toBe(
      'No batch yet. A batch is opened from a formula.',
    );
  });
});
