import { describe, expect, it } from 'vitest';
import { chamberAir, packAir } from '#record/chamber-air.ts';
import { knownAir } from '#record/drying-air.ts';
import { batchAhead, batchGiven } from '#record/drying-batch.ts';
import { chamberAhead } from '#screens/chambers/ahead-view.ts';
import { airQuality } from '#screens/chambers/air-quality.ts';
import { en as words } from '#words/en.ts';
import { plainText } from '#words/said.ts';
import {
  type Book,
  batchOf,
  book,
  CHAMBER,
  ferment,
  HOUR_MS,
  openBatch,
  placeOf,
  START_MS,
  setUp,
  stuff,
  weighMeat,
  weighOutSalt,
  weighRound,
  ZONE,
} from '../book.ts';

const DAY = 24;
const GREEN = Array.from({ length: 12 }, (_, at) => 1660 + at);
const NOW_HOURS = 5 * DAY;
const at = (hours: number) => START_MS + hours * HOUR_MS;

/** Some 20 kg that were weighed to lose 250 g a day: invented, after a chamber that carries no more. */
function twentyKilos(): Book {
  const of = ferment(
    stuff(weighOutSalt(weighMeat(openBatch(setUp(book(), { ruleSet: 'CA' })))), { greenG: GREEN }),
  );
  weighRound(of, 34, GREEN, { stage: 'to-drying' });
  const aDayG = 250 / 12;
  return weighRound(
    of,
    34 + 3 * DAY,
    GREEN.map((greenG) => Math.round(greenG - 3 * aDayG)),
  );
}

function aheadOf(of: Book, isWaiting = false) {
  const batch = batchOf(of);
  const air = chamberAir(CHAMBER, of.entries);
  const given = batchGiven(batch, { batches: [batch], air: knownAir(air), nowMs: at(NOW_HOURS) });
  const view = chamberAhead({
    inside: [{ batch, ahead: isWaiting ? undefined : batchAhead(given) }],
    everInside: [batch],
    air,
    place: placeOf(of),
    nowMs: at(NOW_HOURS),
    zone: ZONE,
    words,
  });
  if (view === null) throw new Error('aheadOf: something hangs');
  return view;
}

describe('water to carry off', () => {
  it('says what was carried as it was weighed, rounded down', () => {
    expect(plainText(aheadOf(twentyKilos()).carried)).toMatch(
      /The most this chamber has carried so far: 2[45]\d\u00a0g a day, measured in the rounds until/,
    );
  });

  it('adds so much for another 20 kg, and warns where that is more than was ever carried', () => {
    const view = aheadOf(twentyKilos());
    const addedBy = (massG: number) =>
      Number(/~(\d+)\u00a0g of water a day/.exec(plainText(view.withMore(massG)?.sentence ?? []))?.[1]);
    // A maker's own figure for 20 kg at 1.4 % a day is 280 g; this first week is a little quicker.
    expect(addedBy(20_000)).toBeGreaterThan(250);
    expect(addedBy(20_000)).toBeLessThan(560);
    expect(Math.abs(addedBy(40_000) - 2 * addedBy(20_000))).toBeLessThanOrEqual(1);
    expect(plainText(view.withMore(20_000)?.verdict ?? [])).toMatch(
      /^~\d+\u00a0g a day more than it ever carried: watch the humidity\.$/,
    );
  });

  it('says what was measured at once, and that the rest is being worked out, in the same rows', () => {
    const [now, waiting] = [aheadOf(twentyKilos()), aheadOf(twentyKilos(), true)];
    expect(waiting.carried).toEqual(now.carried);
    expect(waiting.weeks.map(({ when }) => when)).toEqual(now.weeks.map(({ when }) => when));
    const figures = waiting.weeks.flatMap(({ humidity, water }) => [humidity, water]);
    expect(new Set(figures)).toEqual(new Set(['…']));
    expect(plainText(waiting.sentence)).not.toMatch(/\d/);
    expect(waiting.withMore(20_000)).toBeNull();
  });

  it('has a row a week, each with a humidity to hold and less water than the one before', () => {
    const { weeks } = aheadOf(twentyKilos());
    expect(weeks.map(({ when }) => when)).toEqual([
      'now',
      'in a week',
      'in 2 weeks',
      'in 3 weeks',
      'in 4 weeks',
    ]);
    const grams = weeks.map(({ water }) => Number.parseInt(water.slice(1), 10));
    expect(grams).toEqual(grams.toSorted((a, b) => b - a));
    expect(weeks.every(({ humidity }) => /^~\d\d to \d\d\u00a0%$/.test(humidity))).toBe(true);
  });
});

describe('the last seven days of a chamber', () => {
  /** A reading each five minutes: 13 °C and 80 %, at 17 °C for the first half of a day, and three falls of humidity. */
  const air = () => {
    const rows = Array.from({ length: 4 * 288 }, (_, row) => ({
      atMs: at(0) + row * 300_000,
      airC: row < 144 ? 17 : 13,
      rhPct: [400, 600, 800].includes(row) ? 70 : 80,
    }));
    const of = setUp(book());
    of.put(0, 'air-set', CHAMBER, { airC: 13, rhPct: 80 });
    for (const body of packAir('cellar.csv', rows)) of.put(0, 'air-logged', CHAMBER, body);
    return {
      air: chamberAir(CHAMBER, of.entries),
      inside: [],
      place: placeOf(of),
      nowMs: at(4 * DAY),
      words,
    };
  };

  it('are time in band, the widest swing of a day and door openings a day', () => {
    const [inBand, swing, doors] = airQuality(air());
    // By hand: half a day of four above the band, less the slope of one step.
    expect(inBand?.value).toBe('87');
    expect(inBand?.note).toContain('11 to 15\u00a0°C');
    expect(inBand?.note).toContain('57\u00a0% of the week is known');
    expect([swing?.value, swing?.note]).toEqual(['4.0', 'and 10\u00a0% of humidity']);
    // Three in four days.
    expect(doors?.value).toBe('0.8');
    expect(doors?.about).toBe(true);
  });

  it('count the least and the most that an instrument kept since yesterday into the swing', () => {
    const of = setUp(book());
    of.put(0, 'air-read', CHAMBER, { airC: 13, rhPct: 80 });
    of.put(24, 'air-read', CHAMBER, {
      airC: 13.5,
      rhPct: 79,
      lowC: 11.2,
      highC: 19.5,
      lowRhPct: 61,
      highRhPct: 84,
    });
    const given = { inside: [], place: placeOf(of), nowMs: at(25), words };
    const swing = airQuality({ ...given, air: chamberAir(CHAMBER, of.entries) }).at(-1);
    expect([swing?.value, swing?.note]).toEqual(['8.3', 'and 23\u00a0% of humidity']);
  });

  it('are silent while fewer than two readings tell of them', () => {
    expect(airQuality({ ...air(), nowMs: at(-1) })).toEqual([]);
  });
});
