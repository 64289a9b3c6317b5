/** Two batches side by side: what was done otherwise, and what came of it. What was not written down is not called the same. */
import { isMeat } from '#core/formula/formula.ts';
import { median } from '#core/median.ts';
import type { Batch } from './batch.ts';
import { fermentFigures, phReadings, roomSeries } from './ferment-figures.ts';
import { pieceFigures } from './piece-figures.ts';
import { ASPECTS, type Aspect, tasting } from './tasting.ts';

/** In the unit that its code says; null where it was not written down. */
export type Written = number | string | null;

/** `line` is a line of the formula in percent of the meat as weighed, `lot` the lot that went into it. */
export type Done = {
  readonly code:
    | 'line'
    | 'lot'
    | 'fat-share'
    | 'diameter'
    | 'casing'
    | 'ferment-temperature'
    | 'ferment-hours'
    | 'smoke-hours'
    | 'air'
    | 'humidity'
    | 'chamber'
    | 'target-loss';
  /** The name of the line, where it is one. */
  readonly name: string;
  readonly one: Written;
  readonly two: Written;
  /** Null where one of the two was not written down. */
  readonly differs: boolean | null;
};

export type CameOut = {
  readonly code: 'ph' | 'hours-to-stop' | 'loss' | 'days' | Aspect;
  readonly one: Exclude<Written, string>;
  readonly two: Exclude<Written, string>;
};

export type Comparison = {
  readonly done: readonly Done[];
  readonly cameOut: readonly CameOut[];
  readonly differing: number;
  readonly unknown: number;
};

const HOUR_MS = 3_600_000;

/** What a maker at the bench cannot hold apart is called the same: our own choice, no published source. */
const SAME_WITHIN: Readonly<Partial<Record<Done['code'], number>>> = {
  'fat-share': 1,
  diameter: 1,
  'ferment-temperature': 0.5,
  'ferment-hours': 2,
  'smoke-hours': 0.5,
  air: 0.5,
  humidity: 2,
  'target-loss': 0.5,
};
const SAME_SHARE_OF_LINE = 0.02;

export function compareBatches(one: Batch, two: Batch, nowMs: number): Comparison {
  const left = traits(one);
  const right = traits(two);
  const keys = [...new Set([...left.keys(), ...right.keys()])];
  const done = keys.map((key): Done => {
    const found = left.get(key) ?? right.get(key);
    if (!found) throw new Error(`compareBatches: ${key} is of neither batch`);
    const { code, name } = found;
    // A line that the other formula does not have is none of it: known, and not nothing read.
    const absent = code === 'line' ? 0 : null;
    const values = {
      one: left.has(key) ? (left.get(key)?.value ?? null) : absent,
      two: right.has(key) ? (right.get(key)?.value ?? null) : absent,
    };
    return { code, name, ...values, differs: differs(code, values.one, values.two) };
  });
  const outLeft = outcomes(one, nowMs);
  const outRight = outcomes(two, nowMs);
  return {
    done,
    cameOut: outLeft.map(({ code, value }, at) => ({ code, one: value, two: outRight[at]?.value ?? null })),
    differing: done.filter((each) => each.differs === true).length,
    unknown: done.filter((each) => each.differs === null).length,
  };
}

function differs(code: Done['code'], one: Written, two: Written): boolean | null {
  if (one === null || two === null) return null;
  if (typeof one === 'string' || typeof two === 'string') return one !== two;
  const within = code === 'line' ? SAME_SHARE_OF_LINE * Math.max(one, two) : (SAME_WITHIN[code] ?? 0);
  return Math.abs(one - two) > within;
}

type Trait = { readonly code: Done['code']; readonly name: string; readonly value: Written };

