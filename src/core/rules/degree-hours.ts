/** Degree-hour limits of the rule sets: base, classes by the highest room temperature, and the hours that are left. */
import { keepsLimit, type Limit, type RuleSetId, type Source } from '#core/rules/rule.ts';
import type { TemperatureUnit } from '#core/units.ts';

const AMI = {
  body: 'American Meat Institute',
  title: 'Good Manufacturing Practices for Fermented Dry and Semi-Dry Sausage Products (1997)',
} as const;
const CFIA = {
  body: 'Canadian Food Inspection Agency',
  title: 'Meat Hygiene Manual of Procedures, chapter 4 (archived)',
} as const;

/** A class holds from its lowest temperature on: `at` includes the edge itself, `above` does not. */
type DegreeHourClass = { readonly fromDeg: number; readonly edge: 'at' | 'above'; readonly limit: Limit };

export type DegreeHourRules = {
  /** The rule set whose numbers these are: EU has none of its own and shows the Canadian ones for reference. */
  readonly numbersOf: 'US' | 'CA';
  readonly binds: boolean;
  readonly unit: TemperatureUnit;
  readonly base: Limit;
  /** The base for hours that are left, never above the one that is counted from, so that the answer is never the longer one. */
  readonly cautiousBaseDeg: number;
  readonly classes: readonly DegreeHourClass[];
  /** The day these numbers were last held against the official text; null: they never were. */
  readonly comparedOn: string | null;
};

function limitOf(value: number, unit: TemperatureUnit, source: Source): Limit {
  return { value, unit: `degree-hours ${unit}`, relation: '<', basis: 'room-temperature', source };
}

const US: DegreeHourRules = {
  numbersOf: 'US',
  binds: true,
  unit: 'F',
  base: {
    value: 60,
    unit: 'F',
    relation: '>',
    basis: 'room-temperature',
    source: { ...AMI, section: 'degree-hours', standing: 'read-second-hand' },
  },
  cautiousBaseDeg: 60,
  classes: [
    {
      fromDeg: Number.NEGATIVE_INFINITY,
      edge: 'at',
      limit: limitOf(1200, 'F', {
        ...AMI,
        section: 'degree-hours, below 90 °F',
        standing: 'read-second-hand',
      }),
    },
    {
      fromDeg: 90,
      edge: 'at',
      limit: limitOf(1000, 'F', { ...AMI, section: 'degree-hours, 90 to 100 °F', standing: 'memory-high' }),
    },
    {
      fromDeg: 100,
      edge: 'above',
      limit: limitOf(900, 'F', { ...AMI, section: 'degree-hours, above 100 °F', standing: 'memory-high' }),
    },
  ],
  comparedOn: null,
};

const CA: DegreeHourRules = {
  numbersOf: 'CA',
  binds: true,
  unit: 'C',
  base: {
    value: 15.6,
    unit: 'C',
    relation: '>',
    basis: 'room-temperature',
    source: { ...CFIA, section: '4.16.2.1', standing: 'read-second-hand' },
  },
  cautiousBaseDeg: 15.556,
  classes: [
    {
      fromDeg: Number.NEGATIVE_INFINITY,
      edge: 'at',
      limit: limitOf(665, 'C', {
        ...CFIA,
        section: '4.16.2.1, below 33 °C',
        standing: 'read-second-hand',
      }),
    },
    {
      fromDeg: 33,
      edge: 'at',
      limit: limitOf(555, 'C', { ...CFIA, section: '4.16.2.1, 33 to 37 °C', standing: 'memory-high' }),
    },
    {
      fromDeg: 37,
      edge: 'above',
      limit: limitOf(500, 'C', { ...CFIA, section: '4.16.2.1, above 37 °C', standing: 'memory-high' }),
    },
  ],
  comparedOn: null,
};

export const DEGREE_HOUR_RULES: Readonly<Record<RuleSetId, DegreeHourRules>> = {
  US,
  CA,
  EU: { ...CA, binds: false },
};

/**
 * The limit of the class that the highest room temperature before pH 5.3 falls in. A later cooler step does not lift it again.
 *
 * Formula: US: below 90 °F 1200, 90 to 100 °F 1000, above 100 °F 900; Canada: below 33 °C 665, 33 to 37 °C 555, above 37 °C 500.
 * Units: `highestDeg` in the rule set's own unit (US °F, CA and EU °C); limit in degree-hours of that unit.
 * Valid: any temperature; both 90 and 100 °F belong to 1000, both 33 and 37 °C to 555.
 * Source: each limit carries its own; the class rule: CFIA, Meat Hygiene Manual of Procedures, ch. 4, 4.16.2.1 (read second-hand).
 * @throws RangeError unless highestDeg is a finite number.
 * @example degreeHourLimit({ ruleSet: 'CA', highestDeg: 34 }).value // => 555
 * @example degreeHourLimit({ ruleSet: 'US', highestDeg: 100 }).value // => 1000
 */
