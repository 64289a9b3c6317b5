import type { Place } from '#record/place.ts';
import { List, Row } from '#ui/List.tsx';
import { Page } from '#ui/Page.tsx';
import { Sentence } from '#ui/Sentence.tsx';
import type { Words } from '#words/en.ts';
import styles from './LimitsScreen.module.css';
import type { LimitGroup, LimitView } from './limit-text.ts';
import { limitsView, type RuleSetView } from './limits-view.ts';

export function LimitsScreen({ words, place }: { words: Words; place: Place }) {
  const { limits, app } = words;
  const view = limitsView(words, place);
  return (
    <Page title={limits.title} sentence={view.sentence} back={{ href: '#/kit', label: app.nav.kit }}>
      {view.sets.map((set) => (
        <RuleSet key={set.id} set={set} words={words} />
      ))}
      <details className={styles.set}>
        <summary className={styles.summary}>
          <h2 className={styles.title}>{limits.practice.title}</h2>
        </summary>
        <Groups groups={view.practice} />
      </details>
      <section className={styles.set} aria-labelledby="conflicts">
        <h2 id="conflicts" className={styles.title}>
          {limits.conflicts.title}
        </h2>
        <Sentence tokens={limits.conflicts.sentence} small />
        {view.conflicts.map(({ topic, says }) => (
          <div key={topic} className={styles.group}>
            <h3>{topic}</h3>
            <ul className={styles.rows}>
              {says.map(({ text, used, source }) => (
                <li key={text} className={styles.row}>
                  <span className={styles.value}>
                    {text}
                    {used && <span className={styles.used}>{limits.conflicts.used}</span>}
                  </span>
                  <SourceLine source={source} />
                </li>
              ))}
            </ul>
          </div>
        ))}
      </section>
      <List>
        <Row title={words.fermentExamples.link} href="#/limits/examples" />
        <Row title={limits.toHazards} href="#/hazards" />
      </List>
    </Page>
  );
}

function RuleSet({ set, words }: { set: RuleSetView; words: Words }) {
  return (
    <details className={styles.set} open={set.inForce}>
      <summary className={styles.summary}>
        <h2 className={styles.title}>
          {set.title}
          {set.inForce && <span className={styles.used}>{words.limits.inForce}</span>}
        </h2>
        <span className={styles.soft}>{set.summary}</span>
      </summary>
      {set.lines.map((line) => (
        <p key={line} className={styles.soft}>
          {line}
        </p>
      ))}
      <Groups groups={set.groups} />
    </details>
  );
}

function Groups({ groups }: { groups: readonly LimitGroup[] }) {
  return groups.map(({ title, note, limits }) => (
    <div key={title} className={styles.group}>
      <h3>{title}</h3>
      {note && <p className={styles.soft}>{note}</p>}
      <ul className={styles.rows}>
        {limits.map((limit) => (
          <LimitRow key={`${limit.title}${limit.of}`} limit={limit} />
        ))}
      </ul>
    </div>
  ));
}

function LimitRow({ limit }: { limit: LimitView }) {
  const { title, of, values, basis, source } = limit;
  return (
    <li className={styles.row}>
      <span className={styles.name}>
        {title}
        {of && <span className={styles.soft}>{of}</span>}
      </span>
      {values.map((value) => (
        <span key={value} className={styles.value}>
          {value}
        </span>
      ))}
      <span className={styles.soft}>{basis}</span>
      <SourceLine source={source} />
    </li>
  );
}

function SourceLine({ source }: { source: { text: string; standing: string } }) {
  return (
    <span className={styles.soft}>
      {source.text} <em>({source.standing})</em>
    </span>
  );
}
