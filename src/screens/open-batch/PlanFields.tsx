import { NumberField } from '#ui/NumberField.tsx';
import type { Words } from '#words/en.ts';
import styles from './OpenBatchScreen.module.css';
import type { OpenBatchView } from './open-batch-view.ts';
import type { PlanField } from './plan-input.ts';

/** The plan in three groups: ferment, dry, pieces; each field with what is usual. */
export function PlanFields({
  groups,
  line,
  onField,
  words,
}: {
  groups: OpenBatchView['groups'];
  line: string;
  onField: (field: PlanField, text: string) => void;
  words: Words;
}) {
  const say = words.openBatch;
  return (
    <section className={styles.plan} aria-label={say.plan}>
      <div>
        <h2>{say.plan}</h2>
        <p className={styles.small}>{line}</p>
      </div>
      {groups.map(({ key, label, fields }) => (
        <fieldset key={key} className={styles.group}>
          <legend>{label}</legend>
          <div className={styles.fields}>
            {fields.map(({ field, label: name, text, unit, hint, problem }) => (
              <NumberField
                key={field}
                label={name}
                hint={hint}
                text={text}
                onText={(typed) => onField(field, typed)}
                {...(unit ? { unit } : {})}
                {...(problem ? { problem } : {})}
              />
            ))}
          </div>
        </fieldset>
      ))}
      <p className={styles.small}>{say.standing}</p>
    </section>
  );
}
