import { useMemo, useState } from 'react';
import { knownAirs } from '#record/known-airs.ts';
import type { Place } from '#record/place.ts';
import { PLACE } from '#record/subject.ts';
import { useNowMs, zoneAt } from '#store/clock.ts';
import { useBatches, useChecks, useKit, useSubjects } from '#store/live.ts';
import { useAppend } from '#store/use-append.ts';
import { Button } from '#ui/Button.tsx';
import { List, Row } from '#ui/List.tsx';
import { Page } from '#ui/Page.tsx';
import { Sentence } from '#ui/Sentence.tsx';
import { Waiting } from '#ui/Waiting.tsx';
import type { Words } from '#words/en.ts';
import styles from './AbsenceScreen.module.css';
import { AbsenceSheet } from './AbsenceSheet.tsx';
import { absenceNow, absenceView } from './absence-view.ts';
import { ExpectedPieces } from './ExpectedPieces.tsx';
import { useExpected } from './use-expected.ts';

const HOUR_MS = 3_600_000;

/** What to set before leaving, what to expect at return, and then what was found. */
export function AbsenceScreen({ words, place }: { words: Words; place: Place }) {
  const kit = useKit();
  const batches = useBatches();
  const checks = useChecks();
  const entries = useSubjects([PLACE, ...(kit?.chambers ?? []).map(({ id }) => id)]);
  const nowMs = useNowMs(HOUR_MS);
  const { saving, save } = useAppend(place.initials);
  const [planning, setPlanning] = useState(false);
  const hour = Math.ceil(nowMs / HOUR_MS) * HOUR_MS;
  const leaving = useMemo(() => (entries ? absenceNow(entries, hour) : null), [entries, hour]);
  const airs = useMemo(
    () => knownAirs(kit?.chambers ?? [], entries ?? [], checks ?? []),
    [kit, entries, checks],
  );
  const counting = useExpected(batches, leaving, { airs, nowMs: hour });
  if (kit === undefined || batches === undefined || entries === undefined || checks === undefined)
    return <Waiting label={words.app.waiting} />;
  const say = words.absence;
  const view = absenceView({
    entries,
    expected: counting.expected,
    chambers: kit.chambers,
    checks,
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
      {absence?.body.helper && <Sentence small tokens={say.helperLine(absence.body.helper)} />}
      {(state === 'planned' || state === 'under') && (
        <section className={styles.section}>
          <h2>{say.set}</h2>
          {counting.done < counting.of ? null : view.set.length === 0 ? (
            <p>{say.setNothing}</p>
          ) : (
            <>
              <List label={say.set}>
                {view.set.map(({ key, ...row }) => (
                  <Row key={key} {...row} />
                ))}
              </List>
              <p className={styles.small}>{say.setWhy}</p>
            </>
          )}
          <p>{say.weigh}</p>
        </section>
      )}
      {counting.of > 0 && (
        <section className={styles.section}>
          <h2>{state === 'returned' ? say.foundTitle : say.expect}</h2>
          {counting.done < counting.of ? (
            <p role="status">{say.counting(counting.done, counting.of)}</p>
          ) : (
            view.expect.map((row) => <ExpectedPieces key={row.key} row={row} words={words} />)
          )}
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
