/** A chamber's air as it stands: by hand and by logger file in one line, with what the checks of its instruments say to add. */
import type { AirPoint } from '#core/air/air-series.ts';
import { wetSaltCheck } from '#core/ferment/instrument-check.ts';
import type { Entry, EntryOf } from './entry.ts';
import { latest, ofKind } from './fold.ts';
import { type Check, checksOf, thermometerOffsetC } from './instruments.ts';
import type { BodyOf } from './kinds.ts';
import { live } from './strikes.ts';
import type { SubjectId } from './subject.ts';

/** What an instrument kept as least and most between two readings; when that was, nobody knows. */
export type AirExtremes = {
  readonly sinceMs: number;
  readonly atMs: number;
  readonly lowC: number | null;
  readonly highC: number | null;
  readonly lowRhPct: number | null;
  readonly highRhPct: number | null;
};

export type ChamberAir = {
  readonly points: readonly AirPoint[];
  readonly extremes: readonly AirExtremes[];
  readonly set: EntryOf<'air-set'> | null;
  readonly files: readonly EntryOf<'air-logged'>[];
  /** Standing actions taken about this chamber's air. */
  readonly actions: readonly EntryOf<'action-taken'>[];
};

export function chamberAir(
  chamber: SubjectId,
  entries: readonly Entry[],
  checks: readonly Check[] = [],
): ChamberAir {
  const own = live(entries).filter(({ subject }) => subject === chamber);
  const files = ofKind(own, 'air-logged');
  const reads = ofKind(own, 'air-read');
  const byHand = reads.map((read) => correctedReading(read, checks));
  return {
    points: [...byHand, ...files.flatMap((file) => unpackAir(file, checks))].sort((a, b) => a.atMs - b.atMs),
    extremes: reads.flatMap((read, at) => extremesOf(read, reads[at - 1]?.atMs ?? null, checks)),
    set: latest(own, 'air-set'),
    files,
    actions: ofKind(own, 'action-taken'),
  };
}

/** What was read, with the offsets that its instrument had then. */
export function correctedReading(
  { atMs, body }: Pick<EntryOf<'air-read'>, 'atMs' | 'body'>,
  checks: readonly Check[],
): AirPoint {
  return {
    atMs,
    airC: body.airC + thermometerOffsetC(checks, body.instrument, atMs),
    rhPct: corrected(body.rhPct ?? null, hygrometerOffsetPct(checks, body.instrument, atMs)),
  };
}

/** Nothing where none was kept, or no reading before says since when. */
function extremesOf(
  { atMs, body }: EntryOf<'air-read'>,
  sinceMs: number | null,
  checks: readonly Check[],
): AirExtremes[] {
  const { lowC, highC, lowRhPct, highRhPct, instrument } = body;
  const kept = [lowC, highC, lowRhPct, highRhPct].some((each) => each !== undefined);
  if (!kept || sinceMs === null) return [];
  const offsetC = thermometerOffsetC(checks, instrument, atMs);
  const offsetPct = hygrometerOffsetPct(checks, instrument, atMs);
  const warmth = (tempC: number | undefined) => (tempC === undefined ? null : tempC + offsetC);
  return [
    {
      sinceMs,
      atMs,
      lowC: warmth(lowC),
      highC: warmth(highC),
      lowRhPct: corrected(lowRhPct ?? null, offsetPct),
      highRhPct: corrected(highRhPct ?? null, offsetPct),
    },
  ];
}

/** What the last check over wet salt before an instant says to add; 0 where there was none. */
export function hygrometerOffsetPct(all: readonly Check[], id: SubjectId | undefined, atMs: number): number {
  const last = checksOf(all, id).findLast(
    (check) => check.kind === 'hygrometer-checked' && check.atMs <= atMs,
  );
  return last?.kind === 'hygrometer-checked' ? wetSaltCheck(last.body).offsetRhPct : 0;
}

/** Past wet and past dry there is nothing: a corrected value stays within 0..100. */
function corrected(rhPct: number | null, offsetPct: number): number | null {
  return rhPct === null ? null : Math.min(100, Math.max(0, rhPct + offsetPct));
}

const MOST_ROWS = 2500;
const HUNDREDTHS = 100;
const UNREAD = -1;

/** A file's rows as entries, some thousands each. @throws RangeError for rows out of order. */
export function packAir(
  name: string,
  rows: readonly AirPoint[],
  instrument?: SubjectId,
): BodyOf<'air-logged'>[] {
  const parts: BodyOf<'air-logged'>[] = [];
  for (let from = 0; from < rows.length; from += MOST_ROWS) {
    const part = rows.slice(from, from + MOST_ROWS);
    const startMs = part[0]?.atMs ?? 0;
    parts.push({
      name: name.slice(0, 120),
      startMs,
      afterS: part.map(({ atMs }, at) => {
        const since = (instantMs: number) => Math.round((instantMs - startMs) / 1000);
        const seconds = since(atMs) - since(part[at - 1]?.atMs ?? startMs);
        if (!(seconds >= 0)) throw new RangeError(`packAir: rows requires order of time, got ${atMs}`);
        return seconds;
      }),
      hundredthsC: part.map(({ airC }) => Math.round(airC * HUNDREDTHS)),
      hundredthsRh: part.map(({ rhPct }) => (rhPct === null ? UNREAD : Math.round(rhPct * HUNDREDTHS))),
      ...(instrument ? { instrument } : {}),
    });
  }
  return parts;
}

export function unpackAir({ body }: EntryOf<'air-logged'>, checks: readonly Check[] = []): AirPoint[] {
  let atMs = body.startMs;
  return body.afterS.map((afterS, at) => {
    atMs += afterS * 1000;
    const rh = body.hundredthsRh[at] ?? UNREAD;
    return {
      atMs,
      airC: (body.hundredthsC[at] ?? 0) / HUNDREDTHS + thermometerOffsetC(checks, body.instrument, atMs),
      rhPct: corrected(
        rh === UNREAD ? null : rh / HUNDREDTHS,
        hygrometerOffsetPct(checks, body.instrument, atMs),
      ),
    };
  });
}
