import { describe, expect, it } from 'vitest';
import type { FormulaLine } from '#core/formula/formula.ts';
import type { BodyOf } from '#record/kinds.ts';
import type { SubjectId } from '#record/subject.ts';
import { benchView } from '#screens/bench/bench-view.ts';
import { costView, firstCosts } from '#screens/weigh-out/cost-view.ts';
import { madeFrom } from '#screens/weigh-out/made-from.ts';
import { toWeigh, weighOutView } from '#screens/weigh-out/weigh-out-view.ts';
import { mostText, type ToWeigh, unitOf, weighQuestion } from '#screens/weigh-out/weigh-sheet-view.ts';
import { en as words } from '#words/en.ts';
import { plainText } from '#words/said.ts';
import {
  BATCH,
  type Book,
  batchOf,
  book,
  FORMULA,
  kitOf,
  openBatch,
  PLAN,
  pieceId,
  placeOf,
  SALAME,
  START_MS,
  setUp,
  stuff,
  weighMeat,
  weighOutSalt,
  weighRound,
} from './book.ts';

function viewOf(of: Book, nowMs = START_MS) {
  return weighOutView({ batch: batchOf(of), kit: kitOf(of), place: placeOf(of), nowMs, words });
}
const sentence = (of: Book) => plainText(viewOf(of).sentence);
const line = (of: Book, id: string) => viewOf(of).lines.find((each) => each.id === id);
const first = (of: Book) => viewOf(of).verdicts[0];
const bench = (ruleSet: 'US' | 'CA' | 'EU' = 'US') => openBatch(setUp(book(), { ruleSet }));

describe('3,215 g of meat with 2.8 % of salt and 0.25 % of a curing salt of 6.25 %', () => {
  it('asks for 90.0 g of salt on the scale of 0.1 g', () => {
    expect(line(weighMeat(bench()), 'salt')).toMatchObject({ value: '90.0', unit: 'g', targetG: 90 });
  });

  it('asks for 8.03 g of cure on the scale of 0.01 g, rounded down from 8.0375', () => {
    const cure = line(weighMeat(bench()), 'cure');
    expect(cure).toMatchObject({ value: '8.03', unit: 'g', targetG: 8.03 });
    expect(cure?.base).toBe(
      '0.25 % of meat, bag: 6.25 % nitrite, rounded down, ± 0.2 mg/kg nitrite by the step',
    );
  });

  it('shows its nitrite rounded up beside the limit: 156.11 of 156.25 mg/kg', () => {
    expect(sentence(weighMeat(bench()))).toContain(
      'Nitrite: 156.11\u00a0mg/kg of meat will go in; the limit is 156.25\u00a0mg/kg.',
    );
    expect(sentence(weighOutSalt(weighMeat(bench())))).toContain('156.11\u00a0mg/kg of meat went in');
  });

  it('calls one step more, 8.04 g, a deviation and says not to mix it in', () => {
    const over = weighOutSalt(weighMeat(bench()), { cureG: 8.04 });
    expect(sentence(over)).toBe(
      'Nitrite: 156.30\u00a0mg/kg of meat, over the limit of 156.25\u00a0mg/kg. Do not mix it in. Weigh the cure again.',
    );
    expect(first(over)).toMatchObject({ key: 'nitrite-in-most', verdict: 'deviation' });
  });

  it('does not call 8.03 g within limit while its scale could hide 8.04 g, and says what would be', () => {
    const weighed = weighOutSalt(weighMeat(bench()));
    expect(first(weighed)).toMatchObject({ key: 'nitrite-in-most', verdict: 'no-reading' });
    expect(first(weighed)?.word).toContain('the scale is too coarse to tell');
    expect(sentence(weighed)).toMatch(
      /On this scale it could be anything from .* or weigh at most 8\.02\u00a0g\.$/,
    );
  });

  it('shows the working of its nitrite from the same grams', () => {
    const working = viewOf(weighOutSalt(weighMeat(bench()))).nitriteWorking;
    expect(working?.rows.map(({ label, value }) => [label, value])).toEqual(
      expect.arrayContaining([
        ['meat, lean and fat', '3\u202f215\u00a0g'],
        ['Curing salt', '8.03\u00a0g'],
        ['Curing salt: nitrite printed on the bag', '6.25\u00a0%'],
      ]),
    );
    expect(working?.result.value).toBe('156.11\u00a0mg/kg');
    expect(working?.sources.length).toBe(1);
  });
});

