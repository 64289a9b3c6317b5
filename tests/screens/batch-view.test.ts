import { describe, expect, it } from 'vitest';
import { batch } from '#record/batch.ts';
import type { Entry } from '#record/entry.ts';
import type { BenchStep } from '#record/kinds.ts';
import { batchView } from '#screens/batch/batch-view.ts';
import { benchView } from '#screens/bench/bench-view.ts';
import { gateViews } from '#screens/bench/gate-view.ts';
import { en as words } from '#words/en.ts';
import { plainText } from '#words/said.ts';
import {
  BATCH,
  type Book,
  batchOf,
  book,
  ferment,
  HOUR_MS,
  openBatch,
  pieceId,
  placeOf,
  START_MS,
  setUp,
  stuff,
  touching,
  weighMeat,
  weighOutSalt,
  ZONE,
} from './book.ts';

const at = (hours: number) => ({ nowMs: START_MS + hours * HOUR_MS, zone: ZONE, words });

function viewOf(of: Book, hours: number, entries: readonly Entry[] = touching(of, BATCH)) {
  const folded = batch(BATCH, entries);
  if (folded === null) throw new Error('viewOf: no batch');
  return batchView({ batch: folded, entryCount: entries.length, place: placeOf(of), ...at(hours) });
}
const opened = () => openBatch(setUp(book(), { ruleSet: 'CA' }));
const stuffed = () => stuff(weighOutSalt(weighMeat(opened())));

describe('a batch', () => {
  it('says what it waits for and leads there', () => {
    const view = viewOf(opened(), 1);
    expect(plainText(view.sentence)).toBe('Next: Weigh the meat.');
    expect(view.act?.href).toBe(`#/batches/${BATCH.slice('batch:'.length)}/weigh-out`);
    expect(view.line).toBe('lot 240108 · Canada');
  });

  it('shows of each part how far it is', () => {
    const parts = ['weigh-out', 'bench', 'stuffing', 'ferment', 'hanging', 'record'];
    const notes = (of: Book, hours: number) => {
      const { rows } = viewOf(of, hours);
      return parts.map((part) => rows.find(({ key }) => key === part)?.note);
    };
    expect(notes(opened(), 1)).toEqual([
      'weigh the meat first',
      '0 of 4 steps',
      'none yet',
      'not stuffed yet',
      'not hung yet',
      'one entry',
    ]);
    const of = ferment(stuffed());
    of.put(40, 'taken-down', pieceId(1), { why: 'test' }, { refs: [BATCH] });
    expect(notes(of, 41)).toEqual([
      '2 of 2 lines',
      '4 of 4 steps',
      '4, 3\u202f235\u00a0g green',
      'ended',
      '3 up, 1 taken down',
      '24 entries',
    ]);
  });

  it('shows the plan as it was last changed, in the units of the place', () => {
    const of = opened();
    const { plan } = batchOf(of);
    of.put(1, 'plan-changed', BATCH, { plan: { ...plan, fermentC: 20 }, reason: 'cold cellar' });
    expect(viewOf(of, 2).plan[0]).toEqual({ label: 'ferment at', value: '20\u00a0°C' });
    const fahrenheit = { ...placeOf(of), temperature: 'F' } as const;
    const view = batchView({ batch: batchOf(of), entryCount: 2, place: fahrenheit, ...at(2) });
    expect(view.plan[0]?.value).toBe('68\u00a0°F');
  });

  it('says that no verdict is complete while it holds entries of a newer app', () => {
    const of = opened();
    const [first] = touching(of, BATCH);
    if (!first) throw new Error('no entry');
    const newer: Entry = { ...first, id: 'n' as Entry['id'], kind: null, named: 'ultrasound-read' };
    expect(viewOf(of, 1, [first, newer]).warnings).toEqual([words.batch.unknown]);
    expect(viewOf(of, 1).warnings).toEqual([]);
  });

  it('points at two corrections that stand side by side', () => {
    const of = opened();
    const read = of.put(3, 'room-read', BATCH, { roomC: 24 });
    for (const roomC of [23, 25]) of.put(3, 'room-read', BATCH, { roomC }, { strikes: read.id });
    expect(viewOf(of, 4).warnings).toEqual([words.batch.rivals]);
  });
});

