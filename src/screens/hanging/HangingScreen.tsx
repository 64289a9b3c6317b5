import { useMemo, useState } from 'react';
import { batch as foldBatch } from '#record/batch.ts';
import type { Place } from '#record/place.ts';
import type { SubjectId } from '#record/subject.ts';
import { useNowMs, zoneAt } from '#store/clock.ts';
import { useTouching } from '#store/live.ts';
import { useAppend } from '#store/use-append.ts';
import { useBatchAhead } from '#store/use-batch-ahead.ts';
import { Button } from '#ui/Button.tsx';
import { LossChart } from '#ui/charts/LossChart.tsx';
import { Figure, Figures } from '#ui/Figure.tsx';
import { Page } from '#ui/Page.tsx';
import { Waiting } from '#ui/Waiting.tsx';
import type { Words } from '#words/en.ts';
import styles from './HangingScreen.module.css';
import { hangingView } from './hanging-view.ts';
import { ImpliedAir, Pace } from './Pace.tsx';
import { paceView } from './pace-view.ts';
import { Rails } from './Rails.tsx';
import { TakeDownSheet } from './TakeDownSheet.tsx';

const MINUTE_MS = 60_000;

export function HangingScreen({ words, place, id }: { words: Words; place: Place; id: string }) {
  const subject: SubjectId = `batch:${id}`;
  const entries = useTouching(subject);
  const nowMs = useNowMs(MINUTE_MS);
  const { saving, save } = useAppend(place.initials);
  const [taking, setTaking] = useState(false);
  const batch = useMemo(() => (entries ? foldBatch(subject, entries) : null), [entries, subject]);
  const { ahead, working, failed, score } = useBatchAhead(batch, nowMs);
  if (entries === undefined) return <Waiting label={words.app.waiting} />;
  if (batch === null) return <Page title={words.app.notFound.title}>{words.app.notFound.text}</Page>;
  const zone = zoneAt(nowMs);
  const view = hangingView({ batch, ahead, working, place, nowMs, zone, words });
  const pace = paceView({ batch, ahead, score, place, nowMs, zone, words });
  const { act } = words.hanging;

  const takeDown = async (note: string) => {
    const result = await save(
      view.atTarget.map((piece) => ({
        kind: 'taken-down' as const,
        subject: piece.id,
        refs: [subject],
        body: { why: 'at-target' as const, ...(note ? { note } : {}) },
      })),
    );
    if (result.ok) setTaking(false);
  };

  return (
    <Page
      title={words.hanging.title}
      line={view.line}
      back={{ href: `#/batches/${id}`, label: words.app.back }}
      sentence={view.sentence}
      acts={
        view.canWeigh ? (
          <>
            {view.atTarget.length > 0 && <Button onPress={() => setTaking(true)}>{act.down}</Button>}
            <Button kind="primary" href={`#/batches/${id}/round`}>
              {act.round}
            </Button>
          </>
        ) : (
          <Button
            kind="primary"
            href={`#/batches/${id}/${batch.pieces.length === 0 ? 'stuffing' : batch.hung ? 'record' : 'ferment'}`}
          >
            {batch.pieces.length === 0
              ? words.batch.parts.stuffing
              : batch.hung
                ? act.record
                : words.batch.parts.ferment}
          </Button>
        )
      }
    >
      <Pace notices={pace.notices} words={words} />
      {view.rail.length > 0 && (
        <Rails
          batch={batch}
          entries={entries}
          pieces={view.rail}
          label={view.railLabel}
          place={place}
          words={words}
        />
      )}
      <Figures>
        {view.figures.map(({ key, ...figure }) => (
          <Figure key={key} {...figure} />
        ))}
      </Figures>
      {view.chart && (
        <>
          <LossChart {...view.chart} />
          <p className={styles.estimate}>
            {[
              words.hanging.chart.estimate,
              ...pace.notes,
              ...(failed ? [words.hangingPace.failed] : []),
            ].join(' ')}
          </p>
        </>
      )}
      {pace.air && <ImpliedAir {...pace.air} words={words} />}
      {batch.hung && (
        <div className={styles.links}>
          <Button kind="quiet" href={`#/batches/${id}/dryness`}>
            {words.hangingPace.links.target}
          </Button>
          <Button kind="quiet" href={`#/batches/${id}/what-if`}>
            {words.hangingPace.links.rehearse}
          </Button>
        </div>
      )}
      {taking && (
        <TakeDownSheet
          pieces={view.atTarget}
          words={words}
          saved={words.app.unsaved(saving)}
          onSave={takeDown}
          onClose={() => setTaking(false)}
        />
      )}
    </Page>
  );
}
