import { useId } from 'react';
import styles from './Field.module.css';
import { describedBy, FieldFrame, type FieldWords } from './FieldFrame.tsx';

export type DateTimeFieldProps = FieldWords & {
  /** `YYYY-MM-DD`, `HH:MM` or `YYYY-MM-DDTHH:MM`, local to where the maker stands; empty while not chosen. */
  text: string;
  onText: (text: string) => void;
  kind?: 'date-time' | 'date' | 'time';
  earliest?: string;
  latest?: string;
};

const TYPES = { 'date-time': 'datetime-local', date: 'date', time: 'time' } as const;

/** The phone's own date and time picker. */
export function DateTimeField({
  text,
  onText,
  kind = 'date-time',
  earliest,
  latest,
  ...words
}: DateTimeFieldProps) {
  const id = useId();
  return (
    <FieldFrame id={id} {...words}>
      <input
        id={id}
        className={styles.input}
        type={TYPES[kind]}
        value={text}
        min={earliest}
        max={latest}
        aria-invalid={words.problem ? true : undefined}
        aria-describedby={describedBy(id, words)}
        onChange={(event) => onText(event.target.value)}
      />
    </FieldFrame>
  );
}
