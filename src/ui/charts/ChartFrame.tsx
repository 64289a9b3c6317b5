import { Component, lazy, type ReactNode, Suspense } from 'react';
import { PlainTable } from '#ui/PlainTable.tsx';
import styles from './ChartFrame.module.css';
import { type ChartModel, CROSS, chartKey, chartWords } from './chart-model.ts';
import type { SeriesTone } from './SeriesChart.tsx';

const SeriesChart = lazy(async () => ({ default: (await import('./SeriesChart.tsx')).SeriesChart }));

export type ChartTable = { columns: readonly string[]; rows: readonly (readonly string[])[] };

export type ChartFrameProps = {
  title: string;
  model: ChartModel;
  /** What the chart shows, in a sentence. */
  label: string;
  waitingLabel: string;
  /** Shown in its place if it cannot be drawn. The table stays. */
  failedLabel: string;
  /** The same data for those who cannot see them, or want the numbers. */
  table: ChartTable;
  tableLabel: string;
};

/** Title, chart, and the same data as a table. */
export function ChartFrame({
  tone,
  rings,
  ...frame
}: ChartFrameProps & { tone: SeriesTone; rings: boolean }) {
  const { title, model, label, waitingLabel, failedLabel, table, tableLabel } = frame;
  return (
    <figure className={styles.frame}>
      <figcaption className={styles.title}>{title}</figcaption>
      <p className={styles.axis} aria-hidden="true">
        {model.yTitle}
      </p>
      <div className={styles.picture} role="img" aria-label={label}>
        <Guard instead={<p className={styles.waiting}>{failedLabel}</p>}>
          <Suspense fallback={<p className={styles.waiting}>{waitingLabel}</p>}>
            <SeriesChart model={model} tone={tone} rings={rings} />
          </Suspense>
        </Guard>
      </div>
      <p className={`${styles.axis} ${styles.along}`} aria-hidden="true">
        {model.xTitle}
      </p>
      <ul className={styles.legend} aria-hidden="true">
        {chartWords(model).map((words) => (
          <li key={words}>{words}</li>
        ))}
      </ul>
      <ul className={styles.key} aria-hidden="true">
        {chartKey(model).map(({ sign, text }) => (
          <li key={text} className={styles.named}>
            <svg viewBox="-7 -7 14 14" className={styles.sign} aria-hidden="true">
              <path
                d={sign === 'cross' ? CROSS : 'm-7 0h14'}
                fill="none"
                stroke="var(--ink)"
                strokeWidth={sign === 'cross' ? 2.5 : 2}
              />
            </svg>
            {text}
          </li>
        ))}
      </ul>
      <details className={styles.numbers}>
        <summary className={styles.summary}>{tableLabel}</summary>
        <PlainTable {...table} />
      </details>
    </figure>
  );
}

/** A class, since only a class can catch: the page must not fall with its chart. */
class Guard extends Component<{ instead: ReactNode; children: ReactNode }, { failed: boolean }> {
  override state: { failed: boolean } = { failed: false };
  static getDerivedStateFromError() {
    return { failed: true };
  }
  override render() {
    return this.state.failed ? this.props.instead : this.props.children;
  }
}
