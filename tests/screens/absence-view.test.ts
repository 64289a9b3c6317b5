import { describe, expect, it } from 'vitest';
import { batchAway, calibresAway, piecesAway } from '#record/absence-figures.ts';
import type { Batch } from '#record/batch.ts';
import { batchAhead, batchGiven } from '#record/drying-batch.ts';
import { PLACE } from '#record/subject.ts';
import { absenceNow, absenceView } from '#screens/absence/absence-view.ts';
import { en as words } from '#words/en.ts';
import { plainText } from '#words/said.ts';
import {
  BATCH,
  type Book,
  batchOf,
  book,
  CHAMBER,
  ferment,
  HOUR_MS,
  kitOf,
  openBatch,
  pieceId,
  placeOf,
  START_MS,
  setUp,
  stuff,
  weighMeat,
  weighOutSalt,
  weighRound,
  ZONE,
} from './book.ts';

const GREEN = [800, 810, 820, 830, 840, 850];
const DAY = 24;
const LEAVE = 12 * DAY;
const BACK = 26 * DAY;
const lost = (lossPct: number, of = GREEN) => of.map((greenG) => Math.round(greenG * (1 - lossPct / 100)));

/** Six pieces at 14 % on the day before a fortnight away. Invented. */
function fortnight(): Book {
  const of = ferment(
    stuff(weighOutSalt(weighMeat(openBatch(setUp(book(), { ruleSet: 'CA' })))), { greenG: GREEN }),
  );
  weighRound(of, 2 * DAY, lost(3), { stage: 'to-drying' });
  weighRound(of, 11 * DAY, lost(14));
  of.put(11 * DAY, 'air-read', CHAMBER, { airC: 13, rhPct: 78 });
  const [fromMs, toMs] = [START_MS + LEAVE * HOUR_MS, START_MS + BACK * HOUR_MS];
  of.put(11 * DAY, 'absence-planned', PLACE, { fromMs, toMs, helper: 'Neighbour, upstairs' });
  return of;
}

type Away = { readonly fromMs: number; readonly toMs: number };

/** By what was known on leaving, as the page asks it. */
function awayOf(batch: Batch, away: Away, nowMs: number) {
  const given = { batches: [batch], air: null, nowMs: Math.min(away.fromMs, nowMs), askedMs: away.toMs };
  const ahead = batchAhead(batchGiven(batch, given));
  return ahead ? batchAway(batch, ahead, { ...away, nowMs }) : [];
}

function viewOf(of: Book, hours: number, isWaiting = false) {
  const nowMs = START_MS + hours * HOUR_MS;
  const absence = absenceNow(of.entries, nowMs);
  const batch = batchOf(of);
  const isAway = absence !== null && piecesAway(batch, absence.body, nowMs).length > 0;
  const pieces = isWaiting || absence === null ? null : awayOf(batch, absence.body, nowMs);
  const expected = isAway ? [{ batch, pieces }] : [];
  return absenceView({
    entries: of.entries,
    expected,
    chambers: kitOf(of).chambers,
    checks: [],
    place: placeOf(of),
    nowMs,
    zone: ZONE,
    words,
  });
}
const said = (view: ReturnType<typeof viewOf>) => view.expect.map(({ sentence }) => plainText(sentence));

