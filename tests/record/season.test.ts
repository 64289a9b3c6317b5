import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import type { AirPoint } from '#core/air/air-series.ts';
import { readLogger } from '#files/logger-csv.ts';
import { packAir } from '#record/chamber-air.ts';
import type { EntryOf } from '#record/entry.ts';
import { unbacked } from '#record/exposure.ts';
import { ofKind } from '#record/fold.ts';
import { type Line, season } from '#record/season.ts';
import { PLACE, type SubjectId } from '#record/subject.ts';
import {
  batchOf,
  book,
  CHAMBER,
  ferment,
  HOUR_MS,
  kitOf,
  openBatch,
  pieceId,
  START_MS,
  setUp,
  stuff,
  touching,
  weighMeat,
  weighOutSalt,
  weighRound,
} from '../screens/book.ts';

type When = { day: number; hour: number };
type Letter = 'A' | 'B' | 'C' | 'D' | 'E';
const script = JSON.parse(readFileSync('fixtures/batches/season.json', 'utf8'));
const starts: [Letter, number][] = Object.entries<number>(script.batches).map(([letter, day]) => [
  letter as Letter,
  day,
]);
const idOf = (letter: Letter): SubjectId =>
  `batch:018cdc00-0000-7000-a000-0000000000${letter}0`.toLowerCase() as SubjectId;
const numberOf = (letter: Letter): number => starts.findIndex(([each]) => each === letter) + 1;
/** The book counts from 08:00 of the first day. */
const hours = ({ day, hour }: When, startDay = 0) => (startDay + day) * 24 + hour - 8;
const GREEN_G = [812, 798, 805, 820];
const lost = (lossPct: number) => GREEN_G.map((greenG) => Math.floor(greenG * (1 - lossPct / 100)));

type Act = { atHours: number; write: () => void };

/** A file as a logger gives it out, read as the app reads it. */
async function readFile(rows: readonly AirPoint[]): Promise<AirPoint[]> {
  const lines = rows.map(({ atMs, airC, rhPct }) => `${new Date(atMs).toISOString()},${airC},${rhPct}`);
  const text = ['Time,Temperature °C,Humidity %', ...lines].join('\r\n');
  const read = await readLogger({ bytes: new TextEncoder().encode(text), zone: 'UTC' });
  if (read.state !== 'read') throw new Error(`readFile: ${JSON.stringify(read)}`);
  const { atMs, roomC, rhPct } = read.series;
  return atMs.map((each, at) => ({ atMs: each, airC: roomC[at] ?? Number.NaN, rhPct: rhPct[at] ?? null }));
}

