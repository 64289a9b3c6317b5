import type { AirWish, Rehearsal } from '#record/drying-rehearsal.ts';
import type { Place } from '#record/place.ts';
import type { ChartModel, ChartSeries } from '#ui/charts/chart-model.ts';
import { lineAcross } from '#ui/charts/label-room.ts';
import type { Words } from '#words/en.ts';
import { decimal } from '#words/format.ts';
import type { Said } from '#words/said.ts';

const DAY_MS = 86_400_000;
/** Difference of rim and mean in water activity: low, to watch, high (heuristic, from runs of the model; no published limit). */
const WATCH_AW = 0.05;
const HIGH_AW = 0.1;
/** Water of the fresh piece at which the drawing is driest. */
const DRIEST_SHARE = 0.3;
const ROWS = 8;

export type WhatIfView = {
  readonly rim: string;
  readonly rimLevel: 'low' | 'watch' | 'high';
  /** Where the last weighing cannot be had in the air shown: then nothing is to be read off the rim. */
  readonly unfit: string | null;
  readonly slices: readonly {
    key: string;
    waterFromRim: readonly number[];
    label: string;
    caption: string;
    aw: string;
  }[];
};

export type WhatIfChart = {
  readonly model: ChartModel;
  readonly table: { readonly columns: readonly string[]; readonly rows: string[][] };
};

/** What was tried, and what came of it. */
export type Rehearsed = { readonly wish: AirWish; readonly tried: Rehearsal };

export type WhatIfGiven = Rehearsed & {
  /** When the air that is tried begins; null for a batch that does not exist. */
  readonly fromMs: number | null;
  readonly place: Place;
  readonly zone: string;
  readonly words: Words;
};

export type WhatIfChartGiven = Rehearsed & {
  /** In the air as it is now; null for a batch that does not exist. */
  readonly now: Rehearsal | null;
  readonly place: Place;
  readonly words: Words;
};

export function whatIfView({ tried, place, words }: WhatIfGiven): WhatIfView {
  const say = words.whatIf;
  const { aw, day } = tried.rim;
  const rimLevel = aw > HIGH_AW ? 'high' : aw > WATCH_AW ? 'watch' : 'low';
  const shownAw = { aw: decimal(aw, 2, place, 'up'), day: decimal(day, 0, place) };
  return {
    rim: say.rim[rimLevel](shownAw),
    rimLevel,
    unfit: tried.fits ? null : say.unfit,
    slices: tried.slices.map((slice) => {
      const rim = decimal(slice.skinAw, 2, place);
      const heart = decimal(slice.centreAw, 2, place);
      const shownDay = decimal(slice.day, 0, place);
      return {
        key: shownDay,
        waterFromRim: slice.waterShare.map((share) =>
          Math.min(1, Math.max(0, (share - DRIEST_SHARE) / (1 - DRIEST_SHARE))),
        ),
        label: say.sliceLabel({ day: shownDay, rim, heart }),
        caption: say.slice({ day: shownDay, loss: decimal(slice.lossPct, 0, place) }),
        aw: say.aw({ rim, heart }),
      };
    }),
  };
}

/** What a dial that may be off makes of it; null for a batch that hangs, and where nothing can be told. */
export function whatIfWindow({ tried, place, words }: WhatIfChartGiven): string | null {
  const say = words.whatIf;
  const { p10Days = null, p90Days = null } = tried.window ?? {};
  if (p10Days === null) return null;
  const low = decimal(p10Days, 0, place, 'down');
  return p90Days === null ? say.windowOpen(low) : say.window(low, decimal(p90Days, 0, place, 'up'));
}

/** The days it takes: what a maker who moves a slider waits for. */
export function whatIfSentence({
  tried,
  wish: { targetLossPct, past },
  fromMs,
  place,
  zone,
  words,
}: WhatIfGiven): Said {
  const fromDay = past?.fromDay ?? 0;
  const say = words.whatIf.sentence;
  const target = decimal(targetLossPct, 0, place);
  const { curve, targetDay, lastDay } = tried;
  const at = (day: number) => curve.findLast((point) => point.day <= day)?.lossPct ?? 0;
  if (at(fromDay) >= targetLossPct) return say.there({ target });
  if (targetDay === null) {
    if (at(lastDay) - at(fromDay) < 0.5) return say.dries;
    return say.stops({
      target,
      days: decimal(lastDay - fromDay, 0, place),
      loss: decimal(at(lastDay), 0, place),
    });
  }
  return say.reaches({
    target,
    days: decimal(targetDay - fromDay, 0, place),
    day: fromMs === null ? null : words.dates.day(fromMs + (targetDay - fromDay) * DAY_MS, zone, fromMs),
  });
}

export function whatIfChart({ tried, wish, now, place, words }: WhatIfChartGiven): WhatIfChart {
  const { targetLossPct, past } = wish;
  const fromDay = past?.fromDay ?? 0;
  const say = words.whatIf.chart;
  const endDay = Math.min(tried.lastDay, Math.max(30, 1.25 * (tried.targetDay ?? tried.lastDay)));
  const points = (of: Rehearsal) =>
    of.curve.filter(({ day }) => day <= endDay).map(({ day, lossPct }) => ({ x: day, y: lossPct }));
  const step = [7, 14, 28].find((each) => endDay / each <= 6) ?? 28;
  const target = decimal(targetLossPct, 0, place);
  const days = Array.from({ length: ROWS + 1 }, (_, at) => Math.round((endDay * at) / ROWS));
  const lossAt = (of: Rehearsal | null, day: number) => {
    const found = of?.curve.find((point) => point.day === day);
    return found ? say.value(decimal(found.lossPct, 0, place)) : '';
  };
  const ticks = {
    xTicks: Array.from({ length: Math.ceil(endDay / step) + 1 }, (_, at) => ({
      at: at * step,
      text: String(at * step),
    })),
    yTicks: [0, 10, 20, 30, 40, 50].map((at) => ({ at, text: String(at) })),
  };
  const series: ChartSeries[] = [
    ...(now ? [{ kind: 'piece' as const, id: 'now', points: points(now) }] : []),
    { kind: 'median', id: 'tried', points: points(tried) },
  ];
  const line = { id: 'target', y: targetLossPct, text: say.target(target) };
  return {
    model: {
      xTitle: say.x,
      yTitle: say.y,
      ...ticks,
      series: [...series, lineAcross(line, { ...ticks, series })],
      marks: fromDay > 0 ? [{ x: fromDay, text: say.from }] : [],
    },
    table: {
      columns: now ? say.columns : say.columns.slice(0, 2),
      rows: days.map((day) => [
        decimal(day, 0, place),
        lossAt(tried, day),
        ...(now ? [lossAt(now, day)] : []),
      ]),
    },
  };
}
