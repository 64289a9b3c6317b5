import { useMemo, useState } from 'react';
import { pieceForecast } from '#record/forecast-figures.ts';
import type { Place } from '#record/place.ts';
import { PLACE } from '#record/subject.ts';
import { useNowMs, zoneAt } from '#store/clock.ts';
import { useBatches, useKit, useSubjects } from '#store/live.ts';
import { useAppend } from '#store/use-append.ts';
import { Button } from '#ui/Button.tsx';
import { List, Row } from '#ui/List.tsx';
import { Page } from '#ui/Page.tsx';
import { Waiting } from '#ui/Waiting.tsx';
import type { Words } from '#words/en.ts';
import styles from './AbsenceScreen.module.css';
import { AbsenceSheet } from './AbsenceSheet.tsx';
import { absenceNow, absenceView } from './absence-view.ts';

const HOUR_MS = 3_600_000;

/** What to set before leaving, what to expect at return, and then what was found. */
export function AbsenceScreen({ words, place }: { words: Words; place: Place }) {
  const kit = useKit();
  const batches = useBatches();
  const entries = useSubjects([PLACE, ...(kit?.chambers ?? []).map(({ id }) => id)]);
  const nowMs = useNowMs(HOUR_MS);
  const { saving, save } = useAppend(place.initials);
  const [planning, setPlanning] = useState(false);
  const hour = Math.ceil(nowMs / HOUR_MS) * HOUR_MS;
  const expected = useMemo(() => {
    const leaving = entries && absenceNow(entries, hour);
    // What was known on the day of leaving: later weighings are what it is compared with.
    const knownMs = Math.min(hour, leaving?.body.fromMs ?? hour);
    return (batches ?? []).flatMap((batch) => {
      const up = batch.pieces
        .filter(({ status, stuffed }) => status === 'hanging' && stuffed.atMs <= knownMs)
        .sort((a, b) => a.greenG - b.greenG);
      const piece = batch.stage === 'hanging' ? up[Math.floor(up.length / 2)] : undefined;
      return piece ? [{ batch, piece, forecast: pieceForecast(piece, batch, knownMs) }] : [];
    });
  }, [batches, entries, hour]);
  if (kit === undefined || batches === undefined || entries === undefined)
    return <Waiting label={words.app.waiting} />;
  const say = words.absence;
  const view = absenceView({
    entries,
    expected,
    chambers: kit.chambers,
    place,
    nowMs,
    zone: zoneAt(nowMs),
    words,
  });
  const { absence, state } = view;
  const strike = async () => {
    if (absence)
      await save([
        { kind: 'struck', subject: PLACE, body: {}, strikes: { id: absence.id, reason: say.strikeReason } },
      ]);
  };
  return (
    <Page
      title={say.title}
      back={{ href: '#/', label: words.today.title }}
      sentence={view.sentence}
      acts={
        state === 'planned' ? (
          <Button onPress={strike}>{say.strike}</Button>
        ) : (
          <Button kind={state === 'none' ? 'primary' : 'second'} onPress={() => setPlanning(true)}>
            {say.plan}
          </Button>
        )
      }
    >
      {absence?.body.helper && <p>{absence.body.helper}</p>}
      {(state === 'planned' || state === 'under') && (
        <section className={styles.section}>
          <h2>{say.set}</h2>
          {view.set.length === 0 ? (
            <p>{say.setNothing}</p>
          ) : (
            <>
              <ul className={styles.list}>
                {view.set.map(({ key, text }) => (
                  <li key={key}>{text}</li>
                ))}
              </ul>
              <p className={styles.small}>{say.setWhy}</p>
            </>
          )}
          <p>{say.weigh}</p>
        </section>
      )}
      {view.expect.length > 0 && (
        <section className={styles.section}>
          <h2>{say.expect}</h2>
          <List label={say.expect}>
            {view.expect.map(({ key, ...row }) => (
              <Row key={key} {...row} />
            ))}
          </List>
          <p className={styles.small}>{say.caution}</p>
        </section>
      )}
      {planning && (
        <AbsenceSheet
          words={words}
          nowMs={nowMs}
          saved={words.app.unsaved(saving)}
          onSave={async (body) => {
            if ((await save([{ kind: 'absence-planned', subject: PLACE, body }])).ok) setPlanning(false);
          }}
          onClose={() => setPlanning(false)}
        />
      )}
    </Page>
  );
}
