import { useState } from 'react';
import type { Place } from '#record/place.ts';
import { startingFormula } from '#record/starting-formula.ts';
import { newSubject } from '#store/append.ts';
import { useAppend } from '#store/use-append.ts';
import { useFormulas } from '#store/use-formulas.ts';
import { Button } from '#ui/Button.tsx';
import { List, Row } from '#ui/List.tsx';
import { Page } from '#ui/Page.tsx';
import { SavedMark } from '#ui/SavedMark.tsx';
import { Waiting } from '#ui/Waiting.tsx';
import type { Words } from '#words/en.ts';
import { Arrived, type ArrivedFormula } from './Arrived.tsx';
import styles from './FormulasScreen.module.css';
import { formulaHref, formulasView } from './formulas-view.ts';
import { TakeIn } from './TakeIn.tsx';

export function FormulasScreen({ words, place }: { words: Words; place: Place }) {
  const saved = useFormulas();
  const { saving, save } = useAppend(place.initials);
  const [arrived, setArrived] = useState<ArrivedFormula | null>(null);
  if (saved === undefined) return <Waiting label={words.app.waiting} />;
  if (arrived) return <Arrived {...{ arrived, words, place }} />;
  const view = formulasView({ saved, words });
  const say = words.formulas;
  const none = view.rows.length === 0;

  const takeStarting = async () => {
    const subject = newSubject('formula');
    const { ok } = await save([
      {
        kind: 'formula-saved',
        subject,
        body: { formula: startingFormula(place.ruleSet), note: say.starting.note },
      },
    ]);
    if (ok) window.location.hash = formulaHref(subject);
  };
  const taking = saving.state === 'saving';
  const take = (
    <Button kind={none ? 'primary' : 'quiet'} disabled={taking} onPress={() => void takeStarting()}>
      {say.takeStarting}
    </Button>
  );
  const mark = words.app.saving(saving);
  return (
    <Page
      title={say.title}
      sentence={view.sentence}
      acts={
        <>
          {none && take}
          <Button kind={none ? 'second' : 'primary'} href="#/formulas/new">
            {none ? say.begin : say.beginAnother}
          </Button>
        </>
      }
    >
      {!none && (
        <List label={say.title}>
          {view.rows.map(({ key, href, title, note }) => (
            <Row key={key} href={href} title={title} note={note} />
          ))}
        </List>
      )}
      <section className={styles.starting}>
        <h2>
          {say.starting.heading} <span className={styles.invented}>{words.app.invented}</span>
        </h2>
        <p>{say.starting.text}</p>
        {!none && take}
        {mark && mark.state === 'not-saved' && <SavedMark state={mark.state} text={mark.text} />}
      </section>
      <TakeIn onArrived={setArrived} words={words} />
      {!none && (
        <List>
          <Row href="#/what-if" title={words.whatIf.newTitle} note={words.whatIf.newLine} />
        </List>
      )}
    </Page>
  );
}
