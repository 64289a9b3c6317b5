import { thinned } from '#core/air/thinned.ts';
import type { FermentClock } from '#core/ferment/ferment-clock.ts';
import { DEGREE_HOUR_RULES } from '#core/rules/degree-hours.ts';
import { temperatureFromC, temperatureToC } from '#core/units.ts';
import type { Batch } from '#record/batch.ts';
import { roomSeries } from '#record/ferment-figures.ts';
import type { Place } from '#record/place.ts';
import type { ChartFrameProps } from '#ui/charts/ChartFrame.tsx';
import type { ChartTick } from '#ui/charts/chart-model.ts';
import type { Words } from '#words/en.ts';
import { decimal, joined, temperature } from '#words/format.ts';

const HOUR_MS = 3_600_000;
/** How long after counting stopped the room still says something of this ferment. */
const AFTER_HOURS = 12;
/** The table holds a line for so many hours, with the least and the most that was read in them. */
const ROW_HOURS = 6;
/** Two for each of so many stretches: as many as a phone is wide. */
const MOST_POINTS = 240;
const STEPS_DEG = [1, 2, 5, 10, 20] as const;

/** The room beside the pH, over the same hours; null before the second believed reading. */
export function roomChart({
  batch,
  clock,
  xTicks,
  place,
  nowMs,
  words,
}: {
  batch: Batch;
  clock: FermentClock | null;
  /** Those of the chart above, so that the hours stand below each other. */
  xTicks: readonly ChartTick[] | null;
  place: Place;
  nowMs: number;
  words: Words;
}): ChartFrameProps | null {
  const startMs = batch.stuffedAtMs;
  if (startMs === null || clock === null) return null;
  const say = words.fermentAhead.roomChart;
  const endMs = Math.min(nowMs, (clock.stop?.atMs ?? nowMs) + AFTER_HOURS * HOUR_MS);
  // A loop, since a month of minutes is gone through each time that something was read.
  const samples: { atMs: number; value: number }[] = [];
  for (const { atMs, roomC, doubted } of roomSeries(batch).readings)
    if (atMs >= startMs && atMs <= endMs && doubted !== true)
      samples.push({ atMs, value: temperatureFromC({ tempC: roomC, unit: place.temperature }) });
  const [first, last] = [samples[0], samples.at(-1)];
  if (first === undefined || last === undefined || first === last) return null;
  const hours = (atMs: number) => (atMs - startMs) / HOUR_MS;
  const inPlace = (deg: number) =>
    temperatureFromC({ tempC: temperatureToC({ value: deg, unit: clock.unit }), unit: place.temperature });
  const shown = (deg: number) => joined(temperature(temperatureToC({ value: deg, unit: clock.unit }), place));
  const drawn = thinned(samples, { most: MOST_POINTS });
  const values = drawn.map(({ value }) => value);
  const baseDeg = inPlace(clock.base.value);
  const edge = nextClass(batch, clock, inPlace, Math.max(...values));
  const low = Math.min(...values, baseDeg);
  const high = Math.max(...values, baseDeg, ...(edge ? [edge.atDeg] : []));
  return {
    title: say.title,
    label: say.label(shown(clock.sum?.highestDeg ?? clock.base.value)),
    waitingLabel: words.ferment.chart.waiting,
    failedLabel: words.ferment.chart.failed,
    tableLabel: words.ferment.chart.table,
    table: { columns: say.columns, rows: tableRows(samples, hours, place) },
    model: {
      xTitle: words.ferment.chart.x,
      yTitle: place.temperature === 'C' ? '°C' : '°F',
      xTicks: xTicks ?? ticks(0, Math.max(ROW_HOURS, hours(last.atMs)), [6, 12, 24, 48, 96, 168], place),
      yTicks: ticks(low, high, STEPS_DEG, place),
      series: [
        {
          kind: 'limit',
          id: 'base',
          y: baseDeg,
          text: say.base(shown(clock.base.value)),
          below: true,
        },
        ...(edge
          ? [
              {
                kind: 'limit' as const,
                id: 'class',
                y: edge.atDeg,
                text: say.edge(shown(edge.fromDeg), decimal(edge.limit, 0, place)),
              },
            ]
          : []),
        {
          kind: 'measured',
          id: 'room',
          points: drawn.map(({ atMs, value }) => ({ x: hours(atMs), y: value })),
        },
      ],
    },
  };
}

/** The class above the one in force, where the room comes within five degrees of it. */
function nextClass(
  batch: Batch,
  { limit }: FermentClock,
  inPlace: (deg: number) => number,
  highestDeg: number,
): { atDeg: number; fromDeg: number; limit: number } | null {
  const { classes } = DEGREE_HOUR_RULES[batch.opened.body.ruleSet];
  const next = classes[classes.findIndex((each) => each.limit.value === limit?.value) + 1];
  if (limit === null || next === undefined) return null;
  const atDeg = inPlace(next.fromDeg);
  return atDeg - highestDeg <= 5 ? { atDeg, fromDeg: next.fromDeg, limit: next.limit.value } : null;
}

function tableRows(
  samples: readonly { atMs: number; value: number }[],
  hours: (atMs: number) => number,
  place: Place,
): string[][] {
  const rows = new Map<number, { least: number; most: number; count: number }>();
  for (const { atMs, value } of samples) {
    const at = Math.floor(hours(atMs) / ROW_HOURS);
    const row = rows.get(at);
    if (row === undefined) {
      rows.set(at, { least: value, most: value, count: 1 });
      continue;
    }
    row.least = Math.min(row.least, value);
    row.most = Math.max(row.most, value);
    row.count += 1;
  }
  return [...rows].map(([at, { least, most, count }]) => [
    `${at * ROW_HOURS} to ${(at + 1) * ROW_HOURS}`,
    decimal(least, 1, place),
    decimal(most, 1, place),
    decimal(count, 0, place),
  ]);
}

/** At most seven whole steps from at or below the lowest to at or above the highest. */
function ticks(low: number, high: number, steps: readonly number[], place: Place): ChartTick[] {
  const step = steps.find((each) => Math.ceil(high / each) - Math.floor(low / each) <= 6) ?? (high - low) / 6;
  const from = Math.floor(low / step);
  return Array.from({ length: Math.ceil(high / step) - from + 1 }, (_, at) => ({
    at: (from + at) * step,
    text: decimal((from + at) * step, 0, place),
  }));
}
