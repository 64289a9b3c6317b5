import { describe, expect, test } from 'vitest';
import type { Formula } from '#core/formula/formula.ts';
import type { EntryId, EntryOf } from '#record/entry.ts';
import type { Place } from '#record/place.ts';
import { startingFormula } from '#record/starting-formula.ts';
import { readMeat } from '#screens/open-batch/meat-input.ts';
import {
  against,
  guardQuestions,
  type OpenDraft,
  openBatchView,
  restoreOpen,
  suggestedLot,
} from '#screens/open-batch/open-batch-view.ts';
import {
  fieldsOf,
  firstPlan,
  type PlanTexts,
  planQuestions,
  readPlan as readFields,
} from '#screens/open-batch/plan-input.ts';
import { en as words } from '#words/en.ts';
import { plainText } from '#words/said.ts';

const place: Place = {
  chosen: true,
  mass: 'metric',
  temperature: 'C',
  decimal: ',',
  paper: 'A4',
  initials: 'ab',
  ruleSet: 'US',
};
const formula = startingFormula('US');
const readPlan = (texts: PlanTexts, at: Place, of: Formula = formula) =>
  readFields({ fields: fieldsOf(of), texts, place: at, words });
const version: EntryOf<'formula-saved'> = {
  id: '01900000-0000-7000-8000-000000000001' as EntryId,
  subject: 'formula:invented',
  refs: [],
  kind: 'formula-saved',
  v: 1,
  atMs: 0,
  zone: '+00:00',
  writtenAtMs: 0,
  by: '',
  device: 'd',
  seq: 1,
  prev: '',
  body: { formula, note: '' },
};
const draft = (more: Partial<OpenDraft> = {}): OpenDraft => ({
  lot: '261125',
  plan: firstPlan(formula, place, words),
  ruleSet: null,
  ready: { meat: '', trays: '' },
  note: '',
  ...more,
});
const view = (of: OpenDraft, at = place, lots: string[] = [], own: Formula = formula) =>
  openBatchView({
    version: { ...version, body: { formula: own, note: '' } },
    number: 2,
    draft: of,
    read: readPlan(of.plan, at, own),
    lots,
    tried: true,
    place: at,
    words,
  });
const NOON = Date.UTC(2026, 10, 25, 12);

describe('the lot', () => {
  test('is suggested from the date there, with a letter where the day has one already', () => {
    expect(suggestedLot(NOON, '+01:00', [])).toBe('261125');
    expect(suggestedLot(NOON, '+13:00', [])).toBe('261126');
    expect(suggestedLot(NOON, '+01:00', ['261125', '261125-B'])).toBe('261125-C');
  });

  test('is needed, and never given twice', () => {
    expect(view(draft({ lot: ' ' })).lotProblem).toBe(words.fields.needed);
    expect(view(draft(), place, ['261125']).lotProblem).toContain('already');
  });
});

