import { describe, expect, test } from 'vitest';
import type { CureLabel, Formula, FormulaLine } from '#core/formula/formula.ts';
import type { Place, Scale } from '#record/place.ts';
import { benchScales } from '#record/weigh-out-figures.ts';
import { readBench } from '#screens/formulas/bench-input.ts';
import { formulaView, type ShownBase } from '#screens/formulas/formula-view.ts';
import { en as words } from '#words/en.ts';
import { plainText } from '#words/said.ts';

const US: Place = {
  chosen: true,
  mass: 'metric',
  temperature: 'C',
  decimal: '.',
  paper: 'A4',
  initials: 'ab',
  ruleSet: 'US',
};
const SCALES: Scale[] = [
  { id: 'instrument:meat', name: 'Meat scale', stepG: 1, mostG: null },
  { id: 'instrument:bench', name: 'Bench scale', stepG: 0.1, mostG: 500 },
  { id: 'instrument:pocket', name: 'Pocket scale', stepG: 0.01, mostG: 50 },
];
const LABEL: CureLabel = { nitritePct: 6.25, nitratePct: 0, nitriteSalt: 'NaNO2', nitrateSalt: 'NaNO3' };

const SALT: FormulaLine = {
  id: 'salt',
  name: 'Salt',
  role: 'salt',
  amount: { basis: 'pct-of-meat', amountPct: 2.8 },
};
const CURE: FormulaLine = {
  id: 'cure',
  name: 'Curing salt',
  role: 'cure',
  amount: { basis: 'pct-of-meat', amountPct: 0.25 },
  cure: LABEL,
};

function formula(lines: FormulaLine[] = [SALT, CURE], more: Partial<Formula> = {}): Formula {
  return { name: 'Invented', kind: 'comminuted', species: ['pork'], fatPctOfMeat: 25, lines, ...more };
}

function view(
  of: Formula,
  {
    lean = '2411',
    fat = '804',
    pieces = '',
    place = US,
    scales = SCALES,
    base = 'written' as ShownBase,
  } = {},
) {
  const { bench } = readBench({ texts: { lean, fat, pieces }, formula: of, place, words });
  return formulaView({ formula: of, bench, scales, benchScales: benchScales(scales), base, place, words });
}

const grams = (shown: ReturnType<typeof view>) =>
  shown.lines.map(({ mass }) => (mass ? `${mass.value} ${mass.unit}` : null));

describe('3,215 g of meat with 2.8 % salt and 0.25 % of a 6.25 % cure', () => {
  const shown = view(formula());

  test('comes to 90.0 g salt and 8.03 g cure', () => {
    expect(grams(shown)).toEqual(['90.0 g', '8.03 g']);
  });

  test('carries 156.104 mg/kg, shown rounded up beside the limit of 156.25', () => {
    expect(plainText(shown.sentence)).toContain('156.11\u00a0mg/kg of meat; the limit is 156.25.');
    expect(shown.findings[0]?.word).toBe('pending: most nitrite');
  });

  test('opens its working with the numbers it was made from, the limit and its standing', () => {
    const working = shown.findings[0]?.working;
    expect(working?.rows.map(({ value }) => value)).toEqual([
      '8.03\u00a0g',
      '6.25\u00a0%',
      '3\u202f215\u00a0g',
      '156.25\u00a0mg/kg',
      '155.82 to 156.40\u00a0mg/kg',
    ]);
    expect(working?.result?.value).toBe('156.11\u00a0mg/kg');
    expect(working?.limit?.value).toBe('at most 156.25 mg/kg');
    expect(working?.sources[0]?.standing).toContain('second-hand');
  });

  test('says which reading keeps the limit whatever the scales hide', () => {
    expect(plainText(shown.sentence)).toContain('weigh 8.02\u00a0g to stay under it');
  });

  test('counts the salt inside the cure: 2.8 and 0.234 are 3.03 % of meat', () => {
    expect(shown.figures[0]).toMatchObject({ value: '3.03', about: false });
  });

  test('more meat changes every line and leaves none of the old grams', () => {
    expect(grams(view(formula(), { lean: '2475', fat: '825' }))).toEqual(['92.4 g', '8.25 g']);
    expect(grams(view(formula(), { lean: '24x' }))).toEqual([null, null]);
  });
});

test('8.04 g of the cure is a deviation, and says what to do', () => {
  const fixed = formula([SALT, { ...CURE, amount: { basis: 'fixed', amountG: 8.04 } }]);
  const shown = view(fixed);
  expect(grams(shown)[1]).toBe('8.04 g');
  expect(shown.findings[0]?.verdict).toBe('deviation');
  expect(plainText(shown.sentence)).toContain(
    '156.30\u00a0mg/kg of meat, over the limit of 156.25: take less',
  );
  expect(shown.findings[0]?.working?.caution).toContain('ask the local authority');
});

