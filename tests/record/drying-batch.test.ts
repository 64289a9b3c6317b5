import { describe, expect, it } from 'vitest';
import { mixFromFat } from '#core/drying/equilibrium.ts';
import { dryRadially } from '#core/drying/radial.ts';
import { chamberAir } from '#record/chamber-air.ts';
import { type KnownAir, knownAir } from '#record/drying-air.ts';
import { batchAhead, batchGiven, lossOn } from '#record/drying-batch.ts';
import { ownScore } from '#record/drying-score.ts';
import type { SubjectId } from '#record/subject.ts';
import {
  BATCH,
  type Book,
  batchOf,
  book,
  CHAMBER,
  ferment,
  HOUR_MS,
  openBatch,
  pieceId,
  START_MS,
  setUp,
  stuff,
  weighMeat,
  weighOutSalt,
  weighRound,
} from '../screens/book.ts';

const DAY = 24;
const DAY_MS = DAY * HOUR_MS;
const HUNG = 33;
const EARLIER: SubjectId = 'batch:018cdc00-0000-7000-a000-0000000000e1';
const ms = (hours: number) => START_MS + hours * HOUR_MS;
const mix = mixFromFat({ fatFraction: 0.25, saltFraction: 0.028, sugarFraction: 0.002 });

type Air = { readonly humidityPct: number; readonly airMPerS: number };
const SOUND: Air = { humidityPct: 80, airMPerS: 0.15 };
const DRAUGHT: Air = { humidityPct: 55, airMPerS: 0.5 };

/** Weights as the radial model dries a piece of 55 mm from hanging on, after a day and a quarter in the ferment. */
function weightsG(greenG: readonly number[], days: readonly number[], { humidityPct, airMPerS }: Air) {
  const losses = dryRadially({
    diameterMm: 55,
    mix,
    air: [
      { fromDay: 0, chamberC: 24, humidityPct: 92 },
      { fromDay: 1.3, chamberC: 13, humidityPct },
    ],
    airMPerS,
    days: days.map((day) => 1.3 + day),
    rings: 16,
    stepHours: 3,
  });
  return losses.map(({ lossPct }) => greenG.map((each) => Math.round(each * (1 - lossPct / 100))));
}

function hung(of: Book, greenG = [800, 810, 820], id: SubjectId = BATCH, number = 1, from = 0): Book {
  weighOutSalt(weighMeat(openBatch(of, { id, lot: `L-${number}`, atHours: from }), { id, atHours: from }), {
    id,
    atHours: from,
  });
  return ferment(stuff(of, { id, greenG, number, atHours: from + 2 }), { id, fromHours: from + 2 });
}

function weighed(days: readonly number[], air: Air, greenG = [800, 810, 820]): Book {
  const of = hung(setUp(book()), greenG);
  for (const [at, massesG] of weightsG(greenG, days, air).entries())
    weighRound(of, HUNG + DAY * (days[at] ?? 0), massesG, days[at] === 0 ? { stage: 'to-drying' } : {});
  return of;
}

const ahead = (of: Book, days: number, air: KnownAir | null = null) =>
  batchAhead({ batch: batchOf(of), air, others: [], nowMs: ms(HUNG + DAY * days + 1) });
const levels = (of: Book, days: number) => ahead(of, days)?.pieces.map(({ pace }) => pace.level);

