import { useId } from 'react';
import styles from './Slider.module.css';

export type SliderProps = {
  label: string;
  /** The value as read, with its unit: shown, and said aloud. */
  text: string;
  value: number;
  least: number;
  most: number;
  step: number;
  onValue: (value: number) => void;
};

/** A value pushed along a line, for trying; never for what is kept. The arrow keys move it by one step. */
export function Slider({ label, text, value, least, most, step, onValue }: SliderProps) {
  const id = useId();
  return (
    <div className={styles.slider}>
      <label htmlFor={id} className={styles.label}>
        {label}
      </label>
      <output htmlFor={id} className={styles.value}>
        {text}
      </output>
      <input
        id={id}
        className={styles.line}
        type="range"
        min={least}
        max={most}
        step={step}
        value={value}
        aria-valuetext={text}
        onChange={(event) => onValue(Number(event.target.value))}
      />
    </div>
  );
}
