/** Freezing of pork against Trichinella: how far a lot has come in the published tables (long, since it holds them). */
import type { TemperatureUnit } from '#core/units.ts';
import type { Finding, Limit, RuleSetId, Source } from './rule.ts';

const MS_PER_HOUR = 3_600_000;
/** Readings of a freezer may lie this far apart: common practice (once a day, with two hours' grace). */
export const FREEZER_GAP_HOURS = 26;

export type FreezingReading = {
  readonly atMs: number;
  readonly tempC: number;
  readonly typed?: { readonly value: number; readonly unit: TemperatureUnit } | undefined;
  /** A probe in the warmest part of the lot, or the air of the room. */
  readonly where: 'core' | 'room';
  readonly doubted?: boolean | undefined;
};

/** At or below this temperature for `hours`. `atF` where the text is printed in °F: a reading typed in °F is held against it. */
export type FreezingRow = { readonly atC: number; readonly atF?: number; readonly hours: number };

export type FreezingTable = {
  readonly method: 'room' | 'core';
  readonly aboveMm: number;
  readonly toMm: number;
  readonly rows: readonly FreezingRow[];
  readonly source: Source;
};

const CFR = { body: 'US Department of Agriculture', title: '9 CFR 318.10 (reserved since 2018)' } as const;
const US_ROOM: Source = {
  ...CFR,
  section: '(c)(2), Table 1, as given in J. Am. Med. Assoc. 1954;155(16):1394',
  standing: 'read',
};
const EU_ROOM: Source = {
  body: 'European Commission',
  title: 'Implementing Regulation (EU) 2015/1375',
  section: 'Annex II',
  standing: 'memory-high',
};

const US_TABLES: readonly FreezingTable[] = [
  {
    method: 'room',
    aboveMm: 0,
    toMm: 152.4,
    rows: [
      { atC: -15, atF: 5, hours: 20 * 24 },
      { atC: -23.3, atF: -10, hours: 10 * 24 },
      { atC: -28.9, atF: -20, hours: 6 * 24 },
    ],
    source: US_ROOM,
  },
  {
    method: 'room',
    aboveMm: 152.4,
    toMm: 685.8,
    rows: [
      { atC: -15, atF: 5, hours: 30 * 24 },
      { atC: -23.3, atF: -10, hours: 20 * 24 },
      { atC: -28.9, atF: -20, hours: 12 * 24 },
    ],
    source: US_ROOM,
  },
  {
    method: 'core',
    aboveMm: 0,
    toMm: Number.POSITIVE_INFINITY,
    rows: [
      { atC: -17.8, atF: 0, hours: 106 },
      { atC: -20.6, atF: -5, hours: 82 },
      { atC: -23.3, atF: -10, hours: 63 },
      { atC: -26.1, atF: -15, hours: 48 },
      { atC: -28.9, atF: -20, hours: 35 },
      { atC: -31.7, atF: -25, hours: 22 },
      { atC: -34.5, atF: -30, hours: 8 },
      { atC: -37.2, atF: -35, hours: 0.5 },
    ],
    source: { ...CFR, section: '(c)(2)(iv), Table 2, as given in a review', standing: 'read-second-hand' },
  },
];

/** The Canadian table could not be read: the US one is shown for reference and gives no verdict. */
const TABLES: Readonly<Record<RuleSetId, readonly FreezingTable[]>> = {
  US: US_TABLES,
  CA: US_TABLES,
  EU: [
    {
      method: 'room',
      aboveMm: 0,
      toMm: 150,
      rows: [
        { atC: -15, hours: 20 * 24 },
        { atC: -23, hours: 10 * 24 },
        { atC: -29, hours: 6 * 24 },
      ],
      source: EU_ROOM,
    },
    {
      method: 'room',
      aboveMm: 150,
      toMm: 500,
      rows: [
        { atC: -15, hours: 30 * 24 },
        { atC: -25, hours: 20 * 24 },
        { atC: -29, hours: 12 * 24 },
      ],
      source: EU_ROOM,
    },
  ],
};

