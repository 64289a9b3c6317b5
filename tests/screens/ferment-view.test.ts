import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import type { TemperatureUnit } from '#core/units.ts';
import { temperatureToC } from '#core/units.ts';
import { batch as foldBatch } from '#record/batch.ts';
import { due } from '#record/due.ts';
import { withChecks } from '#record/instruments.ts';
import { afterFaultView } from '#screens/after-fault/after-fault-view.ts';
import { fermentView } from '#screens/ferment/ferment-view.ts';
import { hoursAt } from '#screens/ferment/hours-at.ts';
import { en as words } from '#words/en.ts';
import { plainText } from '#words/said.ts';
import {
  BATCH,
  type Book,
  batchOf,
  book,
  HOUR_MS,
  METER,
  openBatch,
  placeOf,
  readPh,
  readRoom,
  START_MS,
  setUp,
  stuff,
  touching,
  ZONE,
} from './book.ts';

/** Stuffed two hours after the start; hours in these tests count from there. */
const STUFFED = 2;

function viewOf(of: Book, hours: number) {
  const nowMs = START_MS + (STUFFED + hours) * HOUR_MS;
  return fermentView({ batch: batchOf(of), place: placeOf(of), nowMs, zone: ZONE, words });
}
const sentence = (of: Book, hours: number) => plainText(viewOf(of, hours).sentence);
const stuffed = (more: Parameters<typeof setUp>[1] = { ruleSet: 'CA' }) =>
  stuff(openBatch(setUp(book(), more)));
const room = (of: Book, hours: number, roomC: number) => readRoom(of, STUFFED + hours, roomC);
const ph = (of: Book, hours: number, value: number, more: Parameters<typeof readPh>[3] = {}) =>
  readPh(of, STUFFED + hours, value, more);
const everySixHours = (of: Book, to: number, roomC: number) => {
  for (let hours = 0; hours <= to; hours += 6) room(of, hours, roomC);
  return of;
};

type Example = {
  readonly id: string;
  readonly ruleSet: 'US' | 'CA';
  readonly unit: TemperatureUnit;
  readonly steps: readonly { readonly hours: number; readonly temperature: number }[];
  readonly totalDegreeHours: number;
  readonly verdict: 'within-limit' | 'deviation';
  readonly limit: number;
};
const { examples }: { examples: readonly Example[] } = JSON.parse(
  readFileSync('fixtures/published/ferment-degree-hours.json', 'utf8'),
);
/** Worked examples of the authorities, each with its source in the file. */
const WORKED = ['CA-C1', 'CA-C2', 'CA-V1', 'CA-V2', 'US-C1', 'US-C2', 'US-V1', 'US-V2'].map(
  (id) => `DH-${id}`,
);

/** Read at least every 5 h, at each change once before and once after, as the maker typed it; pH 5.3 at the end. */
function asRead({ ruleSet, unit, steps }: Example): { of: Book; hours: number } {
  const of = stuffed({ ruleSet, temperature: unit });
  let from = 0;
  for (const { hours, temperature } of steps) {
    for (const at of [...Array.from({ length: Math.ceil(hours / 5) }, (_, step) => step * 5), hours])
      of.put(STUFFED + from + at, 'room-read', BATCH, {
        roomC: temperatureToC({ value: temperature, unit }),
        typed: { roomC: { text: String(temperature), unit } },
      });
    from += hours;
  }
  return { of: ph(of, from, 5.3), hours: from };
}

describe('worked degree-hour examples', () => {
  it('are all there', () => {
    expect(examples.filter(({ id }) => WORKED.includes(id)).length).toBe(WORKED.length);
  });

  it.each(examples.filter(({ id }) => WORKED.includes(id)))(
    '$id gives its total and its verdict',
    (example) => {
      const { of, hours } = asRead(example);
      const { working, verdicts, bar, passed } = viewOf(of, hours + 1);
      const total = Number(working?.result.value.replace('\u202f', ''));
      expect(total).toBe(example.totalDegreeHours);
      expect(verdicts[0]?.verdict).toBe(example.verdict);
      expect(passed).toBe(example.verdict === 'deviation');
      expect(bar?.limitText.replace('\u202f', '')).toBe(`limit ${example.limit}`);
      const rows = working?.rows.filter(({ label }) => /^\d+\./.test(label)) ?? [];
      const sum = rows.reduce((all, { value }) => all + Number(value.replace('\u202f', '')), 0);
      expect(sum).toBeCloseTo(example.totalDegreeHours, 6);
    },
  );
});

