/** What was published beside the limits, to hold the calculation against: worked examples, hours at one temperature, a meter. */
import {
  DEGREE_HOUR_RULES,
  degreeHourLimit,
  hoursLeftAt,
  keepsDegreeHours,
} from '#core/rules/degree-hours.ts';
import type { Source } from '#core/rules/rule.ts';
import { temperatureToC } from '#core/units.ts';
import { type DegreeHourSum, degreeHourSum, type RoomReading } from './degree-hours.ts';

const MS_PER_HOUR = 3_600_000;

type Step = { readonly roomDeg: number; readonly durationHours: number };
/** Temperatures and sums in the unit of the rule set. */
export type WorkedExample = {
  readonly ruleSet: 'US' | 'CA';
  readonly steps: readonly Step[];
  readonly totalDegreeHours: number;
  readonly limitDegreeHours: number;
  readonly passes: boolean;
};

const steps = (pairs: readonly (readonly [number, number])[]): Step[] =>
  pairs.map(([roomDeg, durationHours]) => ({ roomDeg, durationHours }));

const CFIA = {
  body: 'Canadian Food Inspection Agency',
  title: 'Meat Hygiene Manual of Procedures, chapter 4 (archived)',
} as const;

export const WORKED_SOURCES: Readonly<Record<'US' | 'CA', Source>> = {
  CA: { ...CFIA, section: '4.16.2.1, worked examples', standing: 'memory-high' },
  US: {
    body: 'American Meat Institute',
    title: 'Good Manufacturing Practices for Fermented Dry and Semi-Dry Sausage Products (1997)',
    section: 'degree-hours, worked examples',
    standing: 'memory-high',
  },
};

export const WORKED_EXAMPLES: readonly WorkedExample[] = [
  { ruleSet: 'CA', steps: steps([[26, 55]]), totalDegreeHours: 572, limitDegreeHours: 665, passes: true },
  { ruleSet: 'CA', steps: steps([[35, 40]]), totalDegreeHours: 776, limitDegreeHours: 555, passes: false },
  {
    ruleSet: 'CA',
    steps: steps([
      [24, 10],
      [30, 10],
      [35, 15],
    ]),
    totalDegreeHours: 519,
    limitDegreeHours: 555,
    passes: true,
  },
  {
    ruleSet: 'CA',
    steps: steps([
      [24, 10],
      [30, 10],
      [37, 18],
    ]),
    totalDegreeHours: 613.2,
    limitDegreeHours: 555,
    passes: false,
  },
  { ruleSet: 'US', steps: steps([[80, 55]]), totalDegreeHours: 1100, limitDegreeHours: 1200, passes: true },
  { ruleSet: 'US', steps: steps([[90, 40]]), totalDegreeHours: 1200, limitDegreeHours: 1000, passes: false },
  {
    ruleSet: 'US',
    steps: steps([
      [75, 10],
      [85, 10],
      [95, 15],
    ]),
    totalDegreeHours: 925,
    limitDegreeHours: 1000,
    passes: true,
  },
  {
    ruleSet: 'US',
    steps: steps([
      [75, 10],
      [85, 10],
      [98, 18],
    ]),
    totalDegreeHours: 1084,
    limitDegreeHours: 1000,
    passes: false,
  },
];

/** The longest time until pH 5.3 in a room of one temperature, as printed. */
export const HOURS_TABLES: Readonly<
  Record<'US' | 'CA', { readonly source: Source; readonly places: 0 | 1; readonly rows: readonly Step[] }>
> = {
  US: {
    source: {
      body: 'University extension service',
      title: 'Fermentation Log, form version 11/23/2012',
      section: 'time limit by chamber temperature',
      standing: 'read',
    },
    places: 0,
    rows: steps([
      [75, 80],
      [80, 60],
      [85, 48],
      [90, 33],
      [95, 28],
      [100, 25],
      [105, 20],
      [110, 18],
    ]),
  },
  CA: {
    source: {
      ...CFIA,
      section: "4.16.2.1, hours at one temperature; 24 °C read second-hand in a meter maker's note of 2015",
      standing: 'memory-high',
    },
    places: 1,
    rows: steps([
      [20, 150],
      [22, 103.4],
      [24, 78.9],
      [26, 63.8],
      [28, 53.6],
      [30, 46.2],
      [32, 40.5],
      [33, 31.8],
      [34, 30.1],
      [35, 28.6],
      [36, 27.2],
      [37, 25.9],
      [38, 22.3],
      [40, 20.5],
      [42, 18.9],
      [44, 17.6],
      [46, 16.4],
      [48, 15.4],
      [50, 14.5],
    ]),
  },
};

