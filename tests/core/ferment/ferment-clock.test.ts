import { readFileSync } from 'node:fs';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { RoomReading } from '#core/ferment/degree-hours.ts';
import { type FermentClock, type FermentInput, fermentClock } from '#core/ferment/ferment-clock.ts';
import type { PhReading } from '#core/ferment/ph-reading.ts';
import type { RuleSetId, Verdict } from '#core/rules/rule.ts';
import { HOUR_MS, meterPh, roomC, roomF } from './hours.ts';

type Step = { hours: number; temperature: number };
type Example = {
  id: string;
  ruleSet: RuleSetId;
  unit: 'C' | 'F';
  steps: Step[];
  laterSteps: Step[];
  stepDegreeHours: number[] | null;
  totalDegreeHours: number;
  highestDeg: number;
  limit: number;
  verdict: Verdict;
};
const published: {
  examples: Example[];
  commonPractice: { ferment: { roomC: number[]; hours: number[]; targetPh: number[] } };
} = JSON.parse(readFileSync('fixtures/published/ferment-degree-hours.json', 'utf8'));

/** A programme of constant steps as readings every 5 h, two at each change. */
function programme(steps: readonly Step[], unit: 'C' | 'F'): { readings: RoomReading[]; hours: number } {
  const readings: RoomReading[] = [];
  let hours = 0;
  for (const step of steps) {
    const read = unit === 'F' ? roomF : roomC;
    for (let since = 0; since < step.hours; since += 5)
      readings.push(...read([hours + since, step.temperature]));
    hours += step.hours;
    readings.push(...read([hours, step.temperature]));
  }
  return { readings, hours };
}

function clock(input: Partial<FermentInput> & { nowHours: number }): FermentClock {
  const { nowHours, ...rest } = input;
  return fermentClock({
    roomReadings: [],
    phReadings: [],
    stuffedAtMs: 0,
    ruleSet: 'CA',
    nowMs: nowHours * HOUR_MS,
    ...rest,
  });
}

/** Every 5 h at one temperature. */
function steady(deg: number, hours: number): RoomReading[] {
  return programme([{ hours, temperature: deg }], 'C').readings;
}

describe('published worked examples', () => {
  it.each(published.examples)('$id comes to $totalDegreeHours against $limit: $verdict', (example) => {
    const { readings, hours } = programme(example.steps, example.unit);
    const later = programme(example.laterSteps, example.unit);
    const laterReadings = later.readings.map((reading) => ({
      ...reading,
      atMs: reading.atMs + hours * HOUR_MS,
    }));
    const answer = clock({
      roomReadings: [...readings, ...laterReadings],
      phReadings: [meterPh(0, 5.8), meterPh(hours, 5.3)],
      ruleSet: example.ruleSet,
      nowHours: hours + later.hours,
    });
    expect(answer.sum?.totalDegreeHours).toBeCloseTo(example.totalDegreeHours, 6);
    expect(answer.sum?.highestDeg).toBe(example.highestDeg);
    expect(answer.limit?.value).toBe(example.limit);
    expect(answer.finding.verdict).toBe(example.verdict);
    if (example.stepDegreeHours === null) return;
    let fromHours = 0;
    const perStep = example.steps.map((step) => {
      const toHours = fromHours + step.hours;
      const within = answer.sum?.steps.filter(
        (part) => part.fromMs >= fromHours * HOUR_MS && part.toMs <= toHours * HOUR_MS,
      );
      fromHours = toHours;
      return within?.reduce((sum, part) => sum + part.degreeHours, 0) ?? Number.NaN;
    });
    for (const [index, degreeHours] of example.stepDegreeHours.entries())
      expect(perStep[index]).toBeCloseTo(degreeHours, 6);
  });

  it('24 °C for 60 h is 504, and 161 are left', () => {
    const answer = clock({ roomReadings: steady(24, 60), nowHours: 60 });
    expect(answer.sum?.totalDegreeHours).toBeCloseTo(504, 9);
    expect(answer.leftDegreeHours).toBeCloseTo(161, 9);
    expect(Math.floor((answer.ahead?.hoursLeft.ownBaseHours ?? 0) * 10) / 10).toBe(19.1);
    expect(answer.finding.verdict).toBe('pending');
  });

  it('a peak of 34 °C switches to 555', () => {
    const answer = clock({ roomReadings: roomC([0, 24], [5, 34], [10, 24]), nowHours: 10 });
    expect(answer.limit?.value).toBe(555);
  });

  // Common practice: 24 to 29 °C for 18 to 24 h, first pH test at 18 h.
  it.each(
    published.commonPractice.ferment.roomC.flatMap((deg) =>
      published.commonPractice.ferment.hours.flatMap((hours) =>
        (['US', 'CA'] as const).map((ruleSet) => ({ deg, hours, ruleSet })),
      ),
    ),
  )('common practice, $deg °C for $hours h, keeps the limit of $ruleSet', ({ deg, hours, ruleSet }) => {
    const answer = clock({
      roomReadings: steady(deg, hours),
      phReadings: [meterPh(hours, 5.1)],
      ruleSet,
      nowHours: hours,
    });
    expect(answer.finding.verdict).toBe('within-limit');
  });
});

