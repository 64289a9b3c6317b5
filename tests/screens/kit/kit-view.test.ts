import { describe, expect, it } from 'vitest';
import { exposure } from '#record/exposure.ts';
import { chambers, lots, meters, place, scales } from '#record/place.ts';
import { PLACE } from '#record/subject.ts';
import {
  benchFacts,
  benchProblems,
  formOf,
  restoreForm,
  ruleSetOptions,
  withMass,
} from '#screens/kit/bench-view.ts';
import { kitView } from '#screens/kit/kit-view.ts';
import { en } from '#words/en.ts';
import { plainText } from '#words/said.ts';
import { START_MS, type Writer, writer } from '../../record/make.ts';

function viewOf(log: Writer) {
  const { entries } = log;
  const kit = {
    lots: lots(entries),
    scales: scales(entries),
    meters: meters(entries),
    chambers: chambers(entries),
  };
  return kitView({
    place: place(entries),
    kit,
    exposure: exposure(entries),
    nowMs: START_MS + 24 * 3_600_000,
    zone: '+01:00',
    words: en,
  });
}

function setUp(): Writer {
  const log = writer();
  log.write('bench-set-up', PLACE, {
    mass: 'metric',
    temperature: 'C',
    decimal: '.',
    paper: 'A4',
    initials: 'HK',
  });
  log.write('rule-set-chosen', PLACE, { ruleSet: 'CA' });
  return log;
}

describe('the kit', () => {
  it('asks to set up the bench first', () => {
    expect(plainText(viewOf(writer()).sentence)).toBe(
      'Set up the bench first: units and the rule set. Nothing is judged without one.',
    );
  });

  it('says in a sentence what stands, and what is on this phone only', () => {
    const log = setUp();
    log.write('scale-added', 'instrument:p', { name: 'Pocket', stepG: 0.01 });
    expect(plainText(viewOf(log).sentence)).toBe(
      'Weighed in grams, read in °C, by the rules of Canada. One scale, no meter and no lot received. 3 entries on this phone only.',
    );
  });

  it('says when all of it is in a backup', () => {
    const log = setUp();
    log.write('backed-up', PLACE, { entries: 2, bytes: 900, hash: '', place: 'share' });
    const view = viewOf(log);
    expect(plainText(view.sentence)).toContain('All of it is in a backup.');
    expect(view.rows.find(({ href }) => href === '#/kit/keeping')?.note).toBe('backed up 21 hours ago');
  });

  it('has a row to each part, with what stands there', () => {
    const rows = viewOf(setUp()).rows.map(({ href, note }) => [href, note]);
    expect(rows).toEqual([
      ['#/kit/bench', 'g, °C · A4 · Canada'],
      ['#/kit/scales', 'none yet: the curing salt needs a fine one'],
      ['#/kit/received', 'nothing yet'],
      ['#/kit/keeping', 'never backed up, 2 entries on this phone only'],
      ['#/limits', 'every limit, its source and its standing'],
      ['#/hazards', 'what can go wrong, and why'],
    ]);
  });
});

describe('setting up the bench', () => {
  const empty = formOf(place([]));

  it('chooses neither units nor rule set for the maker', () => {
    expect([empty.mass, empty.temperature, empty.ruleSet]).toEqual([null, null, null]);
    expect(benchFacts(empty, place([]))).toBeNull();
    expect(Object.keys(benchProblems(empty, en))).toEqual(['mass', 'temperature', 'ruleSet']);
  });

  it('lets °F and Letter follow pounds while they are not chosen', () => {
    expect(withMass(empty, 'pounds')).toMatchObject({ mass: 'pounds', temperature: 'F', paper: 'Letter' });
    expect(withMass({ ...empty, temperature: 'C' }, 'pounds').temperature).toBe('C');
    const once = withMass(empty, 'metric');
    expect(withMass(once, 'pounds')).toMatchObject({ mass: 'pounds', temperature: 'C', paper: 'A4' });
  });

  it('saves both facts at once, and the rule set only where it changes', () => {
    const chosen = { ...withMass(empty, 'metric'), ruleSet: 'CA' as const, initials: ' HK ' };
    const kinds = (of: ReturnType<typeof benchFacts>) => of?.map(({ kind }) => kind);
    expect(kinds(benchFacts(chosen, place([])))).toEqual(['bench-set-up', 'rule-set-chosen']);
    expect(kinds(benchFacts(chosen, { ...place([]), ruleSet: 'CA' }))).toEqual(['bench-set-up']);
    expect(benchFacts(chosen, place([]))?.[0]?.body).toMatchObject({ initials: 'HK' });
  });

  it('shows of each rule set what it holds, how it is known, and that it was never compared', () => {
    const notes = ruleSetOptions(en, { decimal: ',' }).map(({ value, note }) => [value, note]);
    expect(notes).toEqual([
      [
        'US',
        'nitrite at most 156,25 mg/kg; fewer than 1\u202f200, 1\u202f000, 900 degree-hours (°F); known from copies, in part from memory; never compared with the official text',
      ],
      [
        'CA',
        'nitrite at most 200 mg/kg; fewer than 665, 555, 500 degree-hours (°C); known from copies, in part from memory; never compared with the official text',
      ],
      [
        'EU',
        'nitrite at most 80 mg/kg; no degree-hours of its own; known from copies; never compared with the official text',
      ],
    ]);
  });

  it('restores a half-made choice, and nothing of another shape', () => {
    expect(restoreForm(JSON.parse(JSON.stringify(withMass(empty, 'pounds'))))).toMatchObject({
      mass: 'pounds',
    });
    expect(restoreForm({ ...empty, ruleSet: 'UK' })).toBeNull();
    expect(restoreForm(7)).toBeNull();
  });
});
