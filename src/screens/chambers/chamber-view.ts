import type { AirPoint } from '#core/air/air-series.ts';
import { temperatureFromC } from '#core/units.ts';
import type { Batch } from '#record/batch.ts';
import { correctedReading } from '#record/chamber-air.ts';
import type { Entry, EntryOf } from '#record/entry.ts';
import type { Check } from '#record/instruments.ts';
import type { BodyOf } from '#record/kinds.ts';
import type { Place } from '#record/place.ts';
import type { SubjectId } from '#record/subject.ts';
import type { Kit } from '#store/live.ts';
import type { ChartFrameProps } from '#ui/charts/ChartFrame.tsx';
import type { FigureProps } from '#ui/Figure.tsx';
import type { Words } from '#words/en.ts';
import { decimal, joined, temperature } from '#words/format.ts';
import { type Said, said } from '#words/said.ts';
import { type Air, airOf, airText, humidity, humidityText, tempText } from './air.ts';
import { airCharts } from './air-chart.ts';
import { hangingIn, STALE_MS } from './chambers-view.ts';
import { moistAirFigures } from './moist-air.ts';

export type ReadingRow = {
  readonly entry: EntryOf<'air-read'> | EntryOf<'air-logged'>;
  readonly title: string;
  readonly note: string;
};

export type ChamberView = {
  readonly added: EntryOf<'chamber-added'>;
  readonly air: Air;
  readonly sentence: Said;
  readonly figures: readonly FigureProps[];
  readonly charts: readonly ChartFrameProps[];
  readonly hanging: readonly { key: string; href: string; title: string; note: string }[];
  /** The newest first. */
  readonly readings: readonly ReadingRow[];
};

/** Within these a reading and a setting are called the same: controllers swing by as much (common practice). */
const NEAR_C = 1;
const NEAR_PCT = 5;

/** One chamber: its air, what the air means, what hangs in it. Null where no standing entry adds it. */
export function chamberView({
  id,
  entries,
  batches,
  kit,
  checks,
  place,
  nowMs,
  zone,
  words,
}: {
  id: SubjectId;
  entries: readonly Entry[];
  batches: readonly Batch[];
  kit: Kit;
  checks: readonly Check[];
  place: Place;
  nowMs: number;
  zone: string;
  words: Words;
}): ChamberView | null {
  const air = airOf(id, entries, { checks, nowMs });
  const { added, last, set, points } = air;
  if (!added) return null;
  return {
    added,
    air,
    sentence: sentenceOf(air, { place, nowMs, zone, words }),
    figures: last ? [...readFigures(air, last, place, words), ...moistAirFigures(last, place, words)] : [],
    charts: airCharts({ points, set, place, zone, words }),
    hanging: hangingIn(id, batches).map((batch) => ({
      key: batch.id,
      href: `#/batches/${batch.id.slice('batch:'.length)}`,
      title: batch.opened.body.formula.name,
      note: [
        words.batches.lot(batch.opened.body.lot),
        ...(batch.hung ? [words.batches.day(words.dates.dayCount(batch.hung.atMs, nowMs, zone))] : []),
      ].join(' · '),
    })),
    readings: [...air.byHand, ...air.files]
      .sort((a, b) => b.atMs - a.atMs)
      .map((entry) =>
        entry.kind === 'air-read'
          ? readRow(entry, { kit, checks, place, nowMs, zone, words })
          : fileRow(entry, { kit, place, zone, words }),
      ),
  };
}

type Rows = { kit: Kit; place: Place; zone: string; words: Words };

const meterNames = ({ meters }: Kit, id: SubjectId | undefined) =>
  meters.filter((meter) => meter.id === id).map(({ name }) => name);

/** As read; and as it counts, where a check of the instrument says otherwise. */
function readRow(
  entry: EntryOf<'air-read'>,
  { kit, checks, place, nowMs, zone, words }: Rows & { checks: readonly Check[]; nowMs: number },
): ReadingRow {
  const counts = correctedReading(entry, checks);
  const differs = counts.airC !== entry.body.airC || counts.rhPct !== (entry.body.rhPct ?? null);
  return {
    entry,
    title: airText(entry.body, place),
    note: [
      ...keptText(entry.body, place, words),
      ...(differs ? [words.chambers.one.countsAs(airText(counts, place))] : []),
      words.dates.near(entry.atMs, nowMs, zone),
      ...meterNames(kit, entry.body.instrument),
    ].join(' · '),
  };
}

function keptText({ airC, lowC, highC }: BodyOf<'air-read'>, place: Place, words: Words): string[] {
  if (lowC === undefined && highC === undefined) return [];
  return [words.chambers.one.between(tempText(lowC ?? airC, place), tempText(highC ?? airC, place))];
}

function fileRow(entry: EntryOf<'air-logged'>, { kit, place, zone, words }: Rows): ReadingRow {
  const { name, startMs, afterS, instrument } = entry.body;
  const endMs = startMs + 1000 * afterS.reduce((sum, seconds) => sum + seconds, 0);
  return {
    entry,
    title: words.chambers.one.file(name, decimal(afterS.length, 0, place)),
    note: [
      `${words.dates.full(startMs, zone)} – ${words.dates.full(endMs, zone)}`,
      ...meterNames(kit, instrument),
    ].join(' · '),
  };
}

function sentenceOf(
  { last, set }: Air,
  { place, nowMs, zone, words }: { place: Place; nowMs: number; zone: string; words: Words },
): Said {
  const say = words.chambers.one;
  if (!last) return say.unread;
  const temp = tempText(last.airC, place);
  const rh = last.rhPct === null ? null : humidityText(last.rhPct, place);
  if (nowMs - last.atMs > STALE_MS) return say.readOld({ temp, rh, ago: words.dates.ago(last.atMs, nowMs) });
  const read = say.read({ temp, rh, when: words.dates.near(last.atMs, nowMs, zone) });
  if (!set || set.atMs > last.atMs) return read;
  return said(...read, ...say.against(differences(last, set.body, place, words)));
}

type Pair = { readonly airC: number; readonly rhPct?: number | null | undefined };

function differences(read: Pair, set: Pair, place: Place, words: Words): string[] {
  const say = words.chambers.one;
  const moreC = read.airC - set.airC;
  const morePct = read.rhPct == null || set.rhPct == null ? 0 : read.rhPct - set.rhPct;
  const shown = (tempC: number) => temperatureFromC({ tempC, unit: place.temperature });
  const degrees = joined({
    value: decimal(Math.abs(shown(read.airC) - shown(set.airC)), 1, place),
    unit: temperature(0, place).unit,
  });
  const points = say.points(decimal(Math.abs(morePct), 0, place));
  return [
    ...(Math.abs(moreC) > NEAR_C ? [moreC > 0 ? say.warmer(degrees) : say.colder(degrees)] : []),
    ...(Math.abs(morePct) > NEAR_PCT ? [morePct > 0 ? say.moister(points) : say.drier(points)] : []),
  ];
}

function readFigures({ set }: Air, last: AirPoint, place: Place, words: Words): FigureProps[] {
  const say = words.chambers.one;
  const setTo = set?.body;
  return [
    {
      label: say.temperature,
      ...temperature(last.airC, place),
      ...(setTo ? { note: say.setTo(tempText(setTo.airC, place)) } : {}),
    },
    ...(last.rhPct === null
      ? []
      : [
          {
            label: say.humidity,
            ...humidity(last.rhPct, place),
            ...(setTo?.rhPct === undefined ? {} : { note: say.setTo(humidityText(setTo.rhPct, place)) }),
          },
        ]),
  ];
}
