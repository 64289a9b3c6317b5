import type { ReactNode } from 'react';
import { Mark } from './Mark.tsx';
import styles from './Notice.module.css';

export type NoticeKind = 'caution' | 'offline' | 'error' | 'saved';

export type NoticeProps = {
  kind: NoticeKind;
  title?: string;
  children: ReactNode;
  /** A quiet button, where something can be done about it. */
  act?: ReactNode;
};

const ROLES = { caution: 'note', offline: 'status', error: 'alert', saved: 'status' } as const;

/** One thing to know, beside what it is about. */
export function Notice({ kind, title, children, act }: NoticeProps) {
  return (
    <div className={`${styles.notice} ${styles[kind]}`} role={ROLES[kind]}>
      <Mark shape={kind} />
      <div className={styles.words}>
        {title && <p className={styles.title}>{title}</p>}
        <div>{children}</div>
        {act}
      </div>
    </div>
  );
}
