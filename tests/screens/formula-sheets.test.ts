import { describe, expect, test } from 'vitest';
import type { Formula } from '#core/formula/formula.ts';
import type { Place } from '#record/place.ts';
import { startingFormula } from '#record/starting-formula.ts';
import { casingView } from '#screens/formulas/casing-view.ts';
import { formulaPlan } from '#screens/formulas/formula-plan.ts';
import { labelView } from '#screens/formulas/label-view.ts';
import { sugarView } from '#screens/formulas/sugar-view.ts';
import { type WayCode, waysView } from '#screens/formulas/ways-view.ts';
import { en as words } from '#words/en.ts';

const place: Place = {
  chosen: true,
  mass: 'metric',
  temperature: 'C',
  decimal: '.',
  paper: 'A4',
  initials: '',
  ruleSet: 'EU',
};
const formula: Formula = startingFormula('US');
const bare: Formula = { ...formula, lines: [] };

const plan = (of: Formula, leanG = 750, fatG = 250) =>
  formulaPlan({
    formula: of,
    bench: { leanG, fatG, pieces: null },
    scales: [{ id: 'k', stepG: 0.01, capacityG: null }],
    ruleSet: place.ruleSet,
  });
const results = (view: { results: readonly { label: string; value: string }[] }) =>
  Object.fromEntries(view.results.map(({ label, value }) => [label, value]));

describe('other ways to scale', () => {
  const by = (code: WayCode, texts: Record<string, string>, of = bare) =>
    waysView({ code, texts, formula: of, place, words });

  test('4,536 g of lean at 30 % fat take 1,944 g of fat', () => {
    expect(by('lean', { leanG: '4536' }, { ...bare, fatPctOfMeat: 30 }).meat).toEqual({
      leanG: 4536,
      fatG: 1944,
      pieces: null,
    });
  });

  test('620 g finished at 38 % loss take 1,000 g of mix', () => {
    const view = by('finished', { finishedG: '620', lossPct: '38' });
    expect(view.meat?.leanG).toBeCloseTo(750, 6);
    expect(view.meat?.fatG).toBeCloseTo(250, 6);
    expect(view.notes.join()).toContain('plan');
  });

  test('12 pieces of 500 g and 150 g that stay in the stuffer take 6,150 g of mix', () => {
    const view = by('pieces', { pieces: '12', pieceG: '500', leftoverG: '150' });
    expect((view.meat?.leanG ?? 0) + (view.meat?.fatG ?? 0)).toBeCloseTo(6150, 6);
    expect(view.meat?.pieces).toBe(12);
  });

  test('3,000 g lean and 1,300 g fat at 25 % leave 300 g of fat over', () => {
    expect(results(by('hand', { leanG: '3000', fatG: '1300' }))).toMatchObject({
      'Fat left over': '300\u00a0g',
    });
  });

  test('two cuts of 5 and 85 % fat meet 25 % at three to one; what lies outside cannot be met', () => {
    const texts = { firstFatPct: '5', secondFatPct: '85', wantedFatPct: '25', meatG: '4000' };
    expect(by('square', texts).meat).toMatchObject({ leanG: 3000, fatG: 1000 });
    expect(by('square', { ...texts, wantedFatPct: '90' })).toMatchObject({ meat: null });
  });

  test('nothing is worked out from half of the fields', () => {
    expect(by('square', { firstFatPct: '5' })).toMatchObject({ meat: null, results: [] });
  });

  test('a formula that counts by the piece is scaled by the pieces', () => {
    const counted: Formula = {
      ...bare,
      lines: [{ id: 'n', name: 'Net', role: 'other', amount: { basis: 'per-piece', pieceG: 2 } }],
    };
    expect(by('finished', { finishedG: '620' }, counted).meat).toBeNull();
    expect(by('pieces', { pieces: '4', pieceG: '250' }, counted).meat?.pieces).toBe(4);
  });
});

