import { describe, expect, it } from 'vitest';
import { batch } from '#record/batch.ts';
import { packAir } from '#record/chamber-air.ts';
import { checks } from '#record/instruments.ts';
import { chambers, lots, meters, place, scales } from '#record/place.ts';
import { startingFormula } from '#record/starting-formula.ts';
import { airQuestion, readAir } from '#screens/chambers/air-input.ts';
import { chamberView } from '#screens/chambers/chamber-view.ts';
import { chambersView } from '#screens/chambers/chambers-view.ts';
import { moistAirFigures } from '#screens/chambers/moist-air.ts';
import { MAX_POINTS } from '#ui/charts/chart-model.ts';
import { en } from '#words/en.ts';
import { plainText } from '#words/said.ts';
import { HOUR_MS, START_MS, type Writer, writer } from '../../record/make.ts';

const here = place([]);
const PLAN = {
  fermentC: 22,
  phLow: 4.9,
  phHigh: 5.2,
  dryC: 13,
  dryRhPct: 80,
  diameterMm: 50,
  targetLossPct: 35,
} as const;

function cellar(): Writer {
  const log = writer();
  log.write('chamber-added', 'chamber:c', { name: 'Cellar', rails: 2 }, { atMs: START_MS });
  log.write('meter-added', 'instrument:h', { what: 'hygrometer', name: 'Round one' }, { atMs: START_MS });
  return log;
}

/** Invented readings: hours after the start, °C, %. */
function read(log: Writer, hours: number, airC: number, rhPct?: number) {
  return log.write(
    'air-read',
    'chamber:c',
    { airC, ...(rhPct === undefined ? {} : { rhPct }), instrument: 'instrument:h' },
    { atMs: START_MS + hours * HOUR_MS },
  );
}

function viewOf(log: Writer, nowHours: number, at = here) {
  const { entries } = log;
  const one = batch('batch:one', entries);
  return chamberView({
    id: 'chamber:c',
    entries,
    batches: one ? [one] : [],
    kit: {
      lots: lots(entries),
      scales: scales(entries),
      meters: meters(entries),
      chambers: chambers(entries),
    },
    checks: checks(entries),
    place: at,
    nowMs: START_MS + nowHours * HOUR_MS,
    zone: '+01:00',
    words: en,
  });
}
const sentence = (view: ReturnType<typeof viewOf>) => plainText(view?.sentence ?? []);

