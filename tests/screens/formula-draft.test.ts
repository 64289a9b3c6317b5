import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { amountG, type Basis, type Formula } from '#core/formula/formula.ts';
import { weighOut } from '#core/formula/weigh-out.ts';
import type { Place } from '#record/place.ts';
import { startingFormula } from '#record/starting-formula.ts';
import {
  addLine,
  draftBench,
  moveLine,
  removeLine,
  setLine,
  typeFat,
  typeTotalSalt,
  unlikely,
} from '#screens/formulas/draft-edits.ts';
import { editView } from '#screens/formulas/edit-view.ts';
import {
  emptyDraft,
  type FormulaDraft,
  formulaDraft,
  readFormulaDraft,
  restoreDraft,
} from '#screens/formulas/formula-draft.ts';
import { newLine, typeAmount } from '#screens/formulas/line-draft.ts';
import { readLineDraft } from '#screens/formulas/line-read.ts';
import { switchBasis, typeRecipe } from '#screens/formulas/line-switch.ts';
import { amountFields, labelCaution, recipeText } from '#screens/formulas/line-view.ts';
import { en as words } from '#words/en.ts';

const place: Place = {
  chosen: true,
  mass: 'metric',
  temperature: 'C',
  decimal: ',',
  paper: 'A4',
  initials: '',
  ruleSet: 'US',
};
const pounds: Place = { ...place, mass: 'pounds', decimal: '.' };
const draftOf = (formula: Formula, at = place) => formulaDraft({ formula, from: 'v1' }, at, words);
const readOk = (draft: FormulaDraft, at = place): Formula => {
  const read = readFormulaDraft(draft, at);
  if (!read.ok) throw new Error(JSON.stringify(read.problems));
  return read.formula;
};
const typed = (text: string, role: 'salt' | 'spice' = 'spice') =>
  typeAmount(newLine('x', role, words), 'sharePct', text);

describe('a draft', () => {
  test('of a formula reads back as that formula, in either system and with either decimal sign', () => {
    for (const at of [place, pounds])
      expect(readOk(draftOf(startingFormula('US'), at), at)).toEqual(startingFormula('US'));
  });

  test('kept as JSON comes back as it was; another shape is not taken', () => {
    const draft = draftOf(startingFormula('EU'));
    expect(restoreDraft(JSON.parse(JSON.stringify(draft)))).toEqual(draft);
    expect(restoreDraft({ name: 'x' })).toBeNull();
    expect(restoreDraft(null)).toBeNull();
  });

  test('of a new formula cannot be saved before it has a name, a share of fat and amounts', () => {
    let count = 0;
    const read = readFormulaDraft(
      emptyDraft(() => `line-${count++}`, words),
      place,
    );
    expect(read).toMatchObject({ ok: false, problems: { head: { name: 'empty', fatPctOfMeat: 'empty' } } });
  });

  test('typing the fat wanted sets the one line of lean and of fat', () => {
    const draft = typeFat(draftOf(startingFormula('US')), '30', place, words);
    const [lean, fat] = readOk(draft).lines;
    expect([lean?.amount, fat?.amount]).toEqual([
      { basis: 'pct-of-meat', amountPct: 70 },
      { basis: 'pct-of-meat', amountPct: 30 },
    ]);
  });

  test('lines are added, moved and left out', () => {
    const draft = addLine(draftOf(startingFormula('US')), { ...typed('1'), id: 'new' });
    const ids = (of: FormulaDraft) => of.lines.map(({ id }) => id).slice(-3);
    expect(ids(draft)).toEqual(['starter', 'water', 'new']);
    expect(ids(moveLine(draft, 'new', -1))).toEqual(['starter', 'new', 'water']);
    expect(moveLine(draft, 'new', 1)).toBe(draft);
    expect(ids(removeLine(draft, 'water'))).toEqual(['garlic', 'starter', 'new']);
  });
});