describe('casing', () => {
  const casing = (texts: Record<string, string>) =>
    casingView({ casing: 'beef-middle', texts, formula, mixG: 5200, place, words });

  test('5,200 g in a casing that holds 1.3 kg a metre: four pieces of 1.3 kg, 100 cm each', () => {
    expect(results(casing({ pieceG: '1300', fillGPerM: '1300', endsMm: '50' }))).toMatchObject({
      Casing: '~4.2\u00a0m',
      'Whole pieces': '4',
      'Length of one': '~100\u00a0cm',
      'Left over': '0\u00a0g',
    });
  });

  test('100 mm flat are 63.7 mm round', () => {
    expect(results(casing({ flatMm: '100' }))['Round diameter of that flat width']).toBe('63.7\u00a0mm');
  });

  test('every table that was read is shown with its source, none is chosen', () => {
    expect(casing({}).printed.length).toBeGreaterThan(1);
    expect(casing({}).fields.find(({ key }) => key === 'fillGPerM')?.text).toBe('');
  });
});

describe('sugar for a pH', () => {
  const sugar = (texts: Record<string, string>, of = formula) =>
    sugarView({ texts, formula: of, plan: plan(of), place, words });

  test('5.8 to 5.1 takes 2.1 to 7.0 g/kg: a band, with "~"', () => {
    expect(results(sugar({ startPh: '5.8', targetPh: '5.1' }))['Sugar to add, as dextrose']).toBe(
      '~2.1 to 7.0\u00a0g/kg',
    );
  });

  test('sugar hidden in wine is taken off', () => {
    const wine: Formula = {
      ...formula,
      lines: [
        ...formula.lines,
        {
          id: 'must',
          name: 'Must',
          role: 'liquid',
          amount: { basis: 'g-per-kg-meat', doseGPerKg: 10 },
          hiddenSugarPct: 20,
        },
      ],
    };
    const shown = results(sugar({ startPh: '5.8', targetPh: '5.1' }, wine));
    expect(shown['Sugar to add, as dextrose']).toBe('~0.1 to 5.0\u00a0g/kg');
    expect(shown['Hidden in wine, must, spices']).toBe('~2.0\u00a0g/kg');
  });

  test('a target above the start is said, not worked out', () => {
    const view = sugar({ startPh: '5.1', targetPh: '5.8' });
    expect(view.notes[0]).toContain('below the start');
    expect(results(view)['Sugar to add, as dextrose']).toBeUndefined();
  });
});

describe('the label', () => {
  test('ingredients stand in falling weight, the salt of the cure with the salt (750 of 1,054.25 g)', () => {
    const view = labelView(formula, plan(formula), place, words);
    expect(view.ingredients.slice(0, 3)).toEqual([
      'Lean pork (71.1 %)',
      'Pork back fat (23.7 %)',
      'Salt (2.6 %)',
    ]);
    expect(view.ingredients.at(-1)).toBe('preservative: sodium nitrate');
  });

  test('95.7 % meat at 40 % loss is ~160 g for 100 g', () => {
    const of: Formula = {
      ...bare,
      targetLossPct: 40,
      lines: [{ id: 's', name: 'Salt', role: 'salt', amount: { basis: 'pct-of-total', amountPct: 4.3 } }],
    };
    expect(labelView(of, plan(of), place, words).meatFor?.value).toBe('~160\u00a0g');
  });

  test('wine asks about sulphites; named without a figure they are to be named', () => {
    const wine = (allergens: string[]): Formula => ({
      ...formula,
      lines: [
        ...formula.lines,
        {
          id: 'wine',
          name: 'Red wine',
          role: 'liquid',
          amount: { basis: 'pct-of-meat', amountPct: 2 },
          allergens,
        },
      ],
    });
    const silent = labelView(wine([]), plan(wine([])), place, words);
    expect(silent.notes.join()).toContain('Red wine: does it bring sulphites?');
    const named = labelView(wine(['sulphites']), plan(wine(['sulphites'])), place, words);
    expect(named.allergens).toEqual(['sulphites, from Red wine']);
  });

  test('no allergen named is never "free of"', () => {
    expect(labelView(formula, plan(formula), place, words).notes.join()).toContain('not “free of”');
  });
});
