import { describe, expect, it } from 'vitest';
import type { PaceFinding } from '#core/drying/pace.ts';
import type { BatchAhead } from '#record/drying-batch.ts';
import { rehearse } from '#record/drying-rehearsal.ts';
import { drynessView } from '#screens/dryness/dryness-view.ts';
import { hangingView } from '#screens/hanging/hanging-view.ts';
import { paceView } from '#screens/hanging/pace-view.ts';
import { mixOfFat, NEW_START, startOf } from '#screens/what-if/start.ts';
import { whatIfChart, whatIfSentence, whatIfView, whatIfWindow } from '#screens/what-if/what-if-view.ts';
import { en as words } from '#words/en.ts';
import { plainText } from '#words/said.ts';
import {
  BATCH,
  type Book,
  batchOf,
  book,
  ferment,
  HOUR_MS,
  openBatch,
  pieceId,
  placeOf,
  SALAME,
  START_MS,
  setUp,
  stuff,
  weighMeat,
  weighOutSalt,
  weighRound,
  ZONE,
} from './book.ts';

const DAY = 24;
const at = (hours: number) => ({ nowMs: START_MS + hours * HOUR_MS, zone: ZONE, words });
const weighed = () =>
  weighRound(
    ferment(stuff(weighOutSalt(weighMeat(openBatch(setUp(book()))))), {}),
    10 * DAY,
    [600, 620, 640, 650],
  );

const CALM: PaceFinding = {
  level: 'as-expected',
  reasons: [],
  asMuchFraction: 0.5,
  expected: { p10Pct: 10, p50Pct: 15, p90Pct: 20 },
  skin: null,
  airUnderPiecePct: 14,
  dose: null,
};
const FAST: PaceFinding = {
  ...CALM,
  level: 'too-fast',
  reasons: ['skin-gives-too-much', 'ahead-of-diameter'],
  asMuchFraction: 0.02,
  skin: { pctPerDay: 9.28, sdPctPerDay: 0.5, closes: false, mostPctPerDay: 4.24 },
  dose: { humidityPct: 90.6, days: 5.2 },
};
const none = { p10Ms: null, p50Ms: null, p90Ms: null };

function aheadOf(paces: readonly PaceFinding[], more: Partial<BatchAhead> = {}): BatchAhead {
  return {
    nowMs: START_MS,
    pieces: paces.map((pace, i) => ({ piece: pieceId(i + 1), ...none, neverFraction: 0, pace, asked: null })),
    first: none,
    all: { ...none, neverFraction: 0 },
    fan: null,
    course: [],
    air: null,
    batches: 0,
    ...more,
  };
}
const pace = (of: Book, ahead: BatchAhead | null, score: Parameters<typeof paceView>[0]['score'] = null) =>
  paceView({ batch: batchOf(of), ahead, score, place: placeOf(of), ...at(10 * DAY) });

describe('a warning of haste', () => {
  it('leads the page, names the pieces, and says what to do by how much and when to look again', () => {
    const of = weighed();
    const ahead = aheadOf([FAST, CALM, FAST, CALM]);
    const [notice] = pace(of, ahead).notices;
    expect(notice?.title).toBe('Drying too fast: pieces 1 and 3');
    expect(plainText(notice?.act ?? [])).toBe('Set ~91\u00a0% for 6 days, or slow the air on it.');
    expect(notice?.after).toBe('Weigh again on 24 January.');
    expect(notice?.reasons[0]).toContain('~9.3\u00a0% a day; at 55\u00a0mm more than 4.2\u00a0%');
    const { sentence } = hangingView({
      batch: batchOf(of),
      ahead,
      working: false,
      place: placeOf(of),
      ...at(10 * DAY),
    });
    expect(plainText(sentence)).toContain('2 of 4 dry too fast');
  });

  it('is prepared on the first evening: weigh on hanging and half a day later', () => {
    const of = ferment(stuff(weighOutSalt(weighMeat(openBatch(setUp(book()))))), {});
    const soon = { p10Ms: START_MS + 20 * DAY * HOUR_MS, p50Ms: START_MS + 25 * DAY * HOUR_MS, p90Ms: null };
    const ahead = aheadOf([CALM, CALM, CALM, CALM], { first: soon });
    const told = (hours: number) =>
      plainText(
        hangingView({ batch: batchOf(of), ahead, working: false, place: placeOf(of), ...at(hours) }).sentence,
      );
    expect(told(40)).toContain('half a day later');
    expect(told(80)).not.toContain('half a day later');
    weighRound(of, 44, [780, 770, 775, 790]);
    expect(told(46)).not.toContain('half a day later');
  });

  it('is none where all is as expected, and none while it is worked out', () => {
    expect(pace(weighed(), aheadOf([CALM, CALM, CALM, CALM])).notices).toEqual([]);
    expect(pace(weighed(), null)).toEqual({ notices: [], air: null, notes: [] });
  });

  it('says of all, and of one that is bagged nothing', () => {
    const of = weighed();
    expect(pace(of, aheadOf([FAST, FAST, FAST, FAST])).notices[0]?.title).toBe(
      'Drying too fast: all 4 pieces',
    );
    of.put(10 * DAY + 1, 'bagged', pieceId(1), { reason: 'to even out' }, { refs: [BATCH] });
    expect(pace(of, aheadOf([FAST, CALM, CALM, CALM])).notices).toEqual([]);
  });

  it('offers drier air, a lower target or a cut on a plateau', () => {
    const tail: PaceFinding = {
      ...CALM,
      level: 'plateau',
      reasons: ['tail'],
      dose: { humidityPct: 64, days: 14 },
    };
    const [notice] = pace(weighed(), aheadOf([tail, CALM, CALM, CALM])).notices;
    expect(plainText(notice?.act ?? [])).toMatch(/Set ~64.*accept a lower target, or cut one/);
    const stuck = pace(weighed(), aheadOf([{ ...tail, dose: null }, CALM, CALM, CALM])).notices[0];
    expect(plainText(stuck?.act ?? [])).toMatch(/Accept a lower target, or cut one/);
  });
});

