import styles from './Spark.module.css';
import { type SparkPoint, sparkPath } from './spark-path.ts';

/** A line no larger than a word. `label` says in words what it shows. */
export function Spark({ points, label }: { points: readonly SparkPoint[]; label: string }) {
  const { line, end } = sparkPath({ points, width: 96, height: 24 });
  return (
    <svg className={styles.spark} viewBox="-4 -4 104 32" role="img" aria-label={label}>
      <path className={styles.line} d={line} />
      {end && <path className={styles.end} d={`M${end}h0`} />}
    </svg>
  );
}
