import { describe, expect, it } from 'vitest';
import { readLogger } from '#files/logger-csv.ts';
import { batch as foldBatch } from '#record/batch.ts';
import { chamberAir } from '#record/chamber-air.ts';
import type { BodyOf } from '#record/kinds.ts';
import { place as foldPlace } from '#record/place.ts';
import type { SubjectId } from '#record/subject.ts';
import { airRun } from '#screens/logger/air-run.ts';
import { questionViews } from '#screens/logger/questions-view.ts';
import { roomRun } from '#screens/logger/room-run.ts';
import { en } from '#words/en.ts';
import { HOUR_MS, START_MS, type Writer, writer } from '../record/make.ts';

const BATCH: SubjectId<'batch'> = 'batch:1';
const place = foldPlace([]);

function stuffedBatch() {
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
  log.write('batch-opened', BATCH, { lot: 'T1', formula, ruleSet: 'CA', plan }, { atMs: START_MS - HOUR_MS });
  log.write('stuffed', BATCH, {}, { atMs: START_MS });
  const found = foldBatch(BATCH, log.entries);
  if (!found) throw new Error('stuffedBatch: no batch');
  return found;
}

/** Invented: a row each minute from two days before stuffing to a day after. */
function csv(): Uint8Array {
  const rows = Array.from({ length: 3 * 24 * 60 }, (_, minute) => {
    const at = new Date(START_MS - 48 * HOUR_MS + minute * 60_000).toISOString();
    return `${at.slice(0, 10)} ${at.slice(11, 19)};${(24 + (minute % 7) / 10).toFixed(1).replace('.', ',')}`;
  });
  return new TextEncoder().encode(['Time;Temperature °C', ...rows].join('\r\n'));
}

it('a file is shown as what it holds for this ferment before anything is kept', async () => {
  const read = await readLogger({ bytes: csv(), zone: 'UTC' });
  if (read.state !== 'read') throw new Error(JSON.stringify(read));
  const given = {
    batch: stuffedBatch(),
    nowMs: START_MS + 30 * HOUR_MS,
    zone: '+00:00',
    place,
    words: en,
  };
  const picked = { name: 'room.csv', instrument: null };
  const run = roomRun(read, picked, given);
  // From six hours before stuffing to the end of the file: 30 h of minutes.
  expect(run?.facts.reduce((sum, { body }) => sum + ('values' in body ? body.values.length : 0), 0)).toBe(
    30 * 60,
  );
  expect(run?.rows.find(({ label }) => label === en.logger.found.labels.range)?.value).toBe(
    '24.0\u00a0°C to 24.6\u00a0°C',
  );
  expect(roomRun(read, picked, { ...given, nowMs: START_MS - 100 * HOUR_MS })).toBeNull();
});

/** Invented: a day of minutes across the night in which clocks go back, as a logger writes it whose clock was not changed. */
function autumn(days = 1): Uint8Array {
  const rows = Array.from({ length: days * 1440 }, (_, minute) => {
    const at = new Date(Date.UTC(2024, 9, 26, 20) + minute * 60_000).toISOString();
    return `${at.slice(0, 10)} ${at.slice(11, 16)},${(13 + (minute % 5) / 10).toFixed(1)},${78 + (minute % 4)}`;
  });
  return new TextEncoder().encode(['Time,Temperature °C,Humidity %', ...rows].join('\n'));
}

describe('a file of a chamber', () => {
  const CHAMBER = 'chamber:1' as const;
  const given = (log: Writer) => ({
    chamber: CHAMBER,
    air: chamberAir(CHAMBER, log.entries),
    nowMs: Date.UTC(2024, 9, 30),
    zone: '+01:00',
    place,
    words: en,
  });
  const picked = { name: 'cellar.csv', instrument: null };
  async function readIn(days = 1) {
    const read = await readLogger({
      bytes: autumn(days),
      zone: 'Europe/Berlin',
      choices: { clock: 'stays' },
    });
    if (read.state !== 'read') throw new Error(JSON.stringify(read));
    return read;
  }

  it('of 1,440 rows is read, and the change of clocks moves no reading', async () => {
    const read = await readIn();
    const run = airRun(read, picked, given(writer()));
    expect(run?.count).toBe('1\u202f440');
    const log = writer();
    for (const { body } of run?.facts ?? []) log.write('air-logged', CHAMBER, body as BodyOf<'air-logged'>);
    const { points } = chamberAir(CHAMBER, log.entries);
    expect(points).toHaveLength(1440);
    const steps = points.slice(1).map(({ atMs }, at) => atMs - (points[at]?.atMs ?? 0));
    expect(new Set(steps)).toEqual(new Set([60_000]));
    // 20:00 on a clock two hours ahead of UTC.
    expect(points[0]).toEqual({ atMs: Date.UTC(2024, 9, 26, 18), airC: 13, rhPct: 78 });
    expect(run?.rows.find(({ label }) => label === en.logger.found.labels.humidity)?.value).toBe(
      '78\u00a0% to 81\u00a0%',
    );
  });

  it('brings what is new in it, and nothing twice', async () => {
    const log = writer();
    const first = airRun(await readIn(1), picked, given(log));
    for (const { body } of first?.facts ?? []) log.write('air-logged', CHAMBER, body as BodyOf<'air-logged'>);
    const second = airRun(await readIn(2), picked, given(log));
    expect(second?.rows[0]?.value).toBe(
      '1\u202f440 new readings, of 2\u202f880 in the file; 1\u202f440 are kept already',
    );
    expect(airRun(await readIn(1), picked, given(log))).toBeNull();
  });

  it('keeps nothing that lies ahead of now', async () => {
    expect(airRun(await readIn(), picked, { ...given(writer()), nowMs: Date.UTC(2024, 9, 26) })).toBeNull();
  });
});

it('dates that may be read in two ways are asked about, and the answer reads the file', async () => {
  const text = ['Time,Temperature °C', '03/04/2024 10:00,24.1', '03/04/2024 10:10,24.2'].join('\n');
  const bytes = new TextEncoder().encode(text);
  const asked = await readLogger({ bytes, zone: 'UTC' });
  if (asked.state !== 'asked') throw new Error(JSON.stringify(asked));
  const [question] = questionViews(asked, en);
  expect(question?.options.map(({ label }) => label)).toEqual(['3 April 2024', '4 March 2024']);
  const read = await readLogger({ bytes, zone: 'UTC', choices: question?.choose('dmy') });
  expect(read.state).toBe('read');
});
