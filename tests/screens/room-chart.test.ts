import { describe, expect, it } from 'vitest';
import { packRoomLog } from '#record/room-log.ts';
import { fermentView } from '#screens/ferment/ferment-view.ts';
import { en as words } from '#words/en.ts';
import {
  BATCH,
  type Book,
  batchOf,
  book,
  HOUR_MS,
  openBatch,
  placeOf,
  readPh,
  readRoom,
  START_MS,
  setUp,
  stuff,
  ZONE,
} from './book.ts';

/** Stuffed two hours after the start. Readings are invented. */
const STUFFED = 2;
const viewOf = (of: Book, hours: number) =>
  fermentView({
    batch: batchOf(of),
    place: placeOf(of),
    nowMs: START_MS + (STUFFED + hours) * HOUR_MS,
    zone: ZONE,
    words,
  });
const stuffed = (temperature: 'C' | 'F' = 'C') =>
  stuff(openBatch(setUp(book(), { ruleSet: 'CA', temperature })));
const measured = (chart: ReturnType<typeof viewOf>['roomChart']) => {
  const series = chart?.model.series.find(({ id }) => id === 'room');
  return series?.kind === 'measured' ? series.points : [];
};

describe('the room beside the pH', () => {
  it('a month of minutes is drawn with at most 240 points, its warmest minute among them', () => {
    const of = stuffed();
    const rows = Array.from({ length: 43_200 }, (_, minute) => ({
      atMs: START_MS + STUFFED * HOUR_MS + minute * 60_000,
      value: minute === 30_001 ? 31.7 : 24 + Math.round(10 * Math.sin(minute / 300)) / 10,
    }));
    for (const body of packRoomLog({ name: 'room.csv', unit: 'C', rows }))
      of.put((body.startMs - START_MS) / HOUR_MS, 'room-logged', BATCH, body);
    const chart = viewOf(of, 720).roomChart;
    const points = measured(chart);
    expect(points.length).toBeLessThanOrEqual(240);
    expect(points.length).toBeGreaterThan(120);
    expect(points.find(({ y }) => y === 31.7)?.x).toBeCloseTo(30_001 / 60, 6);
    expect(chart?.table.rows).toHaveLength(120);
    expect(chart?.model.series.map((each) => ('text' in each ? each.text : ''))).toContain(
      'from 33.0\u00a0°C the limit is 555',
    );
  });

  it('stands over the same hours as the pH, leaves out what is doubted, and is none before a second reading', () => {
    const of = readRoom(stuffed(), STUFFED, 24);
    expect(viewOf(of, 1).roomChart).toBeNull();
    readRoom(of, STUFFED + 6, 24);
    of.put(STUFFED + 7, 'room-read', BATCH, { roomC: 60, doubted: true });
    readPh(of, STUFFED + 6, 5.7);
    const { chart, roomChart } = viewOf(of, 8);
    expect(roomChart?.model.xTicks).toEqual(chart?.model.xTicks);
    expect(measured(roomChart).map(({ y }) => y)).toEqual([24, 24]);
  });

  it('is in the maker’s unit', () => {
    const of = readRoom(readRoom(stuffed('F'), STUFFED, 25), STUFFED + 5, 25);
    const { roomChart } = viewOf(of, 6);
    expect(roomChart?.model.yTitle).toBe('°F');
    expect(measured(roomChart).map(({ y }) => y)).toEqual([77, 77]);
  });
});
