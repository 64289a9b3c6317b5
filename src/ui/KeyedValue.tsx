import { useId } from 'react';
import { BigValue } from './BigValue.tsx';
import { Problem } from './FieldFrame.tsx';
import styles from './KeyedValue.module.css';
import { NumberPad } from './NumberPad.tsx';
import type { DecimalSign } from './number-input.ts';

export type KeyedValueProps = {
  text: string;
  onText: (text: string) => void;
  unit: string;
  decimal: DecimalSign;
  /** What is being typed, said aloud. */
  label: string;
  previous?: string;
  problem?: string;
  maxDecimals?: number;
  words: { pad: string; decimal: string; back: string };
};

/** A value and the app's own keys below it, for the bench. */
export function KeyedValue({
  text,
  onText,
  unit,
  decimal,
  label,
  previous,
  problem,
  maxDecimals,
  words,
}: KeyedValueProps) {
  const id = useId();
  return (
    <div className={styles.keyed}>
      <BigValue text={text} unit={unit} label={label} {...(previous ? { previous } : {})} />
      <Problem id={id} text={problem} />
      <NumberPad
        text={text}
        onText={onText}
        decimal={decimal}
        label={words.pad}
        decimalLabel={words.decimal}
        backLabel={words.back}
        {...(maxDecimals === undefined ? {} : { maxDecimals })}
      />
    </div>
  );
}
