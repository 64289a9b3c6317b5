/** From a batch as it stands to its ferment clock: readings with the numbers as typed, and what checks say of their instruments. */
import type { RoomReading } from '#core/ferment/degree-hours.ts';
import { type FermentClock, fermentClock } from '#core/ferment/ferment-clock.ts';
import { type PhReading, stopOfCounting, withMeterFailed } from '#core/ferment/ph-reading.ts';
import { mergeRoomReadings, type RoomDisagreement } from '#core/ferment/room-series.ts';
import type { Batch } from './batch.ts';
import { hygrometerOffsetPct } from './chamber-air.ts';
import type { EntryOf } from './entry.ts';
import { phBandOf } from './ferment-plan.ts';
import { checkedAt, isBetweenFailed, thermometerOffsetC } from './instruments.ts';
import { lastHumidity, unpackRoomLog } from './room-log.ts';
import type { SubjectId } from './subject.ts';

type RoomSeries = {
  readonly readings: readonly RoomReading[];
  readonly disagreements: readonly RoomDisagreement[];
};

/** A month of minutes is merged once for each batch as folded. */
const merged = new WeakMap<Batch, RoomSeries>();

/**
 * Hand readings and logger files as one series. The offset of the thermometer's last ice check is added; a thermometer whose check
 * before or after failed leaves its readings doubted.
 */
export function roomSeries(batch: Batch): RoomSeries {
  const before = merged.get(batch);
  if (before) return before;
  const { readings, disagreements } = mergeRoomReadings({
    hand: batch.room.map((entry) => handReading(entry, batch)),
    logged: batch.logged.map((entry) =>
      unpackRoomLog(entry, thermometerOffsetC(batch.checks, entry.body.thermometer, entry.atMs)),
    ),
  });
  const doubtful = batch.logged.filter(({ body, atMs }) =>
    isBetweenFailed(checkedAt(batch.checks, body.thermometer, 'thermometer-checked'), atMs),
  );
  const spans = doubtful.map(({ body }) => ({
    fromMs: body.startMs,
    toMs: body.startMs + 1000 * body.afterS.reduce((sum, seconds) => sum + seconds, 0),
  }));
  const series = {
    disagreements,
    readings:
      spans.length === 0
        ? readings
        : readings.map((reading) =>
            reading.source === 'logger' &&
            spans.some(({ fromMs, toMs }) => reading.atMs >= fromMs && reading.atMs <= toMs)
              ? { ...reading, doubted: true }
              : reading,
          ),
  };
  merged.set(batch, series);
  return series;
}

function handReading({ atMs, body }: EntryOf<'room-read'>, batch: Batch): RoomReading {
  const typed = body.typed?.roomC;
  const value = Number(typed?.text.replace(',', '.').replace('\u2212', '-'));
  const unit = typed?.unit;
  const offsetC = thermometerOffsetC(batch.checks, body.thermometer, atMs);
  const doubted = isRoomDoubted(batch, { atMs, body });
  return {
    atMs,
    roomC: body.roomC + offsetC,
    source: 'hand',
    ...(doubted ? { doubted } : {}),
    ...(Number.isFinite(value) && (unit === 'C' || unit === 'F') ? { typed: { value, unit } } : {}),
  };
}

/** The maker doubts it, or its thermometer was wrong in ice before or after. */
export function isRoomDoubted(
  batch: Batch,
  { atMs, body }: Pick<EntryOf<'room-read'>, 'atMs' | 'body'>,
): boolean {
  return (
    body.doubted === true ||
    isBetweenFailed(checkedAt(batch.checks, body.thermometer, 'thermometer-checked'), atMs)
  );
}

/** A room's humidity: as it was shown, and with what the last check over wet salt says to add. */
export type RoomHumidity = {
  readonly atMs: number;
  readonly shownRhPct: number;
  readonly rhPct: number;
  readonly offsetPct: number;
  /** The hygrometer failed over wet salt before or after. */
  readonly doubted: boolean;
};

