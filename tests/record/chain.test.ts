import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { chainOrder, checkChains } from '#record/chain.ts';
import type { Line } from '#record/line.ts';
import { deviceOf, lineOf, writer } from './make.ts';

const [one, two] = [deviceOf(1), deviceOf(2)];

function logOfTwo(): readonly Line[] {
  const { write, lines } = writer();
  for (let number = 0; number < 12; number++) {
    write('noted', 'batch:a', { text: `${number}` }, { device: number % 3 === 0 ? two : one });
  }
  return lines;
}

const at = (lines: readonly Line[], device: string, seq: number) =>
  lines.find(({ entry }) => entry.device === device && entry.seq === seq) as Line;

describe('the chains of a log', () => {
  it('are whole in a log as it was written, whatever the order, with one head a device', () => {
    const lines = logOfTwo();
    fc.assert(
      fc.property(fc.shuffledSubarray([...lines], { minLength: lines.length }), (shuffled) => {
        const { faults, heads } = checkChains(shuffled);
        expect(faults).toEqual([]);
        expect(heads.map(({ seq }) => seq)).toEqual([8, 4]);
        expect(chainOrder(shuffled)).toEqual(chainOrder(lines));
      }),
    );
  });

  it('name every line that is missing from the middle or the start', () => {
    const lines = logOfTwo();
    fc.assert(
      fc.property(fc.uniqueArray(fc.integer({ min: 1, max: 7 }), { minLength: 1 }), (gone) => {
        const left = lines.filter(({ entry }) => entry.device !== one || !gone.includes(entry.seq));
        const named = checkChains(left).faults.flatMap((fault): (number | string)[] =>
          fault.code === 'gap'
            ? Array.from({ length: fault.toSeq - fault.fromSeq + 1 }, (_, index) => fault.fromSeq + index)
            : [fault.code],
        );
        expect(named).toEqual([...gone].sort((a, b) => a - b));
      }),
    );
  });

  it('name a line that follows another than the one that is here', () => {
    const lines = logOfTwo();
    const old = at(lines, one, 3);
    const changed = lineOf(old.line.replace('"by":"AB"', '"by":"CD"'));
    const { faults } = checkChains(lines.map((line) => (line === old ? changed : line)));
    expect(faults).toEqual([{ code: 'broken', device: one, seq: 4 }]);
  });

  it('name a fork, and both of its ends', () => {
    const lines = logOfTwo();
    const last = at(lines, one, 8);
    const other = lineOf(last.line.replace('"by":"AB"', '"by":"CD"'));
    const { faults, heads } = checkChains([...lines, other]);
    expect(faults).toEqual([{ code: 'fork', device: one, seq: 8, lines: 2 }]);
    expect(heads.filter(({ device }) => device === one)).toHaveLength(2);
  });

  it('follow both branches of a fork that went on', () => {
    const lines = logOfTwo();
    const book = writer(100);
    for (let number = 0; number < 8; number++)
      book.write('noted', 'batch:b', { text: `${number}` }, { device: one });
    const { faults } = checkChains([...lines, ...book.lines]);
    expect(new Set(faults.map(({ code }) => code))).toEqual(new Set(['fork']));
  });
});
