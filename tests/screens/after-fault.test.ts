import { describe, expect, it } from 'vitest';
import { batch as foldBatch } from '#record/batch.ts';
import { chamberAir } from '#record/chamber-air.ts';
import { hoursAboveBase } from '#record/fault-figures.ts';
import { place as foldPlace } from '#record/place.ts';
import type { SubjectId } from '#record/subject.ts';
import { afterFaultView } from '#screens/after-fault/after-fault-view.ts';
import { en } from '#words/en.ts';
import { plainText } from '#words/said.ts';
import { HOUR_MS, START_MS, writer } from '../record/make.ts';

const place = foldPlace([]);

/** Invented: a room of one temperature, read every five hours. */
function fermenting(lot: string, roomC: number, hours: number) {
  const id: SubjectId<'batch'> = `batch:${lot}`;
  const log = writer();
  const plan = {
    fermentC: 24,
    phLow: 4.9,
    phHigh: 5.2,
    dryC: 13,
    dryRhPct: 78,
    diameterMm: 45,
    targetLossPct: 35,
  };
  const formula = { name: 'Test', kind: 'comminuted' as const, species: [], fatPctOfMeat: 25, lines: [] };
  log.write('batch-opened', id, { lot, formula, ruleSet: 'CA', plan }, { atMs: START_MS - HOUR_MS });
  log.write('stuffed', id, {}, { atMs: START_MS });
  for (let hour = 0; hour <= hours; hour += 5)
    log.write('room-read', id, { roomC }, { atMs: START_MS + hour * HOUR_MS });
  const batch = foldBatch(id, log.entries);
  if (!batch) throw new Error('fermenting: no batch');
  return batch;
}
const view = (hours: number, ...batches: ReturnType<typeof fermenting>[]) =>
  afterFaultView({ batches, place, nowMs: START_MS + hours * HOUR_MS, zone: '+00:00', words: en });

describe('after a fault', () => {
  it('a batch that passed its limit stands first, and is told to be held', () => {
    // Canada: 665 degree-hours above 15.6 °C below 33 °C (read second-hand); 30 °C for 50 h come to 720.
    const { sentence, cards } = view(50, fermenting('mild', 20, 50), fermenting('hot', 30, 50));
    expect(cards.map(({ verdict }) => verdict?.verdict)).toEqual(['deviation', 'pending']);
    expect(plainText(sentence)).toContain('hot');
    expect(plainText(sentence)).toContain('Hold, test, decide, record');
  });

  it('hours that nobody read are said, with what they come to at worst', () => {
    const [card] = view(40, fermenting('dark', 25, 10)).cards;
    const value = (label: string) => card?.rows.find((row) => row.label === label)?.value;
    expect(card?.verdict?.verdict).toBe('no-reading');
    expect(value(en.afterFault.rows.above('15.6 °C'))).toBe('10 h, 30 h not read');
    // 40 h at 25 °C above 15.6 °C.
    expect(value(en.afterFault.rows.worst)).toBe('~376 of 665');
  });

  it('calls nothing safe but in a negation', () => {
    const texts = [
      plainText(view(10, fermenting('a', 24, 10)).sentence),
      plainText(view(50, fermenting('b', 30, 50)).sentence),
    ];
    for (const text of texts) expect(text).toMatch(/Nothing on this page calls [a-z ]+ safe\.$/);
  });
});

describe('the air of the chamber', () => {
  const CHAMBER: SubjectId<'chamber'> = 'chamber:1';
  const id: SubjectId<'batch'> = 'batch:dry';
  const at = (hours: number) => ({ atMs: START_MS + hours * HOUR_MS });

  it('stands beside what hangs in it: now, the warmest, and how long it was warm or not read', () => {
    const log = writer();
    const plan = {
      fermentC: 24,
      phLow: 4.9,
      phHigh: 5.2,
      dryC: 13,
      dryRhPct: 78,
      diameterMm: 45,
      targetLossPct: 35,
    };
    const formula = { name: 'Test', kind: 'comminuted' as const, species: [], fatPctOfMeat: 25, lines: [] };
    log.write('batch-opened', id, { lot: 'dry', formula, ruleSet: 'CA', plan }, at(-80));
    log.write('stuffed', id, {}, at(-72));
    log.write('hung', id, { chamber: CHAMBER }, at(-10));
    // 13 °C, up to 35 °C over ten hours, and back; above 15.6 °C for 2 x 10 h x 19.4 / 22.
    for (const [hours, airC] of [
      [-20, 40],
      [0, 13],
      [10, 35],
      [20, 13],
    ] as const)
      log.write('air-read', CHAMBER, { airC, rhPct: 78 }, at(hours));
    const batch = foldBatch(id, log.entries);
    if (!batch) throw new Error('no batch');
    const airs = new Map([[CHAMBER as SubjectId, chamberAir(CHAMBER, log.entries)]]);
    const nowMs = START_MS + 50 * HOUR_MS;
    const [card] = afterFaultView({ batches: [batch], airs, place, nowMs, zone: '+00:00', words: en }).cards;
    const value = (label: string) => card?.rows.find((row) => row.label === label)?.value;
    expect(value(en.afterFault.rows.air)).toBe('13.0\u00a0°C, 78\u00a0%, 30 hours ago');
    expect(value(en.afterFault.rows.warmestAir)).toMatch(/^35\.0/);
    expect(value(en.afterFault.rows.airAbove('15.6\u00a0°C'))).toBe('~17 h 38 min, 30 h not read');
    const unread = afterFaultView({ batches: [batch], place, nowMs, zone: '+00:00', words: en }).cards[0];
    expect(unread?.rows.find(({ label }) => label === en.afterFault.rows.air)?.value).toBe('no reading');
  });
});

it('hours above the base are cut where the line crosses it', () => {
  const step = {
    fromMs: 0,
    toMs: 0,
    fromDeg: 10.6,
    toDeg: 20.6,
    durationHours: 4,
    degreeHours: 0,
    isGap: false,
  };
  const sum = { steps: [step], totalDegreeHours: 0, highestDeg: 20.6, lastDeg: 20.6, fromMs: 0, toMs: 0 };
  expect(hoursAboveBase(sum, 15.6)).toBeCloseTo(2, 9);
});