describe('a batch that hangs', () => {
  it('is told before its first weigh-in, each piece with its own window', () => {
    const found = ahead(hung(setUp(book())), 1);
    expect(found?.pieces).toHaveLength(3);
    expect(found?.first.p50Ms).toBeLessThan(found?.all.p50Ms ?? 0);
    for (const { p10Ms, p50Ms } of found?.pieces ?? []) expect(p10Ms).toBeLessThan(p50Ms ?? 0);
    expect(found?.fan?.points.length).toBeGreaterThan(10);
  });

  it('has a window from stuffing on, by the air that is planned, and none once all is down', () => {
    const of = weighOutSalt(weighMeat(openBatch(setUp(book()))));
    expect(ahead(of, 1)).toBeNull();
    expect(ahead(stuff(of), 1)?.first.p50Ms).toBeGreaterThan(ms(HUNG + DAY));
    const down = weighed([0, 7], SOUND);
    for (const number of [1, 2, 3])
      down.put(HUNG + 8 * DAY, 'taken-down', pieceId(number), { why: 'at-target' }, { refs: [BATCH] });
    expect(ahead(down, 9)).toBeNull();
  });

  it('is told as it stood: a weighing and a taking down of later change nothing of what was expected', () => {
    const of = weighed([0, 3, 7], SOUND);
    const asked = (book: Book) => {
      const given = { batches: [], air: null, nowMs: ms(HUNG + 8 * DAY), askedMs: ms(HUNG + 20 * DAY) };
      return batchAhead(batchGiven(batchOf(book), given))?.pieces.map((piece) => piece.asked);
    };
    const before = asked(of);
    expect(before).toHaveLength(3);
    weighRound(of, HUNG + 20 * DAY, [400, 400, 400]);
    of.put(HUNG + 21 * DAY, 'taken-down', pieceId(1), { why: 'at-target' }, { refs: [BATCH] });
    expect(asked(of)).toEqual(before);
    for (const band of before ?? []) expect(band?.p10Pct).toBeLessThan(band?.p90Pct ?? 0);
  });

  it('has a course that goes on from its last loss and never falls; between its points it is a straight line', () => {
    const course = ahead(weighed([0, 3, 7], SOUND), 8)?.course ?? [];
    const losses = course.map(({ lossPct }) => lossPct);
    expect(losses).toEqual([...losses].sort((a, b) => a - b));
    const line = [
      { atMs: 0, lossPct: 10 },
      { atMs: 100, lossPct: 20 },
      { atMs: 300, lossPct: 22 },
    ];
    expect([-5, 0, 50, 100, 200, 900].map((atMs) => lossOn(line, atMs))).toEqual([10, 10, 15, 20, 21, 22]);
    expect(() => lossOn([], 5)).toThrow(RangeError);
  });

  it('learns from its siblings: a piece that was not weighed yet is told from those that were', () => {
    const of = hung(setUp(book()));
    const days = [0, 3, 7, 14];
    for (const [at, [first = 0, second = 0]] of weightsG([800, 810], days, SOUND).entries())
      weighRound(of, HUNG + DAY * (days[at] ?? 0), [first, second]);
    const third = ahead(of, 15)?.pieces[2];
    const alone = ahead(hung(setUp(book())), 15)?.pieces[2];
    const width = (window: { p10Ms: number | null; p50Ms: number | null } | null | undefined) =>
      (window?.p50Ms ?? Infinity) - (window?.p10Ms ?? 0);
    expect(width(third)).toBeLessThan(0.8 * width(alone));
  });

  it('counts what the chamber logged, not what was planned', () => {
    const of = hung(setUp(book()));
    for (let hours = HUNG; hours < HUNG + 20 * DAY; hours += 12)
      of.put(hours, 'air-read', CHAMBER, { airC: 13, rhPct: 92 });
    const air = knownAir(chamberAir(CHAMBER, of.entries));
    const damp = ahead(of, 20, air)?.first.p50Ms ?? Infinity;
    expect(damp).toBeGreaterThan((ahead(of, 20)?.first.p50Ms ?? Infinity) + 5 * DAY_MS);
  });

  it('is sharpened by a finished batch of its chamber and calibre, not by one of another calibre', () => {
    const of = hung(setUp(book()));
    const earlier = -90 * DAY;
    hung(of, [800, 800], EARLIER, 2, earlier);
    const days = [0, 3, 7, 14, 28, 42, 56];
    for (const [at, massesG] of weightsG([800, 800], days, SOUND).entries())
      weighRound(of, earlier + HUNG + DAY * (days[at] ?? 0), massesG, { id: EARLIER, number: 2 });
    for (const number of [1, 2])
      of.put(
        earlier + HUNG + 57 * DAY,
        'taken-down',
        pieceId(number, 2),
        { why: 'at-target' },
        { refs: [EARLIER] },
      );
    const other = batchOf(of, EARLIER);
    expect(other.stage).toBe('finished');
    const given = { batch: batchOf(of), air: null, nowMs: ms(HUNG + 1) };
    const alone = batchAhead({ ...given, others: [] });
    const with1 = batchAhead({ ...given, others: [other] });
    const thick = { ...other, pieces: other.pieces.map((piece) => ({ ...piece, diameterMm: 90 })) };
    const width = (found: typeof alone) => (found?.first.p50Ms ?? 0) - (found?.first.p10Ms ?? 0);
    expect([alone?.batches, with1?.batches]).toEqual([0, 1]);
    // Under a dial one batch says little of the next; three say more.
    expect(width(with1)).toBeLessThan(0.97 * width(alone));
    const others = [1, 2, 3].map((n) => ({ ...other, id: `${EARLIER}${n}` as const }));
    expect(width(batchAhead({ ...given, others }))).toBeLessThan(0.9 * width(alone));
    expect(batchAhead({ ...given, others: [thick] })?.batches).toBe(0);
  });
});