describe('a weigh-out', () => {
  it('waits for the meat, and then leads from line to line', () => {
    expect(sentence(bench())).toBe('Weigh the trimmed meat first; every other gram follows from it.');
    expect(viewOf(bench()).lines).toEqual([]);
    const view = viewOf(weighMeat(bench()));
    expect([view.next, view.left, view.following('salt'), view.following('cure')]).toEqual([
      'salt',
      2,
      'cure',
      'salt',
    ]);
    const done = viewOf(weighOutSalt(weighMeat(bench())));
    expect([done.next, done.left, done.lines.map((each) => each.done)]).toEqual([null, 0, [true, true]]);
  });

  it('adds up the trays of meat and says how many there were', () => {
    const trays = weighMeat(bench());
    trays.put(0.3, 'meat-weighed', BATCH, { part: 'lean', massG: 589 });
    expect(viewOf(trays).meat.map(({ label, value, note }) => [label, value, note])).toEqual([
      ['Lean', '3\u202f000', '2 weighings'],
      ['Fat', '804', 'one weighing'],
    ]);
  });

  it('holds the ion against the limit of the EU, and nitrite with nitrate against that of Canada', () => {
    expect(sentence(weighMeat(bench('EU')))).toContain('Nitrite as ion');
    expect(sentence(weighMeat(bench('CA')))).toContain('Nitrite and nitrate together');
  });

  it('says that nothing guards against botulism where no line is a cure', () => {
    const lines = SALAME.lines.filter(({ id }) => id !== 'cure');
    const bare = weighMeat(openBatch(setUp(book()), { formula: { ...SALAME, lines } }));
    expect(sentence(bare)).toContain('Nothing here guards against botulism.');
  });

  it('rounds to whole grams and says so where no scale was entered', () => {
    const view = weighOutView({
      batch: batchOf(weighMeat(bench())),
      kit: { lots: [], scales: [] },
      place: placeOf(bench()),
      nowMs: START_MS,
      words,
    });
    expect(view.noScale).toBe(true);
    expect(view.lines.map(({ value }) => value)).toEqual(['90', '8']);
  });

  it('offers the bags of curing salt that came in to the line of cure alone', () => {
    const view = viewOf(weighMeat(bench()));
    expect(view.lines.map(({ lots }) => lots.map(({ label }) => label))).toEqual([[], ['Curing salt C-77']]);
  });
});