describe('one chamber', () => {
  it('asks for a reading where there is none', () => {
    const view = viewOf(cellar(), 1);
    expect(sentence(view)).toBe('Read the air: a thermometer and a hygrometer, at the height of the pieces.');
    expect([view?.figures, view?.charts, view?.readings]).toEqual([[], [], []]);
  });

  it('says the last reading, and how it differs from what was set before it', () => {
    const log = cellar();
    log.write('air-set', 'chamber:c', { airC: 13, rhPct: 80 }, { atMs: START_MS });
    read(log, 2, 14.5, 71);
    expect(sentence(viewOf(log, 3))).toBe(
      '14.5\u00a0°C and 71\u00a0% at 11:00 today. It is 1.5\u00a0°C warmer than set and 9 points drier than set.',
    );
    expect(sentence(viewOf(log, 3, { ...here, temperature: 'F' }))).toContain('2.7\u00a0°F warmer than set');
  });

  it('says nothing of a difference that a controller makes by itself, or of a setting newer than the reading', () => {
    const log = cellar();
    read(log, 1, 16, 60);
    log.write('air-set', 'chamber:c', { airC: 13, rhPct: 80 }, { atMs: START_MS + 2 * HOUR_MS });
    expect(sentence(viewOf(log, 3))).toBe('16.0\u00a0°C and 60\u00a0% at 10:00 today.');
    read(log, 3, 13.9, 84);
    expect(sentence(viewOf(log, 4))).toBe('13.9\u00a0°C and 84\u00a0% at 12:00 today.');
  });

  it('asks for a new reading after a day', () => {
    const log = cellar();
    read(log, 1, 13, 80);
    expect(sentence(viewOf(log, 26))).toBe(
      '13.0\u00a0°C and 80\u00a0%, but that was 25 hours ago. Read the air again.',
    );
  });

  it('draws temperature and humidity, with what was set as a line, once there are two readings', () => {
    const log = cellar();
    log.write('air-set', 'chamber:c', { airC: 13, rhPct: 80 }, { atMs: START_MS });
    read(log, 1, 12.5);
    expect(viewOf(log, 2)?.charts).toEqual([]);
    read(log, 5, 13.5, 78);
    expect(viewOf(log, 6)?.charts.map(({ title }) => title)).toEqual(['The last readings']);
    read(log, 9, 14, 82);
    const [temperature, humidity] = viewOf(log, 10)?.charts ?? [];
    expect(temperature?.label).toBe('Air temperature of 3 readings, from 12.5\u00a0°C to 14.0\u00a0°C.');
    expect(temperature?.model.series).toEqual([
      { kind: 'limit', id: 'set', y: 13, text: 'set to 13.0\u00a0°C' },
      {
        kind: 'measured',
        id: 'air',
        points: [
          { x: 0, y: 12.5 },
          { x: 4, y: 13.5 },
          { x: 8, y: 14 },
        ],
      },
    ]);
    expect(humidity?.label).toBe('Relative humidity of 2 readings, from 78\u00a0% to 82\u00a0%.');
    expect(temperature?.table.rows[0]).toEqual(['8 January 2024, 18:00', '14.0', '82']);
  });

  it('keeps every point of a chart within its axis', () => {
    const log = cellar();
    for (let hour = 1; hour < 300; hour += 7) read(log, hour, 3 + ((hour * 13) % 29), 40 + ((hour * 7) % 55));
    for (const { model } of viewOf(log, 301)?.charts ?? []) {
      const [low, high] = [model.yTicks.at(0)?.at ?? 0, model.yTicks.at(-1)?.at ?? 0];
      for (const series of model.series)
        if (series.kind === 'measured')
          for (const { y } of series.points) expect(y >= low && y <= high).toBe(true);
      expect(model.yTicks.length).toBeLessThanOrEqual(8);
    }
  });

  it('corrects readings by the check of their instrument, and shows beside it what was read', () => {
    const log = cellar();
    log.write(
      'hygrometer-checked',
      'instrument:h',
      { shownRhPct: 80, restedHours: 24 },
      { atMs: START_MS + HOUR_MS / 2 },
    );
    read(log, 1, 13, 80);
    const view = viewOf(log, 2);
    expect(view?.readings[0]?.title).toBe('13.0\u00a0°C · 80\u00a0%');
    expect(view?.readings[0]?.note).toContain('counts as 13.0\u00a0°C · 75');
    expect(sentence(view)).toMatch(/^13\.0\u00a0°C and 75/);
  });

  it('draws ten thousand readings of files as few points with every extreme, and lists each file to be struck', () => {
    const log = cellar();
    const rows = Array.from({ length: 10_000 }, (_, minute) => ({
      atMs: START_MS + minute * 60_000,
      airC: minute === 7777 ? 22 : 13 + (minute % 3) / 10,
      rhPct: 80,
    }));
    for (const body of packAir('cellar.csv', rows)) log.write('air-logged', 'chamber:c', body);
    const view = viewOf(log, 170);
    const drawn = view?.charts[0]?.model.series.find(({ kind }) => kind === 'measured');
    const points = drawn?.kind === 'measured' ? drawn.points : [];
    expect(points.length).toBeLessThanOrEqual(MAX_POINTS);
    expect(Math.max(...points.map(({ y }) => y))).toBe(22);
    expect(view?.readings.map(({ title }) => title)).toEqual(
      Array.from({ length: 4 }, () => 'cellar.csv: 2\u202f500 readings'),
    );
  });

  it('shows beside a reading between what the instrument kept', () => {
    const log = cellar();
    read(log, 1, 13, 80);
    log.write(
      'air-read',
      'chamber:c',
      { airC: 13.4, lowC: 11.2, highC: 19.5 },
      { atMs: START_MS + 20 * HOUR_MS },
    );
    expect(viewOf(log, 21)?.readings[0]?.note).toContain(
      'between 11.2\u00a0°C and 19.5\u00a0°C since the reading before',
    );
  });

  it('leaves out a struck reading', () => {
    const log = cellar();
    read(log, 1, 13, 80);
    const slip = read(log, 2, 33, 80);
    log.write('struck', 'chamber:c', {}, { strikes: slip.id });
    expect(viewOf(log, 3)?.readings.map(({ title }) => title)).toEqual(['13.0\u00a0°C · 80\u00a0%']);
  });

  it('names what hangs in it, and what a reading was read with', () => {
    const log = cellar();
    read(log, 1, 13, 80);
    const plan = { lot: 'W-1', formula: startingFormula('CA'), ruleSet: 'CA', plan: PLAN } as const;
    log.write('batch-opened', 'batch:one', plan);
    log.write('stuffed', 'batch:one', {});
    log.write('hung', 'batch:one', { chamber: 'chamber:c' }, { refs: ['chamber:c'] });
    const view = viewOf(log, 60);
    expect(view?.hanging.map(({ href, note }) => [href, note])).toEqual([
      ['#/batches/one', 'lot W-1 · day 2'],
    ]);
    expect(view?.readings[0]?.note).toContain('Round one');
  });

  it('is nothing where nothing adds it', () => {
    expect(viewOf(writer(), 1)).toBeNull();
  });
});