describe('which reading stops the clock', () => {
  const roomReadings = steady(24, 40);
  const at = (phReadings: PhReading[]): FermentClock => clock({ roomReadings, phReadings, nowHours: 40 });

  it('a believed reading of exactly 5.30 does, one of 5.31 does not', () => {
    expect(at([meterPh(20, 5.3)]).finding.verdict).toBe('within-limit');
    expect(at([meterPh(20, 5.31)]).finding).toMatchObject({
      verdict: 'pending',
      missing: ['ph-at-or-below-5-30'],
    });
  });

  it.each([
    ['strip', { ...meterPh(20, 5), method: 'strip' }],
    ['doubted', { ...meterPh(20, 5), doubted: true }],
    ['meter-failed', { ...meterPh(20, 5), meterFailed: true }],
  ] as const)(
    '%s leaves it pending until a second reading confirms it, and counts until that one',
    (why, reading) => {
      const open = at([reading]);
      expect(open.finding).toMatchObject({ verdict: 'pending', missing: [`ph-confirm-${why}`] });
      expect(open.unconfirmed).toEqual({ atMs: 20 * HOUR_MS, ph: 5, why });
      const confirmed = at([reading, meterPh(30, 5)]);
      expect(confirmed.finding.verdict).toBe('within-limit');
      expect(confirmed.sum?.totalDegreeHours).toBeCloseTo(30 * 8.4, 6);
    },
  );

  it('a reading before stuffing, or after now, does not', () => {
    expect(at([meterPh(-1, 5)]).stop).toBeNull();
    expect(at([meterPh(41, 5)]).stop).toBeNull();
  });

  it('says when a believed reading rose above 5.30 again', () => {
    expect(at([meterPh(20, 5.25), meterPh(22, 5.45)]).hasRisenAfterStop).toBe(true);
    expect(at([meterPh(20, 5.25), meterPh(22, 5.2)]).hasRisenAfterStop).toBe(false);
  });

  it('the line crosses 5.30 before the reading that stops the clock: shown, and not used', () => {
    const answer = at([meterPh(10, 5.5), meterPh(30, 5.1)]);
    expect(answer.crossing?.atMs).toBeCloseTo(20 * HOUR_MS, 3);
    expect(answer.crossing?.totalDegreeHours).toBeCloseTo(20 * 8.4, 6);
    expect(answer.finding.value).toBeCloseTo(30 * 8.4, 6);
  });
});

