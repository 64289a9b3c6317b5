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

/** Roughly how wide the value is in its own em: digits, the caret, and the unit at less than half the size. */
const widthEm = (text: string, unit: string) => 0.64 * Math.max(2, text.length) + 0.5 + 0.3 * unit.length;

/** The value being typed, to be read at arm's length: as large as it fits beside its neighbour. */
export function BigValue({ text, unit, previous, label }: BigValueProps) {
  const fit = Math.floor(100 / widthEm(text, unit));
  return (
    <div className={styles.frame}>
      {previous && <p className={styles.previous}>{previous}</p>}
      <p
        className={styles.value}
        style={{ fontSize: `min(var(--text-typed), ${fit}cqi)` }}
        aria-live="polite"
        aria-atomic="true"
      >
        <span className="heard">{`${label} `}</span>
        <span className={styles.typed} data-typed="">
          {text}
        </span>
        <span className={styles.caret} aria-hidden="true" />
        <span className={styles.unit}>{` ${unit}`}</span>
      </p>
    </div>
  );
}
