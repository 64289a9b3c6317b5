import { UNDER_AW_POINTS } from '#core/air/humidity-to-set.ts';
import { lossPct } from '#core/drying/loss.ts';
import { mixAw } from '#core/drying/water-activity.ts';
import type { Batch } from '#record/batch.ts';
import { chamberAir } from '#record/chamber-air.ts';
import type { Entry, EntryOf } from '#record/entry.ts';
import { mixOf, type PieceForecast } from '#record/forecast-figures.ts';
import type { Piece } from '#record/piece.ts';
import type { Chamber, Place } from '#record/place.ts';
import { absences, hangsIn } from '#record/season.ts';
import { calendarDay, daysBetween } from '#words/days.ts';
import type { Words } from '#words/en.ts';
import { decimal } from '#words/format.ts';
import type { Said } from '#words/said.ts';

/** A batch's piece of middle weight, and what was forecast of it on the day of leaving. */
export type Expected = {
  readonly batch: Batch;
  readonly piece: Piece;
  readonly forecast: PieceForecast | null;
};

export type AbsenceView = {
  readonly sentence: Said;
  readonly state: 'none' | 'planned' | 'under' | 'returned';
  readonly absence: EntryOf<'absence-planned'> | null;
  readonly set: readonly { key: string; text: string }[];
  readonly expect: readonly { key: string; href: string; title: string; note: string; figure: string }[];
};

const SHOWN_AFTER_MS = 14 * 24 * 3_600_000;

/** The absence that counts now: one under way or ahead, else one that ended within two weeks. */
export function absenceNow(entries: readonly Entry[], nowMs: number): EntryOf<'absence-planned'> | null {
  const all = absences(entries);
  return (
    all.find(({ body }) => body.toMs > nowMs) ??
    all.findLast(({ body }) => nowMs - body.toMs < SHOWN_AFTER_MS) ??
    null
  );
}

export function absenceView({
  entries,
  expected,
  chambers,
  place,
  nowMs,
  zone,
  words,
}: {
  entries: readonly Entry[];
  expected: readonly Expected[];
  chambers: readonly Chamber[];
  place: Place;
  nowMs: number;
  zone: string;
  words: Words;
}): AbsenceView {
  const say = words.absence;
  const absence = absenceNow(entries, nowMs);
  if (absence === null) return { sentence: say.none, state: 'none', absence, set: [], expect: [] };
  const { fromMs, toMs } = absence.body;
  const from = words.dates.day(fromMs, zone, nowMs);
  const to = words.dates.day(toMs, zone, nowMs);
  const state = nowMs < fromMs ? 'planned' : nowMs < toMs ? 'under' : 'returned';
  const days = daysBetween(calendarDay(fromMs, zone), calendarDay(toMs, zone));
  const sentence = {
    planned: say.planned({ from, to, days }),
    under: say.under({ to }),
    returned: say.returned({ to }),
  }[state];
  return {
    sentence,
    state,
    absence,
    set: state === 'returned' ? [] : chambers.flatMap((chamber) => toSet(chamber)),
    expect: expected.flatMap((each) => expectRow(each)),
  };

  function toSet(chamber: Chamber) {
    const inside = expected.filter(({ batch, forecast }) => hangsIn(batch, chamber) && forecast);
    if (inside.length === 0) return [];
    const awAtReturn = inside.map(({ batch, forecast }) =>
      mixAw({ mix: mixOf(batch), lossPct: forecast?.band(toMs).p50Pct ?? 0 }),
    );
    const wettest = 100 * Math.max(...awAtReturn);
    const low = decimal(wettest - UNDER_AW_POINTS.most, 0, place);
    const high = decimal(wettest - UNDER_AW_POINTS.least, 0, place);
    const now = chamberAir(chamber.id, entries).points.findLast(({ rhPct }) => rhPct !== null)?.rhPct ?? null;
    return [
      {
        key: chamber.id,
        text: say.setTo({
          name: chamber.name,
          rh: `~${low} to ${high}\u00a0%`,
          now: now === null ? null : `${decimal(now, 0, place)}\u00a0%`,
        }),
      },
    ];
  }

  function expectRow({ batch, piece, forecast }: Expected) {
    if (!forecast) return [];
    const { p10Pct, p50Pct, p90Pct } = forecast.band(toMs);
    const pct = (value: number) => decimal(value, 0, place);
    const window = `${pct(p10Pct)} to ${pct(p90Pct)}\u00a0%`;
    const found = piece.weighings.find(({ atMs }) => atMs >= toMs);
    const lot = words.batches.lot(batch.opened.body.lot);
    const foundPct = found && lossPct({ greenG: piece.greenG, nowG: found.netG });
    const passes = forecast.p50Ms !== null && forecast.p50Ms < toMs ? say.early : null;
    const compared =
      foundPct === undefined
        ? say.foundNone(window)
        : `${say.found({ expected: window, found: `${decimal(foundPct, 1, place)}\u00a0%` })}: ${
            foundPct < p10Pct ? say.less : foundPct > p90Pct ? say.more : say.inside
          }`;
    return [
      {
        key: batch.id,
        href: `#/batches/${batch.id.slice('batch:'.length)}/hanging`,
        title: batch.opened.body.formula.name,
        note:
          state === 'returned'
            ? `${lot} · ${compared}`
            : `${say.expectRow(window)} · ${say.expectNote({ chance: passes, lot })}`,
        figure: `~${pct(p50Pct)}\u00a0%`,
      },
    ];
  }
}
