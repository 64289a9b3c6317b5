import { describe, expect, it } from 'vitest';
import type { Evidence } from '#core/drying/belief.ts';
import { mixFromFat } from '#core/drying/equilibrium.ts';
import { diagonal } from '#core/drying/matrix.ts';
import { loads } from '#record/chamber-figures.ts';
import { dryingAhead, planFrom } from '#record/drying-ahead.ts';
import { batchAhead, batchGiven } from '#record/drying-batch.ts';
import type { SubjectId } from '#record/subject.ts';
import { givenBy, readBack } from '#screens/calendar/back-input.ts';
import { type BackWish, backView, leftForDrying } from '#screens/calendar/back-view.ts';
import { type Ahead, calendarView, comes } from '#screens/calendar/calendar-view.ts';
import { staysIn } from '#screens/calendar/rails-view.ts';
import { daysBefore } from '#words/days.ts';
import { en as words } from '#words/en.ts';
import { plainText } from '#words/said.ts';
import {
  BATCH,
  type Book,
  batchOf,
  book,
  CHAMBER,
  ferment,
  HOUR_MS,
  kitOf,
  openBatch,
  placeOf,
  START_MS,
  setUp,
  stuff,
  weighMeat,
  weighOutSalt,
  weighRound,
  ZONE,
} from './book.ts';

const SECOND: SubjectId = 'batch:018cdc00-0000-7000-a000-0000000000b2';
const DAY = 24;

/** Four pieces that hang, four more that ferment; a chamber of one rail with so many places. Invented. */
function twoBatches(places: number | null): Book {
  const of = setUp(book(), { ruleSet: 'US' });
  of.put(0, 'chamber-added', CHAMBER, { name: 'Cellar', rails: 1, ...(places ? { places } : {}) });
  ferment(stuff(weighOutSalt(weighMeat(openBatch(of)))));
  weighRound(of, 34, [800, 785, 792, 806], { stage: 'to-drying' });
  weighRound(of, 8 * DAY, [700, 690, 694, 705]);
  openBatch(of, { id: SECOND, lot: '240116', atHours: 8 * DAY });
  stuff(weighMeat(of, { id: SECOND, atHours: 8 * DAY + 1 }), { id: SECOND, atHours: 8 * DAY + 4, number: 2 });
  return of;
}
const NOW_MS = START_MS + 9 * DAY * HOUR_MS;

function aheadOf(of: Book): Ahead[] {
  const batches = [BATCH, SECOND].map((id) => batchOf(of, id)).filter(comes);
  return batches.map((batch) => ({
    batch,
    ahead: batchAhead(batchGiven(batch, { batches, air: null, nowMs: NOW_MS })),
  }));
}
function viewOf(of: Book, ahead = aheadOf(of)) {
  const { chambers } = kitOf(of);
  return calendarView({ ahead, chambers, nowMs: NOW_MS, zone: ZONE, words });
}

