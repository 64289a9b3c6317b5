import { useId } from 'react';
import styles from './BarToLimit.module.css';
import { barParts } from './bar-parts.ts';

export type BarToLimitProps = {
  label: string;
  /** Share of the limit that is used up by readings. */
  usedShare: number;
  usedText: string;
  /** Share of the limit that an estimate expects at the end, what is used included. */
  projectedShare?: number;
  projectedText?: string;
  limitText: string;
};

/** What is used up of a limit: solid by readings, hatched by an estimate, and the limit a stop. */
export function BarToLimit({
  label,
  usedShare,
  usedText,
  projectedShare,
  projectedText,
  limitText,
}: BarToLimitProps) {
  const id = useId();
  const parts = barParts({ usedShare, ...(projectedShare === undefined ? {} : { projectedShare }) });
  const percent = (part: number) => `${Math.round(part * 1000) / 10}%`;
  return (
    <div className={styles.bar}>
      <p className={styles.top}>
        <span>{label}</span>
        <strong>{limitText}</strong>
      </p>
      <svg className={styles.picture} width="100%" height="28" aria-hidden="true">
        <pattern id={id} width="6" height="6" patternUnits="userSpaceOnUse" patternTransform="rotate(45)">
          <rect width="6" height="6" fill="var(--bloom)" />
          <rect width="2.4" height="6" fill="var(--steel)" />
        </pattern>
        <rect className={styles.empty} y="9" width="100%" height="13" />
        <rect
          className={styles.hatched}
          y="9"
          width={percent(parts.projected)}
          height="13"
          fill={`url(#${id})`}
        />
        <rect className={styles.solid} y="9" width={percent(parts.used)} height="13" />
        <rect className={styles.stop} x={percent(parts.limit)} y="1" width="5" height="26" />
      </svg>
      <p className={styles.texts}>
        <span className={styles.text}>
          <svg width="16" height="12" aria-hidden="true">
            <rect className={styles.solid} width="16" height="12" />
          </svg>
          <strong>{usedText}</strong>
        </span>
        {projectedText && (
          <span className={styles.text}>
            <svg width="16" height="12" aria-hidden="true">
              <rect className={styles.hatched} width="16" height="12" fill={`url(#${id})`} />
            </svg>
            {projectedText}
          </span>
        )}
      </p>
    </div>
  );
}