test('a plan is never within a limit', () => {
  const verdicts = view(formula()).findings.map(({ verdict }) => verdict);
  expect(verdicts).not.toContain('within-limit');
});

test('decimal commas are read and written', () => {
  const comma: Place = { ...US, decimal: ',' };
  const shown = view(formula(), { lean: '2411,0', fat: '804', place: comma });
  expect(grams(shown)).toEqual(['90,0 g', '8,03 g']);
  expect(plainText(shown.sentence)).toContain('156,11\u00a0mg/kg of meat; the limit is 156,25.');
});

test('in pounds the same batch is written in pounds and ounces', () => {
  const pounds: Place = { ...US, mass: 'pounds' };
  const shown = view(formula(), { lean: '5.3153', fat: '1.7725', place: pounds });
  expect(grams(shown)).toEqual(['3.175 oz', '0.2832 oz']);
});

test('without a rule set there is no reading, and the maker is asked to choose', () => {
  const shown = view(formula(), { place: { ...US, ruleSet: null } });
  expect(shown.findings).toMatchObject([{ verdict: 'no-reading', word: 'no reading: choose a rule set' }]);
  expect(plainText(shown.sentence)).toContain('choose a rule set');
});

test('a cure without its printed percentages has no nitrite figure', () => {
  const { cure: _label, ...named } = CURE;
  const shown = view(formula([SALT, named]));
  expect(shown.findings.map(({ verdict }) => verdict)).toContain('no-reading');
  expect(plainText(shown.sentence)).toContain('not known');
  expect(shown.figures.map(({ label }) => label)).not.toContain('nitrite going in');
  expect(shown.lines[1]?.amount).toContain('bag percentages missing');
  expect(shown.figures.map(({ label }) => label)).toEqual(['salt, at the least']);
});

test('the EU counts the ion: 156.104 mg/kg nitrite are 104.6 as ion, over 80', () => {
  const shown = view(formula(), { place: { ...US, ruleSet: 'EU' } });
  expect(plainText(shown.sentence)).toContain('104.6\u00a0mg/kg of meat, over the limit of 80');
});

test('Canada asks for salt of the mix as well', () => {
  const shown = view(formula(), { place: { ...US, ruleSet: 'CA' } });
  expect(shown.findings.map(({ word }) => word)).toEqual([
    'pending: most nitrite and nitrate',
    'pending: least nitrite and nitrate',
    'pending: least salt',
  ]);
});

test('switching the base shown keeps the grams', () => {
  const wine: FormulaLine = {
    id: 'wine',
    name: 'Wine',
    role: 'liquid',
    amount: { basis: 'pct-of-total', amountPct: 5 },
  };
  const of = formula([SALT, CURE, wine]);
  const bases: ShownBase[] = ['written', 'pct-of-meat', 'pct-of-total', 'g-per-kg-meat', 'written'];
  const shown = bases.map((base) => view(of, { base }));
  expect(new Set(shown.map((each) => grams(each).join())).size).toBe(1);
  expect(shown.map(({ lines }) => lines[2]?.amount)).toEqual([
    '5\u00a0% of total',
    '5.424\u00a0% of meat',
    '5.000\u00a0% of total',
    '54.24\u00a0g/kg of meat',
    '5\u00a0% of total',
  ]);
});

test('an estimate carries its "~": the salt of the slice at the loss aimed at', () => {
  const slice = view(formula([SALT, CURE], { targetLossPct: 38 })).figures[1];
  expect(slice).toMatchObject({ about: true, note: 'at 38 % loss', value: '4.7' });
  expect(slice?.working.result?.value).toBe('~4.7\u00a0%');
});

test('every line says on which scale it goes and what its step leaves open, a cure in mg/kg as well', () => {
  // Tare and reading: 0.1 g of 90.0 g; 0.01 g of 8.03 g, 625 µg of nitrite on 3,215 g (arithmetic, derived).
  expect(view(formula()).lines.map(({ note }) => note)).toEqual([
    'Bench scale, ±\u00a00.2\u00a0%',
    'Pocket scale, ±\u00a00.2\u00a0%',
  ]);
  expect(view(formula()).lines[1]?.amount).toMatch(
    /rounded down · ±\u00a00\.2\u00a0mg\/kg nitrite by the step$/,
  );
  // One scale of 1 g and 2 g of cure on 1 kg: 1 g is half of it, and 62.5 mg/kg (as in the check of the step of a scale).
  const coarse = view(formula(), { lean: '750', fat: '250', scales: [] });
  expect(coarse.lines[1]?.note).toBe('±\u00a050.0\u00a0%');
  expect(coarse.lines[1]?.amount).toContain('±\u00a062.5\u00a0mg/kg nitrite');
});

