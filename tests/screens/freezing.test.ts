import { describe, expect, it } from 'vitest';
import { freezingFigures } from '#record/freezing-figures.ts';
import { place as foldPlace } from '#record/place.ts';
import type { SubjectId } from '#record/subject.ts';
import { freezingView } from '#screens/freezing/freezing-view.ts';
import { en } from '#words/en.ts';
import { plainText } from '#words/said.ts';
import { HOUR_MS, START_MS, writer } from '../record/make.ts';

const LOT: SubjectId<'lot'> = 'lot:1';
const DAY_HOURS = 24;

/** Readings are invented; each is [hours after it went in, °C, where]. */
function view(
  readings: readonly (readonly [number, number, 'core' | 'room'])[],
  { ruleSet = 'EU', species = 'pork', hours }: { ruleSet?: 'EU' | 'US'; species?: string; hours: number },
) {
  const log = writer();
  const at = (after: number) => ({ atMs: START_MS + after * HOUR_MS });
  const lot = log.write(
    'received',
    LOT,
    { what: 'lean', name: 'Neck', lot: '7', supplier: '', species },
    at(-1),
  );
  log.write('frozen', LOT, { thicknessMm: 120, method: 'room' }, at(0));
  for (const [after, tempC, where] of readings) log.write('freezer-read', LOT, { tempC, where }, at(after));
  const nowMs = START_MS + hours * HOUR_MS;
  const state = freezingFigures({ entries: log.entries, ruleSet, species, nowMs });
  if (lot.kind !== 'received') throw new Error('view: no lot');
  return freezingView({ lot, state, place: { ...foldPlace([]), ruleSet }, nowMs, zone: '+00:00', words: en });
}
const daily = (days: number, tempC: number, from = 12) =>
  Array.from({ length: days + 1 }, (_, day) => [from + day * DAY_HOURS, tempC, 'room'] as const);

describe('a lot of pork in the freezer', () => {
  it('without a probe is no reading, however cold the room', () => {
    const { verdict, sentence } = view(daily(20, -26), { hours: 500 });
    expect(verdict?.verdict).toBe('no-reading');
    expect(plainText(sentence)).toContain('no hour counts');
  });

  it('counts from the probe on, and is met after ten days at −23 °C (EU 2015/1375, from memory, high confidence)', () => {
    const readings = [[12, -24, 'core'] as const, ...daily(10, -24)];
    expect(view(readings.slice(0, 6), { hours: 120 }).verdict?.verdict).toBe('pending');
    expect(view(readings, { hours: 260 }).verdict?.verdict).toBe('within-limit');
  });

  it('begins again after a warmer reading, and says when', () => {
    const { notes } = view([[12, -24, 'core'], ...daily(2, -24), [70, -10, 'room']], { hours: 72 });
    expect(notes).toHaveLength(1);
    expect(notes[0]).toContain('began again');
  });

  it('by the US table is flagged as reserved text', () => {
    expect(view([[12, -24, 'core']], { ruleSet: 'US', hours: 13 }).isReserved).toBe(true);
    expect(view([[12, -24, 'core']], { hours: 13 }).isReserved).toBe(false);
  });

  it('that is wild boar is not covered, and no row of the table is shown', () => {
    const { verdict, figures, working, sentence } = view(daily(30, -30), {
      species: 'wild-boar',
      hours: 800,
    });
    expect(verdict?.verdict).toBe('does-not-apply');
    expect([figures, working]).toEqual([[], null]);
    expect(plainText(sentence)).toContain('does not cover');
  });
});
