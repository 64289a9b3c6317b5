import { Area, Line, ReferenceArea, ReferenceDot, ReferenceLine } from 'recharts';
import { type ChartSeries, CROSS, thinRows } from './chart-model.ts';
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
        {...(series.beside
          ? {}
          : {
              label: {
                value: series.text,
                position:
                  `inside${series.below ? 'Top' : 'Bottom'}${series.left ? 'Left' : 'Right'}` as const,
                className: styles.strong ?? '',
                fill: 'var(--ink)',
              },
            })}
      />
    );
  }
  if (series.kind === 'apart') {
    const end = series.points.at(-1);
    return end ? (
      <ReferenceDot
        key={`${series.id}-end`}
        x={end.x}
        y={end.y}
        r={3.5}
        fill="var(--ink)"
        stroke="var(--paper)"
        label={{
          value: series.text,
          position: 'right',
          className: styles.strong ?? '',
          fill: 'var(--ink)',
        }}
      />
    ) : null;
  }
  return null;
}

/** The pieces, thin, none of them named. */
export function thin(series: readonly ChartSeries[]) {
  const rows = thinRows(series);
  if (rows.length === 0) return null;
  return (
    <Line
      data={rows}
      dataKey="y"
      isAnimationActive={false}
      type="linear"
      stroke="var(--edge)"
      strokeWidth={1}
      dot={false}
    />
  );
}

/** What moves along it: readings, pieces apart, and what is computed ahead. */
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
          stroke="var(--steel)"
          strokeWidth={0.75}
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
    case 'apart':
      return (
        <Line
          key={key}
          {...rest}
          type="linear"
          stroke="var(--ink)"
          strokeWidth={1.5}
          strokeDasharray="1 3"
          strokeLinecap="round"
          dot={false}
        />
      );
    case 'doubted':
      return (
        <Line
          key={key}
          {...rest}
          stroke="none"
          activeDot={false}
          dot={({ cx, cy }) => (
            <path
              key={`${cx}`}
              d={CROSS}
              transform={`translate(${cx} ${cy})`}
              fill="none"
              stroke="var(--ink)"
              strokeWidth={2.5}
            />
          )}
        />
      );
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
