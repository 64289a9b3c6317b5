import { describe, expect, it } from 'vitest';
import { batch as foldBatch } from '#record/batch.ts';
import { type Check, checks } from '#record/instruments.ts';
import type { BodyOf } from '#record/kinds.ts';
import { place as foldPlace } from '#record/place.ts';
import type { SubjectId } from '#record/subject.ts';
import { type Instrument, instrumentView } from '#screens/instruments/instrument-view.ts';
import { instrumentsView } from '#screens/instruments/instruments-view.ts';
import { en } from '#words/en.ts';
import { plainText } from '#words/said.ts';
import { HOUR_MS, START_MS, writer } from '../record/make.ts';

const ID: SubjectId<'instrument'> = 'instrument:1';
const meter: Instrument = { id: ID, name: 'Meter', what: 'ph-meter' };
const place = foldPlace([]);
const given = { place, zone: '+00:00', words: en };

function meterChecks(body: Partial<BodyOf<'meter-checked'>>): Check[] {
  const log = writer();
  log.write(
    'meter-checked',
    ID,
    {
      shownIn: 'mV',
      sevenBuffer: '7.00',
      sevenC: 25,
      sevenShown: 0,
      fourBuffer: '4.00',
      fourC: 25,
      fourShown: 177.5,
      ...body,
    },
    { atMs: START_MS },
  );
  return checks(log.entries);
}
const view = (list: Check[], hoursLater = 1) =>
  instrumentView({ instrument: meter, checks: list, nowMs: START_MS + hoursLater * HOUR_MS, ...given });

describe('the check of a pH meter', () => {
  it('of an ideal electrode shows 100 % of Nernst (59.16 mV at 25 °C) and no offset', () => {
    const { figures, verdict } = view(meterChecks({}));
    expect(figures.map(({ value }) => value)).toEqual(['0.0', '100.0']);
    expect(verdict?.verdict).toBe('within-limit');
  });

  it('with an offset of 31 mV, or a slope of 84 %, has failed (a meter maker: ±30 mV, 85 to 105 %)', () => {
    expect(view(meterChecks({ sevenShown: 31, fourShown: 208.5 })).verdict?.verdict).toBe('deviation');
    expect(view(meterChecks({ fourShown: 149 })).verdict?.verdict).toBe('deviation');
    expect(plainText(view(meterChecks({ fourShown: 149 })).sentence)).toContain('stops no clock');
  });

  it('names its limits with their sources, and is due again after a day', () => {
    const { working, sentence } = view(meterChecks({}), 25);
    expect(working?.sources.map(({ text }) => text)).toHaveLength(2);
    expect(plainText(sentence)).toContain('The next check is due');
  });

  it('shown as pH, its buffer stands at the pH of its temperature', () => {
    const warm = { shownIn: 'pH', sevenC: 20, sevenShown: 7.02, fourC: 20, fourShown: 4 } as const;
    const { working, figures } = view(meterChecks(warm));
    expect(working?.rows[0]?.note).toContain('it has pH 7.02');
    expect(figures[1]?.value).toBe('100.0');
  });
});

describe('the check of a scale', () => {
  const scale: Instrument = { id: ID, name: 'Scale', what: 'scale', stepG: 0.1 };
  const checked = (body: BodyOf<'scale-checked'>) => {
    const log = writer();
    log.write('scale-checked', ID, body, { atMs: START_MS });
    return instrumentView({
      instrument: scale,
      checks: checks(log.entries),
      nowMs: START_MS + HOUR_MS,
      ...given,
    });
  };

  it('gives a verdict by its own step, with the source in the working (common practice)', () => {
    const good = checked({ weightG: 200, shownG: 200.1, stepG: 0.1 });
    expect(good.verdict?.word).toBe('scale: within limit');
    expect(good.working?.sources[0]?.text).toContain('common practice');
    const bad = checked({ weightG: 200, shownG: 200.3, stepG: 0.1 });
    expect(bad.verdict?.verdict).toBe('deviation');
    expect(plainText(bad.sentence)).toContain('it failed');
  });

  it('of before its step was kept is no reading', () => {
    expect(checked({ weightG: 200, shownG: 200 }).verdict?.verdict).toBe('no-reading');
  });
});

describe('a meter that shows 7.05 and 4.20', () => {
  const wrong = { shownIn: 'pH', sevenC: 25, sevenShown: 7.05, fourC: 25, fourShown: 4.2 } as const;

  it('is flagged, shows what 5.30 would be, and lists what was read since the last good check', () => {
    const log = writer();
    const batchId: SubjectId<'batch'> = 'batch:7';
    const formula = { name: 'T', kind: 'comminuted' as const, species: [], fatPctOfMeat: 25, lines: [] };
    const plan = {
      fermentC: 24,
      phLow: 4.9,
      phHigh: 5.2,
      dryC: 13,
      dryRhPct: 78,
      diameterMm: 45,
      targetLossPct: 35,
    };
    log.write('batch-opened', batchId, { lot: 'L7', formula, ruleSet: 'CA', plan }, { atMs: START_MS });
    const buffers = { sevenBuffer: '7.00', fourBuffer: '4.00' } as const;
    const reading = { sample: 'packet', method: 'meter', meter: ID, doubted: false } as const;
    const at = (hours: number) => ({ atMs: START_MS + hours * HOUR_MS });
    log.write('ph-read', batchId, { ph: 5.7, ...reading }, at(1));
    log.write('meter-checked', ID, { ...wrong, ...buffers, sevenShown: 7, fourShown: 4 }, at(2));
    log.write('ph-read', batchId, { ph: 5.5, ...reading }, at(8));
    log.write('ph-read', batchId, { ph: 5.4, ...reading, meter: 'instrument:9' }, at(9));
    log.write('meter-checked', ID, { ...wrong, ...buffers }, at(14));
    const found = foldBatch(batchId, log.entries);
    const shown = instrumentView({
      instrument: meter,
      checks: checks(log.entries),
      batches: found ? [found] : [],
      nowMs: START_MS + 15 * HOUR_MS,
      ...given,
    });
    expect(shown.verdict?.verdict).toBe('deviation');
    // The line through (4.20, 4.00) and (7.05, 7.00) at 5.30: 4 + 1.1 x 3 / 2.85 = 5.158.
    expect(shown.figures.find(({ key }) => key === 'corrected')).toMatchObject({
      value: '5.16',
      about: true,
    });
    expect(shown.since.map(({ title, href }) => [title, href])).toEqual([['pH 5.50', '#/batches/7/ferment']]);
  });
});

it('the list puts what failed first, and says what was never checked', () => {
  const list = instrumentsView({
    instruments: [{ id: 'instrument:2', name: 'Ice', what: 'thermometer' }, meter],
    checks: meterChecks({ fourShown: 149 }),
    nowMs: START_MS + HOUR_MS,
    zone: '+00:00',
    words: en,
  });
  expect(list.rows.map(({ title, state }) => [title, state])).toEqual([
    ['Meter', 'failed'],
    ['Ice', 'never'],
  ]);
});