describe('the sentence of the ferment', () => {
  it('says that the clock has not begun before stuffing', () => {
    expect(sentence(openBatch(setUp(book())), 0)).toContain('Not stuffed yet: the clock has not begun.');
  });

  it('asks for the room once stuffed, and counts nothing without it', () => {
    expect(sentence(stuffed(), 1)).toContain('Read the room');
    const view = viewOf(stuffed(), 1);
    expect(view.verdicts[0]?.word).toBe('degree-hours: no reading, no room temperature');
    expect([view.bar, view.working]).toEqual([null, null]);
  });

  it('says until when, by the cautious base of 15.556 °C: 665 at 24 °C are 78 h 45 min, and never rounded up', () => {
    const one = room(stuffed(), 0, 24);
    expect(sentence(one, 0)).toBe(
      'At 24.0\u00a0°C the mix has until Thursday 16:45 to reach pH 5.3: 3 days 6 h left.',
    );
    // (665 - 60 x 8.4) / 8.444 = 19.07 h
    expect(sentence(everySixHours(stuffed(), 60, 24), 60)).toContain('19 h 4 min left');
  });

  it('does not count at 15 °C', () => {
    expect(sentence(room(stuffed(), 0, 15), 0)).toContain('no degree-hours are counted');
  });

  it('asks to read the room again when it was not read for more than 6 h', () => {
    expect(sentence(room(stuffed(), 0, 24), 7)).toContain('Read the room again.');
  });

  it('says that nobody knows across a gap', () => {
    const gap = room(room(stuffed(), 0, 24), 9, 24);
    expect(sentence(gap, 9)).toContain('Nobody knows');
    expect(viewOf(gap, 9).verdicts[0]?.verdict).toBe('no-reading');
  });

  it('stops at a believed pH of 5.30, and says where it is against the target', () => {
    const stopped = ph(everySixHours(stuffed(), 30, 24), 30, 5.3);
    expect(sentence(stopped, 30)).toBe(
      'pH 5.30 was read 16:00 today: the clock has stopped. pH 5.30 is not yet in the target of 4.9 to 5.2.',
    );
    expect(viewOf(stopped, 30)).toMatchObject({
      stage: 'stopped',
      verdicts: [{ verdict: 'within-limit' }, {}],
    });
  });

  it('stops neither at 5.31, nor on a strip, nor on a reading that is doubted', () => {
    const at = (value: number, more = {}) => ph(everySixHours(stuffed(), 30, 24), 30, value, more);
    expect(viewOf(at(5.31), 30).stage).toBe('running');
    expect(sentence(at(5.2, { method: 'strip' }), 30)).toContain('stands on a strip');
    expect(sentence(at(5.2, { doubted: true }), 30)).toContain('stands on a reading you doubt');
    expect(viewOf(at(5.2, { doubted: true }), 30).verdicts[0]?.verdict).toBe('pending');
  });

  it('says of a limit passed what the source says to do, before anything else', () => {
    const passed = viewOf(everySixHours(stuffed(), 84, 24), 84);
    expect(plainText(passed.sentence)).toContain('The degree-hour limit is passed. Hold this batch');
    expect([passed.passed, passed.verdicts[0]?.verdict]).toEqual([true, 'deviation']);
  });

  it('gives the Canadian numbers for reference where the EU binds none', () => {
    const eu = viewOf(everySixHours(stuffed({ ruleSet: 'EU' }), 12, 24), 12);
    expect(plainText(eu.sentence)).toContain('For reference, by the Canadian numbers: 101 of 665.');
    expect(eu.verdicts[0]?.verdict).toBe('does-not-apply');
  });

  it('never makes a verdict, a deviation or an hour to hurry for of the reference in the EU', () => {
    const of = everySixHours(stuffed({ ruleSet: 'EU' }), 84, 24);
    const eu = viewOf(of, 84);
    expect(plainText(eu.sentence)).toContain('706 of 665');
    expect([eu.passed, eu.verdicts[0]?.verdict]).toEqual([false, 'does-not-apply']);
    expect(eu.bar?.label).toContain('for reference');
    const nowMs = START_MS + (STUFFED + 84) * HOUR_MS;
    const dues = due(batchOf(of), nowMs);
    expect(dues.map(({ code }) => code)).not.toContain('degree-hours-passed');
    expect(dues.find(({ code }) => code === 'read-ph')).toEqual({ code: 'read-ph', runsOutAtMs: null });
    const hours = eu.clock && hoursAt(eu.clock, 30, { ruleSet: 'EU', place: placeOf(of), words });
    expect(hours?.note).toContain('no rule binds here');
    expect(
      afterFaultView({ batches: [batchOf(of)], place: placeOf(of), nowMs, zone: ZONE, words }).cards[0]
        ?.verdict?.verdict,
    ).toBe('does-not-apply');
  });
});

