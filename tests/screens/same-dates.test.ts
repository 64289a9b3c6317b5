import { describe, expect, it } from 'vitest';
import { chamberAir } from '#record/chamber-air.ts';
import { knownAir } from '#record/drying-air.ts';
import { batchAhead, batchGiven } from '#record/drying-batch.ts';
import { knownAirs } from '#record/known-airs.ts';
import type { SubjectId } from '#record/subject.ts';
import { calendarEvents } from '#screens/calendar/calendar-events.ts';
import { calendarView } from '#screens/calendar/calendar-view.ts';
import { hangingView } from '#screens/hanging/hanging-view.ts';
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
  pieceId,
  placeOf,
  START_MS,
  setUp,
  stuff,
  weighMeat,
  weighOutSalt,
  weighRound,
  ZONE,
} from './book.ts';

const EARLIER: SubjectId = 'batch:018cdc00-0000-7000-a000-0000000000e1';
const DAY = 24;
const NOW_MS = START_MS + 12 * DAY * HOUR_MS;

/** A batch that hangs, one piece behind its fellows, and one of before, in a chamber that is read every day. Invented. */
function twoInOneChamber(): Book {
  const of = setUp(book(), { ruleSet: 'US' });
  of.put(-100 * DAY, 'chamber-added', CHAMBER, { name: 'Cellar', rails: 1, places: 12 });
  for (const [id, number, from] of [
    [EARLIER, 2, -90 * DAY],
    [BATCH, 1, 0],
  ] as const) {
    const about = { id, atHours: from };
    weighOutSalt(weighMeat(openBatch(of, { ...about, lot: `L-${number}` }), about), about);
    ferment(stuff(of, { id, greenG: [800, 810, 820], number, atHours: from + 2 }), {
      id,
      fromHours: from + 2,
    });
    for (const [day, lossPct] of [
      [3, 10],
      [6, 15],
      [10, 20],
    ] as const)
      weighRound(
        of,
        from + day * DAY,
        [800, 810, 820].map((greenG, at) => Math.round(greenG * (1 - (lossPct - at) / 100))),
        { id, number },
      );
  }
  for (const piece of [1, 2, 3])
    of.put(-40 * DAY, 'taken-down', pieceId(piece, 2), { why: 'at-target' }, { refs: [EARLIER] });
  for (let day = -88; day < 12; day++)
    of.put(day * DAY + 12, 'air-read', CHAMBER, { airC: 13, rhPct: 76 + (day % 3) });
  return of;
}

describe('the same batch on two pages', () => {
  const of = twoInOneChamber();
  const batches = [batchOf(of), batchOf(of, EARLIER)];
  const [batch] = batches;
  if (batch === undefined) throw new Error('no batch');
  const { chambers } = kitOf(of);
  const at = { nowMs: NOW_MS, zone: ZONE, words };
  // Each page gathers the air in its own way.
  const onHanging = batchAhead(
    batchGiven(batch, { batches, air: knownAir(chamberAir(CHAMBER, of.entries, [])), nowMs: NOW_MS }),
  );
  const onCalendar = batchAhead(
    batchGiven(batch, {
      batches,
      air: knownAirs(chambers, of.entries, []).get(CHAMBER) ?? null,
      nowMs: NOW_MS,
    }),
  );
  const hanging = hangingView({ batch, ahead: onHanging, working: false, place: placeOf(of), ...at });
  const ahead = [{ batch, ahead: onCalendar }];
  const window = (key: string) => hanging.figures.find((figure) => figure.key === key)?.interval ?? 'none';

  it('is expected from the same: its siblings, the batch before it, the air that was read', () => {
    expect(onCalendar).toEqual(onHanging);
    expect(onCalendar?.batches).toBe(1);
  });

  it('has the same days: on its own page, in the calendar, in the calendar of the phone', () => {
    const view = calendarView({ ahead, chambers, ...at });
    expect(window('first')).toMatch(/^between/);
    expect(window('last')).not.toBe(window('first'));
    expect(plainText(hanging.sentence)).toContain(window('first'));
    expect(plainText(view.sentence)).toContain(window('first'));
    expect(view.rows[0]?.note).toContain(`first at target ${window('first')}, all ${window('last')}`);
    const [event] = calendarEvents({ ahead, due: [], ...at });
    expect(event?.note).toContain(window('first'));
    expect(event?.atMs).toBe(onHanging?.first.p10Ms);
  });

  it('would differ by the middle piece alone, without siblings and earlier batches', () => {
    const alone = { ...batch, pieces: batch.pieces.slice(1, 2) };
    const other = batchAhead({ batch: alone, air: null, others: [], nowMs: NOW_MS });
    expect(other?.first).not.toEqual(onHanging?.first);
  });
});
