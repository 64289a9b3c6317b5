import { memo } from 'react';
import { Choice } from '#ui/Choice.tsx';
import { List, Row, type RowProps } from '#ui/List.tsx';
import type { Words } from '#words/en.ts';
import styles from './FormulaScreen.module.css';
import { type FormulaView, type ShownBase, shownBases } from './formula-view.ts';

/** A line whose grams have not changed is not drawn again. */
const Line = memo(function Line(props: RowProps) {
  return <Row {...props} />;
});

/** The lines with their grams for the scale in use, and the base on which their amounts are shown. */
export function FormulaLines({
  view,
  base,
  onBase,
  words,
}: {
  view: FormulaView;
  base: ShownBase;
  onBase: (base: ShownBase) => void;
  words: Words;
}) {
  return (
    <section className={styles.lines}>
      <h2>{view.linesHeading}</h2>
      <List label={view.linesHeading}>
        {view.lines.map(({ id, name, amount, mass, note }) => (
          <Line
            key={id}
            title={name}
            note={amount}
            figure={mass?.value ?? '–'}
            {...(mass ? { unit: mass.unit } : {})}
            figureNote={note}
          />
        ))}
      </List>
      {view.sums.map((text) => (
        <p key={text} className={styles.small}>
          {text}
        </p>
      ))}
      <Choice label={words.formulas.shownAs} options={shownBases(words)} value={base} onValue={onBase} />
    </section>
  );
}
