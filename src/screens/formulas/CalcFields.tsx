import { NumberField } from '#ui/NumberField.tsx';
import styles from './CalcFields.module.css';
import type { CalcView, Texts } from './calc-view.ts';

/** The fields of a small sum, and below them what comes of it. */
export function CalcFields({
  view,
  texts,
  onTexts,
}: {
  view: CalcView;
  texts: Texts;
  onTexts: (texts: Texts) => void;
}) {
  return (
    <>
      <div className={styles.fields}>
        {view.fields.map(({ key, label, unit, text, hint, problem }) => (
          <NumberField
            key={key}
            label={label}
            text={text}
            onText={(typed) => onTexts({ ...texts, [key]: typed })}
            {...(unit ? { unit } : {})}
            {...(hint ? { hint } : {})}
            {...(problem ? { problem } : {})}
          />
        ))}
      </div>
      <dl className={styles.results} aria-live="polite">
        {view.results.map(({ label, value }) => (
          <div key={label} className={styles.result}>
            <dt>{label}</dt>
            <dd>{value}</dd>
          </div>
        ))}
      </dl>
      {view.notes.map((note) => (
        <p key={note} className={styles.note}>
          {note}
        </p>
      ))}
    </>
  );
}