/** Two electrodes in buffers of pH 7.01 and 4.01, 3.00 apart, at 25 °C; their slope in percent is derived. */
export const METER_EXAMPLES = {
  source: {
    body: 'a meter maker',
    title: 'How to calculate offset and slope',
    section: 'examples; the sign of the first is misprinted, its numbers are right',
    standing: 'read',
  },
  rows: [
    { sevenMv: -15, fourMv: 160, offsetMv: -15, slopePct: 98.6 },
    { sevenMv: 15, fourMv: 160, offsetMv: 15, slopePct: 81.7 },
  ],
} as const;

/** mV per pH as quoted, in whole mV but for 25 °C. */
export const SLOPES_QUOTED = {
  source: {
    body: 'a meter maker',
    title: 'How to calculate offset and slope',
    section: 'ideal slope as quoted',
    standing: 'read',
  },
  rows: [
    { tempC: 0, slopeMvPerPh: 54 },
    { tempC: 25, slopeMvPerPh: 59.16 },
    { tempC: 50, slopeMvPerPh: 64 },
  ],
} as const;

export const BUFFER_SOURCES: readonly {
  readonly buffers: readonly ['7.00', '4.00'] | readonly ['6.86', '4.01'];
  readonly source: Source;
}[] = [
  {
    buffers: ['7.00', '4.00'],
    source: {
      body: 'a process-meter maker',
      title: 'Manual MI 611-211 (2005)',
      section: 'p. 23, table 8, technical buffers',
      standing: 'read',
    },
  },
  {
    buffers: ['6.86', '4.01'],
    source: {
      body: 'a process-meter maker; NIST and DIN 19266',
      title: 'Manual MI 611-211 (2005)',
      section: 'p. 23, table 7; 0 to 10 °C read there, the rest from memory',
      standing: 'memory-high',
    },
  },
];

/**
 * A worked example as the clock of this app counts it: two readings at each change, one before and one after.
 *
 * Formula: as degreeHourSum, degreeHourLimit. Units: those of the rule set. Valid: steps of more than 0 h.
 * Source: WORKED_SOURCES.
 * @throws RangeError as degreeHourSum.
 * @example exampleHere({ ruleSet: 'CA', steps: [{ roomDeg: 26, durationHours: 55 }], totalDegreeHours: 572, limitDegreeHours: 665, passes: true }).passes // => true
 */
export function exampleHere({ ruleSet, steps: ofExample }: WorkedExample): {
  sum: DegreeHourSum | null;
  limitDegreeHours: number;
  passes: boolean;
} {
  const { unit, base } = DEGREE_HOUR_RULES[ruleSet];
  const readings: RoomReading[] = [];
  let atMs = 0;
  for (const { roomDeg, durationHours } of ofExample) {
    const typed = { value: roomDeg, unit };
    const reading = { roomC: temperatureToC(typed), typed, source: 'hand' as const };
    readings.push({ atMs, ...reading });
    atMs += durationHours * MS_PER_HOUR;
    readings.push({ atMs, ...reading });
  }
  const sum = degreeHourSum({ readings, unit, baseDeg: base.value, fromMs: 0, toMs: atMs });
  const limit = degreeHourLimit({ ruleSet, highestDeg: sum?.highestDeg ?? base.value });
  return {
    sum,
    limitDegreeHours: limit.value,
    passes: sum !== null && keepsDegreeHours(sum.totalDegreeHours, limit),
  };
}

/**
 * The hours of a table as this app gives them: the shorter of its two bases, to be shown rounded down.
 *
 * Units: `roomDeg` in the unit of the rule set; h. Valid: above the base.
 * Source: hoursLeftAt.
 * @throws RangeError as hoursLeftAt.
 * @example hoursHere('US', 75) // => 80
 */
export function hoursHere(ruleSet: 'US' | 'CA', roomDeg: number): number | null {
  return hoursLeftAt({ ruleSet, totalDegreeHours: 0, highestDeg: null, roomDeg }).hours;
}