describe('the figures of the ferment', () => {
  const running = () => ph(everySixHours(stuffed(), 12, 24), 12, 5.6);

  it('rounds what is used up: 12 h above 15.6 at 24 °C is 100.8, shown as 101', () => {
    expect(viewOf(running(), 12).bar).toMatchObject({ usedText: '101 used', limitText: 'limit 665' });
    expect(viewOf(running(), 12).bar?.usedShare).toBeCloseTo(100.8 / 665, 12);
  });

  it('marks what was counted ahead of the last reading as an estimate', () => {
    expect(viewOf(running(), 14).bar?.projectedText).toBe('~118 by now');
  });

  it('says how old each reading is', () => {
    expect(viewOf(running(), 14).figures.map(({ label, value }) => [label, value])).toEqual([
      ['pH 2 hours ago', '5.60'],
      ['room 2 hours ago', '24.0'],
    ]);
  });

  it('shows where the line between two readings crossed 5.3 as an estimate that no verdict rests on', () => {
    const crossed = viewOf(ph(everySixHours(running(), 24, 24), 24, 5), 24);
    expect(crossed.figures.find(({ key }) => key === 'crossing')).toMatchObject({
      value: '04:00 today',
      about: true,
      note: 'on a line between two readings; no verdict rests on it',
    });
  });

  it('keeps a reading of the fresh mix out of the verdict on the target', () => {
    const mixed = ph(everySixHours(stuffed(), 6, 24), 1, 5, { sample: 'mix' });
    expect(viewOf(mixed, 6).verdicts[1]?.word).toBe('target pH: no reading, no pH yet');
  });

  it('draws every pH reading after stuffing, and has each as a number below', () => {
    const { chart } = viewOf(ph(running(), 12.5, 5.5, { doubted: true }), 13);
    const measured = chart?.model.series.find(({ kind }) => kind === 'measured');
    expect(measured).toMatchObject({ points: [{ x: 12, y: 5.6 }] });
    expect(chart?.model.series.find(({ kind }) => kind === 'doubted')).toMatchObject({
      points: [{ x: 12.5, y: 5.5 }],
    });
    expect(chart?.label).toMatch(/One is crossed: not believed on its own\./);
    expect(chart?.table.rows.map((row) => row.slice(1))).toEqual([
      ['12.0', '5.60', 'meter'],
      ['12.5', '5.50', 'meter, doubted'],
    ]);
  });

  it('crosses what a meter read that failed its check afterwards, and says so in the table', () => {
    const of = ph(running(), 18, 5.4, { meter: METER });
    of.put(STUFFED + 22, 'meter-checked', METER, {
      shownIn: 'pH',
      sevenBuffer: '7.00',
      sevenC: 20,
      sevenShown: 7.3,
      fourBuffer: '4.01',
      fourC: 20,
      fourShown: 4.4,
    });
    const batch = foldBatch(BATCH, withChecks(touching(of, BATCH), touching(of, METER)));
    if (batch === null) throw new Error('no batch');
    const nowMs = START_MS + (STUFFED + 23) * HOUR_MS;
    const { chart } = fermentView({ batch, place: placeOf(of), nowMs, zone: ZONE, words });
    expect(chart?.model.series.find(({ kind }) => kind === 'doubted')).toMatchObject({
      points: [{ x: 18, y: 5.4 }],
    });
    expect(chart?.table.rows.at(-1)?.at(-1)).toBe('meter, meter failed its check');
  });

  it('puts the words of the stop line where no reading and no curve lies, or below the chart', () => {
    const place = (hours: number) => {
      const { chart } = viewOf(ph(running(), hours, 5.1), hours + 1);
      const stop = chart?.model.series.find(({ id }) => id === 'stop');
      return stop?.kind === 'limit' ? [stop.left, stop.below, stop.beside] : null;
    };
    // Falling through the line in the midst of the chart leaves no room for so many words on a small phone.
    expect(place(13)).toEqual([undefined, undefined, true]);
    expect(place(23)).toEqual([true, true, undefined]);
  });
});
