import { describe, expect, it } from 'vitest';
import { meaning, mostLostPct, roundState, roundView, unlikely } from '#screens/round/round-view.ts';
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
} from './book.ts';

const hung = () => ferment(stuff(weighOutSalt(weighMeat(openBatch(setUp(book(), { ruleSet: 'CA' }))))));
const atMs = (hours: number) => START_MS + hours * HOUR_MS;
const state = (of: Book, hours: number) => {
  const { todo, weighed, last } = roundState(batchOf(of), atMs(hours));
  const numbers = (pieces: typeof todo) => pieces.map(({ number }) => number);
  return { todo: numbers(todo), weighed: numbers(weighed), last: last?.piece.number ?? null };
};
const piece = (of: Book, number = 1) => {
  const found = batchOf(of).pieces.find((each) => each.number === number);
  if (!found) throw new Error(`piece: no ${number}`);
  return found;
};

describe('where a round stands', () => {
  it('begins with the first that hangs', () => {
    expect(state(hung(), 34)).toEqual({ todo: [1, 2, 3, 4], weighed: [], last: null });
  });

  it('goes on after the one weighed last, and comes back to what was passed over at the end', () => {
    const of = hung();
    for (const [at, number] of [1, 3].entries())
      of.put(
        34 + at / 60,
        'weighed',
        pieceId(number),
        { grossG: 790, stage: 'to-drying' },
        { refs: [BATCH] },
      );
    expect(state(of, 34.5)).toEqual({ todo: [4, 2], weighed: [1, 3], last: 3 });
  });

  it('takes a struck piece up again', () => {
    const of = weighRound(hung(), 34, [800, 790]);
    const [, second] = of.entries.slice(-2);
    of.put(34.2, 'struck', pieceId(2), {}, { refs: [BATCH], ...(second ? { strikes: second.id } : {}) });
    expect(state(of, 34.3)).toEqual({ todo: [2, 3, 4], weighed: [1], last: 1 });
  });

  it('is over some hours later: the next round begins at the first again', () => {
    expect(state(weighRound(hung(), 34, [800, 790]), 40).todo).toEqual([1, 2, 3, 4]);
  });

  it('leaves out what was taken down', () => {
    const of = hung();
    of.put(34, 'taken-down', pieceId(1), { why: 'test' }, { refs: [BATCH] });
    expect(state(of, 34.1).todo).toEqual([2, 3, 4]);
  });
});

describe('a weight as it is typed', () => {
  const said = (of: Book, netG: number) => plainText(meaning(netG, piece(of), 1, placeOf(of), words));

  it('says the loss, what is to go and what changed', () => {
    const of = weighRound(hung(), 34, [780]);
    expect(said(of, 560)).toBe('31.0\u00a0% lost · 57\u00a0g to go · 220\u00a0g less than last time');
    expect(said(of, 780)).toContain('the same as last time');
    expect(said(of, 500)).toContain('at target weight');
  });

  it('says by how much it is heavier than it was green', () => {
    expect(said(hung(), 830)).toBe('18\u00a0g heavier than it was green.');
  });

  it('shows the last weight to compare with, string and all', () => {
    const of = weighRound(hung(), 34, [780]);
    const given = { batch: batchOf(of), stepG: 1, place: placeOf(of), nowMs: atMs(58), words };
    expect(roundView({ piece: piece(of), ...given }).previous).toBe('was 780\u00a0g 24 hours ago');
    expect(roundView({ piece: piece(of, 2), ...given }).previous).toBe('green weight 798\u00a0g');
  });
});

describe('a typo', () => {
  const asked = (of: Book, netG: number, hours: number) =>
    unlikely(netG, piece(of), () => mostLostPct(piece(of), batchOf(of), atMs(hours)));

  it('of a digit too many or of a lost one is asked about', () => {
    const of = weighRound(hung(), 34, [780]);
    expect(asked(of, 7780, 58)).toBe('gained');
    expect(asked(of, 78, 58)).toBe('dropped');
    expect(asked(of, 8.9, 58)).toBe('dropped');
    expect(asked(of, 1236, 58)).toBe('gained');
  });

  it('is not what three weeks of drying do', () => {
    const of = weighRound(hung(), 34, [780]);
    expect(asked(of, 580, 34 + 21 * 24)).toBe(null);
    expect(asked(of, 580, 34 + 24)).toBe('dropped');
  });

  it('is not the grain of the scale', () => {
    const of = weighRound(hung(), 34, [780]);
    expect(asked(of, 783, 58)).toBe(null);
    expect(asked(of, 790, 58)).toBe('gained');
  });
});