test('a coarse scale is named, with how far it leaves the nitrite open', () => {
  const shown = view(formula(), { lean: '750', fat: '250', scales: [] });
  expect(grams(shown)).toEqual(['28 g', '2 g']);
  expect(plainText(shown.sentence)).toContain(
    'On this scale (whole grams) it could be anything from 62 to 188',
  );
});

test('the starter says which of its bounds decided', () => {
  const starter: FormulaLine = {
    id: 'starter',
    name: 'Starter',
    role: 'starter',
    amount: { basis: 'pack-share', packG: 25, packFraction: 0.25, doseGPerKg: 0.12, minimumG: 0 },
  };
  const shown = view(formula([starter]), { lean: '1200', fat: '0' });
  expect(grams(shown)).toEqual(['6.25 g']);
  expect(shown.lines[0]?.amount).toContain('here the share of the pack is more');
});

test('a line by the piece waits for the count of pieces', () => {
  const net: FormulaLine = { id: 'n', name: 'Net', role: 'other', amount: { basis: 'per-piece', pieceG: 2 } };
  expect(plainText(view(formula([net])).sentence)).toContain('how many pieces');
  expect(grams(view(formula([net]), { pieces: '14' }))).toEqual(['28.00 g']);
});

test('a formula whose shares leave no room for meat says so', () => {
  const all = ['a', 'b'].map(
    (id): FormulaLine => ({
      id,
      name: id,
      role: 'liquid',
      amount: { basis: 'pct-of-total', amountPct: 60 },
    }),
  );
  expect(plainText(view(formula(all)).sentence)).toContain('no room for meat');
});

describe('what a careful colleague asks', () => {
  const codes = (of: Formula, place = US) => view(of, { place }).guards.map(({ key }) => key.split(' ')[0]);
  const starter: FormulaLine = { ...SALT, id: 'st', name: 'Starter', role: 'starter' };

  test('nitrite alone for a ten-week plan, and no starter', () => {
    expect(codes(formula([SALT, CURE], { plannedDays: 70 }))).toEqual([
      'nitrite-alone-for-long',
      'no-starter',
    ]);
  });

  test('two curing salts: the doubled figure is said', () => {
    const shown = view(formula([SALT, CURE, { ...CURE, id: 'second' }, starter]));
    expect(shown.guards.find(({ key }) => key.startsWith('two-cures'))?.text).toContain('312 mg/kg');
  });

  test('every sentence names its standing', () => {
    for (const { standing } of view(formula([SALT])).guards) expect(standing).not.toBe('');
  });
});

test('a scale too coarse for the cure is offered a premix whose sums stay the same', () => {
  const label = { ...CURE, amount: { basis: 'fixed', amountG: 2.5 } as const };
  const shown = view(formula([SALT, label]), { lean: '750', fat: '250', scales: [] });
  expect(shown.premixes).toEqual([
    'No finer scale? Stir 80\u00a0g Curing salt evenly into 720\u00a0g Salt, weigh 25\u00a0g of that and 6\u00a0g Salt by itself: the step then leaves 3\u00a0% open. Label what is left over and keep it locked away.',
  ]);
});

test('a culture too little for the scale is stirred into sugar by the whole pack, and no carrier is given out twice', () => {
  const sugar: FormulaLine = {
    ...{ id: 'dextrose', name: 'Dextrose', role: 'sugar' },
    amount: { basis: 'pct-of-meat', amountPct: 3 },
  };
  const starter: FormulaLine = {
    ...{ id: 'starter', name: 'Culture', role: 'starter' },
    amount: { basis: 'pack-share', packG: 25, packFraction: 0, doseGPerKg: 1, minimumG: 0 },
  };
  const ascorbate: FormulaLine = {
    ...{ id: 'ascorbate', name: 'Ascorbate', role: 'other' },
    amount: { basis: 'pct-of-meat', amountPct: 0.05 },
  };
  const given = { lean: '2250', fat: '750', scales: [] };
  // 3 g of culture in a tenth of 25 g in 225 g: 30 g of the premix, the sugar cut by 27 of 90 g (arithmetic, derived).
  expect(view(formula([SALT, CURE, sugar, starter]), given).premixes.at(-1)).toContain(
    'Stir 25\u00a0g Culture evenly into 225\u00a0g Dextrose, weigh 30\u00a0g of that and 63\u00a0g Dextrose by itself',
  );
  const names = view(formula([SALT, CURE, sugar, starter, ascorbate]), given).premixes.map(
    (text) => /into [\d\u202f]+\u00a0g (\w+)/.exec(text)?.[1],
  );
  expect(names).toEqual(['Salt', 'Dextrose']);
  expect(view(formula([SALT, CURE, sugar, starter]), { lean: '2250', fat: '750' }).premixes).toEqual([]);
});