export function degreeHourLimit({ ruleSet, highestDeg }: { ruleSet: RuleSetId; highestDeg: number }): Limit {
  if (!Number.isFinite(highestDeg))
    throw new RangeError(`degreeHourLimit: highestDeg requires a finite number, got ${highestDeg}`);
  const holding = DEGREE_HOUR_RULES[ruleSet].classes.filter(({ fromDeg, edge }) =>
    edge === 'at' ? highestDeg >= fromDeg : highestDeg > fromDeg,
  );
  const strictest = holding.at(-1);
  if (strictest === undefined) throw new RangeError(`degreeHourLimit: no class holds ${highestDeg}`);
  return strictest.limit;
}

/** Far above the noise of a sum, far below what any thermometer resolves: a tie is a tie also when the last bits differ. */
const SUM_NOISE_DEGREE_HOURS = 1e-6;

/**
 * Whether a sum of degree-hours is below its limit; a tie counts against the maker.
 *
 * Units: the limit's own. Valid: any finite sum.
 * Source: both rule sets say "fewer than"; the published hours tables allow exactly the limit, the stricter reading is taken.
 * @throws RangeError unless the sum is a finite number.
 * @example keepsDegreeHours(1199.9, degreeHourLimit({ ruleSet: 'US', highestDeg: 80 })) // => true
 * @example keepsDegreeHours(1200, degreeHourLimit({ ruleSet: 'US', highestDeg: 80 })) // => false
 */
export function keepsDegreeHours(totalDegreeHours: number, limit: Limit): boolean {
  return keepsLimit(totalDegreeHours + SUM_NOISE_DEGREE_HOURS, limit);
}

/** `hours` null: at this temperature nothing is counted, so the limit is not reached. */
export type HoursLeft = {
  readonly roomDeg: number;
  /** The class the limit is taken from if the room goes to this temperature. */
  readonly limit: Limit;
  /** The shorter answer, to act on: in Canada by 15.556 °C, from which the published hours seem to be made. */
  readonly hours: number | null;
  /** By the base that the sum itself is counted from (60 °F, 15.6 °C): never shorter. */
  readonly ownBaseHours: number | null;
  readonly assumes: 'room-stays-at-this-temperature';
};

/**
 * Hours until the limit if the room stood at one temperature from now on. An estimate: no verdict rests on it. Show rounded down.
 *
 * Formula: (limit - total) / (T - base), limit of the class of max(T, highest so far); 0 once passed. For Canada also with the base
 * 15.556 °C (60 °F), since the published hours are shorter than (limit / (T - 15.6)) by up to 1.2 h; the shorter is given.
 * Units: temperatures in the rule set's own unit; h.
 * Valid: any temperature; totalDegreeHours >= 0; highestDeg null before the first reading.
 * Source: derived from the limits; the second base is derived from the printed hours.
 * @throws RangeError unless totalDegreeHours >= 0 and the temperatures are finite.
 * @example hoursLeftAt({ ruleSet: 'US', totalDegreeHours: 0, highestDeg: null, roomDeg: 75 }).hours // => 80
 */
export function hoursLeftAt({
  ruleSet,
  totalDegreeHours,
  highestDeg,
  roomDeg,
}: {
  ruleSet: RuleSetId;
  totalDegreeHours: number;
  highestDeg: number | null;
  roomDeg: number;
}): HoursLeft {
  if (!(totalDegreeHours >= 0 && Number.isFinite(totalDegreeHours)))
    throw new RangeError(`hoursLeftAt: totalDegreeHours requires a number >= 0, got ${totalDegreeHours}`);
  const rules = DEGREE_HOUR_RULES[ruleSet];
  const limit = degreeHourLimit({ ruleSet, highestDeg: Math.max(roomDeg, highestDeg ?? roomDeg) });
  const leftDegreeHours = limit.value - totalDegreeHours;
  const hoursFrom = (baseDeg: number): number | null => {
    if (!keepsDegreeHours(totalDegreeHours, limit)) return 0;
    return roomDeg > baseDeg ? leftDegreeHours / (roomDeg - baseDeg) : null;
  };
  return {
    roomDeg,
    limit,
    hours: hoursFrom(rules.cautiousBaseDeg),
    ownBaseHours: hoursFrom(rules.base.value),
    assumes: 'room-stays-at-this-temperature',
  };
}
