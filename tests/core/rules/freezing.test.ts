import { readFileSync } from 'node:fs';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  type FreezingAnswer,
  type FreezingInput,
  type FreezingReading,
  freezingAnswer,
} from '#core/rules/freezing.ts';

const HOUR_MS = 3_600_000;
const DAY_MS = 24 * HOUR_MS;
type RoomRow = { id?: string; thicknessMm: number; typedF?: number; roomC: number; days: number };
type CoreRow = { id: string; typedF: number; coreC: number; hours: number };
const published: { room: { rows: RoomRow[] }; core: { rows: CoreRow[] }; euRoom: { rows: RoomRow[] } } =
  JSON.parse(readFileSync('fixtures/published/ferment-freezing.json', 'utf8'));

function at(where: 'core' | 'room', hours: number, tempC: number): FreezingReading {
  return { atMs: hours * HOUR_MS, tempC, where };
}

/** The probe at the start, then the same temperature in the room every day, and at the very end. */
function held(tempC: number, hours: number, fromHours = 0): FreezingReading[] {
  const readings = [at('core', fromHours, tempC), at('room', fromHours, tempC)];
  for (let since = 24; since < hours; since += 24) readings.push(at('room', fromHours + since, tempC));
  return [...readings, at('room', fromHours + hours, tempC)];
}

function probed(tempC: number, hours: number): FreezingReading[] {
  const readings: FreezingReading[] = [];
  for (let since = 0; since < hours; since += 24) readings.push(at('core', since, tempC));
  return [...readings, at('core', hours, tempC)];
}

function freeze(readings: readonly FreezingReading[], rest: Partial<FreezingInput> = {}): FreezingAnswer {
  return freezingAnswer({
    ruleSet: 'US',
    species: 'pork',
    method: 'room',
    thicknessMm: 100,
    readings,
    nowMs: readings.at(-1)?.atMs ?? 0,
    ...rest,
  });
}

describe('the published tables', () => {
  it.each(published.room.rows)(
    '$id: $thicknessMm mm at $typedF °F takes $days days, not an hour less',
    (row) => {
      const { thicknessMm, typedF, days } = row;
      const asTyped = (readings: FreezingReading[]): FreezingReading[] =>
        readings.map((reading) => ({
          ...reading,
          tempC: ((typedF ?? 0) - 32) / 1.8,
          typed: { value: typedF ?? 0, unit: 'F' as const },
        }));
      expect(freeze(asTyped(held(0, days * 24)), { thicknessMm }).finding.verdict).toBe('within-limit');
      expect(freeze(asTyped(held(0, days * 24 - 1)), { thicknessMm }).finding.verdict).toBe('pending');
      expect(freeze(held(row.roomC, days * 24), { thicknessMm }).finding.verdict).toBe('within-limit');
    },
  );

  it.each(published.core.rows)(
    '$id: a core at $coreC °C takes $hours h, not half an hour less',
    ({ coreC, hours }) => {
      const core = (forHours: number): string =>
        freeze(probed(coreC, forHours), { method: 'core', thicknessMm: 900 }).finding.verdict;
      expect(core(hours)).toBe('within-limit');
      expect(core(hours - 0.4)).toBe('pending');
    },
  );

  it.each(published.euRoom.rows)(
    'EU: $thicknessMm mm at $roomC °C takes $days days',
    ({ thicknessMm, roomC, days }) => {
      const eu = { ruleSet: 'EU', thicknessMm } as const;
      expect(freeze(held(roomC, days * 24), eu).finding.verdict).toBe('within-limit');
      expect(freeze(held(roomC, days * 24 - 1), eu).finding.verdict).toBe('pending');
    },
  );

  it('a lot of 10 cm at -15 °C shows 20 days', () => {
    const answer = freeze(held(-15, 48));
    expect(answer.row?.hours).toBe(20 * 24);
    expect(answer.dueAtMs).toBe(20 * DAY_MS);
    expect(answer.doneHours).toBe(48);
  });

  it('between two rows the warmer one holds', () => {
    expect(freeze(held(-20, 10 * 24)).finding.verdict).toBe('pending');
    expect(freeze(held(-20, 10 * 24)).row?.atC).toBe(-15);
  });

  it('the group edges of 6 and 27 inches belong to the thinner group; above them nothing applies', () => {
    expect(freeze(held(-15, 24), { thicknessMm: 152.4 }).row?.hours).toBe(480);
    expect(freeze(held(-15, 24), { thicknessMm: 152.5 }).row?.hours).toBe(720);
    expect(freeze(held(-15, 24), { thicknessMm: 686 })).toMatchObject({
      finding: { verdict: 'does-not-apply' },
      flags: ['too-thick'],
    });
  });
});

