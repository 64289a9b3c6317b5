import { Choice } from '#ui/Choice.tsx';
import { ManyChoice } from '#ui/ManyChoice.tsx';
import { NumberField } from '#ui/NumberField.tsx';
import { TextField } from '#ui/TextField.tsx';
import styles from './FormulaEditScreen.module.css';
import type { LineSheetProps } from './LineSheet.tsx';
import type { LineDraft } from './line-draft.ts';
import { allergenOptions, BRINGS_ALLERGENS, cutOptions, fieldProblem, MORE_FIELDS } from './line-view.ts';

/** What bears on acid, labels and history, and is not asked of everybody. */
export function LineMore({
  line,
  onLine,
  place,
  words,
}: Pick<LineSheetProps, 'line' | 'onLine' | 'place' | 'words'>) {
  const say = words.formulaEdit.line;
  const fields = MORE_FIELDS.filter(({ roles }) => roles.includes(line.role));
  return (
    <details className={styles.more}>
      <summary>{say.more}</summary>
      <div className={styles.fields}>
        {line.role === 'sugar' && (
          <Choice
            label={say.sugarKind}
            options={Object.entries(say.sugar).map(([value, label]) => ({ value, label }))}
            value={line.sugarKind}
            onValue={(kind) => onLine({ ...line, sugarKind: kind as NonNullable<LineDraft['sugarKind']> })}
          />
        )}
        {(line.role === 'lean' || line.role === 'fat') && (
          <Choice
            label={say.cut}
            hint={say.cutHint}
            options={cutOptions(line.role, place, words)}
            value={line.cutNdb ?? ''}
            onValue={(ndb) => onLine({ ...line, cutNdb: ndb === '' ? null : ndb })}
          />
        )}
        {fields.map(({ field, unit }) => {
          const problem = fieldProblem(line, field, place, words);
          return (
            <NumberField
              key={field}
              label={say[field]}
              unit={unit}
              text={line[field]}
              onText={(text) => onLine({ ...line, [field]: text })}
              {...(field === 'hiddenSugarPct' ? { hint: say.hiddenSugarHint } : {})}
              {...(problem ? { problem } : {})}
            />
          );
        })}
        {BRINGS_ALLERGENS.includes(line.role) && (
          <ManyChoice
            label={say.allergens}
            options={allergenOptions(words)}
            values={line.allergens}
            onValues={(allergens) => onLine({ ...line, allergens })}
          />
        )}
        <TextField
          label={say.note}
          long
          maxLength={400}
          text={line.note}
          onText={(note) => onLine({ ...line, note })}
        />
      </div>
    </details>
  );
}
