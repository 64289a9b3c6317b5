import type { ReactNode } from 'react';
import styles from './List.module.css';
import { Mark } from './Mark.tsx';

/** Rows one below the other, parted by a line. */
export function List({
  label,
  ordered = false,
  children,
}: {
  label?: string;
  ordered?: boolean;
  children: ReactNode;
}) {
  const Tag = ordered ? 'ol' : 'ul';
  return (
    <Tag className={styles.list} aria-label={label}>
      {children}
    </Tag>
  );
}

export type RowProps = {
  title: ReactNode;
  note?: ReactNode;
  /** At the left: a verdict sign, a small drawing. */
  mark?: ReactNode;
  figure?: string;
  unit?: string;
  figureNote?: string;
  /** A row leads somewhere, does something, or neither. */
  href?: string;
  onPress?: () => void;
};

export function Row({ title, note, mark, figure, unit, figureNote, href, onPress }: RowProps) {
  const inside = (
    <>
      {mark && <span className={styles.mark}>{mark}</span>}
      <span className={styles.words}>
        <span className={styles.title}>{title}</span>
        {note && <span className={styles.note}>{note}</span>}
      </span>
      {figure !== undefined && <RowFigure figure={figure} unit={unit} note={figureNote} />}
    </>
  );
  return (
    <li className={styles.item}>
      {href !== undefined ? (
        <a className={`${styles.row} ${styles.leads}`} href={href}>
          {inside}
          <Mark shape="forward" />
        </a>
      ) : onPress ? (
        <button type="button" className={`${styles.row} ${styles.leads}`} onClick={onPress}>
          {inside}
        </button>
      ) : (
        <div className={styles.row}>{inside}</div>
      )}
    </li>
  );
}

export function RowFigure({
  figure,
  unit,
  note,
}: {
  figure: string;
  unit: string | undefined;
  note: string | undefined;
}) {
  return (
    <span className={styles.figures}>
      <span className={styles.figure}>
        {figure}
        {unit && <span className={styles.unit}>{` ${unit}`}</span>}
      </span>
      {note && <span className={styles.figureNote}>{note}</span>}
    </span>
  );
}