describe('what stands beside the windows', () => {
  it('is how the app’s own did, and only where there are some', () => {
    const score = { count: 40, heldFraction: 33 / 40, medianErrorFraction: 0.1, meanIntervalScoreDays: 20 };
    expect(pace(weighed(), aheadOf([CALM]), score).notes.join(' ')).toContain('Of the last 40 windows');
    expect(pace(weighed(), aheadOf([CALM]), score).notes.join(' ')).toContain('33 held');
    expect(pace(weighed(), aheadOf([CALM]), { ...score, count: 3 }).notes.join(' ')).not.toContain('held');
  });

  it('is the humidity that the weights speak for, beside the one shown', () => {
    const air = {
      p10Pct: 51.6,
      p50Pct: 58,
      p90Pct: 66.2,
      drierFraction: 0.8,
      wetterFraction: 0,
      suspect: true,
      shownPct: 78,
    };
    const found = pace(weighed(), aheadOf([CALM], { air })).air;
    expect([found?.value, found?.interval]).toEqual(['52 to 66', 'shown: 78\u00a0%']);
    expect(plainText(found?.suspect ?? [])).toContain('Sensor or airflow suspect');
  });
});

describe('what a target means', () => {
  const view = (of: Book) => drynessView({ batch: batchOf(of), place: placeOf(of), ...at(11 * DAY) });
  const ofFat = (fatPctOfMeat: number) => {
    const of = setUp(book());
    openBatch(of, { formula: { ...SALAME, fatPctOfMeat } });
    of.put(0.2, 'meat-weighed', BATCH, { part: 'lean', massG: 100 * (100 - fatPctOfMeat) });
    of.put(0.2, 'meat-weighed', BATCH, { part: 'fat', massG: 100 * fatPctOfMeat });
    return stuff(of);
  };

  it('differs with the fat: 15, 25 and 35 % at one loss, each an estimate', () => {
    const rows = [15, 25, 35].map((fat) => view(ofFat(fat)).rows.find(({ head }) => head === '35\u00a0%'));
    const cells = rows.map((row) => row?.cells ?? []);
    expect(new Set(cells.map((row) => row.join('|'))).size).toBe(3);
    for (const cell of cells.flat()) expect(cell).toMatch(/^~/);
    expect(plainText(view(ofFat(25)).sentence)).toContain('an estimate');
  });

  it('meets no criterion by computation, and one by what was measured, once nothing dries any more', () => {
    const of = weighed();
    for (const number of [1, 2, 3, 4])
      of.put(12 * DAY, 'taken-down', pieceId(number), { why: 'at-target' }, { refs: [BATCH] });
    const listeria = () => view(of).criteria.find(({ title }) => title.startsWith('Listeria'));
    expect(view(of).criteria.map(({ verdict }) => verdict)).not.toContain('within-limit');
    expect(listeria()?.verdict).toBe('no-reading');
    of.put(12 * DAY, 'product-measured', BATCH, { measure: 'aw', value: 0.91, by: 'own meter' });
    expect(listeria()?.verdict).toBe('within-limit');
    expect(plainText(view(of).sentence)).toContain('Measured: water activity 0.91');
    of.put(12 * DAY, 'product-measured', BATCH, { measure: 'aw', value: 0.95, by: 'laboratory' });
    expect(listeria()?.verdict).not.toBe('within-limit');
  });

  it('is pending while it dries, whatever was measured', () => {
    const of = weighed();
    of.put(10 * DAY, 'product-measured', BATCH, { measure: 'aw', value: 0.8, by: 'own meter' });
    expect(new Set(view(of).criteria.map(({ verdict }) => verdict))).toEqual(new Set(['pending']));
  });
});

