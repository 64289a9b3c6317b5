import type { Place } from '#record/place.ts';
import { Choice } from '#ui/Choice.tsx';
import { ManyChoice } from '#ui/ManyChoice.tsx';
import { NumberField } from '#ui/NumberField.tsx';
import { TextField } from '#ui/TextField.tsx';
import type { Words } from '#words/en.ts';
import { typeFat } from './draft-edits.ts';
import type { EditView } from './edit-view.ts';
import styles from './FormulaEditScreen.module.css';
import { type FormulaDraft, type HeadField, kindOptions, speciesOptions } from './formula-draft.ts';

/** What holds for the whole formula: its name, its meat, and what it should become. */
export function FormulaHead({
  draft,
  problems,
  onDraft,
  place,
  words,
}: {
  draft: FormulaDraft;
  problems: EditView['problems'];
  onDraft: (draft: FormulaDraft) => void;
  place: Place;
  words: Words;
}) {
  const say = words.formulaEdit;
  const number = (field: HeadField, unit: string) => (
    <NumberField
      label={say[field]}
      hint={say.usual[field]}
      unit={unit}
      text={draft.numbers[field]}
      onText={(text) =>
        onDraft(
          field === 'fatPctOfMeat'
            ? typeFat(draft, text, place, words)
            : { ...draft, numbers: { ...draft.numbers, [field]: text } },
        )
      }
      {...(problems[field] ? { problem: problems[field] } : {})}
    />
  );
  return (
    <section className={styles.fields}>
      <TextField
        label={say.name}
        text={draft.name}
        maxLength={80}
        onText={(name) => onDraft({ ...draft, name })}
        {...(problems.name ? { problem: problems.name } : {})}
      />
      {draft.kind === 'comminuted' && number('fatPctOfMeat', '%')}
      <details className={styles.more}>
        <summary>{say.plan}</summary>
        <div className={styles.fields}>
          <Choice
            label={say.kind}
            options={kindOptions(words)}
            value={draft.kind}
            onValue={(kind) => onDraft({ ...draft, kind })}
          />
          <ManyChoice
            label={say.species}
            options={speciesOptions(words)}
            values={draft.species}
            onValues={(species) => onDraft({ ...draft, species })}
          />
          {number('diameterMm', 'mm')}
          {number('targetLossPct', '%')}
          {number('plannedDays', say.days)}
          <TextField
            label={say.note}
            long
            maxLength={2000}
            text={draft.note}
            onText={(note) => onDraft({ ...draft, note })}
          />
        </div>
      </details>
    </section>
  );
}
