import { startTransition, useState } from 'react';
import type { Formula } from '#core/formula/formula.ts';
import { needsPieces } from '#core/formula/formula.ts';
import type { Place } from '#record/place.ts';
import { NumberField } from '#ui/NumberField.tsx';
import type { Words } from '#words/en.ts';
import { type BenchTexts, benchUnit, readBench } from './bench-input.ts';
import styles from './FormulaScreen.module.css';

/**
 * The meat as it lies trimmed on the bench: every key pressed scales the lines anew. The key is drawn first, here alone, and the
 * grams follow in a later paint, so that 25 lines do not hold up a typing thumb.
 */
export function BenchFields({
  formula,
  texts: given,
  onTexts,
  place,
  words,
}: {
  formula: Formula;
  texts: BenchTexts;
  onTexts: (texts: BenchTexts) => void;
  place: Place;
  words: Words;
}) {
  const [texts, setTexts] = useState(given);
  const { problems } = readBench({ texts, formula, place, words });
  const type = (typed: BenchTexts) => {
    setTexts(typed);
    startTransition(() => onTexts(typed));
  };
  const say = words.formulas;
  const field = (name: keyof BenchTexts, label: string, unit?: string) => (
    <NumberField
      label={label}
      text={texts[name]}
      onText={(text) => type({ ...texts, [name]: text })}
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
