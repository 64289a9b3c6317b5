import type { ReactNode } from 'react';
import styles from './Empty.module.css';

export type EmptyProps = {
  title: string;
  children?: ReactNode;
  picture?: ReactNode;
  act?: ReactNode;
};

/** Nothing here yet: what will stand here, and how it comes about. */
export function Empty({ title, children, picture, act }: EmptyProps) {
  return (
    <div className={styles.empty}>
      {picture && <div className={styles.picture}>{picture}</div>}
      <h2>{title}</h2>
      {children && <div className={styles.words}>{children}</div>}
      {act}
    </div>
  );
}
