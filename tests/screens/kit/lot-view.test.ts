import { describe, expect, it } from 'vitest';
import { batch } from '#record/batch.ts';
import { lots, place } from '#record/place.ts';
import { startingFormula } from '#record/starting-formula.ts';
import { lotView } from '#screens/kit/lot-view.ts';
import { receivedView } from '#screens/kit/received-view.ts';
import { en } from '#words/en.ts';
import { plainText } from '#words/said.ts';
import { START_MS, writer } from '../../record/make.ts';

const here = place([]);
const LABEL = { nitritePct: 6.25, nitratePct: 4, nitriteSalt: 'NaNO2', nitrateSalt: 'NaNO3' } as const;
const bag = { what: 'cure', name: 'Cure', lot: 'B-1', supplier: 'Invented Spices' } as const;

describe('one lot', () => {
  it('shows a correction, and what stood before with the reason', () => {
    const log = writer();
    const first = log.write('received', 'lot:a', { ...bag, cure: { ...LABEL, nitritePct: 62.5 } });
    log.write('received', 'lot:a', { ...bag, cure: LABEL }, { strikes: first.id });
    const view = lotView({ id: 'lot:a', entries: log.entries, batches: [], place: here, words: en });
    expect(view?.rows[0]).toEqual({
      label: 'Nitrite, by the bag',
      value: '6.25\u00a0%',
      note: 'Sodium nitrite',
    });
    expect(view?.before).toHaveLength(1);
    expect(view?.before[0]?.reason).toBe('struck: misread');
    expect(view?.before[0]?.rows[0]?.value).toBe('62.5\u00a0%');
  });

  it('shows both of two corrections that were made apart', () => {
    const log = writer();
    const first = log.write('received', 'lot:a', bag);
    log.write('received', 'lot:a', { ...bag, lot: 'B-2' }, { strikes: first.id });
    log.write('received', 'lot:a', { ...bag, lot: 'B-3' }, { strikes: first.id });
    const view = lotView({ id: 'lot:a', entries: log.entries, batches: [], place: here, words: en });
    expect(view?.rows.some(({ value }) => value === 'B-3')).toBe(true);
    expect(view?.rivals).toHaveLength(1);
    expect(view?.rivals[0]?.some(({ value }) => value === 'B-2')).toBe(true);
  });

  it('says when a lot was struck whole, and still shows what it was', () => {
    const log = writer();
    const first = log.write('received', 'lot:a', bag);
    log.write('struck', 'lot:a', {}, { strikes: first.id });
    const view = lotView({ id: 'lot:a', entries: log.entries, batches: [], place: here, words: en });
    expect([view?.holds, view?.title]).toEqual([null, 'Cure']);
  });

  it('leads to the batches it went into', () => {
    const log = writer();
    log.write('received', 'lot:a', bag);
    log.write('batch-opened', 'batch:one', {
      lot: 'W-1',
      formula: startingFormula('CA'),
      ruleSet: 'CA',
      plan: {
        fermentC: 22,
        phLow: 4.9,
        phHigh: 5.2,
        dryC: 13,
        dryRhPct: 80,
        diameterMm: 50,
        targetLossPct: 35,
      },
    });
    log.write('weighed-out', 'batch:one', { line: 'cure', targetG: 2, massG: 2, lot: 'lot:a' });
    const one = batch('batch:one', log.entries);
    const view = lotView({
      id: 'lot:a',
      entries: log.entries.filter(({ subject }) => subject === 'lot:a'),
      batches: one ? [one] : [],
      place: here,
      words: en,
    });
    expect(view?.usedIn.map(({ href, note }) => [href, note])).toEqual([['#/batches/one', 'lot W-1']]);
  });

  it('says that an entry was written later than it was true', () => {
    const log = writer(5);
    log.write('received', 'lot:a', bag, { atMs: START_MS });
    const view = lotView({ id: 'lot:a', entries: log.entries, batches: [], place: here, words: en });
    const row = view?.rows.find(({ label }) => label === 'Received');
    expect(row).toEqual({
      label: 'Received',
      value: '8 January 2024, 09:00',
      note: 'entered 8 January 2024, 14:00',
    });
  });

  it('is nothing where nothing was said of it', () => {
    expect(lotView({ id: 'lot:b', entries: [], batches: [], place: here, words: en })).toBeNull();
  });
});

describe('the list of what came in', () => {
  const log = writer();
  log.write('received', 'lot:a', { ...bag, cure: LABEL });
  log.write('received', 'lot:b', { what: 'lean', name: 'Shoulder', lot: '', supplier: '', massG: 12_345 });
  const view = receivedView({
    lots: lots(log.entries),
    place: here,
    nowMs: START_MS,
    zone: '+01:00',
    words: en,
  });

  it('stands newest first', () => {
    expect(view.rows.map(({ title }) => title)).toEqual(['Shoulder', 'Cure']);
  });

  it('shows a curing salt by its bag, and meat by its weight', () => {
    expect(view.rows.map(({ figure }) => figure)).toEqual([
      { figure: '12.345', unit: 'kg' },
      { figure: '6.25', unit: '%', figureNote: 'nitrite, 4\u00a0% nitrate' },
    ]);
  });

  it('says so where no curing salt is among them', () => {
    const none = receivedView({
      lots: lots(log.entries).slice(1),
      place: here,
      nowMs: START_MS,
      zone: '+01:00',
      words: en,
    });
    expect(plainText(none.sentence)).toBe('One lot. No curing salt among them.');
  });
});
