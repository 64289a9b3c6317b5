import type { Place } from '#record/place.ts';
import { Choice } from '#ui/Choice.tsx';
import { Notice } from '#ui/Notice.tsx';
import { NumberField } from '#ui/NumberField.tsx';
import type { Words } from '#words/en.ts';
import styles from './FormulaEditScreen.module.css';
import type { LineDraft } from './line-draft.ts';
import { fieldProblem, labelCaution, saltOptions } from './line-view.ts';

/** What the bag prints: the only thing by which a curing salt is known here. */
export function CureFields({
  line,
  onLine,
  place,
  words,
}: {
  line: LineDraft;
  onLine: (line: LineDraft) => void;
  place: Place;
  words: Words;
}) {
  const say = words.formulaEdit.line;
  const caution = labelCaution(line, place, words);
  const percent = (field: 'nitritePct' | 'nitratePct', hint?: string) => {
    const problem = fieldProblem(line, field, place, words);
    return (
      <NumberField
        label={say[field]}
        unit="%"
        text={line[field]}
        onText={(text) => onLine({ ...line, [field]: text })}
        {...(hint ? { hint } : {})}
        {...(problem ? { problem } : {})}
      />
    );
  };
  return (
    <section className={styles.label}>
      <h3>{say.label}</h3>
      <p className={styles.hint}>{say.labelHint}</p>
      <div className={styles.pair}>
        {percent('nitritePct')}
        {percent('nitratePct', say.nitrateHint)}
      </div>
      {caution && <Notice kind="caution">{caution}</Notice>}
      <details className={styles.more}>
        <summary>{say.whichSalt}</summary>
        <div className={styles.fields}>
          <Choice
            label={say.nitriteSalt}
            options={saltOptions(['NaNO2', 'KNO2'], words)}
            value={line.nitriteSalt}
            onValue={(nitriteSalt) => onLine({ ...line, nitriteSalt })}
          />
          <Choice
            label={say.nitrateSalt}
            options={saltOptions(['NaNO3', 'KNO3'], words)}
            value={line.nitrateSalt}
            onValue={(nitrateSalt) => onLine({ ...line, nitrateSalt })}
          />
        </div>
      </details>
    </section>
  );
}