async function acts(of: ReturnType<typeof book>): Promise<Act[]> {
  const list: Act[] = [];
  const at = (atHours: number, write: () => void) => list.push({ atHours, write });
  const { routine, air, absence, afterReturn } = script;
  const away = [hours(absence.from), hours(absence.to)] as const;
  const there = (atHours: number) => atHours < away[0] || atHours > away[1];
  const down = (letter: Letter, atHours: number) =>
    at(atHours, () => {
      for (const piece of [1, 2, 3, 4])
        of.put(
          atHours,
          'taken-down',
          pieceId(piece, numberOf(letter)),
          { why: 'at-target' },
          { refs: [idOf(letter)] },
        );
    });
  const decide = (letter: Letter, atHours: number) =>
    at(atHours, () =>
      of.put(atHours, 'decided', idOf(letter), {
        decision: 'release',
        verdicts: [],
        ruleSet: 'CA',
        build: 'test',
        gaps: [],
      }),
    );
  for (const [letter, start] of starts) {
    const id = idOf(letter);
    const number = numberOf(letter);
    const on = (when: When) => hours(when, start);
    at(on(routine.opened), () => openBatch(of, { id, lot: letter, atHours: on(routine.opened) }));
    at(on(routine.weighed), () => {
      weighMeat(of, { id, atHours: on(routine.weighed) });
      weighOutSalt(of, { id, atHours: on(routine.weighed) + 0.5 });
    });
    at(on(routine.stuffed), () => stuff(of, { id, atHours: on(routine.stuffed), number }));
    for (let more = 0; more <= 42; more += 6) {
      const read = on(routine.stuffed) + 0.2 + more;
      at(read, () => of.put(read, 'room-read', id, { roomC: 20 }));
    }
    for (const { ph, ...when } of routine.ph)
      at(on(when), () =>
        of.put(on(when), 'ph-read', id, { ph, sample: 'packet', method: 'meter', doubted: false }),
      );
    at(on(routine.ended), () => of.put(on(routine.ended), 'ferment-ended', id, { reason: 'ph-reached' }));
    at(on(routine.hung), () => {
      of.put(on(routine.hung), 'hung', id, { chamber: CHAMBER, airC: 13, rhPct: 80 }, { refs: [CHAMBER] });
      weighRound(of, on(routine.hung) + 0.5, lost(3), { id, number, stage: 'to-drying' });
    });
    for (const { day, lossPct } of routine.rounds) {
      const when = on({ day, hour: 9 });
      if (there(when) && when < away[1]) at(when, () => weighRound(of, when, lost(lossPct), { id, number }));
    }
    const downAt = on({ day: routine.takenDown, hour: 9 });
    if (downAt < away[0]) {
      down(letter, downAt);
      decide(letter, on({ day: routine.decided, hour: 9 }));
    }
  }
  for (const [letter, lossPct] of Object.entries<number>(afterReturn.lossPct)) {
    const when = hours(afterReturn);
    const number = numberOf(letter as Letter);
    at(when, () => weighRound(of, when, lost(lossPct), { id: idOf(letter as Letter), number }));
  }
  for (const [letter, day] of Object.entries<number>(afterReturn.takenDown))
    down(letter as Letter, hours({ day, hour: 9 }));
  for (const [letter, day] of Object.entries<number>(afterReturn.decided))
    decide(letter as Letter, hours({ day, hour: 9 }));

  for (const { airC, ...when } of air.byHand)
    at(hours(when), () => of.put(hours(when), 'air-read', CHAMBER, { airC, rhPct: 80 }));
  let from = hours(air.firstRow);
  const cut = air.powerCut;
  for (const day of air.filesTakenIn) {
    const to = hours({ day, hour: 7 });
    const rows = Array.from({ length: to - from }, (_, row) => from + row).map((hour) => ({
      atMs: START_MS + hour * HOUR_MS,
      airC: hour >= hours(cut.from) && hour < hours(cut.to) ? cut.airC : air.usualC,
      rhPct: 80,
    }));
    const read = await readFile(rows);
    const taken = hours({ day, hour: day === 81 ? 11 : 7.5 });
    at(taken, () => {
      for (const body of packAir('invented logger', read)) of.put(taken, 'air-logged', CHAMBER, body);
    });
    from = to;
  }
  at(hours(cut.writtenDown), () =>
    of.put(hours(cut.writtenDown), 'action-taken', CHAMBER, {
      about: 'air',
      cause: 'power cut',
      action: 'door kept shut',
      product: 'looked at',
      prevention: '',
    }),
  );
  const [fromMs, toMs] = away.map((hour) => START_MS + hour * HOUR_MS) as [number, number];
  at(hours(absence.planned), () =>
    of.put(hours(absence.planned), 'absence-planned', PLACE, { fromMs, toMs, helper: '' }),
  );
  for (const when of script.backUps)
    at(hours(when), () =>
      of.put(hours(when), 'backed-up', PLACE, {
        entries: of.entries.length,
        bytes: 1,
        hash: '',
        place: 'shared',
      }),
    );
  return list.sort((a, b) => a.atHours - b.atHours);
}

function named(line: Line | undefined): string {
  if (line === undefined) return 'nothing';
  switch (line.about) {
    case 'batch':
      return `${line.batch.opened.body.lot} ${line.due.code}`;
    case 'back-up':
      return 'back-up';
    default:
      return line.due.code;
  }
}

