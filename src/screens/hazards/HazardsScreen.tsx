import type { Place } from '#record/place.ts';
import { Button } from '#ui/Button.tsx';
import { List, Row } from '#ui/List.tsx';
import { Page } from '#ui/Page.tsx';
import { Sentence } from '#ui/Sentence.tsx';
import type { Words } from '#words/en.ts';
import styles from './HazardsScreen.module.css';
import { type HazardView, hazardsView } from './hazards-view.ts';

/** To a heading of this page. Addresses are taken by the routes, so the page moves itself, and the focus with it. */
function goTo(id: string) {
  const heading = document.getElementById(id);
  heading?.scrollIntoView();
  heading?.focus({ preventScroll: true });
}

export function HazardsScreen({ words, place }: { words: Words; place: Place }) {
  const { hazards, app } = words;
  const view = hazardsView(words, place);
  return (
    <Page
      title={hazards.title}
      line={hazards.line}
      sentence={hazards.sentence}
      back={{ href: '#/kit', label: app.nav.kit }}
    >
      <nav aria-labelledby="contents">
        <h2 id="contents" className={styles.contents} tabIndex={-1}>
          {hazards.contents}
        </h2>
        <ol className={styles.links}>
          {view.map(({ id, title }) => (
            <li key={id}>
              <button type="button" className={styles.link} onClick={() => goTo(id)}>
                {title}
              </button>
            </li>
          ))}
        </ol>
      </nav>
      {view.map((hazard) => (
        <Hazard key={hazard.id} hazard={hazard} words={words} />
      ))}
      <p className={styles.memory}>{hazards.memory}</p>
      <List>
        <Row title={hazards.toLimits} href="#/limits" />
      </List>
    </Page>
  );
}

function Hazard({ hazard, words }: { hazard: HazardView; words: Words }) {
  const { id, title, sentence, text, facts } = hazard;
  return (
    <section className={styles.hazard} aria-labelledby={id}>
      <h2 id={id} className={styles.title} tabIndex={-1}>
        {title}
      </h2>
      <Sentence tokens={sentence} />
      {text.map((paragraph) => (
        <p key={paragraph}>{paragraph}</p>
      ))}
      {facts.length > 0 && (
        <>
          <h3 className={styles.published}>{words.hazards.published}</h3>
          <ul className={styles.facts}>
            {facts.map((fact) => (
              <li key={fact.text} className={styles.fact}>
                {fact.text}
                {fact.sources.map((source) => (
                  <span key={`${source.text}${source.standing}`} className={styles.source}>
                    {source.text} <span className={styles.standing}>({source.standing})</span>
                  </span>
                ))}
              </li>
            ))}
          </ul>
        </>
      )}
      <Button kind="quiet" onPress={() => goTo('contents')}>
        {words.hazards.toTop}
      </Button>
    </section>
  );
}
