import { describe, expect, it } from 'vitest';
import { batch as foldBatch } from '#record/batch.ts';
import { fermentFigures } from '#record/ferment-figures.ts';
import { checks } from '#record/instruments.ts';
import { phAhead } from '#record/ph-ahead.ts';
import { place as foldPlace } from '#record/place.ts';
import type { SubjectId } from '#record/subject.ts';
import { doubtsOf } from '#screens/ferment/doubts.ts';
import { fermentView } from '#screens/ferment/ferment-view.ts';
import { hoursAt } from '#screens/ferment/hours-at.ts';
import { en } from '#words/en.ts';
import { plainText } from '#words/said.ts';
import { HOUR_MS, START_MS, type Writer, writer } from '../record/make.ts';

const BATCH: SubjectId<'batch'> = 'batch:1';
const METER: SubjectId<'instrument'> = 'instrument:ph';
const place = foldPlace([]);
const at = (hours: number) => ({ atMs: START_MS + hours * HOUR_MS });

/** Readings here are invented. */
function night(ruleSet: 'US' | 'CA' = 'CA', roomC = 24): Writer {
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
  log.write('batch-opened', BATCH, { lot: 'T1', formula, ruleSet, plan }, at(-2));
  log.write('stuffed', BATCH, {}, at(0));
  for (const hours of [0, 5, 10, 15]) log.write('room-read', BATCH, { roomC }, at(hours));
  return log;
}
const ph = (log: Writer, hours: number, value: number, more: object = {}) =>
  log.write(
    'ph-read',
    BATCH,
    { ph: value, sample: 'packet', method: 'meter', meter: METER, doubted: false, ...more },
    at(hours),
  );
const folded = (log: Writer) => {
  const found = foldBatch(BATCH, log.entries);
  if (!found) throw new Error('folded: no batch');
  return found;
};
const codes = (log: Writer, hours: number, reading: { ph: number; sampleMm?: number }) => {
  const doubts = doubtsOf({
    batch: folded(log),
    checks: checks(log.entries),
    reading: { method: 'meter', sample: 'packet', meter: METER, ...reading },
    ...at(hours),
    place,
    words: en,
  });
  return { asked: doubts.asked.map(({ code }) => code), said: doubts.said.map(({ code }) => code) };
};
const goodCheck = (log: Writer, hours: number, sevenShown = 7.02) =>
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

describe('a pH about to be saved', () => {
  it('from a checked meter, and no faster than a culture, is asked nothing', () => {
    const log = night();
    goodCheck(log, -1);
    ph(log, 1, 5.75);
    expect(codes(log, 15, { ph: 5.3 })).toEqual({ asked: [], said: [] });
  });

  it('that fell by 0.9 in four hours is asked about', () => {
    const log = night();
    goodCheck(log, -1);
    ph(log, 10, 5.7);
    expect(codes(log, 14, { ph: 4.8 }).asked).toEqual(['too-fast']);
  });

  it('that rose on a sample three days old is asked about', () => {
    const log = night();
    goodCheck(log, 71);
    ph(log, 60, 4.9);
    expect(codes(log, 72, { ph: 5.1 }).asked).toEqual(['rising-old-sample']);
  });

  it('of a packet half as thick as the piece is asked about: it runs ahead', () => {
    const log = night();
    goodCheck(log, -1);
    expect(codes(log, 15, { ph: 5.5, sampleMm: 22 }).asked).toEqual(['sample-thinner']);
  });

  it('from a meter without a check is only told so, from one that failed it is asked', () => {
    const log = night();
    expect(codes(log, 15, { ph: 5.5 })).toEqual({ asked: [], said: ['calibration-none'] });
    goodCheck(log, 14, 7.3);
    expect(codes(log, 15, { ph: 5.5 })).toEqual({ asked: ['calibration-failed'], said: [] });
  });
});

describe('what is left at another temperature', () => {
  it('is what the published limit leaves of the class that the room would go to', () => {
    const log = night('US', 26.666666666666668);
    const clock = fermentFigures(folded(log), START_MS + 15 * HOUR_MS);
    // 1200 F-hours below 90 °F (American Meat Institute 1997, read second-hand), 15 h at 80 °F used 300 of them.
    const fahrenheit = { ...place, temperature: 'F' as const };
    const left = (deg: number) =>
      clock && hoursAt(clock, deg, { ruleSet: 'US', place: fahrenheit, words: en })?.left;
    expect(left(80)).toBe('45 h left');
    expect(left(60)).toBe(en.fermentAhead.hoursAt.none);
    // 90 to 100 °F is the class of 1000.
    expect(left(95)).toBe('20 h left');
  });
});

describe('the page of a running ferment', () => {
  it('says a window with "~", when to read next, and no verdict of it', () => {
    const log = night();
    goodCheck(log, -1);
    ph(log, 1, 5.75);
    ph(log, 10, 5.55);
    ph(log, 15, 5.42);
    const batch = folded(log);
    const nowMs = START_MS + 15 * HOUR_MS;
    const clock = fermentFigures(batch, nowMs);
    const ahead = clock && phAhead(batch, clock, nowMs);
    const view = fermentView({ batch, ahead, place, nowMs, zone: '+00:00', words: en });
    expect(plainText(view.sentence)).toMatch(
      /pH 5\.3 should come ~\d\d:\d\d .*\(.* to .*\)\. Read the pH next /,
    );
    expect(view.chart?.model.series.map(({ kind }) => kind)).toEqual([
      'band',
      'window',
      'median',
      'measured',
      'limit',
    ]);
    expect(view.bar?.projectedText).toMatch(/^~\d+ to \d+ when pH 5\.3 is due$/);
    expect(view.verdicts[0]?.verdict).toBe('pending');
    const without = fermentView({ batch, place, nowMs, zone: '+00:00', words: en });
    expect(view.verdicts).toEqual(without.verdicts);
  });

  it('shows a struck reading neither in the list nor in the figures', () => {
    const log = night();
    const wrong = ph(log, 12, 4.1);
    log.write('struck', BATCH, {}, { ...at(13), strikes: wrong.id });
    const view = fermentView({
      batch: folded(log),
      place,
      nowMs: START_MS + 15 * HOUR_MS,
      zone: '+00:00',
      words: en,
    });
    expect(view.stage).toBe('running');
    expect(view.readings.map(({ title }) => title)).not.toContain('pH 4.10');
  });
});
