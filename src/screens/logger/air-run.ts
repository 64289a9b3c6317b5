import type { AirPoint } from '#core/air/air-series.ts';
import { type ChamberAir, packAir, unpackAir } from '#record/chamber-air.ts';
import type { SubjectId } from '#record/subject.ts';
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

/**
 * What a file says of a chamber's air. A logger gives out all that it holds each time: what an earlier file brought is not kept
 * twice. Null where nothing new is in it.
 */
export function airRun(
  found: Found,
  { name, instrument }: Picked,
  { chamber, air, nowMs, ...shown }: Shown & { chamber: SubjectId; air: ChamberAir; nowMs: number },
): Run | null {
  const { place, words } = shown;
  const say = words.logger.found;
  const { series } = found;
  const known = new Set(air.files.flatMap((file) => unpackAir(file)).map(({ atMs }) => secondOf(atMs)));
  const read = series.atMs.flatMap((atMs, at): AirPoint[] =>
    atMs <= nowMs ? [{ atMs, airC: series.roomC[at] ?? 0, rhPct: series.rhPct[at] ?? null }] : [],
  );
  const rows = read.filter(({ atMs }) => !known.has(secondOf(atMs)));
  if (rows.length === 0) return null;
  const bodies = packAir(name, rows, instrument ?? undefined);
  const damp = rows.flatMap(({ rhPct }) => (rhPct === null ? [] : [rhPct]));
  const pct = (value: number) => joined({ value: countText(value, place), unit: '%' });
  const count = countText(rows.length, place);
  return {
    facts: bodies.map((body) => ({
      kind: 'air-logged' as const,
      subject: chamber,
      body,
      atMs: body.startMs,
    })),
    count,
    rows: foundRows(
      found,
      { atMs: rows.map(({ atMs }) => atMs), airC: rows.map(({ airC }) => airC), entries: bodies.length },
      {
        readings: say.countAir({
          count,
          of: countText(series.atMs.length, place),
          known: read.length === rows.length ? null : countText(read.length - rows.length, place),
        }),
        more: [
          {
            label: say.labels.humidity,
            value: damp.length === 0 ? say.noHumidity : say.range(pct(least(damp)), pct(most(damp))),
          },
        ],
      },
      shown,
    ),
  };
}

/** Instants are kept in whole seconds. */
function secondOf(atMs: number): number {
  return Math.round(atMs / 1000);
}