describe('what the air means', () => {
  // psychrolib 1.1.1 (MIT), run for this project: 13 °C and 75 % at 101325 Pa: dew point 8.6777 °C, deficit 374.453 Pa.
  // Wet bulb by the same: 10.6149 °C.
  it('is the dew point, the room for water and how cold a wet skin is, with the working of each', () => {
    const [dewPoint, deficit, bulb] = moistAirFigures({ airC: 13, rhPct: 75 }, here, en);
    expect([dewPoint?.value, dewPoint?.unit]).toEqual(['8.7', '°C']);
    expect([deficit?.value, deficit?.unit]).toEqual(['0.37', 'kPa']);
    expect([bulb?.value, bulb?.unit]).toEqual(['10.6', '°C']);
    expect(moistAirFigures({ airC: 75, rhPct: 20 }, here, en)).toHaveLength(2);
    expect(dewPoint?.working?.result?.value).toBe('8.7\u00a0°C');
    expect(deficit?.working?.sources[0]?.standing).toBe(
      'read in a second-hand copy, not in the official text',
    );
  });

  it('is not known without humidity', () => {
    expect(moistAirFigures({ airC: 13 }, here, en)).toEqual([]);
    expect(moistAirFigures({ airC: 13, rhPct: 0 }, here, en)).toEqual([]);
  });
});

describe('reading the air', () => {
  const american = { ...here, temperature: 'F' as const };

  it('takes the maker’s degrees, and humidity only where it was read', () => {
    expect(readAir({ temp: '13,2', rh: '' }, here, en)).toEqual({
      ok: true,
      body: { airC: 13.2, typed: { airC: { text: '13,2', unit: 'C' } } },
    });
    const read = readAir({ temp: '55', rh: '78' }, american, en);
    expect(read.ok && read.body.airC).toBeCloseTo(12.7778, 4);
  });

  it('takes the least and the most that an instrument kept, each on its side of what it shows now', () => {
    const read = readAir({ temp: '13', rh: '80', low: '11.2', high: '19.5', lowRh: '70' }, here, en);
    expect(read.ok && read.body).toMatchObject({
      airC: 13,
      rhPct: 80,
      lowC: 11.2,
      highC: 19.5,
      lowRhPct: 70,
    });
    const wrong = readAir({ temp: '13', rh: '80', low: '14', highRh: '75' }, here, en);
    expect(wrong).toEqual({
      ok: false,
      problems: {
        low: 'The least cannot lie above what it shows now.',
        highRh: 'The most cannot lie below what it shows now.',
      },
    });
  });

  it('says beside each field what is wrong', () => {
    expect(readAir({ temp: '', rh: '780' }, here, en)).toEqual({
      ok: false,
      problems: {
        temp: 'Type a number here.',
        rh: 'This is too much: at most 100\u00a0%. Was a digit typed twice?',
      },
    });
  });

  it('asks once about what is unlikely', () => {
    const nowMs = START_MS;
    const ask = (airC: number, rhPct?: number, beforeC?: number) =>
      airQuestion({ airC, rhPct }, beforeC === undefined ? null : { airC: beforeC, atMs: nowMs - HOUR_MS }, {
        place: here,
        nowMs,
        words: en,
      });
    expect(ask(78, 13)).toBe('78.0\u00a0°C and 13\u00a0%: could the two be swapped?');
    expect(ask(35, 80)).toContain('warm for a drying chamber');
    expect(ask(-2, 80)).toContain('below freezing');
    expect(ask(13, 20)).toContain('very dry');
    expect(ask(13, 80, 25)).toContain('25.0\u00a0°C an hour ago');
    expect(ask(13, 80, 12)).toBeNull();
  });
});

describe('the chambers', () => {
  const of = (log: Writer, nowHours: number) =>
    chambersView({
      chambers: chambers(log.entries),
      entries: log.entries,
      batches: [],
      checks: [],
      place: here,
      nowMs: START_MS + nowHours * HOUR_MS,
      words: en,
    });

  it('say which was not read, then which was read longest ago', () => {
    expect(plainText(of(writer(), 0).sentence)).toContain('No chamber yet.');
    const log = cellar();
    log.write('chamber-added', 'chamber:d', { name: 'Fridge', rails: 1 });
    read(log, 1, 13, 80);
    expect(plainText(of(log, 2).sentence)).toBe('Read the air of Fridge: nothing is known of it yet.');
    log.write('air-read', 'chamber:d', { airC: 12 }, { atMs: START_MS + 3 * HOUR_MS });
    expect(plainText(of(log, 4).sentence)).toBe('2 chambers, all read today.');
    expect(plainText(of(log, 50).sentence)).toBe(
      'Cellar was last read 2 days ago; another one is not read today either.',
    );
    expect(of(log, 4).rows.map(({ title, figure }) => [title, figure])).toEqual([
      ['Cellar', { figure: '13.0', unit: '°C', figureNote: '80\u00a0%' }],
      ['Fridge', { figure: '12.0', unit: '°C' }],
    ]);
  });
});
