import { describe, expect, it } from 'vitest';
import { batch as foldBatch } from '#record/batch.ts';
import {
  fermentFigures,
  lastRoomHumidity,
  phReadings,
  roomHumidity,
  roomSeries,
} from '#record/ferment-figures.ts';
import { withChecks } from '#record/instruments.ts';
import { packRoomLog, unpackRoomLog } from '#record/room-log.ts';
import type { SubjectId } from '#record/subject.ts';
import { HOUR_MS, START_MS, type Writer, writer } from './make.ts';

const BATCH: SubjectId<'batch'> = 'batch:1';
const METER: SubjectId<'instrument'> = 'instrument:ph';
const PROBE: SubjectId<'instrument'> = 'instrument:probe';
const at = (hours: number) => ({ atMs: START_MS + hours * HOUR_MS });

/** Readings here are invented. */
function stuffed(): Writer {
  const log = writer();
  log.write(
    'batch-opened',
    BATCH,
    {
      lot: 'T1',
      formula: { name: 'Test', kind: 'comminuted', species: ['pork'], fatPctOfMeat: 25, lines: [] },
      ruleSet: 'CA',
      plan: {
        fermentC: 24,
        phLow: 4.9,
        phHigh: 5.2,
        dryC: 13,
        dryRhPct: 78,
        diameterMm: 45,
        targetLossPct: 35,
      },
    },
    at(-2),
  );
  log.write('stuffed', BATCH, {}, at(0));
  return log;
}

function ph(log: Writer, hours: number, value: number, more: object = {}): void {
  log.write(
    'ph-read',
    BATCH,
    { ph: value, sample: 'packet', method: 'meter', meter: METER, doubted: false, ...more },
    at(hours),
  );
}

function bufferCheck(log: Writer, hours: number, sevenShown: number): void {
  log.write(
    'meter-checked',
    METER,
    {
      shownIn: 'pH',
      sevenBuffer: '7.00',
      sevenC: 20,
      sevenShown,
      fourBuffer: '4.01',
      fourC: 20,
      fourShown: 4.0,
    },
    at(hours),
  );
}

const folded = (log: Writer) => {
  const own = log.entries.filter(({ subject }) => subject === BATCH);
  const result = foldBatch(BATCH, withChecks(own, log.entries));
  if (!result) throw new Error('folded: no batch');
  return result;
};

describe('a pH reading', () => {
  it('of the fresh mix never stops the clock, however acid', () => {
    const log = stuffed();
    log.write('room-read', BATCH, { roomC: 24 }, at(0));
    ph(log, 1, 5.1, { sample: 'mix' });
    log.write('room-read', BATCH, { roomC: 24 }, at(2));
    const clock = fermentFigures(folded(log), START_MS + 2 * HOUR_MS);
    expect(clock?.stop).toBeNull();
    expect(clock?.finding.verdict).toBe('pending');
    expect(phReadings(folded(log))).toEqual([]);
  });

  it('stops it from a meter whose buffers were good before and after', () => {
    const log = stuffed();
    log.write('room-read', BATCH, { roomC: 24 }, at(0));
    bufferCheck(log, -1, 7.02);
    ph(log, 5, 5.2);
    bufferCheck(log, 6, 7.03);
    expect(fermentFigures(folded(log), START_MS + 7 * HOUR_MS)?.stop?.ph).toBe(5.2);
  });

  it('leaves it open when the next check of its meter fails: nobody knows from when on it was wrong', () => {
    const log = stuffed();
    log.write('room-read', BATCH, { roomC: 24 }, at(0));
    bufferCheck(log, -1, 7.02);
    ph(log, 5, 5.2);
    bufferCheck(log, 6, 7.3);
    const clock = fermentFigures(folded(log), START_MS + 7 * HOUR_MS);
    expect(clock?.stop).toBeNull();
    expect(clock?.finding.missing).toContain('ph-confirm-meter-failed');
  });

  it('kept from a meter that had failed is not believed, wherever that check was written', () => {
    const log = stuffed();
    ph(log, 5, 5.2, { kept: ['calibration-failed'] });
    expect(phReadings(folded(log))[0]?.meterFailed).toBe(true);
  });

  it('is not touched by checks of other meters, nor by those long before or after', () => {
    const log = stuffed();
    bufferCheck(log, -50, 7.3);
    bufferCheck(log, -1, 7.02);
    ph(log, 5, 5.2);
    bufferCheck(log, 6, 7.02);
    bufferCheck(log, 90, 7.3);
    log.write('thermometer-checked', PROBE, { shownC: 3 }, at(4));
    expect(folded(log).checks.map(({ atMs }) => (atMs - START_MS) / HOUR_MS)).toEqual([-1, 6]);
    expect(phReadings(folded(log))[0]?.meterFailed).toBeUndefined();
  });
});