describe('one weighing', () => {
  const asked = toWeigh('salt', viewOf(weighMeat(bench())));
  const meat = toWeigh('lean', viewOf(bench()));
  if (!asked || !meat) throw new Error('nothing to weigh');
  const question = (massG: number, what: ToWeigh) =>
    weighQuestion(massG, `${massG} g`, what, placeOf(bench()), words);
  const leanOnly = (massG: number) => {
    const of = bench();
    of.put(0.25, 'meat-weighed', BATCH, { part: 'lean', massG });
    return of;
  };

  it('can be taken as asked, in the very signs that would be typed', () => {
    expect(asked.target).toEqual({ value: '90.0', text: '90.0\u00a0g' });
    expect([meat.target, meat.before, asked.before]).toEqual([null, null, null]);
    const again = toWeigh('salt', viewOf(weighOutSalt(weighMeat(bench()))));
    expect(again?.before).toBe('90.0\u00a0g');
  });

  it('is asked about once below half of its target or above half as much again', () => {
    expect([44.9, 45, 90, 135, 135.1].map((massG) => question(massG, asked) !== null)).toEqual([
      true,
      false,
      false,
      false,
      true,
    ]);
    expect(question(900, asked)).toContain('900 g, and 90.0\u00a0g were asked for');
  });

  it('of meat is asked about where a digit too many would make it another mix', () => {
    const fat = toWeigh('fat', viewOf(leanOnly(2411)));
    const more = toWeigh('lean', viewOf(weighMeat(bench())));
    if (!fat || !more) throw new Error('nothing to weigh');
    expect([804, 2000].map((massG) => question(massG, fat))).toEqual([null, null]);
    expect(question(8040, fat)).toBe(
      '8040 g: with that, fat is 77 % of the meat, and the formula wants 25 %. Is that what the scale shows?',
    );
    expect(question(24110, more)).toContain('fat is 3 % of the meat');
    expect(question(0, meat)).toBe('0 g: nothing lies on the scale. Is that what it shows?');
  });

  it('of the first lean is asked about too: a digit too many, a digit too few', () => {
    expect([2411, 250, 12000].map((massG) => question(massG, meat))).toEqual([null, null, null]);
    for (const massG of [24110, 24.11])
      expect(question(massG, meat)).toBe(
        `${massG} g: a tray of meat is mostly 200\u00a0g to 15\u202f000\u00a0g. Is that what the scale shows?`,
      );
  });

  it('of meat is held against what was said to lie ready, and against what any scale here carries', () => {
    const planned = setUp(book());
    const body = { lot: 'P', formula: SALAME, ruleSet: 'US', plan: PLAN, plannedMeatG: 3215 } as const;
    planned.put(0, 'batch-opened', BATCH, body, { refs: [FORMULA] });
    const of = toWeigh('lean', viewOf(planned));
    if (!of) throw new Error('nothing to weigh');
    expect(question(2411, of)).toBeNull();
    expect(question(24.11, of)).toContain('a tray of meat is mostly');
    expect(question(24110, of)).toBe(
      '24110 g makes 24\u202f110\u00a0g of lean, and about 2\u202f411\u00a0g were planned. Is that what the scale shows?',
    );
    if (!meat.meat) throw new Error('no meat');
    const small: ToWeigh = { ...meat, meat: { ...meat.meat, mostOnScaleG: 5000 } };
    expect(question(6000, small)).toContain('no scale here carries more than 5\u202f000\u00a0g');
  });

  it('stands on its line with its target and tolerance, and says where it lies outside', () => {
    const line = (of: Book, id: string) => viewOf(of).lines.find((each) => each.id === id);
    // Salt within 1 % of 90.0 g, cure within 5 % of 8.03 g (from memory, medium: tolerances of the bench).
    expect(line(weighMeat(bench()), 'salt')?.note).toBe('± 0.9\u00a0g, on Bench scale');
    expect(line(weighMeat(bench()), 'cure')?.note).toBe(
      'never more, at most 0.40\u00a0g less, on Small scale',
    );
    expect(line(weighMeat(bench()), 'cure')?.base).toMatch(
      /rounded down, ± 0\.2 mg\/kg nitrite by the step$/,
    );
    const done = weighOutSalt(weighMeat(bench()));
    expect(line(done, 'salt')).toMatchObject({ note: 'target 90.0\u00a0g, ± 0.9\u00a0g', outside: false });
    const off = weighOutSalt(weighMeat(bench()), { cureG: 7.6 });
    expect(line(off, 'cure')).toMatchObject({
      value: '7.60',
      note: 'target 8.03\u00a0g, never more, at most 0.40\u00a0g less: outside it, weigh it again',
      outside: true,
    });
    expect(viewOf(off).outside).toEqual(['Curing salt']);
    expect(viewOf(weighOutSalt(weighMeat(bench()), { cureG: 7.63 })).outside).toEqual([]);
  });

  it('that was the last can be struck at once, whichever it was; the one before it is then the last', () => {
    const of = weighMeat(bench());
    expect(viewOf(bench()).last).toBeNull();
    expect(viewOf(of).last?.text).toBe('Fat 804\u00a0g');
    weighOutSalt(of);
    const last = viewOf(of).last;
    expect(last?.text).toBe('Curing salt 8.03\u00a0g');
    if (!last) throw new Error('none to strike');
    of.put(0.6, 'struck', BATCH, {}, { strikes: last.id });
    expect(viewOf(of).last?.text).toBe('Salt 90.00\u00a0g');
    expect(viewOf(of).next).toBe('cure');
  });

  it('names the most in the unit that is typed', () => {
    const place = placeOf(bench());
    expect([unitOf(asked, place), mostText('g', place)]).toEqual(['g', '200\u202f000 g']);
    const pounds = { ...place, mass: 'pounds' } as const;
    expect([unitOf(asked, pounds), unitOf(meat, pounds)]).toEqual(['oz', 'lb']);
  });
});

