import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { inOrder } from '#record/strikes.ts';
import { recordView } from '#screens/record/record-view.ts';
import { zoneAt } from '#store/clock.ts';
import { en as words } from '#words/en.ts';
import {
  BATCH,
  batchOf,
  book,
  HOUR_MS,
  kitOf,
  openBatch,
  placeOf,
  START_MS,
  setUp,
  touching,
} from '../screens/book.ts';

const zone = process.env.TZ;
beforeEach(() => {
  process.env.TZ = 'Europe/Zurich';
});
afterEach(() => {
  if (zone === undefined) delete process.env.TZ;
  else process.env.TZ = zone;
});

/** Central Europe in 2024: forward on 31 March at 01:00 UTC, back on 27 October at 01:00 UTC. */
const FORWARD_MS = Date.UTC(2024, 2, 31, 1);
const BACK_MS = Date.UTC(2024, 9, 27, 1);

describe('the hours that summer time takes and gives', () => {
  it('change the offset that an entry carries, at the very instant', () => {
    expect([FORWARD_MS - 1, FORWARD_MS].map(zoneAt)).toEqual(['+01:00', '+02:00']);
    expect([BACK_MS - 1, BACK_MS].map(zoneAt)).toEqual(['+02:00', '+01:00']);
  });

  it('leave two readings at half past two in the order in which they were made, an hour apart', () => {
    const of = openBatch(setUp(book()));
    const hoursTo = (atMs: number) => (atMs - START_MS) / HOUR_MS;
    const first = of.put(hoursTo(BACK_MS - 30 * 60_000), 'room-read', BATCH, { roomC: 24 });
    const second = of.put(hoursTo(BACK_MS + 30 * 60_000), 'room-read', BATCH, { roomC: 22 });
    const summer = { ...first, zone: zoneAt(first.atMs) };
    const winter = { ...second, zone: zoneAt(second.atMs) };
    const walls = [summer, winter].map(({ atMs, zone: offset }) => words.dates.full(atMs, offset));
    expect(walls).toEqual(['27 October 2024, 02:30', '27 October 2024, 02:30']);
    expect([winter, summer].sort(inOrder)).toEqual([summer, winter]);
    expect(winter.atMs - summer.atMs).toBe(HOUR_MS);
    const view = recordView({
      batch: batchOf(of),
      entries: touching(of, BATCH),
      heads: [],
      doubted: new Map(),
      kit: kitOf(of),
      place: placeOf(of),
      nowMs: BACK_MS + HOUR_MS,
      zone: zoneAt(BACK_MS),
      build: 'test',
      words,
    });
    const rows = view.sheets.flatMap(({ blocks }) =>
      blocks.flatMap((block) => (block.kind === 'table' && block.title === 'Every entry' ? block.rows : [])),
    );
    expect(rows.slice(-2).map(({ key }) => key)).toEqual([first.id, second.id]);
  });
});