describe('what was not read', () => {
  it('nothing read yet is no reading', () => {
    expect(clock({ nowHours: 1 }).finding).toMatchObject({
      verdict: 'no-reading',
      missing: ['room-temperature'],
    });
  });

  it('a hole of 7 h between readings is no reading, also when the sum would keep the limit', () => {
    const answer = clock({
      roomReadings: roomC([0, 24], [7, 24], [12, 24]),
      phReadings: [meterPh(12, 5.2)],
      nowHours: 12,
    });
    expect(answer.finding).toMatchObject({ verdict: 'no-reading', missing: ['room-temperature-gap'] });
    expect(answer.gaps).toEqual([{ where: 'between', fromMs: 0, toMs: 7 * HOUR_MS, durationHours: 7 }]);
  });

  it('a first reading 7 h after stuffing is no reading', () => {
    const answer = clock({ roomReadings: roomC([7, 24], [8, 24]), nowHours: 8 });
    expect(answer.gaps.map((gap) => gap.where)).toEqual(['before-first']);
    expect(answer.finding.verdict).toBe('no-reading');
  });

  it('the worst case over a hole takes the highest temperature read, or the one that the room can reach', () => {
    const input = { roomReadings: roomC([0, 20], [10, 30], [15, 30]), nowHours: 15 };
    expect(clock(input).worstCase).toMatchObject({
      roomDeg: 30,
      assumes: 'highest-read',
      unreadHours: 10,
      keepsLimit: true,
    });
    expect(clock(input).worstCase?.totalDegreeHours).toBeCloseTo(10 * 14.4 + 5 * 14.4, 6);
    const hot = clock({ ...input, worstRoomC: 40 }).worstCase;
    expect(hot).toMatchObject({ roomDeg: 40, assumes: 'given', keepsLimit: true });
    expect(hot?.limit.value).toBe(500);
    expect(hot?.totalDegreeHours).toBeCloseTo(10 * 24.4 + 5 * 14.4, 6);
  });

  it('a temperature at or after the last pH is asked for, since the line is not drawn ahead', () => {
    const early = { roomReadings: steady(24, 20), phReadings: [meterPh(22, 5.2)], nowHours: 23 };
    expect(clock(early).finding).toMatchObject({ verdict: 'pending', missing: ['room-temperature-at-end'] });
    const late = { ...early, roomReadings: [...early.roomReadings, ...roomC([23, 24])] };
    expect(clock(late).finding.verdict).toBe('within-limit');
    expect(clock(late).sum?.totalDegreeHours).toBeCloseTo(22 * 8.4, 6);
  });

  it('an old last reading holds until 6 h after it, then it is no reading', () => {
    const at = (nowHours: number): FermentClock => clock({ roomReadings: steady(24, 20), nowHours });
    expect(at(26).finding.verdict).toBe('pending');
    expect(at(26).ahead?.isStale).toBe(false);
    expect(at(26).ahead?.standsUntilMs).toBe(26 * HOUR_MS);
    expect(at(27).finding).toMatchObject({ verdict: 'no-reading' });
    expect(at(27).finding.missing).toContain('room-temperature-now');
    expect(at(27).ahead?.isStale).toBe(true);
  });

  it('close to the limit it holds only until the hours would run out', () => {
    const { ahead } = clock({ roomReadings: steady(24, 75), nowHours: 75 });
    expect(ahead?.standsUntilMs).toBe(ahead?.runsOutAtMs);
    expect(ahead?.standsUntilMs ?? 0).toBeLessThan(81 * HOUR_MS);
  });

  it('the hours since the last reading are taken off the hours that are left', () => {
    const fresh = clock({ roomReadings: steady(24, 20), nowHours: 20 }).ahead;
    const later = clock({ roomReadings: steady(24, 20), nowHours: 24 }).ahead;
    expect((fresh?.hoursLeft.ownBaseHours ?? 0) - (later?.hoursLeft.ownBaseHours ?? 0)).toBeCloseTo(4, 6);
  });

  it('a doubted temperature is left out, but not where it would pass the limit if it were true', () => {
    const hot: RoomReading = { atMs: 22 * HOUR_MS, roomC: 60, source: 'hand', doubted: true };
    const readings = [...steady(24, 20), hot, ...roomC([24, 24])];
    const mild = clock({ roomReadings: readings, phReadings: [meterPh(24, 5.2)], nowHours: 24 });
    expect(mild.sum?.highestDeg).toBe(24);
    expect(mild.finding.verdict).toBe('within-limit');
    const long = [...steady(24, 55), { ...hot, atMs: 57 * HOUR_MS }, ...roomC([60, 24])];
    const near = clock({ roomReadings: long, phReadings: [meterPh(60, 5.2)], nowHours: 60 });
    expect(near.finding).toMatchObject({ verdict: 'no-reading', missing: ['room-temperature-doubted'] });
  });
});

describe('the other rule sets', () => {
  it('EU does not apply, and still shows the Canadian numbers', () => {
    const answer = clock({ roomReadings: steady(24, 60), ruleSet: 'EU', nowHours: 60 });
    expect(answer.finding.verdict).toBe('does-not-apply');
    expect(answer.numbersOf).toBe('CA');
    expect(answer.sum?.totalDegreeHours).toBeCloseTo(504, 9);
    expect(answer.limit?.value).toBe(665);
  });

  it('a sum equal to the limit is a deviation, and is said apart', () => {
    const { readings } = programme([{ hours: 80, temperature: 75 }], 'F');
    const answer = clock({
      roomReadings: readings,
      phReadings: [meterPh(80, 5.3)],
      ruleSet: 'US',
      nowHours: 80,
    });
    expect(answer.finding.verdict).toBe('deviation');
    expect(answer.isAtLimit).toBe(true);
    expect(answer.finding.missing).toEqual([]);
  });
});