export type FreezingFlag = 'us-text-reserved' | 'no-table-for-rule-set' | 'not-for-game' | 'too-thick';
export type FreezingMissing = 'core-temperature' | 'room-temperature' | 'core-at-temperature' | 'freezer-now';

export type FreezingInput = {
  readonly ruleSet: RuleSetId;
  readonly species: 'pork' | 'game';
  readonly method: 'room' | 'core';
  /** Of the thickest piece, layer or container. */
  readonly thicknessMm: number;
  readonly readings: readonly FreezingReading[];
  readonly nowMs: number;
};

export type FreezingAnswer = {
  readonly finding: Finding;
  readonly flags: readonly FreezingFlag[];
  /** The row that is met, or else the one that would be met first; null while nothing counts. */
  readonly row: FreezingRow | null;
  readonly startedAtMs: number | null;
  readonly doneHours: number;
  /** When the row is met if every further reading stays at or below it. An estimate until then. */
  readonly dueAtMs: number | null;
  /** What started the count again, in order of time: a warmer reading, or a stretch that was not read. */
  readonly restarts: readonly { readonly atMs: number; readonly why: 'warmer' | 'not-read' }[];
};

type Run = { readonly row: FreezingRow; readonly startedAtMs: number; readonly lastAtMs: number };

/**
 * The table that a lot falls in: by its thickness for the temperature of the room, at any thickness for a probe in its core.
 *
 * Units: mm; rows in °C (and °F where printed) and h.
 * Valid: null where the rule set has no such table, or the lot is thicker than it covers.
 * Source: each table carries its own and its standing.
 * @throws RangeError unless thicknessMm > 0.
 * @example freezingTable({ ruleSet: 'US', method: 'room', thicknessMm: 100 })?.rows[0] // => { atC: -15, atF: 5, hours: 480 }
 */
export function freezingTable(lot: {
  ruleSet: RuleSetId;
  method: 'room' | 'core';
  thicknessMm: number;
}): FreezingTable | null {
  const { ruleSet, method, thicknessMm } = lot;
  if (!(thicknessMm > 0))
    throw new RangeError(`freezingTable: thicknessMm requires a number > 0, got ${thicknessMm}`);
  const table = TABLES[ruleSet].find(
    (each) => each.method === method && thicknessMm > each.aboveMm && thicknessMm <= each.toMm,
  );
  return table ?? null;
}

/**
 * How far a lot of pork has come in the freezing table of its rule set. Not for game, whose *Trichinella* can survive freezing; and
 * it speaks of *Trichinella* only.
 *
 * Formula: a row's run starts when a probe in the warmest part is at its temperature; the warmest reading of a run picks the row, so
 * between two rows the warmer holds; a warmer reading, or more than 26 h without one, starts it again. By room temperature the room's
 * readings count, from the probe's on.
 * Units: °C, mm, h, epoch ms. Valid: readings in order of time; a row once met is not undone by thawing.
 * Source: each table carries its own; the US text is reserved since 2018 and flagged so; 26 h between readings: common practice.
 * @throws RangeError unless thicknessMm > 0 and the readings are in order of time.
 * @example freezingAnswer({ ruleSet: 'US', species: 'game', method: 'room', thicknessMm: 100, readings: [], nowMs: 0 }).flags // => ['not-for-game']
 */
