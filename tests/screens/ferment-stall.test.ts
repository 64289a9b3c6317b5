import { describe, expect, it } from 'vitest';
import type { Formula } from '#core/formula/formula.ts';
import { batch as foldBatch } from '#record/batch.ts';
import { withChecks } from '#record/instruments.ts';
import { isStalled, stallFacts } from '#record/stall-figures.ts';
import type { SubjectId } from '#record/subject.ts';
import { stallView } from '#screens/ferment/stall-view.ts';
import { en as words } from '#words/en.ts';
import { plainText } from '#words/said.ts';
import {
  BATCH,
  type Book,
  batchOf,
  book,
  HOUR_MS,
  kitOf,
  METER,
  openBatch,
  placeOf,
  readPh,
  readRoom,
  SALAME,
  START_MS,
  setUp,
  stuff,
  touching,
  weighMeat,
  weighOutSalt,
} from './book.ts';

/** Stuffed two hours after the start; hours in these tests count from there. Readings are invented. */
const STUFFED = 2;
const CULTURE: SubjectId = 'lot:018cdc00-0000-7000-a000-000000000021';
const WITH_CULTURE: Formula = {
  ...SALAME,
  lines: [
    ...SALAME.lines,
    {
      id: 'sugar',
      name: 'Dextrose',
      role: 'sugar',
      sugarKind: 'dextrose',
      amount: { basis: 'pct-of-meat', amountPct: 0.4 },
    },
    {
      id: 'starter',
      name: 'Culture',
      role: 'starter',
      amount: { basis: 'at-least', minimumG: 0.1, doseGPerKg: 0.25 },
    },
  ],
};
const atMs = (hours: number) => START_MS + (STUFFED + hours) * HOUR_MS;

/** 72 h at 20 °C, 5.80 at first. */
function slow(of: Book, formula: Formula = WITH_CULTURE): Book {
  weighOutSalt(weighMeat(openBatch(setUp(of, { ruleSet: 'CA' }), { formula })));
  stuff(of);
  for (let hours = 0; hours <= 72; hours += 6) readRoom(of, STUFFED + hours, 20);
  return readPh(of, STUFFED + 1, 5.8);
}
function weighCulture(of: Book, massG: number, openedDaysBefore: number): Book {
  of.put(-2, 'received', CULTURE, {
    what: 'culture',
    name: 'Culture',
    lot: 'S-1',
    supplier: '',
    openedOnMs: atMs(0) - openedDaysBefore * 24 * HOUR_MS,
  });
  of.put(
    0.6,
    'weighed-out',
    BATCH,
    { line: 'starter', targetG: 0.8, massG, lot: CULTURE },
    { refs: [CULTURE] },
  );
  return of;
}
const viewOf = (of: Book, answers = {}, hours = 72) =>
  stallView({
    log: stallFacts(batchOf(of), kitOf(of).lots, atMs(hours)),
    answers,
    place: placeOf(of),
    words,
  });

describe('a pH that does not fall', () => {
  it('72 h at 20 °C from 5.80 to 5.75 is said, and only what the log does not know is asked', () => {
    const of = weighCulture(readPh(slow(book()), STUFFED + 72, 5.75), 0.4, 120);
    expect(isStalled(batchOf(of), atMs(72))).toBe(true);
    const view = viewOf(of);
    expect(view && plainText(view.sentence)).toContain('that is too little');
    expect(view?.fields).toEqual(['meter']);
    expect(view?.causes).toEqual([
      'Less culture went in than the dose.',
      'The pack of the culture had been open for over 90 days.',
    ]);
    expect(view?.steps.map(({ code }) => code)).toContain('hold');
  });

  it('an answer changes what fits and what to do, and goes on the record with the facts', () => {
    const of = weighCulture(readPh(slow(book()), STUFFED + 72, 5.75), 0.9, 5);
    expect(viewOf(of)?.causes).toEqual([]);
    const answered = viewOf(of, { meterCheckedOk: false });
    expect(answered?.causes).toEqual(['The meter failed its buffers: the pH may be another one.']);
    expect(answered?.cause).toContain('meter in its buffers failed');
    expect(answered?.cause).toContain('room, mean since stuffing 20.0');
  });

  it('the check of the meter of that day is not asked again', () => {
    const of = readPh(slow(book()), STUFFED + 72, 5.75, { meter: METER });
    of.put(STUFFED + 71, 'meter-checked', METER, {
      shownIn: 'pH',
      sevenBuffer: '7.00',
      sevenC: 25,
      sevenShown: 7,
      fourBuffer: '4.00',
      fourC: 25,
      fourShown: 4,
    });
    const folded = foldBatch(BATCH, withChecks(touching(of, BATCH), of.entries));
    expect(folded && stallFacts(folded, [], atMs(72))?.meterCheckedOk).toBe(true);
  });

  it('is not said of one that fell, of one that stopped its clock, nor after the ferment', () => {
    expect(isStalled(batchOf(readPh(slow(book()), STUFFED + 72, 5.4)), atMs(72))).toBe(false);
    expect(isStalled(batchOf(readPh(slow(book()), STUFFED + 72, 5.3)), atMs(72))).toBe(false);
    const ended = readPh(slow(book()), STUFFED + 72, 5.75);
    ended.put(STUFFED + 73, 'ferment-ended', BATCH, { reason: 'held' });
    expect(isStalled(batchOf(ended), atMs(74))).toBe(false);
  });

  it('cannot be told without a room, and a formula without culture is said to have none', () => {
    const dark = stuff(openBatch(setUp(book(), { ruleSet: 'CA' })));
    expect(viewOf(dark)).toBeNull();
    const wild = viewOf(readPh(slow(book(), SALAME), STUFFED + 72, 5.75));
    expect(wild?.causes[0]).toContain('No culture is in the formula');
    expect(wild?.fields).not.toContain('dose');
  });

  it('never says to ferment longer', () => {
    const all = JSON.stringify(words.fermentStall).toLowerCase();
    expect(all).not.toMatch(/ferment (it )?longer|wait longer|cook/);
  });
});
