/** A whole muscle from the opening of its batch to the drying air, without a ferment. Everything weighed here is invented. */
import { describe, expect, it } from 'vitest';
import type { Formula } from '#core/formula/formula.ts';
import { batchFindings } from '#record/batch-findings.ts';
import { due } from '#record/due.ts';
import { readLine } from '#record/entry.ts';
import { gaps } from '#record/gaps.ts';
import { batchView } from '#screens/batch/batch-view.ts';
import { benchView } from '#screens/bench/bench-view.ts';
import { fermentView } from '#screens/ferment/ferment-view.ts';
import { recordView } from '#screens/record/record-view.ts';
import { en as words } from '#words/en.ts';
import { plainText } from '#words/said.ts';
import {
  BATCH,
  BENCH,
  type Book,
  batchOf,
  book,
  CURE_LOT,
  FORMULA,
  HOUR_MS,
  kitOf,
  openBatch,
  PLAN,
  placeOf,
  readPh,
  readRoom,
  SALAME,
  SMALL,
  START_MS,
  setUp,
  stuff,
  touching,
  ZONE,
} from './book.ts';

const MUSCLE: Formula = {
  ...SALAME,
  name: 'Invented loin',
  kind: 'whole-muscle',
  fatPctOfMeat: 0,
  lines: SALAME.lines.filter(({ role }) => role !== 'fat'),
};
const { fermentC: _room, phLow: _low, phHigh: _high, ...plan } = PLAN;

function opened(): Book {
  const of = setUp(book());
  of.put(
    0,
    'batch-opened',
    BATCH,
    { lot: '240108', formula: MUSCLE, ruleSet: 'US', plan },
    { refs: [FORMULA] },
  );
  return of;
}
function salted(): Book {
  const of = opened();
  of.put(0.2, 'meat-weighed', BATCH, { part: 'lean', massG: 3235 });
  of.put(0.3, 'weighed-out', BATCH, { line: 'salt', targetG: 90, massG: 90, scale: BENCH });
  const cure = { line: 'cure', targetG: 8.08, massG: 8.08, scale: SMALL, lot: CURE_LOT } as const;
  of.put(0.4, 'weighed-out', BATCH, cure, { refs: [CURE_LOT] });
  return of;
}
/** 16 days in the bag, then cased and weighed. */
const DAY = 24;
const cased = () => stuff(salted(), { atHours: 16 * DAY });
const codes = (of: Book, hours: number) =>
  due(batchOf(of), START_MS + hours * HOUR_MS).map(({ code }) => code);
const fermentOf = (of: Book, hours: number) =>
  fermentView({
    batch: batchOf(of),
    place: placeOf(of),
    nowMs: START_MS + hours * HOUR_MS,
    zone: ZONE,
    words,
  });

describe('a batch without a ferment', () => {
  it('is written in version 2, and its line reads back', () => {
    const [line] = opened().lines.slice(-1);
    expect(line?.line).toContain('"kind":"batch-opened","v":2');
    expect(readLine(line?.line ?? '')).toMatchObject({ ok: true, entry: { kind: 'batch-opened', v: 2 } });
  });

  it('waits for its pieces and then to be hung; nobody asks it for a pH or a room', () => {
    expect(codes(salted(), 1)).toEqual(['salt-through']);
    expect(codes(stuff(salted(), { atHours: 16 * DAY, greenG: [] }), 17 * DAY)).toEqual(['weigh-stuffed']);
    expect(codes(cased(), 17 * DAY)).toEqual(['hang-muscle']);
  });

  it('is neither ground nor mixed, and nothing of that is missing on its record', () => {
    const at = { place: placeOf(salted()), nowMs: START_MS + HOUR_MS, words };
    const bench = benchView({ batch: batchOf(salted()), ...at });
    expect(bench.rows.map(({ step }) => step)).toEqual(['cleaned', 'stuffed']);
    expect(plainText(bench.sentence)).toContain('rub each piece with its own salt');
    const of = setUp(book());
    const whole = gaps({ batch: batchOf(cased()), entries: [], doubted: new Map(), deviates: false }).map(
      ({ code }) => code,
    );
    expect(whole).toEqual(['meat-without-lot', 'pieces-not-weighed']);
    const sausage = stuff(openBatch(of), { greenG: [] });
    expect(
      gaps({ batch: batchOf(sausage), entries: [], doubted: new Map(), deviates: false }).map(
        ({ code }) => code,
      ),
    ).toEqual(expect.arrayContaining(['no-ph-of-mix', 'no-ph', 'no-room-temperature']));
  });

  it('has no degree-hours to keep and no target of pH', () => {
    const of = cased();
    const found = batchFindings(batchOf(of), kitOf(of).scales, START_MS + 17 * DAY * HOUR_MS);
    expect(found.filter(({ rule }) => rule.startsWith('degree'))).toMatchObject([
      { verdict: 'does-not-apply', missing: [] },
    ]);
    expect(found.some(({ rule }) => rule === 'ph-band')).toBe(false);
    const view = fermentOf(of, 17 * DAY);
    expect(view.stage).toBe('ended');
    expect(plainText(view.sentence)).toMatch(/^No ferment is planned\. Weigh each piece and hang it to dry/);
    expect(view.verdicts.map(({ word }) => word)).toEqual(['degree-hours: does not apply']);
  });

  it('is held to the degree-hours all the same once a warm room was read', () => {
    const of = readRoom(cased(), 16 * DAY + 1, 26);
    const found = batchFindings(batchOf(of), kitOf(of).scales, START_MS + (16 * DAY + 12) * HOUR_MS);
    expect(found.find(({ rule }) => rule.startsWith('degree'))?.verdict).not.toBe('does-not-apply');
    const { chart } = fermentOf(readPh(of, 16 * DAY + 2, 5.7), 16 * DAY + 12);
    expect(chart?.model.series.map(({ kind }) => kind)).toContain('limit');
  });

  it('says on its page and on paper that none is planned', () => {
    const of = cased();
    const at = { nowMs: START_MS + 17 * DAY * HOUR_MS, zone: ZONE, words };
    const page = batchView({ batch: batchOf(of), entryCount: 9, place: placeOf(of), ...at });
    expect(page.plan.map(({ label }) => label)).not.toContain(words.batch.plan.ferment);
    expect(page.rows.find(({ key }) => key === 'ferment')?.note).toBe('none planned');
    const paper = recordView({
      batch: batchOf(of),
      entries: touching(of, BATCH),
      heads: [],
      doubted: new Map(),
      kit: kitOf(of),
      place: placeOf(of),
      build: 'test',
      ...at,
    });
    expect(JSON.stringify(paper.sheets)).toContain('no ferment planned; dry at 13');
  });
});