describe('an amount', () => {
  test('is read with comma and point alike', () => {
    for (const text of ['2,8', '2.8'])
      expect(readLineDraft(typed(text), place)).toMatchObject({
        ok: true,
        line: { amount: { basis: 'pct-of-meat', amountPct: 2.8 } },
      });
  });

  test('names what is wrong beside its field, and keeps what was typed', () => {
    const [field] = amountFields(typed('120'), place, words);
    expect(field).toMatchObject({ text: '120' });
    expect(field?.problem).toContain('at most 100');
  });

  test('in ounces is kept in grams', () => {
    const line = typeAmount({ ...newLine('x', 'liquid', words), basis: 'fixed' }, 'massG', '2');
    expect(readLineDraft(line, pounds)).toMatchObject({
      line: { amount: { basis: 'fixed', amountG: 56.69904625 } },
    });
  });

  test('typed as a recipe prints it is said back before it counts', () => {
    const { line, read } = typeRecipe(typed(''), '1.5 oz for 10 lb', pounds, words);
    expect(readLineDraft(line, pounds)).toMatchObject({
      line: { amount: { basis: 'g-per-kg-meat', doseGPerKg: 9.375 } },
    });
    expect(recipeText(read, pounds, words).said).toContain('9.375\u00a0g/kg of meat');
  });

  test('that a recipe leaves open is asked back', () => {
    const { line, read } = typeRecipe(typed('3'), '5 %', place, words);
    expect(line.amount.sharePct).toBe('3');
    expect(recipeText(read, place, words).problem).toContain('Percent of what?');
  });
});

describe('switching the base of a line', () => {
  const wine = startingFormula('US').lines.map((line) =>
    line.id === 'water' ? { ...line, amount: { basis: 'pct-of-total', amountPct: 5 } as const } : line,
  );
  const draft = draftOf({ ...startingFormula('US'), lines: wine });
  const bases: Basis[] = ['pct-of-meat', 'pct-of-lean', 'pct-of-total', 'g-per-kg-meat', 'fixed', 'at-least'];

  const switched = (from: FormulaDraft, basis: Basis): FormulaDraft => {
    const line = from.lines.find(({ id }) => id === 'water');
    if (!line) throw new Error('no line');
    return setLine(from, switchBasis({ line, basis, bench: draftBench(from, place), place, words }));
  };
  const waterG = (of: FormulaDraft) =>
    weighOut({
      formula: readOk(of),
      leanG: 750,
      fatG: 250,
      pieces: null,
      scales: [{ id: 'k', stepG: 0.01, capacityG: null }],
    }).lines.find(({ lineId }) => lineId === 'water')?.exactG ?? 0;

  test('5 % of total gives the same grams after two switches, and reads 5 % of total again', () => {
    const back = switched(switched(draft, 'pct-of-meat'), 'pct-of-total');
    expect(waterG(back)).toBeCloseTo(waterG(draft), 9);
    expect(back.lines.find(({ id }) => id === 'water')?.amount.sharePct).toBe('5');
  });

  test('keeps the grams of 1 kg over any walk through the bases (property)', () => {
    fc.assert(
      fc.property(fc.array(fc.constantFrom(...bases), { minLength: 1, maxLength: 8 }), (walk) => {
        const end = walk.reduce(switched, draft);
        expect(waterG(end)).toBeCloseTo(waterG(draft), 6);
      }),
    );
  });

  test('by the piece starts anew, since the pieces are not known', () => {
    const line = switched(draft, 'per-piece').lines.find(({ id }) => id === 'water');
    expect(line).toMatchObject({ basis: 'per-piece', amount: { massG: '' } });
  });
});

