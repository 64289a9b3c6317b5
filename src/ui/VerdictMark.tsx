import styles from './VerdictMark.module.css';

export type VerdictShape = 'within-limit' | 'pending' | 'deviation' | 'no-reading' | 'does-not-apply';

/** The shape alone: filled ring, open ring, filled diamond, dash, small dot. Told apart in black and white. */
export function VerdictSign({ verdict }: { verdict: VerdictShape }) {
  return (
    <svg className={styles.sign} viewBox="0 0 18 18" aria-hidden="true">
      {verdict === 'within-limit' && (
        <>
          <circle cx="9" cy="9" r="7.5" fill="none" stroke="currentColor" strokeWidth="2" />
          <circle cx="9" cy="9" r="4.6" fill="currentColor" />
        </>
      )}
      {verdict === 'pending' && (
        <circle cx="9" cy="9" r="7.3" fill="none" stroke="currentColor" strokeWidth="2.4" />
      )}
      {verdict === 'deviation' && <path d="M9 0 18 9 9 18 0 9Z" fill="currentColor" />}
      {verdict === 'no-reading' && <path d="M1.5 9h15" stroke="currentColor" strokeWidth="3" />}
      {verdict === 'does-not-apply' && <circle cx="9" cy="9" r="2.4" fill="currentColor" />}
    </svg>
  );
}

export type VerdictMarkProps = {
  verdict: VerdictShape;
  /** The verdict's word, and what it is about. */
  word: string;
  working?: { label: string; onOpen: () => void };
};

/** Shape first, then the word, then the way to the working. */
export function VerdictMark({ verdict, word, working }: VerdictMarkProps) {
  return (
    <div className={styles.mark}>
      <VerdictSign verdict={verdict} />
      <span className={styles.word}>{word}</span>
      {working && (
        <button type="button" className={styles.working} onClick={working.onOpen}>
          {working.label}
        </button>
      )}
    </div>
  );
}
