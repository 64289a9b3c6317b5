import { describe, expect, it } from 'vitest';
import { type BatchAhead, batchAhead } from '#record/drying-batch.ts';
import type { PieceWindow } from '#record/piece-ahead.ts';
import { hangingView } from '#screens/hanging/hanging-view.ts';
import { pieceView } from '#screens/piece/piece-view.ts';
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
  START_MS,
  setUp,
  stuff,
  weighMeat,
  weighOutSalt,
  weighRound,
  ZONE,
} from './book.ts';

const DAY = 24;
const MS_PER_DAY = DAY * HOUR_MS;
const at = (hours: number) => ({ nowMs: START_MS + hours * HOUR_MS, zone: ZONE, words });

/** A window as it would come, in days from the start. */
function between(p10: number | null, p50: number | null, p90: number | null, never = 0): PieceWindow {
  const ms = (days: number | null) => (days === null ? null : START_MS + days * MS_PER_DAY);
  return { p10Ms: ms(p10), p50Ms: ms(p50), p90Ms: ms(p90), neverFraction: never };
}

/** The same for the first of a batch and for all of it. */
function aheadOf(window: PieceWindow, last: PieceWindow = window): BatchAhead {
  return {
    nowMs: START_MS,
    pieces: [],
    first: window,
    all: last,
    fan: null,
    course: [],
    air: null,
    batches: 0,
  };
}

function viewOf(of: Book, hours: number, ahead: BatchAhead | null = null, working = false) {
  return hangingView({ batch: batchOf(of), ahead, working, place: placeOf(of), ...at(hours) });
}
const sentence = (...given: Parameters<typeof viewOf>) => plainText(viewOf(...given).sentence);

const stuffed = () => stuff(weighOutSalt(weighMeat(openBatch(setUp(book())))));
/** 800, 800, 800 and 1,000 g green. */
const hung = () =>
  ferment(stuff(weighOutSalt(weighMeat(openBatch(setUp(book())))), { greenG: [800, 800, 800, 1000] }));
const weighed = () => weighRound(hung(), 10 * DAY, [600, 620, 640, 900]);
const down = (of: Book, number: number, hours: number) =>
  of.put(hours, 'taken-down', pieceId(number), { why: 'at-target' }, { refs: [BATCH] });

describe('the rail', () => {
  it('says of each piece what it still has to lose, rounded up, as words on the piece', () => {
    const { rail } = viewOf(weighed(), 11 * DAY);
    expect(rail.map(({ number, toGo, label }) => [number, toGo, label])).toEqual([
      ['1', '104\u00a0g', 'Piece 1: 104\u00a0g to go'],
      ['2', '124\u00a0g', 'Piece 2: 124\u00a0g to go'],
      ['3', '144\u00a0g', 'Piece 3: 144\u00a0g to go'],
      ['4', '280\u00a0g', 'Piece 4: 280\u00a0g to go'],
    ]);
    expect(rail.map(({ lossFraction }) => lossFraction)).toEqual([0.25, 0.225, 0.2, 0.1]);
  });

  it('has at target weight exactly at 38 % lost of 800 g, 496 g, and not a gram above', () => {
    const { rail, atTarget } = viewOf(weighRound(hung(), 30 * DAY, [496, 497]), 31 * DAY);
    expect(rail.map(({ label, tag }) => [label, tag])).toEqual([
      ['Piece 1: at target weight', 'at target'],
      ['Piece 2: 1\u00a0g to go', undefined],
      ['Piece 3: not weighed yet', undefined],
      ['Piece 4: not weighed yet', undefined],
    ]);
    expect(atTarget.map(({ number }) => number)).toEqual([1]);
  });

  it('marks what was taken down and what was bagged, and weighs those no more', () => {
    const of = weighed();
    down(of, 1, 11 * DAY);
    of.put(11 * DAY, 'bagged', pieceId(2), { reason: 'to even out' }, { refs: [BATCH] });
    const { rail, canWeigh } = viewOf(of, 12 * DAY);
    expect(rail.map(({ label }) => label).slice(0, 2)).toEqual(['Piece 1: taken down', 'Piece 2: bagged']);
    expect(canWeigh).toBe(true);
    for (const number of [2, 3, 4]) down(of, number, 13 * DAY);
    expect(viewOf(of, 14 * DAY).canWeigh).toBe(false);
    expect(sentence(of, 14 * DAY)).toBe('All pieces are taken down.');
  });

  it('says what must come first', () => {
    expect(sentence(openBatch(setUp(book())), 1)).toContain('No piece was weighed at stuffing.');
    expect(sentence(stuffed(), 3)).toContain('Not moved to drying yet.');
    expect(viewOf(stuffed(), 3).canWeigh).toBe(false);
  });
});

