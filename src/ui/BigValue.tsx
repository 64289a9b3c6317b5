import styles from './BigValue.module.css';

export type BigValueProps = {
  /** What is being typed, as it stands. */
  text: string;
  unit: string;
  /** The last value in words, above and in grey. */
  previous?: string;
  /** Said aloud before the value. */
  label: string;
};

/** The value being typed, to be read at arm's length. */
export function BigValue({ text, unit, previous, label }: BigValueProps) {
  const size = text.length > 7 ? styles.long : text.length > 5 ? styles.middle : styles.short;
  return (
    <div className={styles.frame}>
      {previous && <p className={styles.previous}>{previous}</p>}
      <p className={`${styles.value} ${size}`} aria-live="polite" aria-atomic="true">
        <span className="heard">{`${label} `}</span>
        <span className={styles.digits}>{text}</span>
        <span className={styles.caret} aria-hidden="true" />
        <span className={styles.unit}>{` ${unit}`}</span>
      </p>
    </div>
  );
}