describe('at the bench', () => {
  const bench = (of: Book, hours: number) =>
    benchView({ batch: batchOf(of), place: placeOf(of), ...at(hours) });

  it('goes from step to step in their order, and keeps when each was done and by whom', () => {
    const of = weighOutSalt(weighMeat(opened()));
    expect(bench(of, 1).next).toBe('cleaned');
    of.put(1, 'cleaned', BATCH, {});
    of.put(1.5, 'ground', BATCH, { tempC: 3.5, note: 'twice' });
    const view = bench(of, 2);
    expect(view.next).toBe('mixed');
    expect(view.rows.map(({ note, figure }) => [note, figure])).toEqual([
      ['at 09:00 today, HK', ''],
      ['at 09:30 today, HK, twice', '3.5'],
      ['not yet', ''],
      ['not yet', ''],
    ]);
    expect(bench(stuffed(), 3)).toMatchObject({ next: null });
  });

  it('asks for the lines that were not weighed before anything is mixed', () => {
    const of = weighMeat(opened());
    of.put(1, 'cleaned', BATCH, {});
    expect(bench(of, 2)).toMatchObject({ next: 'ground', unweighed: 2 });
    expect(plainText(bench(of, 2).sentence)).not.toContain('not weighed out yet');
    of.put(1.5, 'ground', BATCH, {});
    expect(plainText(bench(of, 2).sentence)).toBe(
      '2 lines are not weighed out yet. Weigh out before anything is mixed.',
    );
  });

  it('shows a light for each temperature, in the unit of the place, with what practice takes as the most', () => {
    const place = placeOf(opened());
    const lights = (temps: object, step: BenchStep = 'ground', at = place) =>
      gateViews({ step, temps, place: at, words }).map(({ field, light, text }) => [field, light, text]);
    expect(lights({ leanC: 1, fatC: -2, tempC: 5.1 })).toEqual([
      ['leanC', 'go', 'go: 1.0\u00a0°C'],
      ['fatC', 'go', 'go: \u22122.0\u00a0°C'],
      ['tempC', 'stop', 'stop: 5.1\u00a0°C is above 4.0\u00a0°C. Chill it for 20 min, then measure again'],
    ]);
    expect(lights({ tempC: 4 })[0]?.[1]).toBe('mind');
    expect(lights({ tempC: 5 }, 'mixed')[0]?.[1]).toBe('mind');
    expect(lights({ tempC: 5.1 }, 'stuffed')[0]?.[1]).toBe('stop');
    expect(lights({ tempC: 6 }, 'ground', { ...place, temperature: 'F' })[0]?.[2]).toContain(
      '42.8\u00a0°F is above 39.2\u00a0°F',
    );
    expect(lights({}, 'cleaned')).toEqual([]);
  });

  it('says why the maker went on, and shows the timer that was set', () => {
    const of = opened();
    of.put(3, 'ground', BATCH, {
      leanC: 3,
      tempC: 5.1,
      override: 'last tray, straight into the freezer',
      kept: ['tempC'],
    });
    of.put(3, 'timer-set', BATCH, { name: 'Chill', endMs: START_MS + 3.5 * HOUR_MS });
    const view = (hours: number) =>
      benchView({ batch: batchOf(of), place: placeOf(of), nowMs: START_MS + hours * HOUR_MS, words });
    const ground = view(3.2).rows.find(({ step }) => step === 'ground');
    expect(ground?.note).toContain('lean 3.0');
    expect(ground?.note).toContain('went on: last tray, straight into the freezer');
    expect(view(3.2).timers).toHaveLength(1);
    expect(view(4.6).timers).toHaveLength(0);
  });
});
