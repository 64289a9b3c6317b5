import { useId } from 'react';
import styles from './Field.module.css';
import { describedBy, FieldFrame, type FieldWords } from './FieldFrame.tsx';

export type NumberFieldProps = FieldWords & {
  /** Exactly what was typed; read it with `parseNumber`. */
  text: string;
  onText: (text: string) => void;
  unit?: string;
  /** The last value, in words, to compare with: shown in grey. */
  previous?: string;
  /** Phones' decimal keypads have no minus: gives a key for it, with its name said aloud. */
  signLabel?: string;
  onLeave?: () => void;
};

/** A number typed on the phone's own decimal keys: comma or point, in the maker's unit. */
export function NumberField({
  text,
  onText,
  unit,
  previous,
  signLabel,
  onLeave,
  ...words
}: NumberFieldProps) {
  const id = useId();
  const more = [unit && `${id}-unit`, previous && `${id}-previous`].filter(Boolean).join(' ');
  const turned = /^\s*[-−–]/.test(text) ? text.replace(/^\s*[-−–]/, '') : `−${text.trimStart()}`;
  return (
    <FieldFrame
      id={id}
      {...words}
      below={
        previous && (
          <p className={styles.previous} id={`${id}-previous`}>
            {previous}
          </p>
        )
      }
    >
      {signLabel && (
        <button
          type="button"
          className={styles.sign}
          aria-label={signLabel}
          aria-pressed={turned.length < text.length}
          onClick={() => onText(turned)}
        >
          ±
        </button>
      )}
      <input
        id={id}
        className={`${styles.input} ${styles.number}`}
        type="text"
        inputMode="decimal"
        autoComplete="off"
        enterKeyHint="done"
        value={text}
        aria-invalid={words.problem ? true : undefined}
        aria-describedby={describedBy(id, words, more || undefined)}
        onChange={(event) => onText(event.target.value)}
        onBlur={onLeave}
      />
      {unit && (
        <span className={styles.unit} id={`${id}-unit`}>
          {unit}
        </span>
      )}
    </FieldFrame>
  );
}