export function freezingAnswer(input: FreezingInput): FreezingAnswer {
  const { ruleSet, species, method, nowMs } = input;
  const table = freezingTable(input);
  const readings = input.readings.filter((reading) => reading.doubted !== true && !(reading.atMs > nowMs));
  for (const [index, reading] of readings.entries())
    if (!(reading.atMs >= (readings[index - 1]?.atMs ?? reading.atMs)))
      throw new RangeError(`freezingAnswer: readings requires order of time, got ${reading.atMs}`);
  const flags = flagsOf(input, table);
  const counts = species === 'pork' && table !== null;
  const runs = counts ? table.rows.map((row) => runOf({ row, method, readings })) : [];
  const met = runs.find((run) => run.isMet)?.run ?? null;
  const run = met ?? soonest(runs.flatMap((each) => each.run ?? []));
  const doneHours = run ? (run.lastAtMs - run.startedAtMs) / MS_PER_HOUR : 0;
  const missing = counts && met === null ? missingOf({ method, readings, run, nowMs }) : [];
  const limit: Limit | null =
    run && table
      ? { value: run.row.hours, unit: 'h', relation: '>=', basis: `${method}-frozen`, source: table.source }
      : null;
  const verdict =
    !counts || ruleSet === 'CA'
      ? 'does-not-apply'
      : met !== null
        ? 'within-limit'
        : missing.length === 0 || missing[0] === 'core-at-temperature'
          ? 'pending'
          : 'no-reading';
  return {
    finding: {
      rule: 'trichinella-freezing',
      verdict,
      value: run ? doneHours : null,
      limit,
      missing: verdict === 'does-not-apply' ? [] : missing,
    },
    flags,
    row: run?.row ?? null,
    startedAtMs: run?.startedAtMs ?? null,
    doneHours,
    dueAtMs: run ? run.startedAtMs + run.row.hours * MS_PER_HOUR : null,
    restarts: runs[0]?.restarts ?? [],
  };
}

function flagsOf({ ruleSet, species, method }: FreezingInput, table: FreezingTable | null): FreezingFlag[] {
  if (species === 'game') return ['not-for-game'];
  if (table === null)
    return TABLES[ruleSet].some((each) => each.method === method) ? ['too-thick'] : ['no-table-for-rule-set'];
  if (ruleSet === 'CA') return ['no-table-for-rule-set', 'us-text-reserved'];
  return ruleSet === 'US' ? ['us-text-reserved'] : [];
}

function isAtOrBelow(reading: FreezingReading, row: FreezingRow): boolean {
  const { typed } = reading;
  if (typed?.unit === 'F' && row.atF !== undefined) return typed.value <= row.atF;
  return reading.tempC <= row.atC;
}

/** Every reading at or below the row from the probe's on; a met run is kept, whatever is read after it. */
function runOf({
  row,
  method,
  readings,
}: {
  row: FreezingRow;
  method: 'room' | 'core';
  readings: readonly FreezingReading[];
}): { run: Run | null; isMet: boolean; restarts: FreezingAnswer['restarts'] } {
  const restarts: { atMs: number; why: 'warmer' | 'not-read' }[] = [];
  let run: Run | null = null;
  for (const reading of readings) {
    if (method === 'core' && reading.where === 'room') continue;
    if (!isAtOrBelow(reading, row)) {
      if (run !== null) restarts.push({ atMs: reading.atMs, why: 'warmer' });
      run = null;
      continue;
    }
    if (run !== null && reading.atMs - run.lastAtMs > FREEZER_GAP_HOURS * MS_PER_HOUR) {
      restarts.push({ atMs: reading.atMs, why: 'not-read' });
      run = null;
    }
    if (run === null) {
      if (reading.where === 'core') run = { row, startedAtMs: reading.atMs, lastAtMs: reading.atMs };
    } else if (reading.where === method) {
      run = { row, startedAtMs: run.startedAtMs, lastAtMs: reading.atMs };
      if (run.lastAtMs - run.startedAtMs >= row.hours * MS_PER_HOUR) return { run, isMet: true, restarts };
    }
  }
  return { run, isMet: false, restarts };
}

function soonest(runs: readonly Run[]): Run | null {
  const dueMs = (run: Run): number => run.startedAtMs + run.row.hours * MS_PER_HOUR;
  return runs.reduce<Run | null>((best, run) => (best && dueMs(best) <= dueMs(run) ? best : run), null);
}

function missingOf({
  method,
  readings,
  run,
  nowMs,
}: {
  method: 'room' | 'core';
  readings: readonly FreezingReading[];
  run: Run | null;
  nowMs: number;
}): FreezingMissing[] {
  if (!readings.some((reading) => reading.where === 'core')) return ['core-temperature'];
  if (!readings.some((reading) => reading.where === method)) return ['room-temperature'];
  const lastMs = readings.at(-1)?.atMs ?? nowMs;
  if (nowMs - lastMs > FREEZER_GAP_HOURS * MS_PER_HOUR) return ['freezer-now'];
  return run === null ? ['core-at-temperature'] : [];
}