function traits(batch: Batch): Map<string, Trait> {
  const { opened, weighedOut, leanG, fatG, pieces, plan, hung, smoked, stuffedAtMs, fermentEnded } = batch;
  const meatG = leanG + fatG;
  const lines = opened.body.formula.lines.filter(({ role }) => !isMeat(role));
  const all: [string, Trait][] = lines.flatMap((line) => {
    const weighed = weighedOut.get(line.id)?.body;
    const pct = weighed && meatG > 0 ? (100 * weighed.massG) / meatG : null;
    const key = `${line.role} ${line.name.trim().toLowerCase()}`;
    const amount: [string, Trait] = [`line ${key}`, { code: 'line', name: line.name, value: pct }];
    // Lots of salt and spice seldom matter; those of a culture, a cure and a mould do.
    if (!['starter', 'cure', 'mould'].includes(line.role)) return [amount];
    return [amount, [`lot ${key}`, { code: 'lot', name: line.name, value: weighed?.lot ?? null }]];
  });
  const warmHours = stuffedAtMs !== null && fermentEnded ? (fermentEnded.atMs - stuffedAtMs) / HOUR_MS : null;
  const others: readonly [Exclude<Done['code'], 'line' | 'lot'>, Written][] = [
    ['fat-share', meatG > 0 ? (100 * fatG) / meatG : null],
    ['diameter', mean(pieces.map(({ diameterMm }) => diameterMm))],
    ['casing', pieces[0]?.stuffed.body.casing.trim() || null],
    ['ferment-temperature', meanRoomC(batch)],
    ['ferment-hours', warmHours],
    ['smoke-hours', smoked.reduce((sum, { body }) => sum + body.hours, 0)],
    ['air', hung?.body.airC ?? null],
    ['humidity', hung?.body.rhPct ?? null],
    ['chamber', hung?.body.chamber ?? null],
    ['target-loss', mean(pieces.map(({ targetLossPct }) => targetLossPct)) ?? plan.targetLossPct],
  ];
  return new Map([...all, ...others.map(([code, value]) => [code, { code, name: '', value }] as const)]);
}

function outcomes(batch: Batch, nowMs: number): { code: CameOut['code']; value: number | null }[] {
  const { stuffedAtMs, pieces } = batch;
  const stop = fermentFigures(batch, nowMs)?.stop ?? null;
  const losses = pieces.flatMap((piece) => pieceFigures(piece).lossPct ?? []);
  const days = pieces.flatMap(({ weighings, greenG, targetLossPct, stuffed }) => {
    const reached = weighings.find(({ netG }) => netG > 0 && 100 * (1 - netG / greenG) >= targetLossPct);
    return reached ? (reached.atMs - stuffed.atMs) / (24 * HOUR_MS) : [];
  });
  const tasted = tasting(batch);
  return [
    { code: 'ph', value: phReadings(batch).findLast(({ doubted }) => !doubted)?.ph ?? null },
    {
      code: 'hours-to-stop',
      value: stop && stuffedAtMs !== null ? (stop.atMs - stuffedAtMs) / HOUR_MS : null,
    },
    { code: 'loss', value: losses.length > 0 ? median(losses) : null },
    { code: 'days', value: days.length > 0 ? median(days) : null },
    ...ASPECTS.map((code) => ({ code, value: tasted?.marks[code] ?? null })),
  ];
}

/** Of the room from stuffing to the end of the ferment, along straight lines between readings; null without two of them. */
function meanRoomC(batch: Batch): number | null {
  const { stuffedAtMs, fermentEnded } = batch;
  if (stuffedAtMs === null || fermentEnded === null) return null;
  const own = roomSeries(batch).readings.filter(
    ({ atMs, doubted }) => !doubted && atMs >= stuffedAtMs && atMs <= fermentEnded.atMs,
  );
  const [first, last] = [own[0], own.at(-1)];
  if (!first || !last || last.atMs === first.atMs) return null;
  const degreeMs = own.slice(1).reduce((sum, to, at) => {
    const from = own[at] ?? to;
    return sum + ((from.roomC + to.roomC) / 2) * (to.atMs - from.atMs);
  }, 0);
  return degreeMs / (last.atMs - first.atMs);
}

function mean(values: readonly number[]): number | null {
  return values.length > 0 ? values.reduce((sum, value) => sum + value, 0) / values.length : null;
}
