import { Sheet } from './Sheet.tsx';
import styles from './Working.module.css';

/** One number of the maker's in the equation, as shown. */
export type WorkingRow = { label: string; value: string; note?: string };

/** Where an equation or a limit was published, and how it came to be known. Ready text. */
export type WorkingSource = { text: string; standing: string };

/** How a figure came about, in words that were made from the same values as the figure itself. */
export type WorkingText = {
  title: string;
  equation: string;
  rows: readonly WorkingRow[];
  result?: WorkingRow;
  limit?: WorkingRow;
  caution?: string;
  sources: readonly WorkingSource[];
  words: { close: string; numbers: string; limit: string; sources: string };
};

export type WorkingProps = { working: WorkingText; open: boolean; onClose: () => void };

export function Working({ working, open, onClose }: WorkingProps) {
  const { title, equation, rows, result, limit, caution, sources, words } = working;
  return (
    <Sheet open={open} onClose={onClose} title={title} closeLabel={words.close}>
      <p className={styles.equation}>{equation}</p>
      <section>
        <h3 className={styles.heading}>{words.numbers}</h3>
        <dl className={styles.rows}>
          {rows.map((row) => (
            <Line key={row.label} row={row} />
          ))}
          {result && <Line row={result} strong />}
        </dl>
      </section>
      {limit && (
        <section>
          <h3 className={styles.heading}>{words.limit}</h3>
          <dl className={styles.rows}>
            <Line row={limit} strong />
          </dl>
        </section>
      )}
      {caution && <p className={styles.caution}>{caution}</p>}
      <section>
        <h3 className={styles.heading}>{words.sources}</h3>
        <ul className={styles.sources}>
          {sources.map((source) => (
            <li key={source.text}>
              {source.text}
              <span className={styles.standing}>{source.standing}</span>
            </li>
          ))}
        </ul>
      </section>
    </Sheet>
  );
}

function Line({ row, strong = false }: { row: WorkingRow; strong?: boolean }) {
  return (
    <div className={strong ? `${styles.row} ${styles.strong}` : styles.row}>
      <dt>
        {row.label}
        {row.note && <span className={styles.note}>{row.note}</span>}
      </dt>
      <dd className={styles.value}>{row.value}</dd>
    </div>
  );
}
