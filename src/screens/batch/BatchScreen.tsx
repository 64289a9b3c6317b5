import { useState } from 'react';
import { batch as foldBatch } from '#record/batch.ts';
import type { Place } from '#record/place.ts';
import type { SubjectId } from '#record/subject.ts';
import { useNowMs, zoneAt } from '#store/clock.ts';
import { useTouching } from '#store/live.ts';
import { useAppend } from '#store/use-append.ts';
import { Button } from '#ui/Button.tsx';
import { List, Row } from '#ui/List.tsx';
import { Notice } from '#ui/Notice.tsx';
import { Page } from '#ui/Page.tsx';
import { Waiting } from '#ui/Waiting.tsx';
import type { Words } from '#words/en.ts';
import styles from './BatchScreen.module.css';
import { batchView } from './batch-view.ts';
import { NoteSheet } from './NoteSheet.tsx';

const MINUTE_MS = 60_000;

/** One batch: what it waits for, its parts, its plan. */
export function BatchScreen({ words, place, id }: { words: Words; place: Place; id: string }) {
  const subject: SubjectId = `batch:${id}`;
  const entries = useTouching(subject);
  const nowMs = useNowMs(MINUTE_MS);
  const { saving, save } = useAppend(place.initials);
  const [noting, setNoting] = useState(false);
  if (entries === undefined) return <Waiting label={words.app.waiting} />;
  const batch = foldBatch(subject, entries);
  if (batch === null) return <Page title={words.app.notFound.title}>{words.app.notFound.text}</Page>;
  const view = batchView({ batch, entryCount: entries.length, place, nowMs, zone: zoneAt(nowMs), words });
  return (
    <Page
      title={view.title}
      line={view.line}
      back={{ href: '#/batches', label: words.batches.title }}
      sentence={view.sentence}
      acts={
        view.act && (
          <Button kind="primary" href={view.act.href}>
            {view.act.label}
          </Button>
        )
      }
    >
      {view.warnings.map((warning) => (
        <Notice key={warning} kind="error">
          {warning}
        </Notice>
      ))}
      <List>
        {view.rows.map(({ key, ...row }) => (
          <Row key={key} {...row} />
        ))}
      </List>
      {view.learn.length > 0 && (
        <List label={words.batch.learn}>
          {view.learn.map(({ key, ...row }) => (
            <Row key={key} {...row} />
          ))}
        </List>
      )}
      <section>
        <h2>{words.batch.plan.title}</h2>
        <dl className={styles.plan}>
          {view.plan.map(({ label, value }) => (
            <div key={label} className={styles.row}>
              <dt>{label}</dt>
              <dd>{value}</dd>
            </div>
          ))}
        </dl>
      </section>
      <Button onPress={() => setNoting(true)}>{words.batch.note.act}</Button>
      {noting && (
        <NoteSheet
          words={words}
          saved={words.app.unsaved(saving)}
          onClose={() => setNoting(false)}
          onSave={async (text) => {
            const result = await save([{ kind: 'noted', subject, body: { text } }]);
            if (result.ok) setNoting(false);
          }}
        />
      )}
    </Page>
  );
}
