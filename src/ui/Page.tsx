import type { ReactNode } from 'react';
import styles from './Page.module.css';
import { Sentence, type Token } from './Sentence.tsx';

export type PageProps = {
  title: string;
  /** The small line above the title: what this page is about. */
  line?: ReactNode;
  /** Where things stand and what to do next. Only what the maker acts on is strong. */
  sentence?: readonly Token[];
  back?: { href: string; label: string };
  /** What can be done here: the primary act and at most one second. Stays at the foot, above the bar of rooms. */
  acts?: ReactNode;
  /** One quiet line below the acts. */
  actsNote?: ReactNode;
  children?: ReactNode;
};

export function Page({ title, line, sentence, back, acts, actsNote, children }: PageProps) {
  return (
    <main className={styles.page}>
      <div className={styles.body}>
        <header className={styles.head}>
          {back && (
            <a className={styles.back} href={back.href}>
              <svg viewBox="0 0 12 12" width="12" height="12" aria-hidden="true">
                <path d="M8 1.5 3.5 6 8 10.5" fill="none" stroke="currentColor" strokeWidth="2" />
              </svg>
              {back.label}
            </a>
          )}
          {line && <p className={styles.line}>{line}</p>}
          <h1 className={styles.title} tabIndex={-1}>
            {title}
          </h1>
          {sentence && <Sentence tokens={sentence} />}
        </header>
        {children}
      </div>
      {acts && (
        <div className={styles.foot}>
          <div className={styles.acts}>{acts}</div>
          {actsNote && <p className={styles.note}>{actsNote}</p>}
        </div>
      )}
    </main>
  );
}