/** What Today holds on each morning of the season. */
async function mornings(): Promise<string[][]> {
  const of = setUp(book(), { ruleSet: 'CA' });
  const waiting = await acts(of);
  return Array.from({ length: 90 }, (_, day) => {
    while (waiting[0] && waiting[0].atHours <= day * 24) waiting.shift()?.write();
    const opened = ofKind(of.entries, 'batch-opened').map(({ subject }: EntryOf<'batch-opened'>) => subject);
    return season({
      batches: opened.map((id) => batchOf(of, id)),
      chambers: kitOf(of).chambers,
      entries: of.entries,
      checks: [],
      unbacked: unbacked(of.entries),
      nowMs: START_MS + day * 24 * HOUR_MS,
    }).map(named);
  });
}

const all = await mornings();

describe('ninety mornings of a season', () => {
  it('have the right first line each, as it was written down by hand', () => {
    const expected: string[] = script.firstLine.flatMap(([from, to, first]: [number, number, string]) =>
      Array.from({ length: to - from + 1 }, (_, at) => `${from + at} ${first}`),
    );
    expect(expected).toHaveLength(90);
    expect(all.map((lines, day) => `${day} ${lines[0] ?? 'nothing'}`)).toEqual(expected);
  });

  it('hold more than one line where more than one thing is due', () => {
    expect(all[38]).toEqual(['air-warm', 'B weigh-round']);
    expect(all[34]).toEqual(['C weigh-round', 'A look-through']);
    expect(all[66]).toEqual(['leave', 'D weigh-round']);
  });
});

describe('what happened between two readings by hand', () => {
  /** A batch that hangs, a reading on each of two mornings, the second with what the thermometer kept as most. Invented. */
  const given = (highC: number, more: (of: ReturnType<typeof book>) => void = () => undefined) => {
    const of = setUp(book(), { ruleSet: 'CA' });
    ferment(stuff(weighOutSalt(weighMeat(openBatch(of)))));
    of.put(34, 'air-read', CHAMBER, { airC: 13, rhPct: 80 });
    of.put(58, 'air-read', CHAMBER, { airC: 13.5, rhPct: 80, highC });
    more(of);
    const lines = season({
      batches: [batchOf(of)],
      chambers: kitOf(of).chambers,
      entries: of.entries,
      checks: [],
      unbacked: null,
      nowMs: START_MS + 59 * HOUR_MS,
    });
    return lines.flatMap((line) => (line.about === 'chamber' ? [line.due] : []));
  };

  it('stands in Today where the thermometer kept more than the chamber may be', () => {
    expect(given(21)).toMatchObject([
      {
        code: 'air-warm',
        airC: 21,
        sinceMs: START_MS + 34 * HOUR_MS,
        untilMs: START_MS + 58 * HOUR_MS,
      },
    ]);
    expect(given(15)).toEqual([]);
  });

  it('goes when somebody wrote down what was done', () => {
    const done = { about: 'air', cause: 'door open', action: 'shut', product: 'looked at', prevention: '' };
    expect(given(21, (of) => of.put(58.5, 'action-taken', CHAMBER, done))).toEqual([]);
  });

  it('is one with what was read right after it', () => {
    const still = given(21, (of) => of.put(58.8, 'air-read', CHAMBER, { airC: 22, rhPct: 80, highC: 22 }));
    expect(still).toMatchObject([{ code: 'air-warm', airC: 22, untilMs: null }]);
  });
});

describe('what nobody did', () => {
  const given = (of: ReturnType<typeof book>, atHours: number) =>
    season({
      batches: [],
      chambers: [],
      entries: of.entries,
      checks: [],
      unbacked: unbacked(of.entries),
      nowMs: START_MS + atHours * HOUR_MS,
    }).map(named);

  it('a backup is due once an entry is a week old that none holds', () => {
    const of = setUp(book());
    expect(given(of, 6 * 24)).toEqual([]);
    expect(given(of, 7 * 24)).toEqual(['back-up']);
    of.put(7 * 24, 'backed-up', PLACE, { entries: of.entries.length, bytes: 1, hash: '', place: 'shared' });
    expect(given(of, 30 * 24)).toEqual([]);
    expect(touching(of, PLACE).length).toBeGreaterThan(0);
  });
});
