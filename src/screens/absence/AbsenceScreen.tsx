import { useMemo, useState } from 'react';
import { batchAway, piecesAway } from '#record/absence-figures.ts';
import { batchGiven } from '#record/drying-batch.ts';
import { knownAirs } from '#record/known-airs.ts';
import type { Place } from '#record/place.ts';
import { PLACE } from '#record/subject.ts';
import { useNowMs, zoneAt } from '#store/clock.ts';
import { useBatches, useChecks, useKit, useWorkshop } from '#store/live.ts';
import { useAppend } from '#store/use-append.ts';
import { useBatchesAhead } from '#store/use-batch-ahead.ts';
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

const HOUR_MS = 3_600_000;

/** What to set before leaving, what to expect at return, and then what was found. */
export function AbsenceScreen({ words, place }: { words: Words; place: Place }) {
  const kit = useKit();
  const batches = useBatches();
  const checks = useChecks();
  const entries = useWorkshop();
  const nowMs = useNowMs(HOUR_MS);
  const { saving, save } = useAppend(place.initials);
  const [planning, setPlanning] = useState(false);
  const hour = Math.ceil(nowMs / HOUR_MS) * HOUR_MS;
  const leaving = useMemo(() => (entries ? absenceNow(entries, hour) : null), [entries, hour]);
  const airs = useMemo(
    () => knownAirs(kit?.chambers ?? [], entries ?? [], checks ?? []),
    [kit, entries, checks],
  );
  const given = useMemo(() => {
    if (!leaving || !batches || !kit || !entries || !checks) return [];
    const { fromMs, toMs } = leaving.body;
    return batches
      .filter((batch) => piecesAway(batch, leaving.body, hour).length > 0)
      .map((batch) => {
        const chamber = batch.hung?.body.chamber;
        const air = (chamber && airs.get(chamber)) ?? null;
        return batchGiven(batch, { batches, air, nowMs: Math.min(fromMs, hour), askedMs: toMs });
      });
  }, [leaving, batches, kit, entries, checks, airs, hour]);
  const told = useBatchesAhead(given);
  const expected = useMemo(
    () =>
      given.map(({ batch }) => {
        const ahead = told.of(batch.id);
        const pieces = leaving && ahead && batchAway(batch, ahead, { ...leaving.body, nowMs: hour });
        return { batch, pieces: ahead === undefined ? null : (pieces ?? []) };
      }),
    [given, told, leaving, hour],
  );
  if (kit === undefined || batches === undefined || entries === undefined || checks === undefined)
    return <Waiting label={words.app.waiting} />;
  const say = words.absence;
  const view = absenceView({
    entries,
    expected,
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
          {told.waiting ? (
            <p role="status">{say.setWorking}</p>
          ) : view.set.length === 0 ? (
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
      {told.failed && <p role="status">{say.failed}</p>}
      {view.expect.length > 0 && (
        <section className={styles.section}>
          <h2>{state === 'returned' ? say.foundTitle : say.expect}</h2>
          {view.expect.map((row) => (
            <ExpectedPieces key={row.key} row={row} words={words} />
          ))}
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
