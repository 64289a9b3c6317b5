import type { Formula } from '#core/formula/formula.ts';
import { needsPieces } from '#core/formula/formula.ts';
import type { Place } from '#record/place.ts';
import { NumberField } from '#ui/NumberField.tsx';
import type { Words } from '#words/en.ts';
import { type BenchProblems, type BenchTexts, benchUnit } from './bench-input.ts';
import styles from './FormulaScreen.module.css';

/** The meat as it lies trimmed on the bench: every key pressed scales the lines anew. */
export function BenchFields({
  formula,
  texts,
  problems,
  onTexts,
  place,
  words,
}: {
  formula: Formula;
  texts: BenchTexts;
  problems: BenchProblems;
  onTexts: (texts: BenchTexts) => void;
  place: Place;
  words: Words;
}) {
  const say = words.formulas;
  const field = (name: keyof BenchTexts, label: string, unit?: string) => (
    <NumberField
      label={label}
      text={texts[name]}
      onText={(text) => onTexts({ ...texts, [name]: text })}
      {...(unit ? { unit } : {})}
      {...(problems[name] ? { problem: problems[name] } : {})}
    />
  );
  return (
    <section className={styles.bench} aria-label={say.bench}>
      {field('lean', formula.kind === 'whole-muscle' ? say.muscle : say.lean, benchUnit(place))}
      {formula.kind === 'comminuted' && field('fat', say.fat, benchUnit(place))}
      {needsPieces(formula) && field('pieces', say.pieces)}
    </section>
  );
}
