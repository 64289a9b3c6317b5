import { COUNTED_UNTIL_PH, disbeliefOf, type PhReading } from '#core/ferment/ph-reading.ts';
import type { Batch } from '#record/batch.ts';
import { phReadings } from '#record/ferment-figures.ts';
import { phBandOf } from '#record/ferment-plan.ts';
import type { PhAhead } from '#record/ph-ahead.ts';
import type { Place } from '#record/place.ts';
import type { ChartSeries, ChartTick } from '#ui/charts/chart-model.ts';
import { lineAcross } from '#ui/charts/label-room.ts';
import type { Words } from '#words/en.ts';
import { decimal } from '#words/format.ts';

const HOUR_MS = 3_600_000;

/** Null while there is no reading after stuffing: an empty chart says nothing. */
export function phChart({
  batch,
  ahead = null,
  place,
  nowMs,
  words,
}: {
  batch: Batch;
  ahead?: PhAhead | null;
  place: Place;
  nowMs: number;
  words: Words;
}) {
  const { chart, method, doubted } = words.ferment;
  const startMs = batch.stuffedAtMs;
  if (startMs === null || (batch.ph.length === 0 && ahead === null)) return null;
  const hours = (atMs: number) => (atMs - startMs) / HOUR_MS;
  const product = phReadings(batch);
  const pointsOf = (readings: readonly PhReading[]) =>
    readings.map(({ atMs, ph }) => ({ x: Math.max(0, hours(atMs)), y: ph }));
  const points = pointsOf(product);
  const crossed = product.filter((reading) => disbeliefOf(reading) !== null);
  const failedAtMs = new Set(crossed.flatMap((reading) => (reading.meterFailed ? [reading.atMs] : [])));
  const own = phBandOf(batch.plan);
  const fan = (ahead?.forecast.curve ?? []).map((each) => ({ ...each, x: hours(each.atMs) }));
  const fromMs = Math.min(nowMs, product.at(-1)?.atMs ?? nowMs);
  const lastMs = ahead?.band.latestAtMs ?? ahead?.stop.latestAtMs ?? Number.POSITIVE_INFINITY;
  const coming = fan.filter(({ atMs }) => atMs >= fromMs && atMs <= lastMs + 12 * HOUR_MS);
  const values = [
    ...points.map(({ y }) => y),
    ...coming.map(({ lowPh }) => lowPh),
    COUNTED_UNTIL_PH.value,
    ...(own ? [own.lowPh] : []),
  ];
  const low = Math.floor(Math.min(...values) * 5 - 0.5) / 5;
  const high = Math.ceil(Math.max(...values, 5.8) * 5) / 5;
  const xTicks = hourTicks(Math.max(24, ...points.map(({ x }) => x), ...coming.map(({ x }) => x)));
  const yTicks = phTicks(low, high, place);
  const series: ChartSeries[] = [
    ...(own
      ? [
          {
            kind: 'band' as const,
            id: 'band',
            lo: own.lowPh,
            hi: own.highPh,
            text: chart.band(decimal(own.lowPh, 1, place), decimal(own.highPh, 1, place)),
          },
        ]
      : []),
    ...(coming.length > 1
      ? [
          {
            kind: 'window' as const,
            id: 'fan',
            points: coming.map(({ x, lowPh, highPh }) => ({ x, lo: lowPh, hi: highPh })),
          },
          {
            kind: 'median' as const,
            id: 'median',
            points: coming.map(({ x, midPh }) => ({ x, y: midPh })),
          },
        ]
      : []),
    {
      kind: 'measured' as const,
      id: 'ph',
      points: pointsOf(product.filter((reading) => disbeliefOf(reading) === null)),
    },
    ...(crossed.length > 0
      ? [{ kind: 'doubted' as const, id: 'crossed', points: pointsOf(crossed), text: chart.notBelieved }]
      : []),
  ];
  return {
    title: chart.title,
    label:
      chart.label(batch.ph.length) +
      (crossed.length > 0 ? chart.crossed(crossed.length) : '') +
      (coming.length > 0 ? words.fermentAhead.chart.label : ''),
    waitingLabel: chart.waiting,
    failedLabel: chart.failed,
    tableLabel: chart.table,
    table: {
      columns: chart.columns,
      rows: batch.ph.map(({ atMs, zone, body }) => [
        words.dates.full(atMs, zone),
        decimal(hours(atMs), 1, place),
        decimal(body.ph, 2, place),
        [
          method[body.method],
          ...(body.doubted ? [doubted] : []),
          ...(body.method === 'meter' && failedAtMs.has(atMs) ? [chart.meterFailed] : []),
        ].join(', '),
      ]),
    },
    model: {
      xTitle: chart.x,
      yTitle: chart.y,
      xTicks,
      yTicks,
      series: [
        ...series,
        lineAcross({ id: 'stop', y: COUNTED_UNTIL_PH.value, text: chart.stops }, { xTicks, yTicks, series }),
      ],
      ...(coming.length > 1 ? { marks: [{ x: hours(nowMs), text: words.fermentAhead.chart.now }] } : {}),
    },
  };
}

function hourTicks(lastHour: number): ChartTick[] {
  const step = [6, 12, 24, 48, 96].find((each) => lastHour / each <= 6) ?? 168;
  return Array.from({ length: Math.ceil(lastHour / step) + 1 }, (_, at) => ({
    at: at * step,
    text: String(at * step),
  }));
}

function phTicks(low: number, high: number, place: Place): ChartTick[] {
  const count = Math.round((high - low) / 0.2);
  const every = Math.max(1, Math.ceil(count / 6));
  return Array.from({ length: Math.floor(count / every) + 2 }, (_, at) => {
    const value = low + at * every * 0.2;
    return { at: value, text: decimal(value, 1, place) };
  });
}
