import { useState } from 'react';
import type { Formula } from '#core/formula/formula.ts';
import type { BenchScale } from '#core/formula/scale.ts';
import type { Place } from '#record/place.ts';
import { Notice } from '#ui/Notice.tsx';
import { Sheet } from '#ui/Sheet.tsx';
import { TextField } from '#ui/TextField.tsx';
import type { Words } from '#words/en.ts';
import styles from './CalcFields.module.css';
import { piecesView } from './pieces-view.ts';

/** Several muscles at once: each gets its own salt and curing salt by its own weight. */
export function PiecesSheet({
  formula,
  scales,
  place,
  words,
  onClose,
}: {
  formula: Formula;
  scales: readonly BenchScale[];
  place: Place;
  words: Words;
  onClose: () => void;
}) {
  const [text, setText] = useState('');
  const say = words.formulaSheets.pieces;
  const view = piecesView({ text, formula, scales, place, words });
  return (
    <Sheet open onClose={onClose} title={say.title} closeLabel={words.app.close}>
      <TextField
        label={say.field}
        hint={say.hint}
        text={text}
        onText={setText}
        maxLength={400}
        {...(view.problem ? { problem: view.problem } : {})}
      />
      {view.pieces.map(({ key, title, grams, note, over }) => (
        <section key={key}>
          <h3>{title}</h3>
          <ul className={styles.items}>
            {grams.map((gram) => (
              <li key={gram}>{gram}</li>
            ))}
          </ul>
          <p className={styles.note}>{note}</p>
          {over && <Notice kind="caution">{say.over}</Notice>}
        </section>
      ))}
      {view.note && <p className={styles.note}>{view.note}</p>}
    </Sheet>
  );
}
