import { useId } from 'react';
import styles from './Field.module.css';
import { describedBy, type FieldWords, Problem } from './FieldFrame.tsx';

export type ChoiceOption<T extends string> = { value: T; label: string; note?: string };

export type ChoiceProps<T extends string> = FieldWords & {
  options: readonly ChoiceOption<T>[];
  /** Null while nothing is chosen: a choice that matters is never made for the maker. */
  value: T | null;
  onValue: (value: T) => void;
  /** A scale of marks: side by side in their order, however narrow. */
  inRow?: boolean;
};

/** One of a few, as chips large enough for a cold thumb. The chosen one is filled and its ring is closed. */
export function Choice<T extends string>({
  options,
  value,
  onValue,
  label,
  hint,
  problem,
  inRow = false,
}: ChoiceProps<T>) {
  const id = useId();
  return (
    <fieldset
      className={styles.field}
      aria-describedby={describedBy(id, { ...(hint ? { hint } : {}), ...(problem ? { problem } : {}) })}
    >
      <legend className={styles.label}>{label}</legend>
      {hint && (
        <p className={styles.hint} id={`${id}-hint`}>
          {hint}
        </p>
      )}
      <div className={inRow ? `${styles.chips} ${styles.inRow}` : styles.chips}>
        {options.map((option) => (
          <label key={option.value} className={styles.chip}>
            <input
              type="radio"
              name={id}
              value={option.value}
              checked={option.value === value}
              onChange={() => onValue(option.value)}
            />
            <span className={styles.chipWords}>
              {option.label}
              {option.note && <span className={styles.chipNote}>{option.note}</span>}
            </span>
          </label>
        ))}
      </div>
      <Problem id={id} text={problem} />
    </fieldset>
  );
}
