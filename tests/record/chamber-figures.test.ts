import { describe, expect, it } from 'vitest';
import { chamberAir, packAir, unpackAir } from '#record/chamber-air.ts';
import { addedGPerDay, loads, mostCarried, weeksAhead } from '#record/chamber-figures.ts';
import { batchAhead, batchGiven } from '#record/drying-batch.ts';
import { checks } from '#record/instruments.ts';
import type { SubjectId } from '#record/subject.ts';
import {
  batchOf,
  book,
  CHAMBER,
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

const hung = () => ferment(stuff(weighOutSalt(weighMeat(openBatch(setUp(book(), { ruleSet: 'CA' }))))));
const atMs = (hours: number) => START_MS + hours * HOUR_MS;
const METER: SubjectId = 'instrument:018cdc00-0000-7000-a000-00000000000a';

describe('water to carry off', () => {
  it('was, by hand: four pieces that lost 8, 8, 9 and 7 g in two days carried 16 g a day', () => {
    const of = weighRound(hung(), 34, [800, 790, 795, 810], { stage: 'to-drying' });
    weighRound(of, 34 + 48, [792, 782, 786, 803]);
    weighRound(of, 34 + 48 + 96, [780, 770, 774, 791]);
    const most = mostCarried([batchOf(of)]);
    expect(most?.gPerDay).toBeCloseTo(16, 9);
    expect(most?.untilMs).toBe(atMs(34 + 48));
  });

  it('is not known before pieces were weighed twice', () => {
    expect(mostCarried([batchOf(hung())])).toBe(null);
  });

  it('falls from week to week, and the humidity to hold with it', () => {
    const batch = batchOf(hung());
    const ahead = batchAhead(batchGiven(batch, { batches: [], air: null, nowMs: atMs(48) }));
    const weeks = weeksAhead(loads([{ batch, ahead }]), atMs(48));
    expect(weeks).toHaveLength(5);
    const water = weeks.map(({ waterGPerDay }) => waterGPerDay);
    const humidity = weeks.map(({ humidity: { lowPct } }) => lowPct);
    expect(water).toEqual([...water].sort((a, b) => b - a));
    expect(humidity).toEqual([...humidity].sort((a, b) => b - a));
    // 3.2 kg green with 60 % of water cannot give off more than all of it.
    expect(water[0]).toBeLessThan(3235 * 0.6);
    expect(water[0]).toBeGreaterThan(10);
  });

  it('of twice as much fresh sausage is twice as much', () => {
    const batch = batchOf(hung());
    const tenKg = addedGPerDay(batch, 10_000) ?? Number.NaN;
    expect(addedGPerDay(batch, 20_000)).toBeCloseTo(2 * tenKg, 6);
    // The radial model has 17.8 % for a 55 mm piece in its first week, 2.5 % a day (computed): 250 g of 10 kg, within a factor.
    expect(tenKg).toBeGreaterThan(80);
    expect(tenKg).toBeLessThan(400);
    expect(addedGPerDay(null, 1000)).toBe(null);
  });

  it('needs something that hangs', () => {
    expect(weeksAhead([], atMs(0))).toEqual([]);
    expect(loads([{ batch: batchOf(hung()), ahead: null }])).toEqual([]);
  });
});

describe('the air of a chamber', () => {
  const rows = [
    { atMs: atMs(1), airC: 13.25, rhPct: 79.5 },
    { atMs: atMs(2), airC: 12.98, rhPct: null },
    { atMs: atMs(3.5), airC: -1.5, rhPct: 80 },
  ];

  it('comes out of the log as the file had it', () => {
    const of = setUp(book());
    const [body] = packAir('invented', rows);
    if (!body) throw new Error('packAir: no part');
    const entry = of.put(5, 'air-logged', CHAMBER, body);
    if (entry.kind !== 'air-logged') throw new Error('not the file');
    expect(unpackAir(entry)).toEqual(rows);
  });

  it('lies in one line, by hand and by file, with what the checks say to add', () => {
    const of = setUp(book());
    of.put(0, 'meter-added', METER, { what: 'hygrometer', name: 'Round one' });
    of.put(0.5, 'hygrometer-checked', METER, { shownRhPct: 80, restedHours: 12 });
    for (const body of packAir('invented', rows, METER)) of.put(5, 'air-logged', CHAMBER, body);
    of.put(2.5, 'air-read', CHAMBER, { airC: 13, rhPct: 82 });
    const { points } = chamberAir(CHAMBER, of.entries, checks(of.entries));
    expect(points.map(({ rhPct }) => rhPct)).toEqual([74.5, null, 82, 75]);
  });

  it('takes a file of 6000 rows in parts, none lost', () => {
    const many = Array.from({ length: 6000 }, (_, at) => ({ atMs: at * 60_000, airC: 13, rhPct: 80 }));
    const parts = packAir('invented', many);
    expect(parts.map(({ afterS }) => afterS.length)).toEqual([2500, 2500, 1000]);
    expect(parts[1]?.startMs).toBe(2500 * 60_000);
  });
});