describe('the plan', () => {
  test('takes diameter and loss from the formula, and keeps each number as it was typed', () => {
    const read = readPlan({ ...firstPlan(formula, place, words), dryC: '12,5' }, place);
    expect(read).toMatchObject({
      ok: true,
      plan: { diameterMm: 50, targetLossPct: 38, dryC: 12.5 },
      typed: { dryC: { text: '12,5', unit: 'C' } },
    });
  });

  test('in degrees Fahrenheit is kept in degrees Celsius', () => {
    const warm: Place = { ...place, temperature: 'F', decimal: '.' };
    const read = readPlan({ ...firstPlan(formula, warm, words), fermentC: '68' }, warm);
    expect(read.ok && read.plan.fermentC).toBeCloseTo(20, 9);
  });

  test('says what is usual beside each field, as common practice', () => {
    const [ferment] = view(draft()).groups;
    expect(ferment?.fields[0]?.hint).toBe('usually 18 to 26\u00a0°C');
    expect(words.openBatch.standing).toContain('common practice');
  });

  test('with the higher pH first is named', () => {
    const read = readPlan({ ...firstPlan(formula, place, words), phLow: '5,3', phHigh: '4,9' }, place);
    expect(read).toMatchObject({ ok: false, problems: { phHigh: words.openBatch.phOrder } });
  });

  test('that is unlikely is asked about, not refused', () => {
    const read = readPlan({ ...firstPlan(formula, place, words), fermentC: '45' }, place);
    if (!read.ok) throw new Error('refused');
    expect(planQuestions(read.plan, place, words)).toEqual([
      {
        code: 'fermentC',
        about: 'plan',
        text: 'Fermenting room 45\u00a0°C: usually it is 18 to 26\u00a0°C. Is that what you mean?',
      },
    ]);
  });

  test('of a whole muscle asks for no ferment, and is kept without one', () => {
    const muscle: Formula = { ...formula, kind: 'whole-muscle' };
    const read = readPlan(firstPlan(muscle, place, words), place, muscle);
    expect(read.ok && read.plan).toEqual({ dryC: 13, dryRhPct: 80, diameterMm: 50, targetLossPct: 38 });
    expect(read.ok && planQuestions(read.plan, place, words)).toEqual([]);
    const asked = view(draft(), place, [], muscle);
    expect(asked.groups.map(({ key }) => key)).toEqual(['dry', 'piece']);
    expect(asked.planLine).toBe(words.openBatch.planLineMuscle);
    expect(view(draft()).groups.map(({ key }) => key)).toEqual(['ferment', 'ph', 'dry', 'piece']);
  });

  test('that cannot be is refused', () => {
    expect(readPlan({ ...firstPlan(formula, place, words), dryRhPct: '800' }, place).ok).toBe(false);
  });
});

describe('the rule set', () => {
  test('in force is said, with its standing', () => {
    const shown = view(draft());
    expect(shown.ruleSet && plainText(shown.ruleSet)).toContain('United States');
    expect(shown.compared).toContain('never compared with the official text');
  });

  test('that nobody chose is asked for, and nothing is judged before', () => {
    const shown = view(draft(), { ...place, ruleSet: null });
    expect(shown).toMatchObject({ ruleSet: null, against: null, ruleSetProblem: words.fields.choose });
  });
});

describe('what the formula says against being opened', () => {
  const says = (of: Formula, ruleSet: 'US' | 'CA' | 'EU') => against(of, ruleSet, place, words);

  test('the starting formula of each rule set is no deviation and raises no question there', () => {
    for (const ruleSet of ['US', 'CA', 'EU'] as const)
      expect(says(startingFormula(ruleSet), ruleSet)).toEqual({ over: false, stops: [], asks: [] });
  });

  test('a dose for the United States is a deviation in the EU', () => {
    expect(says(startingFormula('US'), 'EU').over).toBe(true);
  });

  test('a curing salt that is only a name stops it', () => {
    const lines = formula.lines.map(({ cure: _label, ...line }) => line);
    expect(says({ ...formula, lines }, 'US').stops.join()).toContain('A name says nothing');
  });

  test('no curing salt is for a person to pass', () => {
    const lines = formula.lines.filter(({ role }) => role !== 'cure');
    const questions = guardQuestions(says({ ...formula, lines }, 'US'), words);
    expect(questions.map(({ code }) => code)).toEqual(['no-cure']);
    expect(questions[0]?.text).toContain('Open the batch all the same?');
  });
});

test('half-typed fields come back as they were; another shape is not taken', () => {
  const kept = draft({ lot: 'half' });
  expect(restoreOpen(JSON.parse(JSON.stringify(kept)))).toEqual(kept);
  expect(restoreOpen({ lot: 'x' })).toBeNull();
});

test('meat that lies ready may stay empty; trays are whole, grams are kept as typed', () => {
  expect(readMeat({ meat: '', trays: '' }, place, words)).toEqual({ ok: true, body: {}, typed: {} });
  expect(readMeat({ meat: '5200', trays: '5' }, place, words)).toMatchObject({
    ok: true,
    body: { plannedMeatG: 5200, plannedTrays: 5 },
  });
  expect(readMeat({ meat: '-1', trays: '2.5' }, place, words)).toMatchObject({
    ok: false,
    problems: { meat: expect.any(String), trays: 'Type a whole number.' },
  });
});
