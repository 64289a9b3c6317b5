import { useMemo, useState } from 'react';
import { chamberAir } from '#record/chamber-air.ts';
import type { Place } from '#record/place.ts';
import type { SubjectId } from '#record/subject.ts';
import { useNowMs, zoneAt } from '#store/clock.ts';
import { useBatches, useChecks, useKit, useSubjects } from '#store/live.ts';
import { useAppend } from '#store/use-append.ts';
import { Button } from '#ui/Button.tsx';
import { Page } from '#ui/Page.tsx';
import { SavedMark } from '#ui/SavedMark.tsx';
import { VerdictMark } from '#ui/VerdictMark.tsx';
import { Waiting } from '#ui/Waiting.tsx';
import type { Words } from '#words/en.ts';
import styles from './AfterFaultScreen.module.css';
import { afterFaultView } from './after-fault-view.ts';
import { FaultSheet } from './FaultSheet.tsx';

const MINUTE_MS = 60_000;

/** After a power cut or a controller fault: every batch beside the limits, and what was done about it. */
export function AfterFaultScreen({ words, place }: { words: Words; place: Place }) {
  const batches = useBatches();
  const kit = useKit();
  const checks = useChecks();
  const chambers = (kit?.chambers ?? []).map(({ id }) => id);
  const entries = useSubjects(chambers);
  const ids = chambers.join(' ');
  // Not at every drawing: a chamber may hold a season of a logger's rows.
  const airs = useMemo(
    () =>
      new Map(
        (ids === '' ? [] : (ids.split(' ') as SubjectId[])).map((id) => [
          id,
          chamberAir(id, entries ?? [], checks ?? []),
        ]),
      ),
    [ids, entries, checks],
  );
  const nowMs = useNowMs(MINUTE_MS);
  const { saving, save } = useAppend(place.initials);
  const [open, setOpen] = useState(false);
  if (batches === undefined || kit === undefined || entries === undefined || checks === undefined)
    return <Waiting label={words.app.waiting} />;
  const say = words.afterFault;
  const view = afterFaultView({ batches, airs, place, nowMs, zone: zoneAt(nowMs), words });
  const mark = open ? null : words.app.saving(saving);
  return (
    <Page
      title={say.title}
      sentence={view.sentence}
      back={{ href: '#/batches', label: say.toBatches }}
      acts={
        view.cards.length > 0 && (
          <Button kind="primary" onPress={() => setOpen(true)}>
            {say.act}
          </Button>
        )
      }
      actsNote={words.ferment.caution}
    >
      {mark && <SavedMark {...mark} />}
      {view.cards.map((card) => (
        <section key={card.batch} className={styles.card}>
          <h2>{card.title}</h2>
          <p className={styles.stage}>{card.stage}</p>
          {card.verdict && <VerdictMark {...card.verdict} />}
          <dl className={styles.rows}>
            {card.rows.map(({ label, value }) => (
              <div key={label} className={styles.row}>
                <dt>{label}</dt>
                <dd>{value}</dd>
              </div>
            ))}
          </dl>
          {card.note && <p className={styles.note}>{card.note}</p>}
          <Button href={card.href}>{say.open}</Button>
        </section>
      ))}
      {open && (
        <FaultSheet
          words={words}
          batches={view.cards.map(({ batch, title }) => ({ value: batch, label: title }))}
          saved={words.app.unsaved(saving)}
          onClose={() => setOpen(false)}
          onSave={async (chosen, body) => {
            const result = await save(
              chosen.map((subject) => ({ kind: 'action-taken' as const, subject, body })),
            );
            if (result.ok) setOpen(false);
          }}
        />
      )}
    </Page>
  );
}