describe('the calendar', () => {
  it('has a bar a batch, solid until today, then the window in which it should be at target', () => {
    const view = viewOf(twoBatches(null));
    expect(view.rows.map(({ title }) => title)).toEqual([
      'Invented salame, lot 240108',
      'Invented salame, lot 240116',
    ]);
    for (const { bar, window } of view.rows) {
      expect(bar.from).toBeLessThan(bar.to);
      expect(bar.to).toBeCloseTo(view.today, 9);
      expect(window?.from).toBeGreaterThanOrEqual(view.today);
      expect(window?.to).toBeGreaterThan(window?.from ?? 100);
    }
    expect(view.rows[1]?.note).toContain('ferments');
    expect(plainText(view.sentence)).toMatch(/^2 batches on the rails; the next should be at target weight/);
  });

  it('draws what hangs before any window is known, promises nothing of it, and moves no row when one comes', () => {
    const of = twoBatches(6);
    const [first, second] = aheadOf(of);
    if (!first || !second) throw new Error('two batches: not there');
    const waiting = { ...second, ahead: undefined };
    const before = viewOf(of, [{ ...first, ahead: undefined }, waiting]);
    const half = viewOf(of, [first, waiting]);
    const after = viewOf(of);
    expect(before.rows.map(({ window }) => window)).toEqual([null, null]);
    for (const { note } of before.rows) expect(note).toContain('is being worked out');
    expect(plainText(before.sentence)).toContain('being worked out');
    expect(plainText(before.sentence)).not.toContain('twice');
    expect(before.rails[0]?.clash).toBeNull();
    expect(half.rows[0]?.window).not.toBeNull();
    expect(half.rows[0]?.note).toBe(after.rows[0]?.note);
    const order = after.rows.map(({ key }) => key);
    for (const view of [before, half]) expect(view.rows.map(({ key }) => key)).toEqual(order);
    expect(half.rails[0]?.clash).toBeNull();
    expect(after.rails[0]?.clash).not.toBeNull();
  });

  it('where it is open when all will be there, the bar goes on past the first day of what can be told', () => {
    const of = twoBatches(null);
    const open = (at: number | null) => ({ p10Ms: at, p50Ms: null, p90Ms: null });
    const ahead = aheadOf(of).map((each) => ({
      ...each,
      ahead: each.ahead && {
        ...each.ahead,
        first: open(NOW_MS + 60 * DAY * HOUR_MS),
        all: { ...open(null), neverFraction: 0.6 },
      },
    }));
    for (const { window, note } of viewOf(of, ahead).rows) {
      expect(window?.open).toBe(true);
      expect((window?.to ?? 0) - (window?.from ?? 100)).toBeGreaterThan(10);
      expect(note).toContain('not all at this humidity');
    }
  });

  it('says where nothing can be expected that no end is in sight', () => {
    const of = twoBatches(null);
    const view = viewOf(
      of,
      aheadOf(of).map((each) => ({ ...each, ahead: null })),
    );
    for (const { note, window } of view.rows) {
      expect(window).toBeNull();
      expect(note).toContain('no end in sight');
    }
  });

  it('says where nobody said how many pieces a rail holds that it cannot see a clash', () => {
    const [cellar] = viewOf(twoBatches(null)).rails;
    expect(cellar?.clash).toBeNull();
    expect(cellar?.note).toContain('8 pieces hang; say at the chamber');
  });

  it('sees a rail that is booked twice, and offers the day from which there is room', () => {
    const view = viewOf(twoBatches(6));
    const [cellar] = view.rails;
    expect(cellar?.note).toBe('8 of 6 places taken now');
    expect(plainText(cellar?.clash ?? [])).toMatch(
      /^2 pieces too many now: for all of lot 240116 there is room from \d+ \w+( \d{4})?\.$/,
    );
    expect(cellar?.bars.some(({ over }) => over)).toBe(true);
    expect(plainText(view.sentence)).toContain('Cellar is booked twice.');
  });

  it('is silent where all have room', () => {
    const view = viewOf(twoBatches(8));
    expect(view.rails[0]?.clash).toBeNull();
    expect(plainText(view.sentence)).not.toContain('twice');
  });

  it('keeps every bar within its width', () => {
    const { rails, rows } = viewOf(twoBatches(6));
    for (const { from, to } of [...rows.map(({ bar }) => bar), ...rails.flatMap(({ bars }) => bars)]) {
      expect(from).toBeGreaterThanOrEqual(0);
      expect(to).toBeLessThanOrEqual(100);
    }
  });
});

const MIX = mixFromFat({ fatFraction: 0.25, saltFraction: 0.028, sugarFraction: 0.003 });
const WISH = { mix: MIX, diameterMm: 60, targetLossPct: 35, chamberC: 13, humidityPct: 78 };
const ask = (of: Book, more: Partial<Omit<BackWish, 'plan'> & { history: readonly Evidence[] }> = {}) => {
  const { history = [], ...changed } = more;
  const asked = {
    ...{ date: '2026-12-24', today: '2026-06-01', wish: WISH, freezeDays: 20, lot: null },
    ...changed,
  } as const;
  const plan = planFrom({ wish: asked.wish, leftDays: leftForDrying(asked), history });
  return backView({ ...asked, plan }, { place: placeOf(of), words });
};

/** A batch whose water moved so many times as quick as usual, known to a tenth. Invented. */
function ownBatch(times: number): Evidence {
  const precision = diagonal([100, 0, 0, 0, 0, 0]);
  return { precision, pull: [100 * Math.log(times), 0, 0, 0, 0, 0] };
}

