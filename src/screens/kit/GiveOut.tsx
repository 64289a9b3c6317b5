import { useState } from 'react';
import { type HandedOver, handOver } from '#files/hand-over.ts';
import type { Place } from '#record/place.ts';
import { allLines } from '#store/backup.ts';
import { Button } from '#ui/Button.tsx';
import { Notice } from '#ui/Notice.tsx';
import type { Words } from '#words/en.ts';
import styles from './KeepingScreen.module.css';

type Form = 'csv' | 'json';
type Step = { at: 'begin' | 'failed' } | { at: 'handed'; handed: HandedOver; entries: number; left: number };

/** Everything that was written down, for a spreadsheet or another program: to be read, not to be taken in again. */
export function GiveOut({ words, place, day }: { words: Words; place: Place; day: string }) {
  const [step, setStep] = useState<Step>({ at: 'begin' });
  const say = words.keeping.giveOut;

  const give = async (form: Form) => {
    try {
      const { entriesCsv, entriesJson } = await import('#files/entries-csv.ts');
      const { lines, left } = await allLines();
      const content =
        form === 'csv'
          ? entriesCsv(lines, { decimal: place.decimal, byteOrderMark: true })
          : entriesJson(lines);
      const mime = form === 'csv' ? 'text/csv' : 'application/json';
      const handed = await handOver({ name: say.fileName(day, form), mime, content });
      setStep({ at: 'handed', handed, entries: lines.length, left: left.length });
    } catch {
      setStep({ at: 'failed' });
    }
  };

  return (
    <section className={styles.panel} aria-labelledby="give-out">
      <h2 id="give-out">{say.title}</h2>
      <p>{say.text}</p>
      <div className={styles.acts}>
        <Button onPress={() => void give('csv')}>{say.csv(place.decimal)}</Button>
        <Button onPress={() => void give('json')}>{say.json}</Button>
      </div>
      <div aria-live="polite">
        {step.at === 'failed' && <Notice kind="error">{say.failed}</Notice>}
        {step.at === 'handed' && <p>{say.handed[step.handed](step.entries)}</p>}
        {step.at === 'handed' && step.left > 0 && <Notice kind="error">{say.left(step.left)}</Notice>}
      </div>
    </section>
  );
}