export function roomHumidity(
  { checks }: Pick<Batch, 'checks'>,
  { atMs, body }: Pick<EntryOf<'room-read'>, 'atMs' | 'body'>,
): RoomHumidity | null {
  const { rhPct, hygrometer, thermometer } = body;
  return rhPct === undefined ? null : corrected(checks, hygrometer ?? thermometer, { atMs, rhPct });
}

/** The last humidity of the room, by hand or from a logger's file. */
export function lastRoomHumidity(batch: Batch, nowMs: number): RoomHumidity | null {
  const byHand = batch.room.filter(({ atMs }) => atMs <= nowMs).map((entry) => roomHumidity(batch, entry));
  const logged = batch.logged.map((entry) => {
    const last = lastHumidity(entry, nowMs);
    return last && corrected(batch.checks, entry.body.thermometer, last);
  });
  return [...byHand, ...logged].reduce<RoomHumidity | null>(
    (last, each) => (each !== null && each.atMs >= (last?.atMs ?? 0) ? each : last),
    null,
  );
}

function corrected(
  checks: Batch['checks'],
  id: SubjectId | undefined,
  { atMs, rhPct: shownRhPct }: { atMs: number; rhPct: number },
): RoomHumidity {
  const offsetPct = hygrometerOffsetPct(checks, id, atMs);
  return {
    atMs,
    shownRhPct,
    offsetPct,
    // Past wet and past dry there is nothing.
    rhPct: Math.min(100, Math.max(0, shownRhPct + offsetPct)),
    doubted: isBetweenFailed(checkedAt(checks, id, 'hygrometer-checked'), atMs),
  };
}

/**
 * Readings of the product, those of a meter whose check failed marked so. One of the fresh mix is on the record, but it is not of the
 * sausage as it hangs, and stops no clock.
 */
export function phReadings(batch: Batch): PhReading[] {
  return batch.ph.flatMap(({ atMs, body }) => {
    if (body.sample === 'mix') return [];
    const reading: PhReading = { atMs, ph: body.ph, method: body.method, doubted: body.doubted };
    const marked = withMeterFailed([reading], checkedAt(batch.checks, body.meter, 'meter-checked'));
    return body.kept?.includes('calibration-failed') ? [{ ...reading, meterFailed: true }] : marked;
  });
}

/** Rows of a logger go on long after the clock has stopped: they are of the room, and no longer of this ferment. */
const AFTER_STOP_MS = 12 * 3_600_000;

/** The last clock of each batch as folded: a page asks for the same one several times. */
const clocks = new WeakMap<Batch, { readonly nowMs: number; readonly clock: FermentClock | null }>();

/**
 * Null until the pieces are stuffed: there is no clock before. The rule is one of fermented sausage: where no ferment is planned
 * and no warm room was read, it does not apply.
 */
export function fermentFigures(batch: Batch, nowMs: number): FermentClock | null {
  const before = clocks.get(batch);
  if (before?.nowMs === nowMs) return before.clock;
  const clock = clockOf(batch, nowMs);
  clocks.set(batch, { nowMs, clock });
  return clock;
}

function clockOf(batch: Batch, nowMs: number): FermentClock | null {
  const { stuffedAtMs } = batch;
  if (stuffedAtMs === null) return null;
  const ph = phReadings(batch);
  const { stop } = stopOfCounting({ readings: ph, stuffedAtMs, nowMs });
  const all = roomSeries(batch).readings;
  const untilMs = stop ? stop.atMs + AFTER_STOP_MS : nowMs;
  const first = all.findIndex(({ atMs }) => atMs > untilMs);
  const clock = fermentClock({
    // One more than needed where it exists: the line to it is cut where counting stopped.
    roomReadings: first < 0 ? all : all.slice(0, first + 1),
    phReadings: ph,
    stuffedAtMs,
    ruleSet: batch.opened.body.ruleSet,
    nowMs,
  });
  if (phBandOf(batch.plan) !== null || all.length > 0) return clock;
  return { ...clock, finding: { ...clock.finding, verdict: 'does-not-apply', missing: [] } };
}
