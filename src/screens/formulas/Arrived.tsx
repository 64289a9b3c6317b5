import type { Formula } from '#core/formula/formula.ts';
import type { FormulaParent } from '#files/formula-file.ts';
import type { Place } from '#record/place.ts';
import { newSubject } from '#store/append.ts';
import { useAppend } from '#store/use-append.ts';
import { Button } from '#ui/Button.tsx';
import { List, Row } from '#ui/List.tsx';
import { Page } from '#ui/Page.tsx';
import { SavedMark } from '#ui/SavedMark.tsx';
import type { Words } from '#words/en.ts';
import { arrivedView } from './arrived-view.ts';
import { Guards } from './Cautions.tsx';
import styles from './FormulaScreen.module.css';
import { formulaHref } from './formulas-view.ts';

export type ArrivedFormula = {
  formula: Formula;
  /** Kept with the version. */
  note: string;
  from?: FormulaParent | undefined;
};

/** What came from elsewhere, before it is kept: every line, and what a careful colleague would ask. */
export function Arrived({
  arrived: { formula, note, from },
  words,
  place,
}: {
  arrived: ArrivedFormula;
  words: Words;
  place: Place;
}) {
  const { saving, save } = useAppend(place.initials);
  const say = words.formulaSheets.arrive;
  const view = arrivedView(formula, place, words);
  const mark = words.app.saving(saving);
  const keep = async () => {
    const subject = newSubject('formula');
    const { ok } = await save([
      { kind: 'formula-saved', subject, body: { formula, note, ...(from ? { from } : {}) } },
    ]);
    if (ok) window.location.hash = formulaHref(subject);
  };
  return (
    <Page
      title={formula.name}
      line={say.title}
      back={{ href: '#/formulas', label: words.formulas.title }}
      sentence={[{ text: say.text }]}
      acts={
        <Button kind="primary" disabled={saving.state === 'saving'} onPress={() => void keep()}>
          {say.keep}
        </Button>
      }
    >
      <Guards guards={view.guards} words={words} />
      <section className={styles.lines}>
        <h2>{words.formulaEdit.lines}</h2>
        <List label={words.formulaEdit.lines}>
          {view.lines.map(({ key, title, note: amount }) => (
            <Row key={key} title={title} note={amount} />
          ))}
        </List>
      </section>
      {view.facts.map((fact) => (
        <p key={fact} className={styles.small}>
          {fact}
        </p>
      ))}
      {from && <p className={styles.small}>{say.parent}</p>}
      {mark?.state === 'not-saved' && <SavedMark state={mark.state} text={mark.text} />}
    </Page>
  );
}
