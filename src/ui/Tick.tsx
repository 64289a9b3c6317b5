import { RowFigure } from './List.tsx';
import styles from './Tick.module.css';

export type TickProps = {
  label: string;
  note?: string;
  checked: boolean;
  onChecked: (checked: boolean) => void;
  /** What to weigh. Stays readable once ticked, since it is looked at again. */
  figure?: string;
  unit?: string;
  figureNote?: string;
};

/** One line of a weigh-out: the whole row ticks it. A list item. */
export function Tick({ label, note, checked, onChecked, figure, unit, figureNote }: TickProps) {
  return (
    <li>
      <label className={styles.tick}>
        <input
          className={styles.input}
          type="checkbox"
          checked={checked}
          onChange={(event) => onChecked(event.target.checked)}
        />
        <svg className={styles.box} viewBox="0 0 32 32" aria-hidden="true">
          <rect className={styles.ground} x="1.5" y="1.5" width="29" height="29" rx="7" />
          <path className={styles.hook} d="M8.5 16.5 14 22 24 10.5" />
        </svg>
        <span className={styles.words}>
          <span className={styles.label}>{label}</span>
          {note && <span className={styles.note}>{note}</span>}
        </span>
        {figure !== undefined && <RowFigure figure={figure} unit={unit} note={figureNote} />}
      </label>
    </li>
  );
}