describe('when the count runs', () => {
  it('without a probe it is no reading, however cold the room', () => {
    const roomOnly = held(-30, 480).filter((reading) => reading.where === 'room');
    expect(freeze(roomOnly).finding).toMatchObject({ verdict: 'no-reading', missing: ['core-temperature'] });
  });

  it('it starts when the probe is at temperature, not when the lot went in', () => {
    const readings = [at('room', 0, -18), at('core', 0, 2), at('core', 20, -15), at('room', 24, -18)];
    expect(freeze(readings).startedAtMs).toBe(20 * HOUR_MS);
  });

  it('a warmer reading starts it again: -12 °C on day 10 of 20', () => {
    const readings = [...held(-16, 240), at('room', 250, -12)];
    expect(freeze(readings)).toMatchObject({
      finding: { verdict: 'pending', missing: ['core-at-temperature'] },
      startedAtMs: null,
      restarts: [{ atMs: 250 * HOUR_MS, why: 'warmer' }],
    });
    const again = [...readings, ...held(-16, 240, 260)];
    expect(freeze(again).finding.verdict).toBe('pending');
    expect(freeze(again).startedAtMs).toBe(260 * HOUR_MS);
  });

  it('more than 26 h without a reading starts it again', () => {
    const readings = [...held(-16, 240), at('core', 267, -16), at('room', 267, -16)];
    expect(freeze(readings).restarts).toEqual([{ atMs: 267 * HOUR_MS, why: 'not-read' }]);
  });

  it('an old last reading is no reading until the row is met, and then stands', () => {
    const now = { nowMs: 900 * HOUR_MS };
    expect(freeze(held(-16, 240), now).finding).toMatchObject({
      verdict: 'no-reading',
      missing: ['freezer-now'],
    });
    expect(freeze([...held(-16, 480), at('room', 500, 4)], now).finding.verdict).toBe('within-limit');
  });

  it('a doubted reading is left out', () => {
    const readings = [...held(-16, 240), { ...at('room', 250, -12), doubted: true }, at('room', 260, -16)];
    expect(freeze(readings).startedAtMs).toBe(0);
  });
});

describe('where it does not apply', () => {
  it('game does not apply, with a code, however long it froze', () => {
    expect(freeze(held(-30, 2000), { species: 'game' })).toMatchObject({
      finding: { verdict: 'does-not-apply' },
      flags: ['not-for-game'],
      row: null,
    });
  });

  it('the US text is flagged as reserved', () => {
    expect(freeze(held(-16, 24)).flags).toEqual(['us-text-reserved']);
  });

  it('Canada has no table that could be read: numbers for reference, no verdict', () => {
    expect(freeze(held(-16, 480), { ruleSet: 'CA' })).toMatchObject({
      finding: { verdict: 'does-not-apply', missing: [] },
      flags: ['no-table-for-rule-set', 'us-text-reserved'],
      row: { hours: 480 },
    });
  });

  it('EU has no core table here', () => {
    expect(freeze(probed(-20, 90), { ruleSet: 'EU', method: 'core' }).flags).toEqual([
      'no-table-for-rule-set',
    ]);
  });

  it('refuses what cannot be, NaN included', () => {
    expect(() => freeze([], { thicknessMm: Number.NaN })).toThrow(RangeError);
    expect(() => freeze([at('core', 2, -16), at('core', 1, -16)], { nowMs: 9 * HOUR_MS })).toThrow(
      'requires order of time',
    );
  });
});

describe('laws of freezing', () => {
  const lot = fc.array(
    fc.record({
      spacing: fc.integer({ min: 15, max: 26 }),
      tenths: fc.integer({ min: -345, max: -230 }),
    }),
    { minLength: 5, maxLength: 60 },
  );
  const readingsOf = (points: { spacing: number; tenths: number }[], warmerTenths = 0): FreezingReading[] => {
    let hours = 0;
    return points.map(({ spacing, tenths }) => {
      hours += spacing;
      return at('room', hours, (tenths + warmerTenths) / 10);
    });
  };
  /** The probe is in from the start, so that many of the series are met. */
  const isMet = (readings: FreezingReading[]): boolean => freeze(readings).finding.verdict === 'within-limit';

  it('a warmer lot is never met where the colder one was not', () => {
    fc.assert(
      fc.property(lot, fc.integer({ min: 0, max: 90 }), (points, warmer) => {
        const start = at('core', 0, -31);
        if (isMet([start, ...readingsOf(points, warmer)]))
          expect(isMet([start, ...readingsOf(points)])).toBe(true);
      }),
      { numRuns: 300 },
    );
  });

  it('what comes after a met row does not undo it', () => {
    fc.assert(
      fc.property(lot, fc.constantFrom(-15, -23.3, -28.9), (points, tempC) => {
        const done = held(tempC, 480);
        const later = readingsOf(points).map((reading) => ({
          ...reading,
          atMs: reading.atMs + 480 * HOUR_MS,
        }));
        expect(isMet([...done, ...later])).toBe(true);
      }),
    );
  });
});
