/** A data logger's rows as packed columns, a few entries for a month of minutes, and back. */
import type { PackedRoom } from '#core/ferment/room-series.ts';
import type { EntryOf } from './entry.ts';
import type { BodyOf } from './kinds.ts';
import type { SubjectId } from './subject.ts';

export type LoggedRow = {
  readonly atMs: number;
  readonly value: number;
  readonly rhPct?: number | null | undefined;
};

/** A stretch stays well under the longest line. */
const MOST_BYTES = 30 * 1024;
const MOST_PLACES = 3;
const SECOND_MS = 1000;
const UNREAD = -1;

type Packing = {
  readonly name: string;
  readonly unit: 'C' | 'F';
  readonly rows: readonly LoggedRow[];
  readonly thermometer?: SubjectId | undefined;
};

/**
 * Rows in order of time, whole seconds. Values keep as many places as the file has, at most three.
 *
 * @throws RangeError for rows that are not in order of time, or a value that is not finite.
 */
export function packRoomLog({ name, unit, rows, thermometer }: Packing): BodyOf<'room-logged'>[] {
  const places = rows.reduce((most, { value }) => Math.max(most, placesOf(value)), 0);
  const hasHumidity = rows.some(({ rhPct }) => rhPct != null);
  const stretches: (Pick<BodyOf<'room-logged'>, 'startMs' | 'afterS' | 'values'> & {
    hundredthsRh: BodyOf<'room-logged'>['values'];
  })[] = [];
  let bytes = MOST_BYTES;
  let lastMs = Number.NEGATIVE_INFINITY;
  for (const { atMs, value, rhPct } of rows) {
    if (!(atMs >= lastMs) || !Number.isFinite(value))
      throw new RangeError(
        `packRoomLog: rows requires order of time and finite values, got ${value} at ${atMs}`,
      );
    const open = stretches.at(-1);
    const afterS = open ? Math.round((atMs - lastMs) / SECOND_MS) : 0;
    const stepped = Math.round(value * 10 ** places);
    const damp = rhPct == null ? UNREAD : Math.round(rhPct * 100);
    const size =
      String(afterS).length + String(stepped).length + 2 + (hasHumidity ? String(damp).length + 1 : 0);
    if (open === undefined || bytes + size > MOST_BYTES || open.values.length >= 8000) {
      stretches.push({ startMs: atMs, afterS: [0], values: [stepped], hundredthsRh: [damp] });
      bytes = size;
    } else {
      open.afterS.push(afterS);
      open.values.push(stepped);
      open.hundredthsRh.push(damp);
      bytes += size;
    }
    lastMs = atMs;
  }
  return stretches.map(({ hundredthsRh, ...stretch }, at) => ({
    name: name.slice(0, 120),
    unit,
    places,
    ...stretch,
    ...(hasHumidity ? { hundredthsRh } : {}),
    part: at + 1,
    parts: stretches.length,
    ...(thermometer ? { thermometer } : {}),
  }));
}

export function unpackRoomLog({ body }: EntryOf<'room-logged'>, offsetC: number): PackedRoom {
  const sinceStartS: number[] = [];
  let seconds = 0;
  for (const afterS of body.afterS) {
    seconds += afterS;
    sinceStartS.push(seconds);
  }
  const step = 10 ** body.places;
  return {
    startMs: body.startMs,
    sinceStartS,
    valuesDeg: body.values.map((value) => value / step),
    unit: body.unit,
    offsetC,
  };
}

/** The last row of a stretch in which a humidity was read, at or before an instant; null where there is none. */
export function lastHumidity(
  { body }: EntryOf<'room-logged'>,
  toMs: number,
): { readonly atMs: number; readonly rhPct: number } | null {
  let atMs = body.startMs;
  let last: { atMs: number; rhPct: number } | null = null;
  for (const [row, afterS] of body.afterS.entries()) {
    atMs += afterS * SECOND_MS;
    if (atMs > toMs) break;
    const hundredths = body.hundredthsRh?.[row] ?? UNREAD;
    if (hundredths !== UNREAD) last = { atMs, rhPct: hundredths / 100 };
  }
  return last;
}

function placesOf(value: number): number {
  for (let places = 0; places < MOST_PLACES; places += 1)
    if (Math.abs(Math.round(value * 10 ** places) - value * 10 ** places) < 1e-6) return places;
  return MOST_PLACES;
}