describe('all salt together', () => {
  test('3 % with 0.25 % of a 6.25 and 4 % cure is 27.76 g salt and 2.5 g cure for 1,000 g', () => {
    const draft = draftOf(startingFormula('US'));
    const salt = draft.lines.find(({ id }) => id === 'salt');
    const set = salt && typeTotalSalt(draft, salt, '3', place, words);
    const read = set && readLineDraft(set, place);
    if (!read?.ok) throw new Error('not set');
    const bench = { leanG: 1000, fatG: 0, mixG: 1000, pieces: null };
    expect(amountG(read.line.amount, bench)).toBeCloseTo(27.75625, 9);
  });

  test('less than the curing salt alone brings cannot be', () => {
    const draft = draftOf(startingFormula('US'));
    const salt = draft.lines.find(({ id }) => id === 'salt');
    expect(salt && typeTotalSalt(draft, salt, '0,1', place, words)).toBeNull();
  });
});

describe('the cure line', () => {
  const withLabel = (nitritePct: string, nitratePct: string) => {
    const draft = draftOf(startingFormula('US'));
    const cure = draft.lines.find(({ id }) => id === 'cure');
    if (!cure) throw new Error('no cure');
    return setLine(draft, { ...cure, nitritePct, nitratePct });
  };

  test('keeps the printed percentages', () => {
    expect(readOk(withLabel('0,6', '')).lines.find(({ id }) => id === 'cure')?.cure).toMatchObject({
      nitritePct: 0.6,
      nitratePct: 0,
    });
  });

  test('without them stays a name, and the row says so', () => {
    const draft = withLabel('', '');
    expect(readOk(draft).lines.find(({ id }) => id === 'cure')?.cure).toBeUndefined();
    const rows = editView({ draft, number: 2, tried: false, place, words }).rows;
    expect(rows.find(({ id }) => id === 'cure')?.note).toContain('bag percentages missing');
  });

  test('with more than the bag is refused, with far too much asked about', () => {
    expect(readFormulaDraft(withLabel('90', '20'), place).ok).toBe(false);
    expect(unlikely(readOk(withLabel('62,5', '0')))).toEqual([{ code: 'bag', lineId: 'cure' }]);
  });
});

describe('what is said while editing', () => {
  test('total salt and nitrite of what can be read', () => {
    const draft = draftOf(startingFormula('US'));
    expect(editView({ draft, number: 2, tried: false, place, words }).sums).toBe(
      'Total salt 2,77\u00a0% of meat; nitrite 156,25\u00a0mg/kg of meat.',
    );
  });

  test('shares of total that leave no room for meat cannot be saved', () => {
    const shares = ['a', 'b'].map((id) => ({ ...typed('60'), id, basis: 'pct-of-total' as const }));
    const draft = { ...draftOf(startingFormula('US')), lines: shares };
    expect(editView({ draft, number: 2, tried: true, place, words }).hindered).toContain('nothing is left');
  });

  test('salt at 28 % is asked about, not refused', () => {
    const draft = draftOf(startingFormula('US'));
    const salt = { ...typed('28', 'salt'), id: 'salt' };
    expect(unlikely(readOk(setLine(draft, salt)))).toEqual([{ code: 'salt', lineId: 'salt' }]);
  });
});

describe('the starting formula', () => {
  test('says wherever it goes that it is invented', () => {
    expect(startingFormula(null).name).toContain('invented example');
    expect(startingFormula(null).note).toContain('Nobody has made it');
  });
});

test('6.25 typed as a fraction, or nearly pure nitrite, is spoken of while it is typed', () => {
  const bag = (nitritePct: string, nitratePct = '0') =>
    labelCaution({ ...newLine('c', 'cure', words), nitritePct, nitratePct }, place, words);
  expect(bag('0,0625')).toContain('If it prints 6,25 %, type 6,25.');
  expect(bag('0,0')).toBeNull();
  for (const printed of ['0,4', '0,5', '0,6', '5,88', '6,25']) expect(bag(printed)).toBeNull();
  expect(bag('6,25', '4')).toBeNull();
  expect(bag('0', '10')).toBeNull();
  for (const pure of [bag('62,5'), bag('98'), bag('6,25', '20')])
    expect(pure).toContain('A few grams of it kill');
  expect(bag('')).toBe(words.formulaEdit.line.noLabel);
});
