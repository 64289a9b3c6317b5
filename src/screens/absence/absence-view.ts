import { humidityToSet } from '#core/air/humidity-to-set.ts';
import { mixAw } from '#core/drying/water-activity.ts';
import { type CalibreAway, calibresAway, type PieceAway } from '#record/absence-figures.ts';
import type { Batch } from '#record/batch.ts';
import { chamberAir } from '#record/chamber-air.ts';
import type { Entry, EntryOf } from '#record/entry.ts';
import { mixOf } from '#record/forecast-figures.ts';
import type { Check } from '#record/instruments.ts';
import type { Chamber, Place } from '#record/place.ts';
import { absences, hangsIn } from '#record/season.ts';
import { calendarDay, daysBetween } from '#words/days.ts';
import type { Words } from '#words/en.ts';
import { decimal, joined, mass, temperature } from '#words/format.ts';
import type { Said } from '#words/said.ts';

/** What was expected of the pieces of a batch on the day of leaving; null while it is worked out. */
export type Expected = { readonly batch: Batch; readonly pieces: readonly PieceAway[] | null };

export type ExpectRow = {
  readonly key: string;
  readonly href: string;
  readonly title: string;
  readonly sentence: Said;
  readonly all: string;
  readonly pieces: readonly {
    key: string;
    number: string;
    leaving: string;
    expected: string;
    found: string | null;
  }[];
};

export type AbsenceView = {
  readonly sentence: Said;
  readonly state: 'none' | 'planned' | 'under' | 'returned';
  readonly absence: EntryOf<'absence-planned'> | null;
  readonly set: readonly { key: string; href: string; title: string; note: string }[];
  readonly expect: readonly ExpectRow[];
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

type Given = {
  readonly entries: readonly Entry[];
  readonly expected: readonly Expected[];
  readonly chambers: readonly Chamber[];
  readonly checks: readonly Check[];
  readonly place: Place;
  readonly nowMs: number;
  readonly zone: string;
  readonly words: Words;
};

export function absenceView(given: Given): AbsenceView {
  const { entries, expected, chambers, nowMs, zone, words } = given;
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
    set: state === 'returned' ? [] : chambers.flatMap((chamber) => toSet(chamber, given)),
    expect: expected.flatMap(({ batch, pieces }) =>
      pieces === null
        ? workingRows(batch, words)
        : calibresAway(pieces).map((calibre) => expectRow(batch, calibre, { ...given, state })),
    ),
  };
}

/** The humidity that suits the wettest batch at the return; the temperature stays as it is. */
function toSet(chamber: Chamber, { entries, expected, checks, place, nowMs, words }: Given) {
  const inside = expected.flatMap(({ batch, pieces }) =>
    hangsIn(batch, chamber) && pieces !== null && pieces.length > 0 ? [{ batch, pieces }] : [],
  );
  const [first] = inside;
  if (first === undefined) return [];
  const { lowPct, highPct } = humidityToSet({
    allAw: inside.flatMap(({ batch, pieces }) =>
      pieces.map(({ middlePct }) => mixAw({ mix: mixOf(batch), lossPct: middlePct })),
    ),
  });
  const pct = (value: number) => decimal(value, 0, place);
  const air = chamberAir(chamber.id, entries, checks);
  const last = air.points.findLast(({ atMs, rhPct }) => rhPct !== null && atMs <= nowMs);
  const airC = air.set?.body.airC ?? first.batch.plan.dryC;
  return [
    {
      key: chamber.id,
      href: `#/chambers/${chamber.id.slice('chamber:'.length)}`,
      title: chamber.name,
      note: words.absence.setTo({
        airC: joined(temperature(airC, place, 0)),
        rh: `~${pct(lowPct)} to ${pct(highPct)}\u00a0%`,
        now: last?.rhPct == null ? null : `${pct(last.rhPct)}\u00a0%`,
      }),
    },
  ];
}

function titleOf({ opened }: Batch, words: Words): string {
  const { formula, lot } = opened.body;
  return `${formula.name}, ${words.batches.lot(lot)}`;
}

function hrefOf({ id }: Batch): string {
  return `#/batches/${id.slice('batch:'.length)}/hanging`;
}

/** Keep the places of what comes: one a calibre. */
function workingRows(batch: Batch, words: Words): ExpectRow[] {
  const { working, all } = words.absence;
  const up = batch.pieces.filter(({ status }) => status === 'hanging');
  return [...new Set(up.map(({ diameterMm }) => diameterMm))].map((diameterMm) => ({
    key: `${batch.id}-${diameterMm}`,
    href: hrefOf(batch),
    title: titleOf(batch, words),
    sentence: working,
    all: all(up.filter((piece) => piece.diameterMm === diameterMm).length),
    pieces: [],
  }));
}

function expectRow(
  batch: Batch,
  calibre: CalibreAway,
  { place, words, state }: Given & { state: AbsenceView['state'] },
): ExpectRow {
  const say = words.absence;
  const { lowPct, middlePct, highPct, foundPct, found } = calibre;
  const pct = (value: number, decimals = 0) => decimal(value, decimals, place);
  const window = `${pct(lowPct)} to ${pct(highPct)}\u00a0%`;
  const weighed = found.inside + found.less + found.more;
  const grams = (massG: number) => joined(mass(massG, 1, place));
  const atG = (greenG: number, lossPct: number) => mass(greenG * (1 - lossPct / 100), 1, place);
  const mixed = new Set(batch.pieces.map(({ diameterMm }) => diameterMm)).size > 1;
  return {
    key: `${batch.id}-${calibre.diameterMm}`,
    href: hrefOf(batch),
    title: [titleOf(batch, words), ...(mixed ? [`${pct(calibre.diameterMm)}\u00a0mm`] : [])].join(', '),
    sentence:
      state === 'returned'
        ? weighed === 0 || foundPct === null
          ? say.foundNone({ middle: `~${pct(middlePct)}\u00a0%`, window })
          : say.found({
              middle: `~${pct(middlePct)}\u00a0%`,
              found: `${pct(foundPct, 1)}\u00a0%`,
              weighed,
              ...found,
            })
        : say.expected({
            pieces: calibre.pieces.length,
            leaving: calibre.leavingPct === null ? null : `${pct(calibre.leavingPct)}\u00a0%`,
            middle: `~${pct(middlePct)}\u00a0%`,
            window,
            passes: calibre.passing.length,
          }),
    all: say.all(calibre.pieces.length),
    pieces: calibre.pieces.map(({ piece, leavingG, foundG, ...each }) => ({
      key: piece.id,
      number: String(piece.number),
      leaving: leavingG === null ? say.notWeighed : grams(leavingG),
      expected: `~${atG(piece.greenG, each.highPct).value} to ${joined(atG(piece.greenG, each.lowPct))}`,
      found:
        state !== 'returned'
          ? null
          : foundG === null || each.found === null
            ? say.notWeighed
            : say.foundPiece(grams(foundG), each.found),
    })),
  };
}
