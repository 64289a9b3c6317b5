import { useId } from 'react';
import type { ChoiceOption } from './Choice.tsx';
import styles from './Field.module.css';
import { describedBy, type FieldWords, Problem } from './FieldFrame.tsx';

export type ManyChoiceProps<T extends string> = FieldWords & {
  options: readonly ChoiceOption<T>[];
  values: readonly T[];
  onValues: (values: T[]) => void;
};

/** Any number of a few, as chips. Kept in the order of the options. */
export function ManyChoice<T extends string>({
  options,
  values,
  onValues,
  label,
  hint,
  problem,
}: ManyChoiceProps<T>) {
  const id = useId();
  const turned = (value: T) =>
    options
      .map((option) => option.value)
      .filter((each) => (each === value ? !values.includes(each) : values.includes(each)));
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
      <div className={styles.chips}>
        {options.map((option) => (
          <label key={option.value} className={styles.chip}>
            <input
              type="checkbox"
              checked={values.includes(option.value)}
              onChange={() => onValues(turned(option.value))}
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
