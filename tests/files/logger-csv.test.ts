import { readdirSync, readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { type LoggerChoices, type LoggerRead, readLogger } from '#files/logger-csv.ts';

const FOLDER = 'fixtures/logger';

type Point = readonly [at: string, roomC: number, rhPct: number | null];
type Expected = {
  readonly file: string;
  readonly what: string;
  readonly zone: string;
  readonly choices?: LoggerChoices;
  readonly read?: {
    readonly count: number;
    readonly first: Point;
    readonly last: Point;
    readonly periodMinutes: number | null;
    readonly unit: string;
    readonly clock?: string;
    readonly order?: string;
    readonly gaps?: readonly (readonly [string, string])[];
    readonly roomC?: readonly number[];
    readonly valuesDeg?: readonly number[];
    readonly names?: readonly string[];
    readonly at?: Readonly<Record<string, string>>;
    readonly passedOver?: object;
  };
  readonly asked?: readonly string[];
  readonly question?: object;
  readonly refused?: { readonly row: number | null; readonly code: string };
};

const { cases }: { cases: readonly Expected[] } = JSON.parse(readFileSync(`${FOLDER}/expected.json`, 'utf8'));
const iso = (atMs: number | undefined) => new Date(atMs ?? Number.NaN).toISOString();

function expectRead(result: LoggerRead, wanted: NonNullable<Expected['read']>): void {
  if (result.state !== 'read') throw new Error(JSON.stringify(result));
  const { series, found, passedOver } = result;
  const point = (at: number) => [iso(series.atMs.at(at)), series.roomC.at(at), series.rhPct.at(at)];
  const near = ([at, roomC, rhPct]: Point) => [at, expect.closeTo(roomC, 4), rhPct];
  expect(series.atMs).toHaveLength(wanted.count);
  expect(point(0)).toEqual(near(wanted.first));
  expect(point(-1)).toEqual(near(wanted.last));
  expect(series.startMs).toBe(series.atMs[0]);
  expect([series.roomC.length, series.rhPct.length, series.valuesDeg.length]).toEqual(
    Array(3).fill(wanted.count),
  );
  const { periodMinutes } = wanted;
  expect(series.periodMs).toEqual(periodMinutes === null ? null : expect.closeTo(periodMinutes * 60_000, 0));
  expect(series.unit).toBe(wanted.unit);
  if (wanted.clock) expect(found.clock).toBe(wanted.clock);
  if (wanted.order) expect(found.order).toBe(wanted.order);
  if (wanted.gaps)
    expect(series.gaps.map(({ fromMs, toMs }) => [iso(fromMs), iso(toMs)])).toEqual(wanted.gaps);
  if (wanted.roomC) expect(series.roomC).toEqual(wanted.roomC);
  if (wanted.valuesDeg) expect(series.valuesDeg).toEqual(wanted.valuesDeg);
  if (wanted.names) expect(found.columns.map(({ name }) => name)).toEqual(wanted.names);
  for (const [at, when] of Object.entries(wanted.at ?? {})) expect(iso(series.atMs[Number(at)])).toBe(when);
  if (wanted.passedOver) expect(passedOver).toMatchObject(wanted.passedOver);
}

describe('a table of a data logger', () => {
  it('is tried with more than sixty nasty files, and none of the folder is left out', () => {
    const files = readdirSync(FOLDER).filter((name) => /\.(csv|txt)$/.test(name));
    expect(files.length).toBeGreaterThan(100);
    expect(new Set(cases.map(({ file }) => file))).toEqual(new Set(files));
    expect(cases.filter(({ refused }) => refused).length).toBeGreaterThan(30);
  });

  it.each(cases)('$file: $what', async ({ file, zone, choices, read, asked, question, refused }) => {
    expect([read, asked, refused].filter((wanted) => wanted !== undefined)).toHaveLength(1);
    const result = await readLogger({ bytes: readFileSync(`${FOLDER}/${file}`), zone, choices });
    if (read) expectRead(result, read);
    if (refused) expect(result).toMatchObject({ state: 'refused', refusal: refused });
    if (asked) {
      if (result.state !== 'asked') throw new Error(JSON.stringify(result));
      expect(result.questions.map(({ code }) => code)).toEqual(asked);
      if (question) expect(result.questions).toContainEqual(question);
    }
  });
});