describe('laws of the clock', () => {
  const temps = fc.array(fc.integer({ min: 40, max: 380 }), { minLength: 3, maxLength: 20 });
  const readingsOf = (tenths: readonly number[]): RoomReading[] =>
    tenths.map((tenth, index) => ({ atMs: index * 5 * HOUR_MS, roomC: tenth / 10, source: 'hand' }));

  it('a pH on the line changes nothing unless it lies at or below 5.30', () => {
    fc.assert(
      fc.property(
        temps,
        fc.integer({ min: 535, max: 620 }),
        fc.integer({ min: 460, max: 620 }),
        fc.integer({ min: 1, max: 9 }),
        (tenths, first, last, tenth) => {
          const endHours = (tenths.length - 1) * 5;
          const phReadings = [meterPh(0, first / 100), meterPh(endHours, last / 100)];
          const ph = first / 100 + ((last - first) / 100) * (tenth / 10);
          const between = meterPh((endHours * tenth) / 10, ph);
          const input = { roomReadings: readingsOf(tenths), nowHours: endHours };
          const without = clock({ ...input, phReadings });
          const withIt = clock({
            ...input,
            phReadings: [...phReadings.slice(0, 1), between, ...phReadings.slice(1)],
          });
          if (ph > 5.3) expect(withIt.finding).toEqual(without.finding);
          else expect(withIt.stop?.atMs).toBe(between.atMs);
        },
      ),
    );
  });

  it('a warmer room never turns a deviation into anything milder', () => {
    fc.assert(
      fc.property(temps, fc.nat(), fc.integer({ min: 1, max: 60 }), (tenths, pick, more) => {
        const endHours = (tenths.length - 1) * 5;
        const warmer = tenths.map((tenth, index) => (index === pick % tenths.length ? tenth + more : tenth));
        const verdict = (values: readonly number[]): Verdict =>
          clock({
            roomReadings: readingsOf(values),
            phReadings: [meterPh(endHours, 5.2)],
            nowHours: endHours,
          }).finding.verdict;
        if (verdict(tenths) === 'deviation') expect(verdict(warmer)).toBe('deviation');
      }),
    );
  });

  it('more heat in the past or now never leaves more hours', () => {
    fc.assert(
      fc.property(temps, fc.nat(), fc.integer({ min: 1, max: 60 }), (tenths, pick, more) => {
        const nowHours = (tenths.length - 1) * 5;
        const warmer = tenths.map((tenth, index) => (index === pick % tenths.length ? tenth + more : tenth));
        const left = (values: readonly number[]): number =>
          clock({ roomReadings: readingsOf(values), nowHours }).ahead?.hoursLeft.hours ??
          Number.POSITIVE_INFINITY;
        expect(left(warmer)).toBeLessThanOrEqual(left(tenths) + 1e-9);
      }),
    );
  });

  it('never says within limit without a believed pH and a room read to its end', () => {
    fc.assert(
      fc.property(
        temps,
        fc.array(
          fc.record({
            hours: fc.integer({ min: 0, max: 100 }),
            hundredths: fc.integer({ min: 480, max: 600 }),
            method: fc.constantFrom<'meter' | 'strip'>('meter', 'strip'),
            doubted: fc.boolean(),
            meterFailed: fc.boolean(),
          }),
          { maxLength: 6 },
        ),
        (tenths, samples) => {
          const phReadings = samples
            .map(({ hours, hundredths, ...rest }) => ({ ...meterPh(hours, hundredths / 100), ...rest }))
            .sort((a, b) => a.atMs - b.atMs);
          const answer = clock({ roomReadings: readingsOf(tenths), phReadings, nowHours: 100 });
          if (answer.finding.verdict !== 'within-limit') return;
          const stop = phReadings.find((reading) => reading.atMs === answer.stop?.atMs && reading.ph <= 5.3);
          expect(stop).toBeDefined();
          expect((tenths.length - 1) * 5 * HOUR_MS).toBeGreaterThanOrEqual(answer.stop?.atMs ?? Number.NaN);
        },
      ),
    );
  });
});
