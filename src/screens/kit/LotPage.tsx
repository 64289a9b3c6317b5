import { useState } from 'react';
import type { EntryOf } from '#record/entry.ts';
import type { Place } from '#record/place.ts';
import type { SubjectId } from '#record/subject.ts';
import { useBatches, useTouching } from '#store/live.ts';
import { useAppend } from '#store/use-append.ts';
import { Button } from '#ui/Button.tsx';
import { List, Row } from '#ui/List.tsx';
import { Notice } from '#ui/Notice.tsx';
import { Page } from '#ui/Page.tsx';
import { Waiting } from '#ui/Waiting.tsx';
import type { Words } from '#words/en.ts';
import { CorrectPage } from './CorrectPage.tsx';
import styles from './LotPage.module.css';
import { type DetailRow, lotView } from './lot-view.ts';
import { StrikeSheet } from './StrikeSheet.tsx';

/** One lot: what its label said, what it was used in, and every correction with what stood before. */
export function LotPage({
  words,
  place,
  id,
  correcting,
}: {
  words: Words;
  place: Place;
  id: string;
  correcting: boolean;
}) {
  const subject: SubjectId<'lot'> = `lot:${id}`;
  const entries = useTouching(subject);
  const batches = useBatches();
  const { saving, save } = useAppend(place.initials);
  const [striking, setStriking] = useState<EntryOf<'received'> | null>(null);
  if (entries === undefined || batches === undefined) return <Waiting label={words.app.waiting} />;
  const view = lotView({ id: subject, entries, batches, place, words });
  const { detail } = words.received;
  const back = { href: '#/kit/received', label: words.received.title };
  if (view === null)
    return (
      <Page title={words.app.notFound.title} back={back}>
        <p>{words.app.notFound.text}</p>
      </Page>
    );
  const { holds } = view;
  if (correcting && holds)
    return <CorrectPage words={words} place={place} entry={holds} back={`#/kit/received/${id}`} />;
  const saved = words.app.saving(saving);
  return (
    <Page
      title={view.title}
      line={view.line}
      back={back}
      acts={
        holds && (
          <>
            <Button onPress={() => setStriking(holds)}>{words.app.strike}</Button>
            <Button kind="primary" href={`#/kit/received/${id}?correct`}>
              {detail.correct}
            </Button>
          </>
        )
      }
    >
      {holds === null && <Notice kind="caution">{detail.struckWhole}</Notice>}
      {view.rivals.length > 0 && <Notice kind="caution">{detail.rivals}</Notice>}
      <Details rows={view.rows} />
      {(holds?.body.what === 'lean' || holds?.body.what === 'fat') && (
        <p>
          <Button href={`#/lots/${id}/freezing`}>{words.freezing.title}</Button>
        </p>
      )}
      {view.rivals.map((rows) => (
        <Details key={rows.map(({ value }) => value).join()} rows={rows} />
      ))}
      <section>
        <h2>{detail.usedIn}</h2>
        {view.usedIn.length > 0 && (
          <p>
            <Button href={`#/lots/${id}/trace`}>{words.trace.title}</Button>
          </p>
        )}
        {view.usedIn.length === 0 ? (
          <p>{detail.notUsed}</p>
        ) : (
          <List label={detail.usedIn}>
            {view.usedIn.map(({ key, href, title, note }) => (
              <Row key={key} href={href} title={title} note={note} />
            ))}
          </List>
        )}
      </section>
      {view.before.length > 0 && (
        <section className={styles.before}>
          <h2>{detail.history}</h2>
          {view.before.map(({ key, reason, rows }) => (
            <div key={key}>
              <p className={styles.reason}>{reason}</p>
              <Details rows={rows} />
            </div>
          ))}
        </section>
      )}
      {striking && (
        <StrikeSheet
          name={striking.body.name}
          note={view.line}
          words={words}
          saved={saved?.state === 'saved' ? null : saved}
          onClose={() => setStriking(null)}
          onStrike={async (reason) => {
            const { ok } = await save([
              { kind: 'struck', subject, body: {}, strikes: { id: striking.id, reason } },
            ]);
            if (ok) setStriking(null);
          }}
        />
      )}
    </Page>
  );
}

function Details({ rows }: { rows: readonly DetailRow[] }) {
  return (
    <dl className={styles.details}>
      {rows.map(({ label, value, note }) => (
        <div key={label} className={styles.row}>
          <dt>{label}</dt>
          <dd>
            {value}
            {note && <span className={styles.note}>{note}</span>}
          </dd>
        </div>
      ))}
    </dl>
  );
}