describe('what if', () => {
  const wish = NEW_START.wish;
  const run = (changed: Partial<typeof wish> = {}) =>
    rehearse({ wish: { ...wish, ...changed }, diffusivity13M2PerS: null, fine: false });
  const told = (changed: Partial<typeof wish> = {}, of = setUp(book())) => ({
    tried: run(changed),
    wish: { ...wish, ...changed },
    fromMs: null,
    place: placeOf(of),
    zone: ZONE,
    words,
  });

  it('takes longer in damper air, in a thicker casing, in stiller air and in the cold', () => {
    const days = (changed: Partial<typeof wish>) => run(changed).targetDay ?? Infinity;
    const usual = days({});
    expect(days({ humidityPct: 84 })).toBeGreaterThan(usual);
    expect(days({ diameterMm: 80 })).toBeGreaterThan(usual);
    expect(days({ airMPerS: 0.05 })).toBeGreaterThan(usual);
    expect(days({ chamberC: 8 })).toBeGreaterThan(usual);
    expect(days({ targetLossPct: 30 })).toBeLessThan(usual);
    expect(days({ mix: mixOfFat(40) })).toBeGreaterThan(usual);
  });

  it('is within half a point of the fine run while a slider moves', () => {
    const fine = rehearse({ wish, diffusivity13M2PerS: null, fine: true });
    for (const [day, point] of run().curve.entries())
      expect(Math.abs(point.lossPct - (fine.curve[day]?.lossPct ?? 0))).toBeLessThan(0.5);
    expect(fine.window?.p50Days).toBeGreaterThan(20);
  });

  it('warns of a hard rim in dry moving air, and says that air as damp as the piece dries nothing', () => {
    expect(whatIfView(told({ humidityPct: 62, airMPerS: 0.8 })).rimLevel).toBe('high');
    expect(whatIfView(told({ humidityPct: 90, airMPerS: 0.05, diameterMm: 36 })).rimLevel).toBe('low');
    expect(plainText(whatIfSentence(told({ humidityPct: 98 })))).toContain('dries nothing');
    expect(plainText(whatIfSentence(told({ targetLossPct: 50 })))).toContain('does not reach 50');
  });

  it('shows three slices, wetter to the heart, drier with the days', () => {
    const { slices } = whatIfView(told());
    expect(slices).toHaveLength(3);
    for (const { waterFromRim } of slices)
      for (const [step, share] of waterFromRim.entries())
        expect(share).toBeGreaterThanOrEqual((waterFromRim[step - 1] ?? 0) - 1e-9);
    const heart = slices.map(({ waterFromRim }) => waterFromRim.at(-1) ?? 0);
    expect(heart[2]).toBeLessThan(heart[0] ?? 0);
    expect(whatIfChart({ ...told(), now: null }).table.rows.length).toBeGreaterThan(5);
  });

  it('tells its window once the slider is still, and that it may never be there in damp air', () => {
    const windowOf = (humidityPct: number, fine: boolean) => {
      const tried = rehearse({ wish: { ...wish, humidityPct }, diffusivity13M2PerS: null, fine });
      return whatIfWindow({ ...told(), tried, now: null });
    };
    expect(windowOf(74, false)).toBeNull();
    expect(windowOf(74, true)).toMatch(/: \d+ to \d+ days in eight of ten cases\.$/);
    expect(windowOf(86, true)).toMatch(/: \d+ days or more; in over one case of ten never\.$/);
    expect(windowOf(99, true)).toBeNull();
  });

  it('says so where no mix comes to the last weighing in the air shown', () => {
    const past = { air: [{ fromDay: 0, chamberC: 13, humidityPct: 85 }], fromDay: 4 };
    const fits = (lossPct: number) => run({ past: { ...past, lossPct } }).fits;
    expect([fits(8), fits(30), fits(0.5)]).toEqual([true, false, false]);
  });

  it('of a batch that hangs begins at its last weighing, with what that weighing says', () => {
    const of = weighed();
    const start = startOf(batchOf(of), null, at(11 * DAY).nowMs);
    const tried = start && rehearse({ wish: start.wish, diffusivity13M2PerS: null, fine: true });
    const from = start?.wish.past?.fromDay ?? 0;
    expect(from).toBe(10);
    expect(tried?.curve[from]?.lossPct).toBeCloseTo(start?.wish.past?.lossPct ?? 0, 0);
    expect(start?.wish).toMatchObject({ chamberC: 13, humidityPct: 80, diameterMm: 55, targetLossPct: 38 });
  });
});
