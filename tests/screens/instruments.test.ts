import { describe, expect, it } from 'vitest';
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
