import type { ReactNode } from 'react';
import styles from './Field.module.css';

export type FieldWords = {
  label: string;
  hint?: string;
  /** What is wrong with what was typed, and how to put it right. What was typed stays. */
  problem?: string;
};

export function describedBy(
  id: string,
  { hint, problem }: Pick<FieldWords, 'hint' | 'problem'>,
  more?: string,
) {
  const ids = [hint && `${id}-hint`, more, problem && `${id}-problem`].filter(Boolean);
  return ids.length > 0 ? ids.join(' ') : undefined;
}

export function Problem({ id, text }: { id: string; text: string | undefined }) {
  return (
    <p className={styles.problem} id={`${id}-problem`} role="alert" hidden={!text}>
      {text && (
        <>
          <svg viewBox="0 0 16 16" width="1.125em" height="1.125em" aria-hidden="true">
            <path
              d="M8 1.5 15 14.5H1Z"
              fill="none"
              stroke="currentColor"
              strokeWidth="2"
              strokeLinejoin="round"
            />
            <path d="M8 6v4M8 11.4v1.4" stroke="currentColor" strokeWidth="1.8" />
          </svg>
          <span>{text}</span>
        </>
      )}
    </p>
  );
}

/** Label above, box, then what helps and what is wrong, tied to the input by `id`. */
export function FieldFrame({
  id,
  label,
  hint,
  problem,
  below,
  children,
}: FieldWords & { id: string; below?: ReactNode; children: ReactNode }) {
  return (
    <div className={styles.field}>
      <label className={styles.label} htmlFor={id}>
        {label}
      </label>
      {hint && (
        <p className={styles.hint} id={`${id}-hint`}>
          {hint}
        </p>
      )}
      <div className={problem ? `${styles.box} ${styles.wrong}` : styles.box}>{children}</div>
      {below}
      <Problem id={id} text={problem} />
    </div>
  );
}
