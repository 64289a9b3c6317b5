import { expect, it } from 'vitest';
import { readLogger } from '#files/logger-csv.ts';
import { batch as foldBatch } from '#record/batch.ts';
import { place as foldPlace } from '#record/place.ts';
import type { SubjectId } from '#record/subject.ts';
import { dryRun, questionViews } from '#screens/ferment/logger-view.ts';
import { en } from '#words/en.ts';
import { HOUR_MS, START_MS, writer } from '../record/make.ts';

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
    name: 'room.csv',
    thermometer: null,
    nowMs: START_MS + 30 * HOUR_MS,
    zone: '+00:00',
    place,
    words: en,
  };
  const run = dryRun(read, given);
  // From six hours before stuffing to the end of the file: 30 h of minutes.
  expect(run?.bodies.reduce((sum, { values }) => sum + values.length, 0)).toBe(30 * 60);
  expect(run?.rows.find(({ label }) => label === en.logger.found.labels.range)?.value).toBe(
    '24.0\u00a0°C to 24.6\u00a0°C',
  );
  expect(dryRun(read, { ...given, nowMs: START_MS - 100 * HOUR_MS })).toBeNull();
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