describe('a culture', () => {
  const PACK: SubjectId = 'lot:018cdc00-0000-7000-a000-000000000009';
  const DAY_MS = 86_400_000;
  const culture: FormulaLine = {
    id: 'culture',
    name: 'Starter',
    role: 'starter',
    amount: { basis: 'pack-share', packG: 25, packFraction: 0.25, doseGPerKg: 0.12, minimumG: 0 },
  };
  const withPack = (pack: Partial<BodyOf<'received'>>) => {
    const of = setUp(book());
    of.put(-2, 'received', PACK, { what: 'culture', name: 'Starter', lot: 'S-1', supplier: '', ...pack });
    openBatch(of, { formula: { ...SALAME, lines: [...SALAME.lines, culture] } });
    of.put(0.25, 'meat-weighed', BATCH, { part: 'lean', massG: 1200 });
    return of;
  };
  const shown = (pack: Partial<BodyOf<'received'>>) =>
    viewOf(withPack(pack), START_MS).lines.find(({ id }) => id === 'culture');

  it('for 1.2 kg takes a quarter of its pack, 6.25 g, and says why', () => {
    expect(shown({})).toMatchObject({ value: '6.25', unit: 'g' });
    expect(shown({})?.base).toBe(
      'the share of the pack: more than by weight of meat (0.14\u00a0g), rounded up',
    );
  });

  it('opened 90 days ago is flagged on its line and where the pack is chosen; 60 days ago it is not', () => {
    const opened = (days: number) => shown({ storage: 'frozen', openedOnMs: START_MS - days * DAY_MS });
    expect(opened(90)?.note).toContain('opened 90 d ago, in the freezer: packs are said to keep 60 d');
    expect(opened(90)?.lots[0]?.note).toContain('Only the pH will tell');
    expect(opened(60)?.note).toMatch(/opened 60 d ago, in the freezer$/);
  });

  it('past its printed date says that first, and an age that was not written down is called unknown', () => {
    expect(shown({ storage: 'frozen', bestBeforeMs: START_MS - DAY_MS })?.note).toContain('past its date');
    expect(shown({})?.note).toContain('age of the pack unknown');
  });
});

describe('meat counted against what lay ready', () => {
  const planned = (plan: { plannedMeatG?: number; plannedTrays?: number }) => {
    const of = setUp(book());
    const body = { lot: '240108', formula: SALAME, ruleSet: 'US', plan: PLAN } as const;
    of.put(0, 'batch-opened', BATCH, { ...body, ...plan }, { refs: [FORMULA] });
    return of;
  };
  const trays = (of: Book, count: number) => {
    for (let tray = 0; tray < count; tray++)
      of.put(0.1, 'meat-weighed', BATCH, { part: 'lean', massG: 1000 });
    return of;
  };
  const bench = (of: Book) =>
    benchView({ batch: batchOf(of), place: placeOf(of), nowMs: START_MS, words }).miscounted;

  it('six lots for a plan of five cannot pass to the mix without a choice, and the choice is kept', () => {
    const of = trays(planned({ plannedTrays: 5 }), 6);
    expect(viewOf(of).count).toMatchObject({
      texts: ['6 trays were weighed, 5 were planned.'],
      open: true,
      body: { trays: 6, meatG: 6000 },
    });
    expect(bench(of)).toBe(true);
    of.put(0.2, 'count-kept', BATCH, { trays: 6, meatG: 6000 });
    expect([viewOf(of).count?.open, bench(of)]).toEqual([false, false]);
    trays(of, 1);
    expect([viewOf(of).count?.open, bench(of)]).toEqual([true, true]);
  });

  it('a tenth more or less than the mass planned passes, beyond that it is asked', () => {
    const open = (plannedMeatG: number) => viewOf(trays(planned({ plannedMeatG }), 5)).count?.open ?? false;
    expect([5000, 5555, 5556, 4546, 4545].map(open)).toEqual([false, false, true, false, true]);
  });

  it('says nothing where nothing was planned or nothing is weighed yet', () => {
    expect(viewOf(trays(planned({}), 3)).count).toBeNull();
    expect(viewOf(planned({ plannedTrays: 5 })).count).toBeNull();
    expect(viewOf(trays(planned({ plannedTrays: 5 }), 5)).count).toBeNull();
  });
});

