import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Entry } from '#record/entry.ts';
import { live, rivals, standings } from '#record/strikes.ts';
import { idOf, writer } from './make.ts';

/** Entries 0..n-1, each striking at most one other, by number. */
function log(targets: readonly (number | null)[]): Entry[] {
  const { write } = writer(0);
  return targets.map((target, index) =>
    write('noted', 'batch:a', { text: `note ${index}` }, target === null ? {} : { strikes: idOf(target) }),
  );
}

const numbers = (entries: readonly Entry[]) =>
  entries.map((entry) => Number.parseInt(entry.id.slice(-12), 16)).sort((a, b) => a - b);

const targets = fc
  .integer({ min: 1, max: 9 })
  .chain((count) =>
    fc.array(fc.option(fc.integer({ min: 0, max: count - 1 })), { minLength: count, maxLength: count }),
  );

/**
 * The rule said once more, slowly and from its words alone: an entry is struck when some standing entry strikes it, and
 * stands when all its strikers are struck; what this leaves undecided is a ring, and stands.
 */
function slowly(aims: readonly (number | null)[]): number[] {
  const verdict = new Map<number, boolean>();
  for (let round = 0; round <= aims.length; round++) {
    aims.forEach((_, index) => {
      const strikers = aims.flatMap((aim, from) => (aim === index ? [from] : []));
      if (strikers.some((from) => verdict.get(from) === true)) verdict.set(index, false);
      else if (strikers.every((from) => verdict.get(from) === false)) verdict.set(index, true);
    });
  }
  return aims.flatMap((_, index) => (verdict.get(index) === false ? [] : [index]));
}

describe('strikes', () => {
  it('takes a struck entry out and leaves it visible with what struck it', () => {
    const all = log([null, 0]);
    expect(numbers(live(all))).toEqual([1]);
    const struck = standings(all).find(({ entry }) => entry.id === idOf(0));
    expect(struck?.live).toBe(false);
    expect(struck?.struckBy.map(({ id }) => id)).toEqual([idOf(1)]);
  });

  it('lets an entry stand again when its strike was struck', () => {
    expect(numbers(live(log([null, 0, 1])))).toEqual([0, 2]);
  });

  it('lets a ring, which only a forged file can hold, strike nothing', () => {
    expect(numbers(live(log([1, 0])))).toEqual([0, 1]);
    expect(numbers(live(log([0])))).toEqual([0]);
    expect(numbers(live(log([1, 2, 0])))).toEqual([0, 1, 2]);
  });

  it('breaks a ring at an entry that was struck from outside', () => {
    expect(numbers(live(log([1, 2, 0, 0])))).toEqual([1, 3]);
  });

  it('follows its rule for every pattern of strikes', () => {
    fc.assert(
      fc.property(targets, (aims) => {
        expect(numbers(live(log(aims)))).toEqual(slowly(aims));
      }),
      { numRuns: 1000 },
    );
  });

  it('does not depend on the order of arrival, and reading what stands once more changes nothing', () => {
    fc.assert(
      fc.property(
        targets.chain((aims) =>
          fc.tuple(fc.constant(log(aims)), fc.shuffledSubarray(log(aims), { minLength: aims.length })),
        ),
        ([all, shuffled]) => {
          expect(standings(shuffled)).toEqual(standings(all));
          expect(live(live(all))).toEqual(live(all));
        },
      ),
      { numRuns: 1000 },
    );
  });

  it('names two corrections of one reading that were made apart', () => {
    const book = writer();
    const wrong = book.write('weighed', 'piece:a', { grossG: 4120, stage: 'round' });
    book.write('weighed', 'piece:a', { grossG: 412, stage: 'round' }, { strikes: wrong.id });
    expect(rivals(book.entries)).toEqual([]);
    book.write('weighed', 'piece:a', { grossG: 421, stage: 'round' }, { strikes: wrong.id });
    expect(rivals(book.entries).map((group) => group.length)).toEqual([2]);
  });
});
