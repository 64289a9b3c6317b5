import type { Words } from '#words/en.ts';
import styles from './CalendarScreen.module.css';
import type { CalendarView } from './calendar-view.ts';

/** From here on a month's name stands before its line: at text twice as large it has no room behind. */
const LATE = 60;

/** A bar a batch over the weeks: hung so far, and the window in which it should be at target. */
export function Bars({ view, words }: { view: CalendarView; words: Words }) {
  return (
    <div className={styles.frame}>
      <div className={styles.months} aria-hidden="true">
        {view.months.map(({ key, at, label }) => (
          <span
            key={key}
            className={at > LATE ? `${styles.month} ${styles.late}` : styles.month}
            style={at > LATE ? { right: `${100 - at}%` } : { left: `${at}%` }}
          >
            {label}
          </span>
        ))}
      </div>
      <ol className={styles.rows}>
        {view.rows.map(({ key, href, title, note, hasWindow, bar, window }) => (
          <li key={key}>
            <a className={styles.row} href={href}>
              <span className={styles.title}>{title}</span>
              <span className={styles.track} aria-hidden="true">
                <span
                  className={styles.hung}
                  style={{ left: `${bar.from}%`, width: `${bar.to - bar.from}%` }}
                />
                {window && (
                  <span
                    className={window.open ? `${styles.window} ${styles.open}` : styles.window}
                    style={{ left: `${window.from}%`, width: `${window.to - window.from}%` }}
                  />
                )}
                <span className={styles.today} style={{ left: `${view.today}%` }} />
              </span>
              <span className={hasWindow ? `${styles.note} ${styles.tall}` : styles.note}>{note}</span>
            </a>
          </li>
        ))}
      </ol>
      <p className={styles.now} style={{ paddingInlineStart: `min(${view.today}%, 80%)` }}>
        {words.calendar.today}
      </p>
    </div>
  );
}
