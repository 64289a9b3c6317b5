import styles from './Timer.module.css';
import { timeLeft } from './time-left.ts';

export type TimerProps = {
  label: string;
  /** The instant it runs to: a time, not a counter, so that it survives a closed app. */
  endMs: number;
  nowMs: number;
  /** When it began: draws how much of it is gone. */
  startMs?: number;
  /** What to say below: until when it runs, or since when it is over. */
  note: string;
  /** Stands before the time once the end has passed. */
  overWord: string;
};

export function Timer({ label, endMs, nowMs, startMs, note, overWord }: TimerProps) {
  const { over, text } = timeLeft({ endMs, nowMs });
  const gone = startMs === undefined ? null : Math.min(1, Math.max(0, (nowMs - startMs) / (endMs - startMs)));
  return (
    <div className={over ? `${styles.timer} ${styles.over}` : styles.timer} role="timer" aria-label={label}>
      <p className={styles.label}>{label}</p>
      <p className={styles.time}>{over ? `${overWord} ${text}` : text}</p>
      {gone !== null && (
        <svg className={styles.bar} width="100%" height="8" aria-hidden="true">
          <rect width="100%" height="8" rx="4" fill="var(--line)" />
          <rect width={`${(gone * 100).toFixed(1)}%`} height="8" rx="4" fill="var(--ink)" />
        </svg>
      )}
      <p className={styles.note}>{note}</p>
    </div>
  );
}
