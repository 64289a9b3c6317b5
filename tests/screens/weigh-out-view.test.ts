import { describe, expect, it } from 'vitest';
import { toWeigh, weighOutView } from '#screens/weigh-out/weigh-out-view.ts';
import { isUnlikely, mostText, unitOf } from '#screens/weigh-out/weigh-sheet-view.ts';
import { en as words } from '#words/en.ts';
import { plainText } from '#words/said.ts';
import {
  BATCH,
  type Book,
  batchOf,
  book,
  kitOf,
  openBatch,
  placeOf,
  SALAME,
  setUp,
  weighMeat,
  weighOutSalt,
} from './book.ts';

function viewOf(of: Book) {
  return weighOutView({ batch: batchOf(of), kit: kitOf(of), place: placeOf(of), words });
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
    expect(cure?.base).toBe('0.25 % of meat, bag: 6.25 % nitrite, rounded down');
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

  it('can be taken as asked, in the very signs that would be typed', () => {
    expect(asked.target).toEqual({ value: '90.0', text: '90.0\u00a0g' });
    expect(meat.target).toBeNull();
  });

  it('is asked about once below half of its target or above half as much again', () => {
    expect([44.9, 45, 90, 135, 135.1].map((massG) => isUnlikely(massG, asked))).toEqual([
      true,
      false,
      false,
      false,
      true,
    ]);
  });

  it('names the most in the unit that is typed', () => {
    const place = placeOf(bench());
    expect([unitOf(asked, place), mostText('g', place)]).toEqual(['g', '200\u202f000 g']);
    const pounds = { ...place, mass: 'pounds' } as const;
    expect([unitOf(asked, pounds), unitOf(meat, pounds)]).toEqual(['oz', 'lb']);
  });
});