describe('bagged, taken out, cut, with another target', () => {
  it('the clock stands while it is bagged: the window moves by the days in the bag, and nothing is called stalled', () => {
    const of = weighed([0, 3, 7], SOUND);
    const before = ahead(of, 7)?.pieces[0]?.p50Ms ?? Number.NaN;
    of.put(HUNG + 7 * DAY + 2, 'bagged', pieceId(1), { reason: 'to even out' }, { refs: [BATCH] });
    of.put(HUNG + 21 * DAY + 2, 'rehung', pieceId(1), { reason: 'evened out' }, { refs: [BATCH] });
    const after = ahead(of, 21.2)?.pieces[0];
    expect(((after?.p50Ms ?? 0) - before) / DAY_MS).toBeGreaterThan(13.5);
    expect(((after?.p50Ms ?? 0) - before) / DAY_MS).toBeLessThan(14.5);
    expect(after?.pace.level).not.toMatch(/slow|plateau/);
  });

  it('a cut changes no window, a lower target brings it forward', () => {
    const of = weighed([0, 3, 7], SOUND);
    const p50 = () => ahead(of, 7)?.pieces[0]?.p50Ms ?? Number.NaN;
    const whole = p50();
    of.put(HUNG + 7 * DAY + 0.5, 'cut', pieceId(1), { beforeG: 600, afterG: 400 }, { refs: [BATCH] });
    expect(p50() / whole).toBeCloseTo(1, 9);
    of.put(
      HUNG + 7 * DAY + 0.6,
      're-targeted',
      pieceId(1),
      { targetLossPct: 32, reason: 'lean' },
      { refs: [BATCH] },
    );
    expect(p50()).toBeLessThan(whole);
  });
});

describe('the pace of a batch', () => {
  it('is as expected in sound air, and too fast in a draught at 55 % under a dial of 80 %, before 15 % are lost', () => {
    expect(new Set(levels(weighed([0, 0.5, 1, 2, 3, 5, 7], SOUND), 7))).toEqual(new Set(['as-expected']));
    const early = weighed([0, 0.5, 1], DRAUGHT);
    expect(new Set(levels(early, 1))).toEqual(new Set(['too-fast']));
    const pace = ahead(early, 1)?.pieces[0]?.pace;
    expect(pace?.reasons).toContain('skin-gives-too-much');
    expect(pace?.dose?.humidityPct).toBeGreaterThan(80);
  });
});

describe('the pieces as a hygrometer', () => {
  it('call the sensor suspect within four weighings at 55 % under a dial of 80 %, and not in sound air', () => {
    const dry = ahead(weighed([1, 3, 6, 10], DRAUGHT), 10)?.air;
    expect(dry).toMatchObject({ suspect: true, shownPct: 80 });
    expect(dry?.p50Pct).toBeLessThan(80);
    expect(ahead(weighed([1, 3, 6, 10], SOUND), 10)?.air?.suspect).toBe(false);
    expect(ahead(weighed([3], SOUND), 4)?.air).toBeNull();
  });
});

describe('the app’s own windows', () => {
  const finished = (of: Book, days: number) => {
    for (const number of [1, 2, 3])
      of.put(HUNG + days * DAY, 'taken-down', pieceId(number), { why: 'at-target' }, { refs: [BATCH] });
    return ownScore([{ batch: batchOf(of), air: null }]);
  };

  it('are counted over finished batches, each told from what was written by then', () => {
    const weeks = [0, 3, 7, 14, 21, 28, 35, 42, 49, 56, 63, 70];
    expect(finished(weighed(weeks, SOUND), 71)).toMatchObject({ count: 9, heldFraction: 1 });
    expect(ownScore([{ batch: batchOf(weighed([0, 3], SOUND)), air: null }])).toBeNull();
  });

  it('hold only where they knew little, if a piece that dried in haste stands still before its target', () => {
    const of = weighed([0, 2, 5, 8], DRAUGHT);
    weighRound(of, HUNG + 200 * DAY, [400, 400, 400]);
    // Two of three rounds saw the haste.
    expect(finished(of, 201)).toMatchObject({ count: 9, heldFraction: 3 / 9 });
  });
});
