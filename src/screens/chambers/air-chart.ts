import type { AirPoint } from '#core/air/air-series.ts';
import { thinned } from '#core/air/thinned.ts';
import { temperatureFromC } from '#core/units.ts';
import type { EntryOf } from '#record/entry.ts';
import type { Place } from '#record/place.ts';
import type { ChartFrameProps } from '#ui/charts/ChartFrame.tsx';
import type { ChartTick } from '#ui/charts/chart-model.ts';
import type { Words } from '#words/en.ts';
import { decimal, temperature } from '#words/format.ts';
import { humidity, humidityText, tempText } from './air.ts';

const HOUR_MS = 3_600_000;
const DAY_MS = 24 * HOUR_MS;
/** What is looked at: the last two weeks, and by hand as many readings as a screen shows. */
const SHOWN_DAYS = 14;
const FEW_READINGS = 120;
const MOST_DRAWN = 240;
const MOST_ROWS = 48;

type Point = { readonly atMs: number; readonly value: number; readonly text: string };
type Measure = {
  readonly title: string;
  readonly yTitle: string;
  readonly label: (range: { count: number; from: string; to: string }) => string;
  readonly points: readonly Point[];
  readonly set: { readonly value: number; readonly text: string } | null;
  /** The axis shows at least so much, so that a flicker does not look like a storm. */
  readonly leastSpan: number;
};
type Given = {
  readonly points: readonly AirPoint[];
  readonly set: EntryOf<'air-set'> | null;
  readonly place: Place;
  readonly zone: string;
  readonly words: Words;
};

/** Temperature over the last readings, and humidity where it was read. None while there are not two readings to compare. */
export function airCharts(given: Given): ChartFrameProps[] {
  const { place, zone, words } = given;
  const say = words.chambers.one;
  const lastMs = given.points.at(-1)?.atMs ?? 0;
  const few = given.points.slice(-FEW_READINGS);
  const recent = given.points.filter(({ atMs }) => lastMs - atMs <= SHOWN_DAYS * DAY_MS);
  const points = recent.length > few.length ? recent : few;
  const every = Math.ceil(points.length / MOST_ROWS);
  const rows = points
    .toReversed()
    .filter((_, at) => at % every === 0)
    .map(({ atMs, airC, rhPct }) => [
      words.dates.full(atMs, zone),
      temperature(airC, place).value,
      rhPct === null ? '' : humidity(rhPct, place).value,
    ]);
  const frame = {
    waitingLabel: say.drawing,
    failedLabel: say.failed,
    tableLabel: say.table,
    table: { columns: [say.when, temperature(0, place).unit, '%'], rows },
  };
  return [temperatures({ ...given, points }), humidities({ ...given, points })].flatMap((measure) => {
    const first = measure.points.at(0);
    const last = measure.points.at(-1);
    if (!first || !last || last.atMs === first.atMs) return [];
    const inOrder = measure.points.toSorted((a, b) => a.value - b.value);
    const drawn = { ...measure, points: thinned(measure.points, { most: MOST_DRAWN }) };
    return [
      {
        ...frame,
        title: measure.title,
        label: measure.label({
          count: inOrder.length,
          from: inOrder.at(0)?.text ?? '',
          to: inOrder.at(-1)?.text ?? '',
        }),
        model: modelOf(drawn, first, last, given),
      },
    ];
  });
}

function temperatures({ points, set, place, words }: Given): Measure {
  const say = words.chambers.one;
  const shown = (tempC: number) => temperatureFromC({ tempC, unit: place.temperature });
  return {
    title: say.chart,
    yTitle: `${say.temperature}, ${temperature(0, place).unit}`,
    label: say.chartLabel,
    points: points.map(({ atMs, airC }) => ({
      atMs,
      value: shown(airC),
      text: tempText(airC, place),
    })),
    set: set && { value: shown(set.body.airC), text: say.setLine(tempText(set.body.airC, place)) },
    leastSpan: place.temperature === 'C' ? 4 : 8,
  };
}

function humidities({ points, set, place, words }: Given): Measure {
  const say = words.chambers.one;
  const setPct = set?.body.rhPct;
  return {
    title: say.humidityChart,
    yTitle: `${say.humidity}, %`,
    label: say.humidityChartLabel,
    points: points.flatMap(({ atMs, rhPct }) =>
      rhPct === null ? [] : [{ atMs, value: rhPct, text: humidityText(rhPct, place) }],
    ),
    set: setPct === undefined ? null : { value: setPct, text: say.setLine(humidityText(setPct, place)) },
    leastSpan: 10,
  };
}

function modelOf(
  { yTitle, points, set, leastSpan }: Measure,
  first: Point,
  last: Point,
  { place, zone, words }: Given,
) {
  return {
    xTitle: '',
    yTitle,
    xTicks: timeTicks(first, last, zone, words),
    yTicks: valueTicks([...points.map(({ value }) => value), ...(set ? [set.value] : [])], leastSpan, place),
    series: [
      ...(set ? [{ kind: 'limit' as const, id: 'set', y: set.value, text: set.text }] : []),
      {
        kind: 'measured' as const,
        id: 'air',
        points: points.map(({ atMs, value }) => ({ x: (atMs - first.atMs) / HOUR_MS, y: value })),
      },
    ],
  };
}

/** The first, the last and two between: as clock times within two days, as days beyond. */
function timeTicks(first: Point, last: Point, zone: string, words: Words): ChartTick[] {
  const hours = (last.atMs - first.atMs) / HOUR_MS;
  const name = hours <= 48 ? words.dates.clock : words.dates.shortDay;
  return [0, 1 / 3, 2 / 3, 1].map((share) => ({
    at: hours * share,
    text: name(first.atMs + share * (last.atMs - first.atMs), zone),
  }));
}

function valueTicks(values: readonly number[], leastSpan: number, place: Place): ChartTick[] {
  const [low, high] = [Math.min(...values), Math.max(...values)];
  const margin = Math.max(0, leastSpan - (high - low)) / 2;
  const step = [1, 2, 5, 10, 20].find((each) => (high - low + 2 * margin) / each <= 5) ?? 50;
  const from = Math.floor((low - margin) / step);
  const to = Math.max(from + 1, Math.ceil((high + margin) / step));
  return Array.from({ length: to - from + 1 }, (_, at) => ({
    at: (from + at) * step,
    text: decimal((from + at) * step, 0, place),
  }));
}
