import styles from './Waiting.module.css';

/** While something is read from the phone. Seen only if it takes long enough to be noticed. */
export function Waiting({ label }: { label: string }) {
  return (
    <p className={styles.waiting} role="status">
      <span className={styles.bar} aria-hidden="true" />
      {label}
    </p>
  );
}
