import type { ReactNode } from 'react';
import styles from './Shell.module.css';

/** The frame around every page: the page, and below it the bar of rooms (left out where the bench needs the height). */
export function Shell({ nav, children }: { nav?: ReactNode; children: ReactNode }) {
  return (
    <div className={styles.frame}>
      <div className={styles.shell}>
        {children}
        {nav}
      </div>
    </div>
  );
}
