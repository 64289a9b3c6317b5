import { Figure } from '#ui/Figure.tsx';
import { Notice } from '#ui/Notice.tsx';
import { Sentence } from '#ui/Sentence.tsx';
import type { Words } from '#words/en.ts';
import styles from './Pace.module.css';
import type { PaceNotice, PaceView } from './pace-view.ts';

/** Pieces that dry too fast or too slowly: why, what to do about it, and when to look again. */
export function Pace({ notices, words }: { notices: readonly PaceNotice[]; words: Words }) {
  if (notices.length === 0) return null;
  return (
    <section className={styles.notices} aria-live="polite">
      {notices.map(({ key, title, reasons, act, after }) => (
        <Notice key={key} kind="caution" title={title}>
          <Sentence small tokens={act} />
          <ul className={styles.reasons}>
            {reasons.map((reason) => (
              <li key={reason}>{reason}</li>
            ))}
          </ul>
          <p>{after}</p>
        </Notice>
      ))}
      <p className={styles.caution}>{words.hangingPace.caution}</p>
    </section>
  );
}

/** The pieces as a hygrometer, beside what the chamber shows. */
export function ImpliedAir({
  label,
  value,
  unit,
  interval,
  suspect,
  words,
}: NonNullable<PaceView['air']> & { words: Words }) {
  return (
    <section className={styles.notices}>
      <Figure label={label} value={value} unit={unit} about interval={interval} />
      {suspect && (
        <Notice kind="caution">
          <Sentence small tokens={suspect} />
        </Notice>
      )}
      <p className={styles.caution}>{words.hangingPace.air.note}</p>
    </section>
  );
}
