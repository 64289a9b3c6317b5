/** What a chart shows, as made by a view-model: numbers to place, ready text to read. Pure. */

export type ChartPoint = { x: number; y: number };

/**
 * `measured` solid, `median` dashed, `piece` thin, `apart` thin with its name at its end, `doubted` crosses without a line,
 * `window` a tinted band between two lines that move, `limit` a line across with its text above or `below`, at its right or `left`
 * end, or `beside` the chart, `band` a band across.
 */
export type ChartSeries =
  | { kind: 'measured' | 'median' | 'piece'; id: string; points: readonly ChartPoint[] }
  | { kind: 'apart' | 'doubted'; id: string; points: readonly ChartPoint[]; text: string }
  | { kind: 'window'; id: string; points: readonly { x: number; lo: number; hi: number }[] }
  | { kind: 'limit'; id: string; y: number; text: string; below?: boolean; left?: boolean; beside?: boolean }
  | { kind: 'band'; id: string; lo: number; hi: number; text: string };

export type ChartTick = { at: number; text: string };

export type ChartModel = {
  /** Name and unit of each axis. */
  xTitle: string;
  yTitle: string;
  /** From the first tick to the last the axis runs. */
  xTicks: readonly ChartTick[];
  yTicks: readonly ChartTick[];
  series: readonly ChartSeries[];
  /** Upright dotted lines with a word, such as today. */
  marks?: readonly { x: number; text: string }[];
};

export type ChartRow = { x: number; [seriesId: string]: number | readonly [number, number] };

/** A reading that is not believed, around its point: told from one that is by its shape, not by its colour. */
export const CROSS = 'm-5 -5 10 10 m0 -10 -10 10';

/** More is slow to draw on an old phone and no clearer: the view-model thins out first. */
export const MAX_POINTS = 400;

/**
 * The series beside each other, one row for each x; thin lines are not among them.
 *
 * @throws RangeError if a series has more points than a phone should draw.
 */
export function chartRows(series: readonly ChartSeries[]): ChartRow[] {
  const rows = new Map<number, ChartRow>();
  const put = (x: number, id: string, value: number | readonly [number, number]) => {
    const row = rows.get(x) ?? { x };
    row[id] = value;
    rows.set(x, row);
  };
  for (const each of series) {
    if (!('points' in each)) continue;
    if (each.points.length > MAX_POINTS) {
      throw new RangeError(
        `chartRows: points requires at most ${MAX_POINTS} of ${each.id}, got ${each.points.length}`,
      );
    }
    if (each.kind === 'piece') continue;
    if (each.kind === 'window') for (const { x, lo, hi } of each.points) put(x, each.id, [lo, hi]);
    else for (const { x, y } of each.points) put(x, each.id, y);
  }
  return [...rows.values()].sort((a, b) => a.x - b.x);
}

/** All thin lines as one, with a gap between them: two dozen of them drawn apart hold an old phone up for seconds. */
export function thinRows(series: readonly ChartSeries[]): { x: number; y: number | null }[] {
  return series.flatMap((each) => {
    const last = each.kind === 'piece' ? each.points.at(-1) : undefined;
    return each.kind === 'piece' && last ? [...each.points, { x: last.x, y: null }] : [];
  });
}

/** From the first tick to the last. */
export function axisEnds(ticks: readonly ChartTick[]): [number, number] {
  return [ticks[0]?.at ?? 0, ticks.at(-1)?.at ?? 1];
}

/** What is named below the picture at any width: the sign, and its words. */
export function chartKey({ series }: Pick<ChartModel, 'series'>): { sign: 'cross' | 'line'; text: string }[] {
  return series.flatMap((each): ReturnType<typeof chartKey> => {
    if (each.kind === 'doubted') return [{ sign: 'cross', text: each.text }];
    return each.kind === 'limit' && each.beside ? [{ sign: 'line', text: each.text }] : [];
  });
}

/** The words that stand in the picture: limits, bands, marks. */
export function chartWords({ series, marks = [] }: Pick<ChartModel, 'series' | 'marks'>): string[] {
  const named = new Set(chartKey({ series }).map(({ text }) => text));
  const words = series.flatMap((each) => ('text' in each && !named.has(each.text) ? [each.text] : []));
  return [...words, ...marks.map(({ text }) => text)];
}
