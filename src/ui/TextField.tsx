import { useId } from 'react';
import styles from './Field.module.css';
import { describedBy, FieldFrame, type FieldWords } from './FieldFrame.tsx';

export type TextFieldProps = FieldWords & {
  text: string;
  onText: (text: string) => void;
  /** Several lines, for a note. */
  long?: boolean;
  /** `none` for lot numbers and initials, which phones otherwise put right. */
  capitals?: 'none' | 'sentences' | 'words' | 'characters';
  maxLength?: number;
  /** Values used before, offered while typing. */
  offered?: readonly string[];
};

export function TextField({
  text,
  onText,
  long,
  capitals = 'sentences',
  maxLength,
  offered,
  ...words
}: TextFieldProps) {
  const id = useId();
  const shared = {
    id,
    className: styles.input,
    value: text,
    maxLength,
    autoComplete: 'off',
    autoCapitalize: capitals,
    spellCheck: long === true,
    'aria-invalid': words.problem ? true : undefined,
    'aria-describedby': describedBy(id, words),
  };
  return (
    <FieldFrame id={id} {...words}>
      {long ? (
        <textarea {...shared} rows={3} onChange={(event) => onText(event.target.value)} />
      ) : (
        <input
          {...shared}
          type="text"
          list={offered ? `${id}-offered` : undefined}
          onChange={(event) => onText(event.target.value)}
        />
      )}
      {offered && (
        <datalist id={`${id}-offered`}>
          {offered.map((value) => (
            <option key={value} value={value} />
          ))}
        </datalist>
      )}
    </FieldFrame>
  );
}
