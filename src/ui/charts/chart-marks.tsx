import { Area, Line, ReferenceArea, ReferenceLine } from 'recharts';
import type { ChartSeries } from './chart-model.ts';
import styles from './SeriesChart.module.css';

/** What lies across the whole chart: bands and limits. */
export function across(series: ChartSeries) {
  if (series.kind === 'band') {
    return (
      <ReferenceArea
        key={series.id}
        y1={series.lo}
        y2={series.hi}
        fill="var(--bloom)"
        fillOpacity={1}
        stroke="var(--edge)"
        label={{
          value: series.text,
          position: 'insideBottomLeft',
          className: styles.words ?? '',
          fill: 'var(--ink)',
        }}
      />
    );
  }
  if (series.kind === 'limit') {
    return (
      <ReferenceLine
        key={series.id}
        y={series.y}
        stroke="var(--ink)"
        strokeWidth={2}
        label={{
          value: series.text,
          position: series.below ? 'insideTopRight' : 'insideBottomRight',
          className: styles.strong ?? '',
          fill: 'var(--ink)',
        }}
      />
    );
  }
  return null;
}

/** What moves along it: readings, pieces, and what is computed ahead. */
export function moving(series: ChartSeries, stroke: string, rings: boolean) {
  const shared = {
    key: series.id,
    dataKey: series.id,
    isAnimationActive: false,
    connectNulls: true,
  } as const;
  const { key, ...rest } = shared;
  switch (series.kind) {
    case 'window':
      return (
        <Area
          key={key}
          {...rest}
          type="monotone"
          stroke="none"
          fill="var(--steel-tint)"
          fillOpacity={0.85}
          activeDot={false}
        />
      );
    case 'median':
      return (
        <Line
          key={key}
          {...rest}
          type="monotone"
          stroke="var(--steel)"
          strokeWidth={2.5}
          strokeDasharray="5 4"
          dot={false}
        />
      );
    case 'piece':
      return <Line key={key} {...rest} type="linear" stroke="var(--edge)" strokeWidth={1} dot={false} />;
    case 'measured':
      return (
        <Line
          key={key}
          {...rest}
          type="linear"
          stroke={stroke}
          strokeWidth={3}
          strokeLinejoin="round"
          dot={rings ? { r: 5, fill: 'var(--paper)', stroke: 'var(--ink)', strokeWidth: 2.5 } : false}
        />
      );
    default:
      return null;
  }
}