describe('a fortnight away', () => {
  it('keeps the place of what is being worked out, and shows no figure in it', () => {
    const waiting = viewOf(fortnight(), 11 * DAY + 2, true);
    const view = viewOf(fortnight(), 11 * DAY + 2);
    expect(waiting.expect.map(({ key, title, all }) => [key, title, all])).toEqual(
      view.expect.map(({ key, title, all }) => [key, title, all]),
    );
    expect(said(waiting).join()).not.toMatch(/\d/);
    expect(waiting.set).toEqual([]);
  });

  it('before it, says what to set and what each piece should weigh at the return', () => {
    const view = viewOf(fortnight(), 11 * DAY + 2);
    expect(plainText(view.sentence)).toBe('Away for 14 days, 20 January to 3 February.');
    expect(view.set.map(({ title, note }) => `${title}: ${note}`)).toEqual([
      expect.stringMatching(
        /^Cellar: 13\u00a0°C, humidity ~\d\d to \d\d\u00a0%; it was 78\u00a0% at the last/,
      ),
    ]);
    expect(said(view)).toEqual([
      expect.stringMatching(
        /^6 pieces, 14\u00a0% lost at the last weighing; at your return ~\d\d\u00a0% \(\d\d to \d\d\u00a0%\)\./,
      ),
    ]);
    const [row] = view.expect;
    expect(row?.pieces).toHaveLength(6);
    expect(row?.pieces[0]?.expected).toMatch(/^~\d{3} to \d{3}\u00a0g$/);
    expect(row?.pieces.every(({ found }) => found === null)).toBe(true);
    expect(view.absence?.body.helper).toBe('Neighbour, upstairs');
  });

  it('after it, lays what was found beside what was expected, piece by piece', () => {
    const of = fortnight();
    const asked = viewOf(of, BACK + 1);
    expect(asked.state).toBe('returned');
    expect(said(asked)[0]).toContain('not weighed yet');
    // Three as expected, two dry as bone, one hardly drier than it was.
    weighRound(of, BACK + 2, [...lost(21.5, GREEN.slice(0, 3)), ...lost(48, GREEN.slice(3, 5)), 722]);
    const view = viewOf(of, BACK + 3);
    expect(said(view)[0]).toMatch(
      /found 21\.\d\u00a0%; 3 of 6 within what was expected\. 2 pieces lost more: look for dry skins\. One piece lost less/,
    );
    expect(view.expect[0]?.pieces.map(({ found }) => found?.split(', ')[1])).toEqual([
      'within',
      'within',
      'within',
      'lost more',
      'lost more',
      'lost less',
    ]);
    expect(view.set).toEqual([]);
  });

  it('is judged by what was known on leaving: a weighing after the return moves no expectation', () => {
    const of = fortnight();
    const before = viewOf(of, LEAVE + 1).expect[0]?.pieces.map(({ expected }) => expected);
    weighRound(of, BACK + 2, lost(48));
    expect(viewOf(of, BACK + 3).expect[0]?.pieces.map(({ expected }) => expected)).toEqual(before);
  });

  it('still compares a piece that was taken down at the return, and leaves out one that was down before', () => {
    const of = fortnight();
    of.put(11 * DAY + 1, 'taken-down', pieceId(6), { why: 'test' }, { refs: [BATCH] });
    weighRound(of, BACK + 2, lost(24, GREEN.slice(0, 5)));
    of.put(BACK + 3, 'taken-down', pieceId(1), { why: 'at-target' }, { refs: [BATCH] });
    expect(viewOf(of, BACK + 4).expect[0]?.pieces.map(({ number }) => number)).toEqual([
      '1',
      '2',
      '3',
      '4',
      '5',
    ]);
  });

  it('is shown for two weeks after the return, then no more', () => {
    expect(viewOf(fortnight(), BACK + 13 * DAY).state).toBe('returned');
    expect(viewOf(fortnight(), BACK + 15 * DAY).state).toBe('none');
  });
});

it('thin and thick pieces share no middle', () => {
  const batch = batchOf(fortnight());
  const absence = { fromMs: START_MS + LEAVE * HOUR_MS, toMs: START_MS + BACK * HOUR_MS };
  const mixed = {
    ...batch,
    pieces: batch.pieces.map((piece, at) => ({ ...piece, diameterMm: at < 3 ? 36 : 55 })),
  };
  const [thin, thick] = calibresAway(awayOf(mixed, absence, absence.fromMs));
  expect([thin?.diameterMm, thick?.diameterMm]).toEqual([36, 55]);
  expect([thin?.pieces.length, thick?.pieces.length]).toEqual([3, 3]);
  expect(thin?.middlePct).not.toBe(thick?.middlePct);
});
