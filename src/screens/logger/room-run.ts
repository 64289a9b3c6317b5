import { temperatureToC } from '#core/units.ts';
import type { Batch } from '#record/batch.ts';
import { type LoggedRow, packRoomLog } from '#record/room-log.ts';
import { joined } from '#words/format.ts';
import {
  countText,
  type Found,
  foundRows,
  least,
  most,
  type Picked,
  type Run,
  type Shown,
} from './run-view.ts';

const HOUR_MS = 3_600_000;
/** Of the room before stuffing and after the end no more is kept than shows where it came from and where it went. */
const MARGIN_MS = 6 * HOUR_MS;

/** What a file says of the room in which a batch ferments. Null where none of it lies within this ferment. */
export function roomRun(
  found: Found,
  { name, instrument }: Picked,
  { batch, nowMs, ...shown }: Shown & { batch: Batch; nowMs: number },
): Run | null {
  const { place, words } = shown;
  const { series } = found;
  const rows = within(series, batch, nowMs);
  if (rows.length === 0) return null;
  const bodies = packRoomLog({
    name,
    unit: series.unit,
    rows,
    ...(instrument ? { thermometer: instrument } : {}),
  });
  const count = countText(rows.length, place);
  const say = words.logger.found;
  const damp = rows.flatMap(({ rhPct }) => (rhPct == null ? [] : [rhPct]));
  const pct = (value: number) => joined({ value: countText(value, place), unit: '%' });
  return {
    facts: bodies.map((body) => ({
      kind: 'room-logged' as const,
      subject: batch.id,
      body,
      atMs: body.startMs,
    })),
    count,
    rows: foundRows(
      found,
      {
        atMs: rows.map(({ atMs }) => atMs),
        airC: rows.map(({ value }) => temperatureToC({ value, unit: series.unit })),
        entries: bodies.length,
      },
      {
        readings: words.logger.found.count(count, countText(series.atMs.length, place)),
        more:
          damp.length === 0
            ? []
            : [{ label: say.labels.humidity, value: say.range(pct(least(damp)), pct(most(damp))) }],
      },
      shown,
    ),
  };
}

function within(
  { atMs, valuesDeg, rhPct }: Pick<Found['series'], 'atMs' | 'valuesDeg' | 'rhPct'>,
  batch: Batch,
  nowMs: number,
): LoggedRow[] {
  const fromMs = (batch.stuffedAtMs ?? batch.opened.atMs) - MARGIN_MS;
  const toMs = Math.min(nowMs, (batch.fermentEnded?.atMs ?? batch.hung?.atMs ?? nowMs) + MARGIN_MS);
  return atMs.flatMap((each, at) => {
    const value = valuesDeg[at];
    return each >= fromMs && each <= toMs && value !== undefined
      ? [{ atMs: each, value, rhPct: rhPct[at] }]
      : [];
  });
}
