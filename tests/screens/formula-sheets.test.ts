import { readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import type { Formula } from '#core/formula/formula.ts';
import type { FinishedFerment } from '#core/formula/sugar.ts';
import { finishedFerments, type OwnFill, ownFills } from '#record/own-figures.ts';
import type { Place } from '#record/place.ts';
import { startingFormula } from '#record/starting-formula.ts';
import type { BenchRead } from '#screens/formulas/bench-input.ts';
import { cardView } from '#screens/formulas/card-view.ts';
import { casingView } from '#screens/formulas/casing-view.ts';
import { compositionView } from '#screens/formulas/composition-view.ts';
import { formulaPlan } from '#screens/formulas/formula-plan.ts';
import { labelView } from '#screens/formulas/label-view.ts';
import { piecesView } from '#screens/formulas/pieces-view.ts';
import { sugarView } from '#screens/formulas/sugar-view.ts';
import { type WayCode, waysView } from '#screens/formulas/ways-view.ts';
import { en as words } from '#words/en.ts';
import {
  BATCH,
  batchOf,
  book,
  FORMULA,
  ferment,
  openBatch,
  SALAME,
  setUp,
  stuff,
  weighMeat,
} from './book.ts';

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

  test('says what runs out first: lean, fat, or the 70 g of salt that are enough for 2.5 kg of meat', () => {
    const hand = (texts: Record<string, string>) => by('hand', texts, SALAME);
    expect(results(hand({ leanG: '3000', fatG: '1300' }))['Runs out first']).toBe('Lean');
    expect(results(hand({ leanG: '3000', fatG: '700' }))['Runs out first']).toBe('Fat');
    const short = hand({ leanG: '3000', fatG: '1300', 'line salt': '70', 'line cure': '50' });
    expect(results(short)).toMatchObject({
      'Runs out first': 'Salt',
      Lean: '1\u202f875\u00a0g',
      Fat: '625\u00a0g',
      // 0.25 % of 2,500 g are 6.25 g (arithmetic, derived).
      'Curing salt left over': '43.7\u00a0g',
    });
    expect(results(short)).not.toHaveProperty('Salt left over');
    expect(short.meat?.leanG).toBeCloseTo(1875, 6);
    expect(short.fields.map(({ label }) => label)).toEqual([
      'Lean at hand, trimmed',
      'Fat at hand, trimmed',
      'Salt',
      'Curing salt',
    ]);
    const odd = hand({ leanG: '3000', fatG: '1300', 'line salt': 'seventy' });
    expect(odd).toMatchObject({ results: [], meat: null });
    expect(odd.fields[2]?.problem).not.toBeNull();
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

describe('what the mix is made of', () => {
  /** The published worked mix: lean and back fat four to one, 2.8 % salt, 0.5 % dextrose (computed from the table of cuts). */
  const worked: Formula = {
    name: 'worked',
    kind: 'comminuted',
    species: ['pork'],
    fatPctOfMeat: 20,
    targetLossPct: 40,
    lines: [
      {
        id: 'lean',
        name: 'Lean',
        role: 'lean',
        amount: { basis: 'pct-of-meat', amountPct: 80 },
        cutNdb: '10002',
      },
      { id: 'fat', name: 'Fat', role: 'fat', amount: { basis: 'pct-of-meat', amountPct: 20 } },
      { id: 'salt', name: 'Salt', role: 'salt', amount: { basis: 'pct-of-meat', amountPct: 2.8 } },
      { id: 'dex', name: 'Dextrose', role: 'sugar', amount: { basis: 'pct-of-meat', amountPct: 0.5 } },
    ],
  };
  const shown = (of: Formula) => compositionView(of, plan(of, 800, 200), place, words);
  const published = JSON.parse(readFileSync('fixtures/published/composition.json', 'utf8')).worked;

  test('is the published worked mix, and what it is at 40 % loss', () => {
    const at40 = published.track.find(({ lossPct }: { lossPct: number }) => lossPct === 40);
    const text = (value: number) => `~${value.toFixed(1)}\u00a0%`;
    expect(
      shown(worked)
        .rows.slice(0, 4)
        .map(({ cells }) => cells),
    ).toEqual([
      [text(100 * published.fractions.water), text(at40.moisturePct)],
      [text(100 * published.fractions.protein), text(at40.proteinPct)],
      [text(100 * published.fractions.fat), text(at40.fatPct)],
      [text(100 * published.fractions.salt), text(at40.saltPct)],
    ]);
  });

  test('names the cut of each line, and says which was taken without being named', () => {
    const view = shown(worked);
    expect(view.cuts).toEqual([
      'Lean: leg, loin and shoulder, lean only (NDB 10002)',
      'Fat: back fat (NDB 10004)',
    ]);
    expect(view.notes.join()).toContain('No cut is named for the fat');
    expect(view.notes.join()).not.toContain('No cut is named for the lean');
    expect(view.sources[0]).toContain('USDA');
  });

  test('own fat goes before the table; a loss of more than its water is said, not counted', () => {
    const lines = worked.lines.map((line) => (line.id === 'lean' ? { ...line, ownFatPct: 20 } : line));
    expect(shown({ ...worked, lines }).rows[2]?.cells[0]).not.toBe(shown(worked).rows[2]?.cells[0]);
    const gone = shown({ ...worked, targetLossPct: 70 });
    expect([gone.heads.length, gone.notes[0]]).toEqual([
      1,
      'The loss aimed at is more than the water there is.',
    ]);
  });
});

describe('casing', () => {
  const casing = (texts: Record<string, string>, own: readonly OwnFill[] = []) =>
    casingView({ casing: 'beef-middle', texts, formula, mixG: 5200, own, place, words });

  test('5,200 g in a casing that holds 1.3 kg a metre: four pieces of 1.3 kg, 100 cm each', () => {
    expect(results(casing({ pieceG: '1300', fillGPerM: '1300', endsMm: '50' }))).toMatchObject({
      Casing: '~4.2\u00a0m',
      'Whole pieces': '4',
      'Length of one': '~100\u00a0cm',
      'Left over': '0\u00a0g',
    });
  });

  test('5.2 kg at 1.4 kg a metre take 3.71 m, shown rounded up; after a batch that took 3.2 m the fill is 1.63 kg a metre', () => {
    const planned = casing({ keptG: '0', pieceG: '5200', fillGPerM: '1400', endsMm: '0' });
    expect(results(planned).Casing).toBe('~3.8\u00a0m');
    const of = stuff(weighMeat(openBatch(setUp(book()))), { greenG: [1300, 1300, 1300, 1300] });
    expect(ownFills([batchOf(of)], 55)).toEqual([]);
    of.put(3, 'casing-used', BATCH, { usedM: 3.2 });
    const own = ownFills([batchOf(of)], 55);
    expect(own).toEqual([{ casing: '', fillGPerM: 1625, batches: 1 }]);
    expect(ownFills([batchOf(of)], 59)).toEqual([]);
    const learned = casing({}, own);
    expect(learned.fields.find(({ key }) => key === 'fillGPerM')?.text).toBe('1625');
    expect(learned.own).toEqual(['Your own: 1\u202f625\u00a0g a metre, from one batch']);
    expect(learned.notes.join()).toContain('The tables stand beside it');
  });

  test('100 mm flat are 63.7 mm round', () => {
    expect(results(casing({ flatMm: '100' }))['Round diameter of that flat width']).toBe('63.7\u00a0mm');
  });

  test('every table that was read is shown with its source, none is chosen', () => {
    expect(casing({}).printed.length).toBeGreaterThan(1);
    expect(casing({}).fields.find(({ key }) => key === 'fillGPerM')?.text).toBe('');
    // 86 mm flat are 54.7 mm round: beef middles of 50 to 55 mm, 32 to 36 kg in 18 m (INSCA, read).
    const flat = casing({ flatMm: '86', diameterMm: '120' }).printed;
    expect(flat.some((text) => text.startsWith('50 to 55 mm: 1\u202f778 to 2\u202f000\u00a0g a metre'))).toBe(
      true,
    );
    expect(casing({ diameterMm: '120' }).printed).toEqual([words.formulaSheets.casing.noRow]);
  });

  test('a maker in pounds is asked and told in feet: 5,200 g at 1.4 kg a metre are ~12.2 ft', () => {
    const inFeet = (texts: Record<string, string>, own: readonly OwnFill[] = []) =>
      casingView({
        ...{ casing: 'beef-middle', texts, formula, mixG: 5200, own, words },
        place: { ...place, mass: 'pounds' },
      });
    // 1.4 kg a metre is 0.94075 lb a foot: 1400 x 0.3048 / 453.59237 (exact definitions, derived).
    const planned = inFeet({ pieceG: '11.464', fillGPerM: '0.94075', endsMm: '0' });
    expect(results(planned)).toMatchObject({ Casing: '~12.2\u00a0ft', 'Length of one': '~146\u00a0in' });
    expect(inFeet({}, [{ casing: '', fillGPerM: 1625, batches: 2 }]).own).toEqual([
      'Your own: 1.092\u00a0lb a foot, from 2 batches',
    ]);
    expect(planned.fields.map(({ key, unit }) => [key, unit])).toEqual([
      ['mixG', 'lb'],
      ['keptG', 'lb'],
      ['pieceG', 'lb'],
      ['fillGPerM', 'lb'],
      ['endsMm', 'in'],
      ['diameterMm', 'mm'],
      ['flatMm', 'mm'],
    ]);
  });
});

describe('sugar for a pH', () => {
  const sugar = (texts: Record<string, string>, of = formula, ferments: readonly FinishedFerment[] = []) =>
    sugarView({ texts, formula: of, plan: plan(of), ferments, place, words });

  test('5.8 to 5.1 takes 2.1 to 7.0 g/kg: a band, with "~"', () => {
    expect(results(sugar({ startPh: '5.8', targetPh: '5.1' }))['Sugar to add, as dextrose']).toBe(
      '~2.1 to 7.0\u00a0g/kg',
    );
  });

  test('three own batches of one formula take the place of the rules; two do not', () => {
    const own = [4.9, 5.0, 5.1].map((endPh) => ({ startPh: 5.8, endPh, sugarGPerKg: 4 }));
    const ph = { startPh: '5.8', targetPh: '5.1' };
    const two = sugar(ph, formula, own.slice(0, 2));
    expect(results(two)['Sugar to add, as dextrose']).toBe('~2.1 to 7.0\u00a0g/kg');
    expect(two.notes.join()).toContain('2 of 3 finished batches');
    // k = 4/9, 4/8, 4/7 a tenth; ln k: mean -0.6879, sd 0.1257; t(2) at 80 % two-sided 1.886 (memory-high): 0.38 to 0.66.
    const three = sugar(ph, formula, own);
    expect(results(three)['Sugar to add, as dextrose']).toBe('~2.7 to 4.6\u00a0g/kg');
    expect(three.notes.join()).toContain('From 3 finished batches of this formula: 0.38 to 0.66 g/kg');
  });

  test('a finished ferment counts with the first pH of its mix, the lowest later one, and the sugar weighed', () => {
    const dextrose = {
      id: 'dextrose',
      name: 'Dextrose',
      role: 'sugar',
      sugarKind: 'dextrose',
      amount: { basis: 'g-per-kg-meat', doseGPerKg: 4 },
    } as const;
    const of = weighMeat(
      openBatch(setUp(book()), { formula: { ...SALAME, lines: [...SALAME.lines, dextrose] } }),
    );
    const finished = (from = FORMULA) => {
      const batch = batchOf(of);
      const opened = { ...batch.opened, body: { ...batch.opened.body, from: { formula: from, entry: '' } } };
      return finishedFerments([{ ...batch, opened }], FORMULA);
    };
    ferment(stuff(of));
    expect(finished()).toEqual([]);
    of.put(1.6, 'ph-read', BATCH, { ph: 5.8, sample: 'mix', method: 'meter', doubted: false });
    expect(finished()).toEqual([]);
    of.put(0.5, 'weighed-out', BATCH, { line: 'dextrose', targetG: 12.9, massG: 12.86 });
    const [one] = finished();
    expect(one).toMatchObject({ startPh: 5.8, endPh: 5.2 });
    // 4 g/kg, of which 0.91 to 1 counts as dextrose (it may hold its water of crystals).
    expect(one?.sugarGPerKg).toBeCloseTo(4 * 0.955, 6);
    expect(finished('formula:018cdc00-0000-7000-a000-00000000000f')).toEqual([]);
  });

  test('where the pH may end is said from the start alone', () => {
    const ends = sugarView({
      ...{ texts: { startPh: '5.8' }, formula, plan: plan(formula), ferments: [], place, words },
    }).results.find(({ label }) => label === words.formulaSheets.sugar.ends);
    expect(ends?.value).toMatch(/^~\d\.\d to \d\.\d$/);
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

describe('a card to print', () => {
  const card = (of: Formula, bench = { leanG: 2250, fatG: 750, pieces: null } as BenchRead | null) =>
    cardView({ formula: of, line: 'version 1', bench, place, words });
  const row = (of: Formula, id: string) => card(of).rows.find(({ key }) => key === id)?.cells;

  test('says of each line its base, its grams for a kilo, and its grams for the meat here', () => {
    expect(card(SALAME).heads).toEqual([
      'Line',
      'How much, of what',
      'for 1 kg of meat',
      'for 3\u202f000\u00a0g of meat',
    ]);
    expect(row(SALAME, 'salt')?.slice(1)).toEqual(['28.0\u00a0g', '84.0\u00a0g']);
    expect(row(SALAME, 'cure')?.slice(1)).toEqual(['2.50\u00a0g', '7.50\u00a0g']);
    expect(row(SALAME, 'cure')?.[0]).toContain('6.25');
    expect(card(SALAME).cautions.join()).toContain('Compare them with yours');
  });

  test('what does not grow with the meat has no grams for a kilo, nor has a share of a mix that holds it', () => {
    const fixed = {
      id: 'water',
      name: 'Water',
      role: 'liquid',
      amount: { basis: 'fixed', amountG: 50 },
    } as const;
    const share = {
      id: 'share',
      name: 'Share',
      role: 'spice',
      amount: { basis: 'pct-of-total', amountPct: 1 },
    } as const;
    const both = { ...SALAME, lines: [...SALAME.lines, fixed, share] };
    expect(row(both, 'water')?.slice(1)).toEqual(['–', '50.0\u00a0g']);
    expect(row(both, 'share')?.[1]).toBe('–');
    expect(card(both).notes.join()).toContain('do not grow with the meat');
    const alone = { ...SALAME, lines: [...SALAME.lines, share] };
    // 1 % of the mix that it is part of: 1030.5 g / 0.99 x 0.01.
    expect(row(alone, 'share')?.[1]).toBe('10.41\u00a0g');
    expect(card(alone).notes.join()).not.toContain('do not grow with the meat');
  });

  test('a line by the piece leaves the grams open until the pieces are counted', () => {
    const piece = {
      id: 'p',
      name: 'Clip',
      role: 'other',
      amount: { basis: 'per-piece', pieceG: 2 },
    } as const;
    const counted = { ...SALAME, lines: [...SALAME.lines, piece] };
    expect(card(counted).heads.length).toBe(3);
    expect(card(counted, { leanG: 750, fatG: 250, pieces: 4 }).rows.at(-1)?.cells[2]).toBe('8.00\u00a0g');
  });
});

describe('a whole muscle, piece by piece', () => {
  /** 3 % of salt in all with 0.25 % of a 6.25 % cure of 4 % nitrate: 1,000 g take 27.76 g and 2.50 g (mass balance, derived). */
  const muscle: Formula = {
    name: 'Invented muscle',
    kind: 'whole-muscle',
    species: ['pork'],
    fatPctOfMeat: 0,
    lines: [
      { id: 'salt', name: 'Salt', role: 'salt', amount: { basis: 'pct-of-meat', amountPct: 2.775625 } },
      {
        id: 'cure',
        name: 'Cure',
        role: 'cure',
        amount: { basis: 'pct-of-meat', amountPct: 0.25 },
        cure: { nitritePct: 6.25, nitratePct: 4, nitriteSalt: 'NaNO2', nitrateSalt: 'NaNO3' },
      },
    ],
  };
  const scales = [{ id: 'k', stepG: 0.01, capacityG: null }];
  const pieces = (text: string, of = muscle) => piecesView({ text, formula: of, scales, place, words });

  test('each gets the grams of its own weight, the salt of the cure counted', () => {
    const view = pieces('1000 2000');
    expect(view.pieces.map(({ grams }) => grams)).toEqual([
      ['Salt 27.76\u00a0g', 'Cure 2.50\u00a0g'],
      ['Salt 55.51\u00a0g', 'Cure 5.00\u00a0g'],
    ]);
    expect(view.pieces[0]?.note).toContain('3.00\u00a0% salt');
  });

  test('what is no weight is named, and nothing is worked out', () => {
    expect(pieces('1000 12x')).toMatchObject({ pieces: [], problem: '“12x” is no weight of a piece.' });
    expect(pieces('')).toMatchObject({ pieces: [], problem: null, note: null });
  });
});