describe('a room temperature', () => {
  it('carries the offset of its thermometer’s last ice check, and keeps what was read', () => {
    const log = stuffed();
    log.write('thermometer-checked', PROBE, { shownC: 0.4 }, at(-3));
    log.write(
      'room-read',
      BATCH,
      { roomC: 24.4, thermometer: PROBE, typed: { roomC: { text: '24.4', unit: 'C' } } },
      at(1),
    );
    const [reading] = roomSeries(folded(log)).readings;
    expect(reading?.roomC).toBeCloseTo(24, 9);
    expect(folded(log).room[0]?.body.roomC).toBe(24.4);
  });

  it('of a thermometer that was two degrees out in ice is doubted, and leaves no verdict', () => {
    const log = stuffed();
    log.write('room-read', BATCH, { roomC: 24, thermometer: PROBE }, at(1));
    log.write('thermometer-checked', PROBE, { shownC: 2 }, at(3));
    expect(roomSeries(folded(log)).readings[0]?.doubted).toBe(true);
    expect(fermentFigures(folded(log), START_MS + 4 * HOUR_MS)?.finding.verdict).toBe('no-reading');
  });
});

describe('the humidity of the room', () => {
  const BOX: SubjectId<'instrument'> = 'instrument:box';
  const humidity = (log: Writer) => {
    const read = folded(log).room[0];
    return read ? roomHumidity(folded(log), read) : null;
  };

  it('carries what its hygrometer lacked over wet salt, and keeps what was shown', () => {
    const log = stuffed();
    log.write('hygrometer-checked', BOX, { shownRhPct: 79, restedHours: 10 }, at(-3));
    log.write('room-read', BATCH, { roomC: 24, rhPct: 92, thermometer: PROBE, hygrometer: BOX }, at(1));
    expect(humidity(log)).toMatchObject({ shownRhPct: 92, rhPct: 88, offsetPct: -4, doubted: false });
    expect(folded(log).room[0]?.body.rhPct).toBe(92);
  });

  it('is doubted when the hygrometer failed, and the temperature on the same instrument is not', () => {
    const log = stuffed();
    log.write('room-read', BATCH, { roomC: 24, rhPct: 90, thermometer: BOX }, at(1));
    log.write('hygrometer-checked', BOX, { shownRhPct: 84, restedHours: 10 }, at(2));
    expect(humidity(log)?.doubted).toBe(true);
    expect(roomSeries(folded(log)).readings[0]?.doubted).toBeUndefined();
  });

  it('comes from a logger’s file as well, and the last of both is shown', () => {
    const log = stuffed();
    log.write('hygrometer-checked', BOX, { shownRhPct: 73, restedHours: 10 }, at(-3));
    const rows = [
      { atMs: START_MS + HOUR_MS, value: 24, rhPct: 90.5 },
      { atMs: START_MS + 2 * HOUR_MS, value: 24, rhPct: 91.25 },
      { atMs: START_MS + 3 * HOUR_MS, value: 24, rhPct: null },
    ];
    for (const body of packRoomLog({ name: 'room.csv', unit: 'C', rows, thermometer: BOX }))
      log.write('room-logged', BATCH, body, { atMs: body.startMs });
    log.write('room-read', BATCH, { roomC: 24, rhPct: 80 }, at(1.5));
    const last = (hours: number) => lastRoomHumidity(folded(log), START_MS + hours * HOUR_MS);
    expect(last(0.5)).toBeNull();
    expect(last(1)).toMatchObject({ shownRhPct: 90.5, rhPct: 92.5 });
    expect(last(1.6)).toMatchObject({ shownRhPct: 80, offsetPct: 0 });
    expect(last(9)).toMatchObject({ shownRhPct: 91.25, rhPct: 93.25 });
    const [plain] = packRoomLog({ name: 'room.csv', unit: 'C', rows: [{ atMs: START_MS, value: 24 }] });
    expect(plain && 'hundredthsRh' in plain).toBe(false);
  });

  it('was not read where only the temperature was', () => {
    const log = stuffed();
    log.write('room-read', BATCH, { roomC: 24, thermometer: PROBE }, at(1));
    expect(humidity(log)).toBeNull();
  });
});

describe('a logger file', () => {
  const rows = Array.from({ length: 43_200 }, (_, minute) => ({
    atMs: START_MS + minute * 60_000,
    value: 24 + Math.round(10 * Math.sin(minute / 300)) / 10,
  }));

  it('of a month of minutes goes into a few entries, and comes out as it was', () => {
    const log = stuffed();
    const bodies = packRoomLog({ name: 'room.csv', unit: 'C', rows });
    for (const body of bodies) log.write('room-logged', BATCH, body, { atMs: body.startMs });
    expect(bodies.length).toBeLessThanOrEqual(12);
    for (const { line } of log.lines) expect(line.length).toBeLessThan(32 * 1024);
    const back = folded(log).logged.flatMap((entry) => {
      const { startMs, sinceStartS, valuesDeg } = unpackRoomLog(entry, 0);
      return valuesDeg.map((value, row) => ({ atMs: startMs + 1000 * (sinceStartS[row] ?? 0), value }));
    });
    expect(back).toEqual(rows);
  });

  it('and readings by hand beside it are one series', () => {
    const log = stuffed();
    for (const body of packRoomLog({ name: 'room.csv', unit: 'C', rows: rows.slice(0, 600) }))
      log.write('room-logged', BATCH, body, { atMs: body.startMs });
    log.write('room-read', BATCH, { roomC: 27 }, at(1));
    const { readings, disagreements } = roomSeries(folded(log));
    expect(readings).toHaveLength(601);
    expect(disagreements).toHaveLength(1);
    expect(fermentFigures(folded(log), START_MS + 10 * HOUR_MS)?.sum?.highestDeg).toBe(27);
  });
});