describe('back from 24 December, 60 mm, freezing at -15 °C', () => {
  const of = twoBatches(6);

  it('counts by hand from the days that drying takes: a week to even out, two of ferment, two to thaw, twenty frozen', () => {
    const view = ask(of);
    const days = Math.ceil(dryingAhead(WISH).p50Days ?? 0);
    const day = (before: number) =>
      words.dates.fullDay(Date.parse(daysBefore('2026-12-24', before)), '+00:00');
    const likely = view.rows.find(({ key }) => key === 'likely');
    expect(likely?.title).toBe(`As likely as not: ${day(7 + days + 2 + 2 + 20)}`);
    expect(likely?.steps).toBe(
      [
        `into the freezer ${day(7 + days + 24)}`,
        `out of it ${day(7 + days + 4)}`,
        `stuff ${day(7 + days + 2)}`,
        `hang ${day(7 + days)}`,
        'take down 17 December 2026',
      ].join(', '),
    );
    expect(view.still).toBeNull();
    expect(plainText(view.sentence)).toContain('The last chance is');
  });

  it('changes with own history, and says so', () => {
    const slow = ask(of, { history: [ownBatch(0.5), ownBatch(0.5), ownBatch(0.5)] });
    expect(slow.history).toMatch(
      /^Counted with 3 batches of your own: drying takes ~\d+\u00a0% longer than diameter, mix and air alone say\.$/,
    );
    expect(slow.rows[1]?.title).not.toBe(ask(of).rows[1]?.title);
    expect(ask(of).history).toBeNull();
  });

  it('too late, says what would still make it', () => {
    const { still, sentence } = ask(of, { today: '2026-11-01', freezeDays: 0 });
    expect(plainText(sentence)).toContain('As planned it will hardly be ready');
    expect(still?.some((each) => /^a casing of \d\d\u00a0mm instead$/.test(each))).toBe(true);
  });

  it('where the rails are full, offers another day and a smaller lot', () => {
    const { chambers } = kitOf(of);
    const chamber = {
      name: 'Cellar',
      places: 6,
      stays: staysIn(CHAMBER, { ahead: aheadOf(of), chambers, nowMs: NOW_MS }).slice(0, 1),
      hanging: [],
      everInside: [],
    };
    const soon = {
      date: '2024-04-01',
      today: '2024-01-17',
      freezeDays: 0,
      wish: { ...WISH, diameterMm: 40 },
    };
    const full = ask(of, { ...soon, lot: { pieces: 5, greenG: null, chamber } });
    expect(plainText(full.room[0] ?? [])).toMatch(
      /^Only 2 of 6 places are free in Cellar from .* on\. Hung on .* 2024 it has room, and is as likely as not ready on .* 2024\.$/,
    );
    expect(full.still).toEqual(['a smaller lot: 2 pieces, for which there are places']);
    const fits = ask(of, { ...soon, lot: { pieces: 2, greenG: null, chamber } });
    expect(plainText(fits.room[0] ?? [])).toContain('2 of 6 places free');
    expect(fits.still).toBeNull();
  });

  it('where there would be more water than was ever carried, says so and which lot would do', () => {
    const batch = batchOf(of);
    const chamber = {
      name: 'Cellar',
      places: null,
      stays: [],
      hanging: loads(aheadOf(of).slice(0, 1)),
      everInside: [batch],
    };
    const wet = ask(of, { lot: { pieces: null, greenG: 40_000, chamber } });
    expect(plainText(wet.room[0] ?? [])).toMatch(
      /^~[\d\u202f]+\u00a0g of water a day with what hangs then; Cellar never/,
    );
    expect(wet.still?.[0]).toMatch(/^a smaller lot: ~\d+\.[05]\u00a0kg/);
    const dry = ask(of, { lot: { pieces: null, greenG: 200, chamber } });
    expect(plainText(dry.room[0] ?? [])).toContain('is no more than Cellar has carried');
    expect(dry.still).toBeNull();
  });
});

describe('what is asked of a date', () => {
  const of = twoBatches(6);
  const typed = { ...givenBy(batchOf(of), placeOf(of)).typed, date: '2024-05-01' };
  const read = (more: Partial<typeof typed>) =>
    readBack({ ...typed, ...more }, { today: '2024-01-17', place: placeOf(of), words });

  it('stands in the fields as the last batch was', () => {
    expect(typed).toMatchObject({ diameter: '55', target: '38', humidity: '80', pieces: '4', weight: '' });
    expect(read({ weight: '12' })).toEqual({
      ok: true,
      read: {
        date: '2024-05-01',
        diameterMm: 55,
        targetLossPct: 38,
        humidityPct: 80,
        pieces: 4,
        greenG: 12_000,
      },
    });
  });

  it('is said beside each field where it cannot be', () => {
    const wrong = read({ date: '2024-01-17', diameter: '5', pieces: '2.5' });
    expect(wrong.ok ? [] : Object.keys(wrong.problems)).toEqual(['date', 'diameter', 'pieces']);
    expect(read({ pieces: '', weight: '' }).ok).toBe(true);
  });
});
