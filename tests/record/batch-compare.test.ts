import { describe, expect, it } from 'vitest';
import { compareBatches } from '#record/batch-compare.ts';
import {
  BATCH,
  type Book,
  batchOf,
  book,
  DAY_HOURS,
  ferment,
  HOUR_MS,
  openBatch,
  START_MS,
  setUp,
  stuff,
  weighMeat,
  weighOutSalt,
  weighRound,
} from '../screens/book.ts';

const OTHER = 'batch:018cdc00-0000-7000-a000-0000000000d1';
const NOW_MS = START_MS + 60 * DAY_HOURS * HOUR_MS;
const GREEN = [800, 810, 820];

function whole(of: Book, id: typeof BATCH, number: number, cureG = 8.03): void {
  weighOutSalt(weighMeat(openBatch(of, { id, lot: `L-${number}` }), { id }), { id, cureG });
  ferment(stuff(of, { id, number, greenG: GREEN }), { id });
  weighRound(
    of,
    30 * DAY_HOURS,
    GREEN.map((green) => Math.round(green * 0.6)),
    { id, number },
  );
}

function two(change: (of: Book) => void = () => undefined, cureG = 8.03) {
  const of = setUp(book());
  whole(of, BATCH, 1);
  whole(of, OTHER, 2, cureG);
  change(of);
  return compareBatches(batchOf(of), batchOf(of, OTHER), NOW_MS);
}
const differing = (found: ReturnType<typeof two>) =>
  found.done
    .filter(({ differs }) => differs === true)
    .map(({ code, name }) => (name ? `${code} ${name}` : code));

describe('two batches side by side', () => {
  it('finds nothing between two that were made alike, and says what was not written down', () => {
    const found = two();
    expect(found.differing).toBe(0);
    expect(found.done.filter(({ differs }) => differs === null).map(({ code }) => code)).toEqual(['casing']);
  });

  it('names the one thing that differs', () => {
    expect(differing(two(undefined, 7.5))).toEqual(['line Curing salt']);
  });

  it('takes what a scale cannot hold apart as the same', () => {
    expect(differing(two(undefined, 8.02))).toEqual([]);
  });

  it('names four where four differ', () => {
    const of = setUp(book());
    whole(of, BATCH, 1);
    openBatch(of, { id: OTHER, lot: 'L-2' });
    of.put(0.3, 'meat-weighed', OTHER, { part: 'lean', massG: 2000 });
    of.put(0.3, 'meat-weighed', OTHER, { part: 'fat', massG: 1215 });
    weighOutSalt(of, { id: OTHER, cureG: 7.2 });
    stuff(of, { id: OTHER, number: 2, greenG: GREEN });
    for (const hours of [0, 10, 20]) of.put(2 + hours, 'room-read', OTHER, { roomC: 20 });
    of.put(22, 'ferment-ended', OTHER, { reason: 'time-reached' });
    of.put(23, 'hung', OTHER, { airC: 13, rhPct: 80 });
    const found = compareBatches(batchOf(of), batchOf(of, OTHER), NOW_MS);
    expect(differing(found)).toEqual([
      'line Curing salt',
      'fat-share',
      'ferment-temperature',
      'ferment-hours',
    ]);
    expect(found.differing).toBe(4);
  });

  it('sets what came out beside it: loss, days to target weight, pH, the middle mark', () => {
    const found = two((of) => {
      of.put(31 * DAY_HOURS, 'tasted', OTHER, {
        taster: 'HK',
        look: 4,
        smell: 4,
        bite: 3,
        taste: 5,
        overall: 4,
      });
    });
    const of = (code: string) => found.cameOut.find((each) => each.code === code);
    expect(of('loss')?.one).toBeCloseTo(40, 0);
    expect(of('days')?.one).toBeCloseTo(29.9, 0);
    expect(of('ph')).toMatchObject({ one: 5.2, two: 5.2 });
    expect(of('hours-to-stop')?.two).toBeCloseTo(30, 6);
    expect(of('overall')).toMatchObject({ one: null, two: 4 });
  });
});
