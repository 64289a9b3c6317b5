import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { EntryId } from '#record/entry.ts';
import type { Line } from '#record/line.ts';
import { type Log, logOf, planMerge, union } from '#record/merge.ts';
import { deviceOf, lineOf, writer } from './make.ts';

const RUNS = 10_000;

const book = writer();
for (let number = 0; number < 40; number++) {
  book.write('noted', 'batch:a', { text: `${number}` }, { device: deviceOf(number % 5) });
}
const pool: readonly Line[] = book.lines;
const logs = fc.subarray([...pool]).map(logOf);
const same = (a: Log, b: Log) => {
  expect(new Set(a.keys())).toEqual(new Set(b.keys()));
};

describe('two logs as one', () => {
  it('do not depend on which was first', () => {
    fc.assert(
      fc.property(logs, logs, (a, b) => {
        same(union(a, b), union(b, a));
      }),
      { numRuns: RUNS },
    );
  });

  it('do not depend on which pair was merged first', () => {
    fc.assert(
      fc.property(logs, logs, logs, (a, b, c) => {
        same(union(union(a, b), c), union(a, union(b, c)));
      }),
      { numRuns: RUNS },
    );
  });

  it('stay as they are when merged again, and lose nothing', () => {
    fc.assert(
      fc.property(logs, logs, (a, b) => {
        const both = union(a, b);
        same(union(both, b), both);
        same(union(a, a), a);
        expect([...a.keys(), ...b.keys()].filter((hash) => !both.has(hash))).toEqual([]);
        expect(both.size).toBe(new Set([...a.keys(), ...b.keys()]).size);
      }),
      { numRuns: RUNS },
    );
  });

  it('never replace an entry by other bytes with its id, and name it', () => {
    const [first] = pool;
    if (!first) throw new Error('the pool is empty');
    const twin = lineOf(first.line.replace('"by":"AB"', '"by":"CD"'));
    const held = new Map<EntryId, string>([[first.entry.id, first.hash]]);
    expect(planMerge(held, [first, twin])).toEqual({ fresh: [], here: 1, twins: [twin] });
    expect(planMerge(new Map(), [first, first, twin])).toEqual({ fresh: [first], here: 1, twins: [twin] });
  });
});