describe('when a piece should be at target weight', () => {
  it('is a window of days, never a day', () => {
    const forecasts = aheadOf(between(20, 24, 31));
    expect(sentence(weighed(), 11 * DAY, forecasts)).toBe(
      'The first of them should be at target weight between 28 January and 8 February.',
    );
    const figure = viewOf(weighed(), 11 * DAY, forecasts).figures.find(({ key }) => key === 'first');
    expect(figure).toMatchObject({
      value: '1 Feb',
      about: true,
      interval: 'between 28 January and 8 February',
    });
  });

  it('says that nothing was weighed yet where it rests on diameter and air alone', () => {
    expect(sentence(hung(), 35, aheadOf(between(20, 24, 31)))).toContain(
      'By diameter and air alone the first may be at target weight',
    );
  });

  it('has no end where there is a real chance of never, and says how large that is', () => {
    const forecasts = aheadOf(between(20, 28, null, 0.23));
    expect(sentence(weighed(), 11 * DAY, forecasts)).toBe(
      'The first of them should be at target weight from 28 January on, with no end in sight. At this humidity there is a chance of about 25\u00a0% that not all of them ever reach it.',
    );
    expect(sentence(weighed(), 11 * DAY, aheadOf(between(null, null, null, 0.9)))).toBe(
      'At this humidity it may never reach its target.',
    );
  });

  it('never begins before today', () => {
    expect(words.hanging.window(between(5, 8, 14), at(11 * DAY))).toBe('between 19 and 22 January');
    expect(words.hanging.window(between(5, 8, 9), at(11 * DAY))).toBe('about 19 January');
  });

  it('gives way to a piece that is there: the number says look, the fingers decide', () => {
    const there = weighRound(hung(), 30 * DAY, [490, 600, 600, 700]);
    expect(sentence(there, 31 * DAY, aheadOf(between(20, 24, 31)))).toBe(
      'One of 4 is at target weight. Take down what is; the number says look, the fingers decide.',
    );
  });
});

describe('the figures while it hangs', () => {
  it('are of the middle piece: loss rounded down, grams to go rounded up', () => {
    const of = weighRound(hung(), 10 * DAY, [600.4, 620, 640, 900]);
    expect(viewOf(of, 11 * DAY).figures.map(({ key, value, unit }) => [key, value, unit])).toEqual([
      ['loss', '22.5', '%'],
      ['to-go', '144', 'g'],
    ]);
  });

  it('forget a weighing that was struck', () => {
    const of = weighed();
    const last = batchOf(of).pieces[0]?.weighings.at(-1);
    if (!last) throw new Error('no weighing');
    of.put(10.1 * DAY, 'struck', pieceId(1), {}, { refs: [BATCH], strikes: last.entry });
    expect(viewOf(of, 11 * DAY).rail[0]?.label).toBe('Piece 1: not weighed yet');
  });

  it('draw each piece from green weight on, with every weighing as a number below', () => {
    const of = weighRound(weighed(), 12 * DAY, [560]);
    const { chart } = viewOf(of, 13 * DAY);
    const piece = chart?.model.series.find(({ id }) => id === pieceId(1));
    expect(piece?.kind === 'piece' && piece.points.map(({ y }) => y)).toEqual([0, 25, 30]);
    expect(chart?.table.rows.map((row) => row.slice(1))).toEqual([
      ['1', '600\u00a0g', '25.0\u00a0%'],
      ['2', '620\u00a0g', '22.5\u00a0%'],
      ['3', '640\u00a0g', '20.0\u00a0%'],
      ['4', '900\u00a0g', '10.0\u00a0%'],
      ['1', '560\u00a0g', '30.0\u00a0%'],
    ]);
  });
});

describe('a real forecast in the sentence', () => {
  it('is there from the day of hanging on, before any weigh-in', () => {
    const of = hung();
    const { nowMs } = at(34);
    const ahead = batchAhead({ batch: batchOf(of), air: null, others: [], nowMs });
    expect(ahead?.pieces).toHaveLength(4);
    expect(sentence(of, 34, ahead)).toMatch(/may be at target weight (between|from|about) .*\d/);
  });
});

describe('one piece', () => {
  function piece(of: Book, hours: number, forecast: PieceWindow | null = null, working = false) {
    const [first] = batchOf(of).pieces;
    if (!first) throw new Error('no piece');
    return pieceView({ piece: first, forecast, working, place: placeOf(of), ...at(hours) });
  }

  it('says what it lost, what is to go, and a window as far as can be told', () => {
    const { sentence: tokens } = piece(weighed(), 11 * DAY, between(20, 24, 31));
    expect(plainText(tokens)).toBe(
      'It has lost 25.0\u00a0%; 104\u00a0g to go. At target weight between 28 January and 8 February, as far as can be told.',
    );
    expect(plainText(piece(weighed(), 11 * DAY).sentence)).toContain(
      'At this humidity it may never get there.',
    );
  });

  it('has its weighings with the last first, each with its loss rounded down', () => {
    const of = weighRound(weighed(), 12 * DAY, [560.9]);
    expect(piece(of, 13 * DAY).weighings.map(({ title, note, figure }) => [title, note, figure])).toEqual([
      ['20 January 2024, 08:00', 'weigh round, 29.8\u00a0%', '561'],
      ['18 January 2024, 08:00', 'weigh round, 25.0\u00a0%', '600'],
    ]);
  });

  it('shows its target weight rounded down, so that it is reached when it is', () => {
    const of = stuff(weighMeat(openBatch(setUp(book()))), { greenG: [801] });
    const target = piece(of, 3).figures.find(({ key }) => key === 'target');
    expect([target?.value, target?.unit]).toEqual(['496', 'g']);
  });

  it('says of itself whether it hangs, is bagged or is down', () => {
    const of = weighed();
    of.put(11 * DAY, 'bagged', pieceId(1), { reason: 'to even out' }, { refs: [BATCH] });
    expect(plainText(piece(of, 11 * DAY).sentence)).toContain('Bagged to even out');
    of.put(12 * DAY, 'rehung', pieceId(1), { reason: 'evened out' }, { refs: [BATCH] });
    expect(plainText(piece(of, 12 * DAY).sentence)).toContain('It has lost');
    down(of, 1, 13 * DAY);
    expect(plainText(piece(of, 13 * DAY).sentence)).toBe('Taken down.');
  });
});
