/** What the log knows of a ferment whose pH does not fall. What it does not know is left out, and asked. */
import type { RoomReading } from '#core/ferment/degree-hours.ts';
import { METER_CHECK_DUE_HOURS } from '#core/ferment/meter-check.ts';
import { COUNTED_UNTIL_PH } from '#core/ferment/ph-reading.ts';
import { type StallFacts, stallOf } from '#core/ferment/stall.ts';
import type { FormulaLine } from '#core/formula/formula.ts';
import type { Batch } from './batch.ts';
import { phReadings, roomSeries } from './ferment-figures.ts';
import { formulaFindings } from './formula-findings.ts';
import { checkedAt } from './instruments.ts';
import { dextroseGPerKg } from './ph-ahead.ts';
import type { Lot } from './place.ts';

const HOUR_MS = 3_600_000;
const DAY_MS = 24 * HOUR_MS;
/** The law of growth ends there: colder, nothing ferments. */
const NO_GROWTH_C = 3;

/** Null before stuffing, and without a believed room temperature above 3 °C since. */
export function stallFacts(batch: Batch, lots: readonly Lot[], nowMs: number): StallFacts | null {
  const { stuffedAtMs, checks } = batch;
  if (stuffedAtMs === null || nowMs < stuffedAtMs) return null;
  const roomC = meanC(roomSeries(batch).readings, { fromMs: stuffedAtMs, toMs: nowMs });
  if (roomC === null || !(roomC > NO_GROWTH_C)) return null;
  const read = batch.ph.filter(({ atMs, body }) => atMs <= nowMs && body.doubted !== true);
  const last = read.findLast(({ atMs, body }) => atMs >= stuffedAtMs && body.sample !== 'mix');
  const start = read.find(({ id, body }) => body.method === 'meter' && id !== last?.id);
  const sinceMs = (last?.atMs ?? nowMs) - METER_CHECK_DUE_HOURS * HOUR_MS;
  const lastCheck = checkedAt(checks, last?.body.meter, 'meter-checked').findLast(
    ({ atMs }) => atMs >= sinceMs && atMs <= nowMs,
  );
  return {
    elapsedHours: ((last?.atMs ?? nowMs) - stuffedAtMs) / HOUR_MS,
    roomC,
    startPh: start?.body.ph,
    lastPh: last?.body.ph,
    lastMethod: last?.body.method,
    meterCheckedOk: lastCheck === undefined ? undefined : !lastCheck.hasFailed,
    ...ofTheMix(batch, lots, stuffedAtMs),
  };
}

/** Whether the pH stands still by what the log alone knows. */
export function isStalled(batch: Batch, nowMs: number): boolean {
  const isStopped = phReadings(batch).some(({ ph }) => ph <= COUNTED_UNTIL_PH.value);
  if (isStopped || batch.fermentEnded || batch.hung) return false;
  const facts = stallFacts(batch, [], nowMs);
  return facts !== null && stallOf(facts).isStalled === true;
}

function ofTheMix(
  batch: Batch,
  lots: readonly Lot[],
  stuffedAtMs: number,
): Pick<
  StallFacts,
  'hasCulture' | 'cultureGPerKg' | 'cultureDoseGPerKg' | 'cultureOpenedDays' | 'dextrosePct' | 'saltPct'
> {
  const found = formulaFindings(batch, []);
  const starter = batch.opened.body.formula.lines.find(({ role }) => role === 'starter');
  const weighed = starter && batch.weighedOut.get(starter.id);
  const meatKg = (batch.leanG + batch.fatG) / 1000;
  const openedMs = lots.find(({ id }) => id === weighed?.body.lot)?.received.body.openedOnMs;
  const sugarGPerKg = dextroseGPerKg(batch);
  return {
    hasCulture: starter !== undefined,
    cultureGPerKg: weighed && meatKg > 0 ? weighed.body.massG / meatKg : undefined,
    cultureDoseGPerKg: starter && doseOf(starter),
    cultureOpenedDays: openedMs === undefined ? undefined : Math.max(0, (stuffedAtMs - openedMs) / DAY_MS),
    dextrosePct: sugarGPerKg === undefined ? undefined : sugarGPerKg / 10,
    saltPct: found?.figures.saltPctOfMeat,
  };
}

function doseOf({ amount }: FormulaLine): number | undefined {
  if ('doseGPerKg' in amount) return amount.doseGPerKg;
  return amount.basis === 'pct-of-meat' ? amount.amountPct * 10 : undefined;
}

/** Along the lines between believed readings; a loop, since there may be a month of minutes. */
function meanC(
  readings: readonly RoomReading[],
  { fromMs, toMs }: { fromMs: number; toMs: number },
): number | null {
  let before: RoomReading | null = null;
  let areaCMs = 0;
  let spanMs = 0;
  for (const reading of readings) {
    const { atMs, roomC, doubted } = reading;
    if (atMs < fromMs || atMs > toMs || doubted === true) continue;
    if (before !== null) {
      areaCMs += ((roomC + before.roomC) / 2) * (atMs - before.atMs);
      spanMs += atMs - before.atMs;
    }
    before = reading;
  }
  if (before === null) return null;
  return spanMs > 0 ? areaCMs / spanMs : before.roomC;
}
