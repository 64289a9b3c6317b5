import { describe, expect, it } from 'vitest';
import type { Entry } from '#record/entry.ts';
import type { SubjectId } from '#record/subject.ts';
import { usesOfLot } from '#record/trace.ts';
import { traceView } from '#screens/trace/trace-view.ts';
import { en as words } from '#words/en.ts';
import { plainText } from '#words/said.ts';
import {
  BATCH,
  type Book,
  book,
  kitOf,
  openBatch,
  pieceId,
  placeOf,
  setUp,
  stuff,
  weighMeat,
  weighOutSalt,
} from './book.ts';

const MEAT: SubjectId = 'lot:018cdc00-0000-7000-a000-0000000000aa';
const batchId = (number: number): SubjectId =>
  `batch:018cdc00-0000-7000-a000-${number.toString(16).padStart(12, '0')}`;

/** So many batches of four pieces, every second one with the lot of meat. */
function recall(count: number): Book {
  const of = setUp(book());
  of.put(0, 'received', MEAT, { what: 'lean', name: 'Shoulder', lot: 'M-7', supplier: 'invented' });
  for (let number = 1; number <= count; number++) {
    const id = number === 1 ? BATCH : batchId(number);
    openBatch(of, { id, lot: `L${number}` });
    if (number % 2 === 1)
      of.put(0.2, 'meat-weighed', id, { part: 'lean', massG: 1000, lot: MEAT }, { refs: [MEAT] });
    weighOutSalt(weighMeat(of, { id }), { id });
    stuff(of, { id, number });
  }
  return of;
}

function viewOf(of: Book, entries: readonly Entry[] = of.entries) {
  const uses = usesOfLot(MEAT, entries);
  return traceView({ lot: MEAT, uses, lots: kitOf(of).lots, place: placeOf(of), words });
}

describe('where a lot went', () => {
  it('lists every piece of each batch that it went into, and no other', () => {
    const view = viewOf(recall(5));
    expect(view.batches.map(({ opened }) => opened.slice(0, 6))).toEqual(['lot L1', 'lot L3', 'lot L5']);
    expect(view.batches.map(({ pieces }) => pieces.length)).toEqual([4, 4, 4]);
    expect(plainText(view.sentence)).toBe('12 pieces in 3 batches, all of them still here.');
    expect(view.cells).toHaveLength(13);
  });

  it('says what of it, and which other lots went in beside it', () => {
    const [first] = viewOf(recall(1)).batches;
    expect(first?.uses[0]).toContain('lean, 1');
    expect(first?.others.map(({ title }) => title)).toEqual(
      kitOf(recall(1))
        .lots.filter(({ id }) => id !== MEAT)
        .map(({ received: { body } }) => `${body.name} · lot ${body.lot}`),
    );
  });

  it('tells what was taken down from what hangs', () => {
    const of = recall(1);
    of.put(500, 'taken-down', pieceId(2), { why: 'at-target' }, { refs: [BATCH] });
    expect(plainText(viewOf(of).sentence)).toBe('4 pieces in one batch, 3 of them still hanging.');
  });

  it('leaves out a weighing that was struck', () => {
    const of = recall(1);
    const weighed = of.entries.find(({ kind, refs }) => kind === 'meat-weighed' && refs.includes(MEAT));
    of.put(1, 'struck', BATCH, {}, { refs: [MEAT], ...(weighed ? { strikes: weighed.id } : {}) });
    expect(plainText(viewOf(of).sentence)).toBe('No entry says that any of this lot was used.');
  });

  it('lists the pieces of a recall in less than a second of work', () => {
    const of = recall(60);
    const { entries } = of;
    const before = process.cpuUsage();
    const view = viewOf(of, entries);
    const { user, system } = process.cpuUsage(before);
    expect(view.cells).toHaveLength(121);
    expect((user + system) / 1000).toBeLessThan(1000);
  });
});
