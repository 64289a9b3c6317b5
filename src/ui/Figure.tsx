import { type ReactNode, useState } from 'react';
import styles from './Figure.module.css';
import { Working, type WorkingText } from './Working.tsx';

export type FigureProps = {
  label: string;
  /** Rounded and with the maker's decimal sign already. */
  value: string;
  unit?: string;
  /** True for an estimate: it gets a "~", so that it never looks like a measurement. */
  about?: boolean;
  /** The interval of an estimate, in words. */
  interval?: string;
  note?: string;
  working?: WorkingText;
};

/** A figure, large, with its name above. One that has a working opens it when pressed. */
export function Figure({ label, value, unit, about = false, interval, note, working }: FigureProps) {
  const [open, setOpen] = useState(false);
  const inside = (
    <>
      <span className={styles.label}>{label}</span>
      <span className={styles.line}>
        <span className={styles.value}>{about ? `~${value}` : value}</span>
        {unit && <span className={styles.unit}>{` ${unit}`}</span>}
      </span>
      {interval && <span className={styles.note}>{interval}</span>}
      {note && <span className={styles.note}>{note}</span>}
    </>
  );
  if (!working) return <div className={styles.figure}>{inside}</div>;
  return (
    <>
      <button
        type="button"
        className={`${styles.figure} ${styles.opens}`}
        aria-haspopup="dialog"
        onClick={() => setOpen(true)}
      >
        {inside}
      </button>
      <Working working={working} open={open} onClose={() => setOpen(false)} />
    </>
  );
}

/** Few figures side by side. */
export function Figures({ children }: { children: ReactNode }) {
  return <div className={styles.figures}>{children}</div>;
}
