import { describe, expect, it } from 'vitest';
import { phOnLine } from '#core/ferment/ph-line.ts';
import type { Batch } from '#record/batch.ts';
import { fermentFigures } from '#record/ferment-figures.ts';
import { ownPaces } from '#record/own-paces.ts';
import { phAhead } from '#record/ph-ahead.ts';
import type { SubjectId } from '#record/subject.ts';
import {
  type Book,
  batchOf,
  book,
  HOUR_MS,
  openBatch,
  readRoom,
  SALAME,
  START_MS,
  setUp,
  stuff,
  weighMeat,
} from '../screens/book.ts';

/** A culture of this maker's that is twice as slow as one of unknown pace is taken to be. Invented. */
const LINE = { shape: 'exponential', lagHours: 22, halfHours: 26, startPh: 5.8, dropPh: 0.9 } as const;
const READ_HOURS = [0, 18, 30, 44, 60, 80, 100];
const starter = (name: string) => ({
  id: 'starter',
  name,
  role: 'starter' as const,
  amount: { basis: 'g-per-kg-meat' as const, doseGPerKg: 0.25 },
});
const dextrose = (amountPct: number) => ({
  id: 'sugar',
  name: 'Dextrose',
  role: 'sugar' as const,
  sugarKind: 'dextrose' as const,
  amount: { basis: 'pct-of-meat' as const, amountPct },
});
const idOf = (number: number): SubjectId => `batch:018cdc00-0000-7000-a000-0000000001${number}0`;

function fermented(
  of: Book,
  {
    number,
    culture = 'Slow culture',
    hours = READ_HOURS,
    roomC = 24,
    sugarPct = 0.6,
  }: { number: number; culture?: string; hours?: readonly number[]; roomC?: number; sugarPct?: number },
): Book {
  const id = idOf(number);
  const fromHours = number * 400;
  openBatch(of, {
    id,
    atHours: fromHours,
    formula: { ...SALAME, lines: [...SALAME.lines, dextrose(sugarPct), starter(culture)] },
  });
  weighMeat(of, { id, atHours: fromHours + 0.2 });
  stuff(of, { id, atHours: fromHours + 2, number });
  for (let at = 0; at <= Math.max(102, ...hours); at += 6) readRoom(of, fromHours + 2 + at, roomC, id);
  for (const at of hours)
    of.put(fromHours + 2 + at, 'ph-read', id, {
      ph: Math.round(100 * phOnLine(LINE, at)) / 100,
      sample: at === 0 ? 'mix' : 'packet',
      method: 'meter',
      doubted: false,
    });
  return of;
}
function ended(of: Book, number: number, atHours = 104): Book {
  of.put(number * 400 + 2 + atHours, 'ferment-ended', idOf(number), { reason: 'ph-reached' });
  return of;
}
const batches = (of: Book, numbers: readonly number[]): Batch[] =>
  numbers.map((number) => batchOf(of, idOf(number)));

const noPause = async () => {};
const pacesFor = (of: Book, numbers: readonly number[], next: number) =>
  ownPaces(batches(of, numbers), batchOf(of, idOf(next)), noPause);

describe('the maker’s own finished ferments', () => {
  it('are fitted from the mix on, and give back the pace that they had', async () => {
    const of = ended(fermented(setUp(book()), { number: 1 }), 1);
    fermented(of, { number: 2, hours: [0] });
    const [pace, ...none] = await pacesFor(of, [1, 2], 2);
    expect(none).toEqual([]);
    expect(pace?.lagHours).toBeCloseTo(LINE.lagHours, 0);
    expect(Math.abs((pace?.halfHours ?? 0) - LINE.halfHours)).toBeLessThan(4);
  });

  it('of another culture, with too few readings, or still running say nothing', async () => {
    const of = setUp(book());
    ended(fermented(of, { number: 1, culture: 'Fast culture' }), 1);
    ended(fermented(of, { number: 2, hours: [0, 18, 30, 44] }), 2);
    fermented(of, { number: 3 });
    fermented(of, { number: 4, hours: [0] });
    expect(await pacesFor(of, [1, 2, 3, 4], 4)).toEqual([]);
  });

  it('that were read to their end move where the next one should end, by their number and never all the way', async () => {
    const of = setUp(book());
    const read = [...READ_HOURS, 130, 160];
    for (const number of [1, 2, 3, 4]) ended(fermented(of, { number, hours: read }), number, 164);
    fermented(of, { number: 5, hours: [0] });
    const next = batchOf(of, idOf(5));
    const nowMs = START_MS + (5 * 400 + 2 + 20) * HOUR_MS;
    const clock = fermentFigures(next, nowMs);
    const endOf = async (own: readonly number[]) => {
      const ahead = clock && phAhead(next, clock, nowMs, await pacesFor(of, own, 5));
      return ahead?.forecast.endPh ?? { lowPh: Number.NaN, midPh: Number.NaN, highPh: Number.NaN };
    };
    const [none, one, four] = [await endOf([]), await endOf([1]), await endOf([1, 2, 3, 4])];
    const truthPh = LINE.startPh - LINE.dropPh;
    const offPh = ({ midPh }: { midPh: number }) => Math.abs(midPh - truthPh);
    expect(offPh(one)).toBeLessThan(offPh(none));
    expect(offPh(four)).toBeLessThan(offPh(one));
    expect((four.midPh - truthPh) * (none.midPh - truthPh)).toBeGreaterThan(0);
    const wide = ({ lowPh, highPh }: { lowPh: number; highPh: number }) => highPh - lowPh;
    expect(wide(four)).toBeLessThan(wide(none));
    // What is of each batch alone stays unknown, however many there were.
    expect(wide(four)).toBeGreaterThan(0.6 * wide(none));
  });

  it('that were left before their end, in another room or with other sugar, say nothing of where the next one ends', async () => {
    const of = setUp(book());
    ended(fermented(of, { number: 1, hours: [0, 18, 30, 44, 60] }), 1);
    ended(fermented(of, { number: 2, hours: [...READ_HOURS, 130, 160], roomC: 29 }), 2, 164);
    ended(fermented(of, { number: 3, hours: [...READ_HOURS, 130, 160], sugarPct: 0.3 }), 3, 164);
    fermented(of, { number: 4, hours: [0] });
    const paces = await pacesFor(of, [1, 2, 3], 4);
    expect(paces.length).toBeGreaterThan(1);
    expect(paces.flatMap(({ beyondPh }) => beyondPh ?? [])).toEqual([]);
  });

  it('move the window of the next one towards them, and are said to', async () => {
    const of = setUp(book());
    for (const number of [1, 2, 3]) ended(fermented(of, { number }), number);
    fermented(of, { number: 4, hours: [0, 18] });
    const next = batchOf(of, idOf(4));
    const nowMs = START_MS + (4 * 400 + 2 + 20) * HOUR_MS;
    const clock = fermentFigures(next, nowMs);
    const likelyHours = async (own: readonly number[]) => {
      const ahead = clock && phAhead(next, clock, nowMs, await pacesFor(of, own, 4));
      expect(ahead?.own).toHaveLength(own.length);
      return ((ahead?.stop.likelyAtMs ?? Number.POSITIVE_INFINITY) - (next.stuffedAtMs ?? 0)) / HOUR_MS;
    };
    const truthHours = LINE.lagHours + LINE.halfHours * Math.log2(0.9 / 0.4);
    const [alone, taught] = [await likelyHours([]), await likelyHours([1, 2, 3])];
    expect(Math.abs(taught - truthHours)).toBeLessThan(Math.abs(alone - truthHours));
  });
});