describe('the cost of a batch', () => {
  const cost = (of: Book, texts: Record<string, string>) => costView(batchOf(of), texts, placeOf(of), words);
  const results = (of: Book, texts: Record<string, string>) =>
    Object.fromEntries(cost(of, texts).results.map(({ label, value }) => [label, value]));

  it('counts losses and samples: 54 for 3,313.03 g of mix, 38 % lost, 3 % cut', () => {
    const of = weighOutSalt(weighMeat(bench()));
    // 54 / (3.31303 x 0.62 x 0.97) = 27.10 a kilo (arithmetic).
    expect(results(of, { meat: '40', salt: '4', cure: '5', other: '5', sampled: '3' })).toEqual({
      'In all': '54.00',
      'A kilo of mix': '16.30',
      'A kilo finished': '~27.10',
    });
  });

  it('takes the loss from the scale once every piece is down, and then says no "~"', () => {
    const of = weighRound(stuff(weighOutSalt(weighMeat(bench())), { greenG: [1000, 1000] }), 700, [600, 640]);
    const typed = { meat: '40', salt: '4', cure: '5', other: '5' };
    expect(results(of, typed)['A kilo finished']).toBe('~43.55');
    for (const number of [1, 2])
      of.put(701, 'taken-down', pieceId(number), { why: 'at-target' }, { refs: [BATCH] });
    // 54 / 1.24 kg.
    expect(results(of, typed)).toMatchObject({ 'A kilo finished': '43.55', 'A piece': '27.00' });
    expect(cost(of, typed).note).toContain('Loss as weighed.');
  });

  it('says how many lines have no price, keeps nothing while a price is wrong, and shows what was kept', () => {
    const of = weighOutSalt(weighMeat(bench()));
    expect(cost(of, { meat: '40' }).note).toContain('2 without a price: the cost is at least this.');
    expect(cost(of, { meat: '4x' }).body).toBeNull();
    expect(cost(of, {}).body).toBeNull();
    of.put(1, 'priced', BATCH, { costs: [{ of: 'meat', cents: 4050 }], sampledPct: 3 });
    expect(firstCosts(batchOf(of), placeOf(of), words)).toEqual({ meat: '40.5', sampled: '3' });
  });
});

describe('the formula of a batch', () => {
  it('is linked by the version that it was opened from, where that is in this book', () => {
    const of = setUp(book());
    const later = of.put(0, 'formula-saved', FORMULA, { formula: SALAME, note: 'later' });
    const from = { formula: FORMULA, entry: later.id };
    const body = { lot: 'V', formula: SALAME, from, ruleSet: 'US', plan: PLAN } as const;
    of.put(1, 'batch-opened', BATCH, body, { refs: [FORMULA] });
    const versions = of.entries.filter(({ subject }) => subject === FORMULA);
    expect(madeFrom(batchOf(of), [{ id: FORMULA, versions }])).toEqual({
      number: 2,
      href: `#/formulas/${FORMULA.slice('formula:'.length)}~2`,
    });
    expect(madeFrom(batchOf(of), [])).toBeNull();
    expect(madeFrom(batchOf(bench()), [{ id: FORMULA, versions }])).toBeNull();
  });
});
