import type { ReactNode } from 'react';
import styles from './Specimen.module.css';

/** One kind of part on the specimen page, under its name. */
export function SpecimenPart({ name, children }: { name: string; children: ReactNode }) {
  return (
    <section className={styles.part}>
      <h2>{name}</h2>
      {children}
    </section>
  );
}
