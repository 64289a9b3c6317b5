import { lossPct } from '#core/drying/loss.ts';
import type { Batch } from '#record/batch.ts';
import type { PieceForecast } from '#record/forecast-figures.ts';
import type { Piece } from '#record/piece.ts';
import { pieceFigures } from '#record/piece-figures.ts';
import type { Place } from '#record/place.ts';
import type { ChartSeries, ChartTick } from '#ui/charts/chart-model.ts';
import type { Words } from '#words/en.ts';
import { decimal, joined, mass } from '#words/format.ts';

const DAY_MS = 86_400_000;
const FAN_POINTS = 40;

type Given = {
  batch: Batch;
  forecasts: ReadonlyMap<Piece['id'], PieceForecast>;
  place: Place;
  nowMs: number;
  words: Words;
};

/** Loss against target over time: each piece thin, the middle piece's forecast dashed in its window. Null without pieces. */
export function lossChart({ batch, forecasts, place, nowMs, words }: Given) {
  const { chart } = words.hanging;
  const startMs = Math.min(...batch.pieces.map(({ stuffed }) => stuffed.atMs));
  const target = batch.pieces[0]?.targetLossPct;
  if (!Number.isFinite(startMs) || target === undefined) return null;
  const days = (atMs: number) => (atMs - startMs) / DAY_MS;
  const losses = (piece: Piece) => [
    { x: days(piece.stuffed.atMs), y: 0 },
    ...piece.weighings
      .filter(({ netG }) => netG > 0)
      .map(({ atMs, netG }) => ({ x: days(atMs), y: lossPct({ greenG: piece.greenG, nowG: netG }) })),
  ];
  const middle = middlePiece(batch.pieces);
  const forecast = middle && forecasts.get(middle.id);
  const lastDay = horizonDays(days(nowMs), forecast ?? null, days);
  const alone = batch.pieces.length === 1;
  const series: ChartSeries[] = [
    ...(forecast ? fan(forecast, nowMs, lastDay, startMs) : []),
    { kind: 'limit', id: 'target', y: target, text: chart.target(decimal(target, 0, place)) },
    ...batch.pieces.map(
      (piece): ChartSeries => ({
        kind: alone ? 'measured' : 'piece',
        id: piece.id,
        points: losses(piece),
      }),
    ),
  ];
  const weighings = batch.pieces.flatMap((piece) => piece.weighings.map((weighing) => ({ piece, weighing })));
  const most = Math.max(target, ...batch.pieces.flatMap((piece) => losses(piece).map(({ y }) => y)));
  return {
    title: chart.title,
    label: chart.label(batch.pieces.length, weighings.length),
    waitingLabel: chart.waiting,
    failedLabel: chart.failed,
    tableLabel: chart.table,
    table: {
      columns: chart.columns,
      rows: weighings
        .sort((a, b) => a.weighing.atMs - b.weighing.atMs)
        .map(({ piece, weighing }) => [
          words.dates.full(weighing.atMs, piece.stuffed.zone),
          String(piece.number),
          joined(mass(weighing.netG, 1, place)),
          weighing.netG > 0
            ? `${decimal(lossPct({ greenG: piece.greenG, nowG: weighing.netG }), 1, place, 'down')}\u00a0%`
            : '',
        ]),
    },
    model: {
      xTitle: chart.x,
      yTitle: chart.y,
      xTicks: dayTicks(lastDay),
      yTicks: lossTicks(most),
      series,
      marks: days(nowMs) > 0 ? [{ x: days(nowMs), text: chart.today }] : [],
    },
  };
}

/** The piece whose loss is in the middle: the one whose forecast stands for the batch in the picture. */
function middlePiece(pieces: readonly Piece[]): Piece | null {
  const up = pieces.filter(({ status }) => status !== 'taken-down');
  const sorted = [...up].sort((a, b) => (pieceFigures(a).lossPct ?? 0) - (pieceFigures(b).lossPct ?? 0));
  return sorted[Math.floor(sorted.length / 2)] ?? null;
}

function horizonDays(today: number, forecast: PieceForecast | null, days: (atMs: number) => number): number {
  const p50 = forecast?.p50Ms ? days(forecast.p50Ms) : today;
  const p90 = forecast?.p90Ms ? days(forecast.p90Ms) : p50 * 1.3;
  return Math.max(14, today * 1.15, Math.min(p90, p50 * 1.6));
}

function fan(forecast: PieceForecast, nowMs: number, lastDay: number, startMs: number): ChartSeries[] {
  const fromDay = Math.max(0, (nowMs - startMs) / DAY_MS);
  const at = Array.from(
    { length: FAN_POINTS + 1 },
    (_, step) => fromDay + ((lastDay - fromDay) * step) / FAN_POINTS,
  );
  const bands = at.map((day) => ({ x: day, ...forecast.band(startMs + day * DAY_MS) }));
  return [
    {
      kind: 'window',
      id: 'window',
      points: bands.map(({ x, p10Pct, p90Pct }) => ({ x, lo: p10Pct, hi: p90Pct })),
    },
    { kind: 'median', id: 'median', points: bands.map(({ x, p50Pct }) => ({ x, y: p50Pct })) },
  ];
}

function dayTicks(lastDay: number): ChartTick[] {
  const step = [2, 7, 14, 28, 56].find((each) => lastDay / each <= 6) ?? 112;
  return Array.from({ length: Math.ceil(lastDay / step) + 1 }, (_, at) => ({
    at: at * step,
    text: String(at * step),
  }));
}

function lossTicks(most: number): ChartTick[] {
  return Array.from({ length: Math.ceil(most / 10 + 0.3) + 1 }, (_, at) => ({
    at: at * 10,
    text: String(at * 10),
  }));
}
