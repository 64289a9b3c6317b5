import { Sentence } from '#ui/Sentence.tsx';
import styles from './CalendarScreen.module.css';
import type { RailsRow } from './rails-view.ts';

/** How full each chamber's rails are over the weeks. */
export function Rails({ rows, today }: { rows: readonly RailsRow[]; today: number }) {
  return (
    <ol className={styles.rows}>
      {rows.map(({ key, href, title, note, clash, bars }) => (
        <li key={key}>
          <a className={styles.row} href={href}>
            <span className={styles.title}>{title}</span>
            <span className={`${styles.track} ${styles.high}`} aria-hidden="true">
              {bars.map((bar) => (
                <span
                  key={bar.key}
                  className={bar.over ? styles.over : styles.full}
                  style={{
                    left: `${bar.from}%`,
                    width: `${bar.to - bar.from}%`,
                    height: `${0.8 * bar.full}%`,
                  }}
                />
              ))}
              <span className={styles.today} style={{ left: `${today}%` }} />
            </span>
            <span className={styles.note}>{note}</span>
          </a>
          {clash && <Sentence small tokens={clash} />}
        </li>
      ))}
    </ol>
  );
}
