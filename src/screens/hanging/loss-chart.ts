import { lossPct } from '#core/drying/loss.ts';
import type { Batch } from '#record/batch.ts';
import type { BatchAhead, FanPoint } from '#record/drying-batch.ts';
import type { Piece } from '#record/piece.ts';
import type { Place } from '#record/place.ts';
import { apart } from '#record/rail.ts';
import type { ChartSeries, ChartTick } from '#ui/charts/chart-model.ts';
import { lineAcross } from '#ui/charts/label-room.ts';
import type { Words } from '#words/en.ts';
import { decimal, joined, mass } from '#words/format.ts';

const DAY_MS = 86_400_000;
/** Of the fan, as numbers in the table. */
const ROWS_AHEAD = 4;

type Given = {
  batch: Batch;
  ahead: Pick<BatchAhead, 'fan'> | null;
  place: Place;
  nowMs: number;
  words: Words;
};

/** Loss against target over time: each piece thin, one that dries apart named, what is expected of the middle one dashed in its window. Null without pieces. */
export function lossChart({ batch, ahead, place, nowMs, words }: Given) {
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
  const fan = ahead?.fan?.points ?? [];
  const lastDay = Math.max(14, days(fan.at(-1)?.atMs ?? nowMs), 1.15 * days(nowMs));
  const alone = batch.pieces.length === 1;
  const odd = apart(batch.pieces);
  const series: ChartSeries[] = [
    ...(fan.length > 0 ? fanSeries(fan, days) : []),
    ...batch.pieces.map(
      (piece): ChartSeries =>
        odd.has(piece.id)
          ? {
              kind: 'apart',
              id: piece.id,
              points: losses(piece),
              text: words.hanging.pieceAlone(piece.number),
            }
          : { kind: alone ? 'measured' : 'piece', id: piece.id, points: losses(piece) },
    ),
  ];
  const weighings = batch.pieces.flatMap((piece) => piece.weighings.map((weighing) => ({ piece, weighing })));
  const most = Math.max(target, ...batch.pieces.flatMap((piece) => losses(piece).map(({ y }) => y)));
  const ticks = { xTicks: dayTicks(lastDay), yTicks: lossTicks(most) };
  const text = chart.target(decimal(target, 0, place));
  return {
    title: chart.title,
    label: chart.label(batch.pieces.length, weighings.length),
    waitingLabel: chart.waiting,
    failedLabel: chart.failed,
    tableLabel: chart.table,
    table: {
      columns: chart.columns,
      rows: [
        ...weighings
          .sort((a, b) => a.weighing.atMs - b.weighing.atMs)
          .map(({ piece, weighing }) => [
            // Short: a narrow phone would break a full date over four lines.
            `${words.dates.shortDay(weighing.atMs, piece.stuffed.zone, nowMs)}, ${words.dates.clock(weighing.atMs, piece.stuffed.zone)}`,
            String(piece.number),
            joined(mass(weighing.netG, 1, place)),
            weighing.netG > 0
              ? `${decimal(lossPct({ greenG: piece.greenG, nowG: weighing.netG }), 1, place, 'down')}\u00a0%`
              : '',
          ]),
        ...rowsAhead(fan).map(({ atMs, p10Pct, p50Pct, p90Pct }) => [
          words.dates.shortDay(atMs, batch.opened.zone, nowMs),
          chart.expected,
          '',
          chart.window({
            middle: decimal(p50Pct, 0, place),
            low: decimal(p10Pct, 0, place),
            high: decimal(p90Pct, 0, place),
          }),
        ]),
      ],
    },
    model: {
      xTitle: chart.x,
      yTitle: chart.y,
      ...ticks,
      series: [...series, lineAcross({ id: 'target', y: target, text }, { ...ticks, series })],
      marks: days(nowMs) > 0 ? [{ x: days(nowMs), text: chart.today }] : [],
    },
  };
}

function fanSeries(fan: readonly FanPoint[], days: (atMs: number) => number): ChartSeries[] {
  return [
    {
      kind: 'window',
      id: 'window',
      points: fan.map(({ atMs, p10Pct, p90Pct }) => ({ x: days(atMs), lo: p10Pct, hi: p90Pct })),
    },
    { kind: 'median', id: 'median', points: fan.map(({ atMs, p50Pct }) => ({ x: days(atMs), y: p50Pct })) },
  ];
}

function rowsAhead(fan: readonly FanPoint[]): FanPoint[] {
  const last = fan.length - 1;
  return Array.from(
    { length: ROWS_AHEAD },
    (_, at) => fan[Math.round(((at + 1) * last) / ROWS_AHEAD)],
  ).filter((point) => point !== undefined);
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
