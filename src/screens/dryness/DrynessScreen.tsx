import { useMemo, useState } from 'react';
import { batch as foldBatch } from '#record/batch.ts';
import type { Place } from '#record/place.ts';
import type { SubjectId } from '#record/subject.ts';
import { useNowMs } from '#store/clock.ts';
import { useTouching } from '#store/live.ts';
import { useAppend } from '#store/use-append.ts';
import { Button } from '#ui/Button.tsx';
import { List, Row } from '#ui/List.tsx';
import { Notice } from '#ui/Notice.tsx';
import { Page } from '#ui/Page.tsx';
import { SavedMark } from '#ui/SavedMark.tsx';
import { VerdictMark } from '#ui/VerdictMark.tsx';
import { Waiting } from '#ui/Waiting.tsx';
import type { Words } from '#words/en.ts';
import styles from './DrynessScreen.module.css';
import { drynessView } from './dryness-view.ts';
import { MeasuredSheet } from './MeasuredSheet.tsx';

const MINUTE_MS = 60_000;

/** What a loss makes of the mix, the published criteria beside it, and what was measured: that comes first. */
export function DrynessScreen({ words, place, id }: { words: Words; place: Place; id: string }) {
  const subject: SubjectId = `batch:${id}`;
  const entries = useTouching(subject);
  const nowMs = useNowMs(MINUTE_MS);
  const { saving, save } = useAppend(place.initials);
  const [open, setOpen] = useState(false);
  const batch = useMemo(() => (entries ? foldBatch(subject, entries) : null), [entries, subject]);
  const view = useMemo(
    () => batch && drynessView({ batch, place, nowMs, words }),
    [batch, place, nowMs, words],
  );
  if (entries === undefined) return <Waiting label={words.app.waiting} />;
  if (view === null) return <Page title={words.app.notFound.title}>{words.app.notFound.text}</Page>;
  const say = words.dryness;
  const saved = words.app.saving(saving);
  return (
    <Page
      title={say.title}
      line={view.line}
      back={{ href: `#/batches/${id}/hanging`, label: words.hanging.title }}
      sentence={view.sentence}
      acts={
        <Button kind="primary" onPress={() => setOpen(true)}>
          {say.act}
        </Button>
      }
    >
      {saved && !open && <SavedMark state={saved.state} text={saved.text} />}
      <div className={styles.scroll}>
        <table className={styles.table}>
          <caption>{say.table}</caption>
          <thead>
            <tr>
              {say.columns.map((column) => (
                <th key={column} scope="col">
                  {column}
                </th>
              ))}
            </tr>
          </thead>
          <tbody>
            {view.rows.map(({ key, head, note, cells }) => (
              <tr key={key} className={note ? styles.marked : undefined}>
                <th scope="row">
                  {head}
                  {note && <span className={styles.note}>{note}</span>}
                </th>
                {cells.map((cell, at) => (
                  <td key={say.columns[at + 1]}>{cell}</td>
                ))}
              </tr>
            ))}
          </tbody>
        </table>
      </div>
      <p className={styles.soft}>{say.source}</p>
      <Notice kind="caution">{say.caution}</Notice>
      <section className={styles.section}>
        <h2>{say.measured}</h2>
        {view.measured.length === 0 ? (
          <p>{say.none}</p>
        ) : (
          <List label={say.measured}>
            {view.measured.map(({ key, ...row }) => (
              <Row key={key} {...row} />
            ))}
          </List>
        )}
      </section>
      <section className={styles.section}>
        <h2>{say.criteria}</h2>
        {view.criteria.map(({ key, title, of, verdict, word, ways, notes, source }) => (
          <article key={key} className={styles.criterion}>
            <h3>
              {title} <span className={styles.soft}>{of}</span>
            </h3>
            <VerdictMark verdict={verdict} word={word} />
            <ul className={styles.ways}>
              {ways.map((way) => (
                <li key={way}>{way}</li>
              ))}
            </ul>
            {notes.map((note) => (
              <p key={note}>{note}</p>
            ))}
            <p className={styles.soft}>{source}</p>
          </article>
        ))}
      </section>
      {open && (
        <MeasuredSheet
          place={place}
          words={words}
          saved={words.app.unsaved(saving)}
          onSave={async (body) => {
            if ((await save([{ kind: 'product-measured', subject, body }])).ok) setOpen(false);
          }}
          onClose={() => setOpen(false)}
        />
      )}
    </Page>
  );
}
