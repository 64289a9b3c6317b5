import { type ReactNode, useState } from 'react';
import { Mark } from './Mark.tsx';
import styles from './PhotoFrame.module.css';

/** Photos beside each other, two to a row however narrow the phone, so that one can be held against the other. */
export function PhotoPair({ label, children }: { label: string; children: ReactNode }) {
  return (
    <ul className={styles.pair} aria-label={label}>
      {children}
    </ul>
  );
}

export type PhotoFrameProps = {
  /** Null while it is fetched, or where there is none: then `instead` says why. */
  url: string | null;
  alt: string;
  caption: string;
  instead: string;
  amiss: boolean;
};

/** One photo with its day; a press draws it as wide as the page. What is missing says so in its place. */
export function PhotoFrame({ url, alt, caption, instead, amiss }: PhotoFrameProps) {
  const [wide, setWide] = useState(false);
  return (
    <li className={wide ? styles.wide : ''}>
      <figure className={styles.figure}>
        {url ? (
          <button type="button" className={styles.press} aria-expanded={wide} onClick={() => setWide(!wide)}>
            <img className={styles.photo} src={url} alt={alt} />
          </button>
        ) : (
          <p className={styles.instead}>
            {amiss && <Mark shape="caution" />}
            {instead}
          </p>
        )}
        <figcaption className={styles.caption}>{caption}</figcaption>
      </figure>
    </li>
  );
}
