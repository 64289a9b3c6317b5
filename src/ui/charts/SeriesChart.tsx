import { CartesianGrid, ComposedChart, ReferenceLine, XAxis, YAxis } from 'recharts';
import { across, moving, thin } from './chart-marks.tsx';
import { axisEnds, type ChartModel, type ChartTick, chartRows } from './chart-model.ts';
import styles from './SeriesChart.module.css';

export type SeriesTone = 'cured' | 'ink';

export type SeriesChartProps = {
  model: ChartModel;
  /** `cured` for what is lost by drying, `ink` for what is read off an instrument. */
  tone: SeriesTone;
  /** Ring at each reading, where there are few. */
  rings?: boolean;
};

const TICK = { fill: 'var(--soft)' };
const STROKES = { cured: 'var(--cured)', ink: 'var(--ink)' } as const;

/** The chart itself. Loaded when first needed: the drawing library weighs more than the rest of the app. */
export function SeriesChart({ model, tone, rings = false }: SeriesChartProps) {
  const { series, xTicks, yTicks, marks = [] } = model;
  const [left, right] = axisEnds(xTicks);
  // The word of a mark stands on the wider side of its line, and at its foot unless a band has its own word there.
  const foot = series.some(({ kind }) => kind === 'band') ? 'Top' : 'Bottom';
  return (
    <ComposedChart
      className={styles.chart ?? ''}
      responsive
      accessibilityLayer={false}
      data={chartRows(series)}
      margin={{ top: 12, right: 12, bottom: 0, left: 0 }}
    >
      <CartesianGrid vertical={false} stroke="var(--line)" />
      <XAxis
        dataKey="x"
        padding={{ left: rings ? 8 : 0, right: 0 }}
        type="number"
        domain={axisEnds(xTicks)}
        ticks={xTicks.map(({ at }) => at)}
        tickFormatter={textOf(xTicks)}
        interval="preserveStartEnd"
        stroke="var(--edge)"
        tickLine={false}
        tick={TICK}
        height="auto"
      />
      <YAxis
        type="number"
        domain={axisEnds(yTicks)}
        ticks={yTicks.map(({ at }) => at)}
        tickFormatter={textOf(yTicks)}
        interval="preserveStartEnd"
        allowDataOverflow
        axisLine={false}
        tickLine={false}
        tick={TICK}
        width="auto"
        tickMargin={8}
      />
      {series.map((each) => across(each))}
      {thin(series)}
      {series.map((each) => moving(each, STROKES[tone], rings))}
      {marks.map(({ x, text }) => (
        <ReferenceLine
          key={x}
          x={x}
          stroke="var(--ink)"
          strokeDasharray="2 4"
          label={{
            value: text,
            position: `inside${foot}${x < (left + right) / 2 ? 'Left' : 'Right'}` as const,
            className: styles.words ?? '',
            fill: 'var(--ink)',
            offset: 8,
          }}
        />
      ))}
    </ComposedChart>
  );
}

function textOf(ticks: readonly ChartTick[]): (at: number) => string {
  const texts = new Map(ticks.map(({ at, text }) => [at, text]));
  return (at) => texts.get(at) ?? '';
}
