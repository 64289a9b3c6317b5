import { useState } from 'react';
import type { Basis } from '#core/formula/formula.ts';
import type { Place } from '#record/place.ts';
import { Button } from '#ui/Button.tsx';
import { Choice } from '#ui/Choice.tsx';
import { NumberField } from '#ui/NumberField.tsx';
import { Sheet } from '#ui/Sheet.tsx';
import { TextField } from '#ui/TextField.tsx';
import type { Words } from '#words/en.ts';
import { CureFields } from './CureFields.tsx';
import styles from './FormulaEditScreen.module.css';
import { LineMore } from './LineMore.tsx';
import { type LineDraft, typeAmount } from './line-draft.ts';
import { typeRecipe } from './line-switch.ts';
import { type AmountFieldView, amountFields, basesOf, recipeText } from './line-view.ts';

export type LineSheetProps = {
  line: LineDraft;
  onLine: (line: LineDraft) => void;
  onBasis: (basis: Basis) => void;
  /** The line with its amount set so that all salt together is this much; null where that cannot be. */
  onTotalSalt: (text: string) => LineDraft | null;
  onMove: (by: 1 | -1) => void;
  onRemove: () => void;
  onClose: () => void;
  place: Place;
  words: Words;
};

/** One line: what it is called, how much, and on what that counts. What is typed is kept as it is typed. */
export function LineSheet(props: LineSheetProps) {
  const { line, onLine, onBasis, onMove, onRemove, onClose, place, words } = props;
  const say = words.formulaEdit.line;
  const meat = line.role === 'lean' || line.role === 'fat';
  return (
    <Sheet
      open
      onClose={onClose}
      title={line.name || words.formulaEdit.role[line.role]}
      closeLabel={words.app.close}
      acts={
        <Button kind="primary" onPress={onClose}>
          {say.done}
        </Button>
      }
    >
      <TextField
        label={say.name}
        text={line.name}
        maxLength={80}
        onText={(name) => onLine({ ...line, name })}
      />
      {amountFields(line, place, words).map((field) => (
        <AmountField key={field.field} view={field} line={line} onLine={onLine} />
      ))}
      {line.role === 'salt' && <TotalSalt {...props} />}
      {line.role === 'cure' && <CureFields {...{ line, onLine, place, words }} />}
      {meat ? (
        <p className={styles.hint}>{say.meatShare}</p>
      ) : (
        <details className={styles.more}>
          <summary>{say.otherBase}</summary>
          <div className={styles.fields}>
            <Choice
              label={say.basis}
              hint={say.basisHint}
              options={basesOf(words)}
              value={line.basis}
              onValue={onBasis}
            />
            <Recipe {...props} />
          </div>
        </details>
      )}
      <LineMore {...props} />
      <div className={styles.moves}>
        <Button onPress={() => onMove(-1)}>{say.earlier}</Button>
        <Button onPress={() => onMove(1)}>{say.later}</Button>
        <Button onPress={onRemove}>{say.remove}</Button>
      </div>
    </Sheet>
  );
}

function AmountField({
  view,
  line,
  onLine,
}: {
  view: AmountFieldView;
  line: LineDraft;
  onLine: (line: LineDraft) => void;
}) {
  const { field, text, label, unit, hint, problem } = view;
  return (
    <NumberField
      label={label}
      text={text}
      unit={unit}
      onText={(typed) => onLine(typeAmount(line, field, typed))}
      {...(hint ? { hint } : {})}
      {...(problem ? { problem } : {})}
    />
  );
}

/** The other way round: all salt is given, and the plain salt follows from it. */
function TotalSalt({ onTotalSalt, onLine, words }: LineSheetProps) {
  const [text, setText] = useState('');
  const say = words.formulaEdit.line;
  const cannot = text.trim() !== '' && onTotalSalt(text) === null;
  return (
    <NumberField
      label={say.totalSalt}
      hint={say.totalSaltHint}
      unit="%"
      text={text}
      onText={(typed) => {
        setText(typed);
        const set = onTotalSalt(typed);
        if (set) onLine(set);
      }}
      {...(cannot ? { problem: say.totalSaltOver } : {})}
    />
  );
}

/** An amount typed as it stands in a book: read, and said back before it counts. */
function Recipe({ line, onLine, place, words }: LineSheetProps) {
  const [text, setText] = useState('');
  const say = words.formulaEdit.line;
  const { read } = typeRecipe(line, text, place, words);
  const { problem, said } = recipeText(read, place, words);
  return (
    <div className={styles.recipe}>
      <TextField
        label={say.recipe}
        hint={said ?? say.recipeHint}
        text={text}
        capitals="none"
        maxLength={60}
        onText={(typed) => {
          setText(typed);
          onLine(typeRecipe(line, typed, place, words).line);
        }}
        {...(problem ? { problem } : {})}
      />
    </div>
  );
}
