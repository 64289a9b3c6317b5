import type { Place } from '#record/place.ts';
import { Page } from '#ui/Page.tsx';
import { PlainTable } from '#ui/PlainTable.tsx';
import type { Words } from '#words/en.ts';
import styles from './ExamplesScreen.module.css';
import { type ExampleTable, examplesView } from './examples-view.ts';

/** What was published, beside what this app makes of it. */
export function ExamplesScreen({ words, place }: { words: Words; place: Place }) {
  const say = words.fermentExamples;
  const view = examplesView(words, place);
  return (
    <Page title={say.title} sentence={view.sentence} back={{ href: '#/limits', label: say.back }}>
      <section className={styles.part}>
        <h2>{say.worked}</h2>
        <ul className={styles.rows}>
          {view.worked.map(({ key, title, published, here, source }) => (
            <li key={key} className={styles.row}>
              <strong>{title}</strong>
              <span>{`${say.published}: ${published}`}</span>
              <span>{`${say.here}: ${here}`}</span>
              <SourceLine source={source} />
            </li>
          ))}
        </ul>
      </section>
      {view.tables.map((table) => (
        <section key={table.title} className={styles.part}>
          <h2>{table.title}</h2>
          {table.note && <p>{table.note}</p>}
          <PlainTable columns={table.columns} rows={table.rows} />
          <SourceLine source={table.source} />
        </section>
      ))}
      <p>
        <a href="#/limits">{say.freezing}</a>
      </p>
    </Page>
  );
}

function SourceLine({ source }: { source: ExampleTable['source'] }) {
  return (
    <span className={styles.soft}>
      {source.text} <em>({source.standing})</em>
    </span>
  );
}
