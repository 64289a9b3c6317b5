import { useMemo, useState } from 'react';
import { batch as foldBatch } from '#record/batch.ts';
import { fermentFigures } from '#record/ferment-figures.ts';
import type { Place } from '#record/place.ts';
import type { SubjectId } from '#record/subject.ts';
import { useNowMs, zoneAt } from '#store/clock.ts';
import { useBatches, useChecks, useKit, useTouching } from '#store/live.ts';
import { type Fact, useAppend } from '#store/use-append.ts';
import { Button } from '#ui/Button.tsx';
import { AirChart } from '#ui/charts/AirChart.tsx';
import { PhChart } from '#ui/charts/PhChart.tsx';
import { BarToLimit } from '#ui/drawings/BarToLimit.tsx';
import { Figure, Figures } from '#ui/Figure.tsx';
import { List, Row } from '#ui/List.tsx';
import { Notice } from '#ui/Notice.tsx';
import { Page } from '#ui/Page.tsx';
import { SavedMark } from '#ui/SavedMark.tsx';
import { VerdictMark } from '#ui/VerdictMark.tsx';
import { Waiting } from '#ui/Waiting.tsx';
import { Working } from '#ui/Working.tsx';
import type { Words } from '#words/en.ts';
import styles from './FermentScreen.module.css';
import { FermentSheets, type OpenSheet } from './FermentSheets.tsx';
import { fermentView } from './ferment-view.ts';
import { HoursAt } from './HoursAt.tsx';
import { Readings } from './Readings.tsx';
import { usePhAhead } from './use-ph-ahead.ts';

const HALF_MINUTE_MS = 30_000;
const MINUTE_MS = 60_000;

export function FermentScreen({ words, place, id }: { words: Words; place: Place; id: string }) {
  const subject: SubjectId = `batch:${id}`;
  const entries = useTouching(subject);
  const kit = useKit();
  const nowMs = useNowMs(HALF_MINUTE_MS);
  const { saving, save } = useAppend(place.initials);
  const [open, setOpen] = useState<OpenSheet | null>(null);
  const [working, setWorking] = useState(false);
  const checks = useChecks();
  const batch = useMemo(() => (entries ? foldBatch(subject, entries) : null), [entries, subject]);
  // Never earlier than what was just written, else once a minute.
  const minuteMs = Math.max(
    Math.floor(nowMs / MINUTE_MS) * MINUTE_MS,
    ...(entries ?? []).slice(-40).map(({ atMs }) => (atMs <= nowMs ? atMs : 0)),
  );
  const clock = useMemo(() => batch && fermentFigures(batch, minuteMs), [batch, minuteMs]);
  const ahead = usePhAhead(batch, useBatches(), nowMs);
  // Not at every drawing: it may hold a month of minutes.
  const view = useMemo(
    () =>
      batch && fermentView({ batch, clock, ahead, place, nowMs: minuteMs, zone: zoneAt(minuteMs), words }),
    [batch, clock, ahead, place, minuteMs, words],
  );
  if (entries === undefined || kit === undefined || checks === undefined)
    return <Waiting label={words.app.waiting} />;
  if (batch === null || view === null)
    return <Page title={words.app.notFound.title}>{words.app.notFound.text}</Page>;
  const { ferment } = words;
  const mark = open === null ? words.app.saving(saving) : null;

  const keep = async (fact: Pick<Fact, 'kind' | 'body'>, atMs: number | null) => {
    const chamber = fact.kind === 'hung' && 'chamber' in fact.body ? fact.body.chamber : undefined;
    const result = await save([
      {
        ...fact,
        subject,
        ...(chamber ? { refs: [chamber] } : {}),
        ...(atMs === null ? {} : { atMs }),
      } as Fact,
    ]);
    if (!result.ok) return;
    setOpen(null);
    if (fact.kind === 'hung') window.location.hash = `#/batches/${id}/round`;
  };
  const common = {
    place,
    words,
    nowMs,
    saved: words.app.unsaved(saving),
    onClose: () => setOpen(null),
  };

  return (
    <Page
      title={ferment.title}
      line={view.line}
      back={{ href: `#/batches/${id}`, label: words.app.back }}
      sentence={view.sentence}
      acts={
        view.stage === 'ended' ? (
          <Button kind="primary" onPress={() => setOpen('hung')}>
            {ferment.act.hang}
          </Button>
        ) : (
          <>
            <Button kind="primary" onPress={() => setOpen('ph-read')}>
              {ferment.act.ph}
            </Button>
            {view.stage !== 'before' && (
              <Button onPress={() => setOpen('room-read')}>{ferment.act.room}</Button>
            )}
          </>
        )
      }
    >
      {mark && <SavedMark {...mark} />}
      {view.passed && (
        <Notice
          kind="error"
          act={<Button onPress={() => setOpen('action-taken')}>{ferment.act.action}</Button>}
        >
          {ferment.action.text}
        </Notice>
      )}
      <div className={styles.verdicts}>
        {view.verdicts.map(({ key, verdict, word }) => (
          <VerdictMark
            key={key}
            verdict={verdict}
            word={word}
            {...(key === 'degree-hours' && clock?.sum
              ? { working: { label: words.app.working, onOpen: () => setWorking(true) } }
              : {})}
          />
        ))}
      </div>
      {view.chart && <PhChart {...view.chart} />}
      {view.roomChart && <AirChart {...view.roomChart} />}
      {view.bar && <BarToLimit {...view.bar} />}
      {view.notices.map((text) => (
        <Notice key={text} kind="caution">
          {text}
        </Notice>
      ))}
      {view.stalled && (
        <Notice
          kind="caution"
          act={<Button onPress={() => setOpen('stall')}>{words.fermentStall.act}</Button>}
        >
          {words.fermentStall.notice}
        </Notice>
      )}
      <Figures>
        {view.figures.map(({ key, ...figure }) => (
          <Figure key={key} {...figure} />
        ))}
      </Figures>
      {view.rests && <p className={styles.caution}>{view.rests}</p>}
      {view.clock && view.stage === 'running' && !view.passed && (
        <HoursAt clock={view.clock} ruleSet={batch.opened.body.ruleSet} place={place} words={words} />
      )}
      <Readings
        rows={view.readings}
        words={words}
        saved={words.app.unsaved(saving)}
        onStrike={async (row, reason) => {
          const result = await save([
            { kind: 'struck', subject, body: {}, strikes: { id: row.entry, reason } },
          ]);
          return result.ok;
        }}
      />
      {view.stage !== 'before' && (
        <>
          <div className={styles.more}>
            <Button onPress={() => setOpen('ferment-set')}>{words.fermentAhead.programme.act}</Button>
            <Button onPress={() => setOpen('smoked')}>{ferment.act.smoke}</Button>
            {view.stage === 'running' && !view.stalled && (
              <Button onPress={() => setOpen('stall')}>{words.fermentStall.act}</Button>
            )}
            {(view.stage === 'running' || view.stage === 'stopped') && (
              <Button
                kind={view.stage === 'stopped' ? 'primary' : 'second'}
                onPress={() => setOpen('ferment-ended')}
              >
                {ferment.act.end}
              </Button>
            )}
          </div>
          <List>
            <Row href={`#/batches/${id}/room-file`} title={words.logger.act} />
            <Row href="#/instruments" title={words.instruments.title} />
            <Row href="#/after-fault" title={words.afterFault.title} />
          </List>
        </>
      )}
      <p className={styles.caution}>
        {ferment.caution} <a href="#/hazards">{words.app.caution.more}</a>{' '}
        <a href="#/limits/examples">{words.fermentExamples.link}</a>
      </p>
      {open !== null && (
        <FermentSheets
          {...common}
          open={open}
          batch={batch}
          kit={kit}
          checks={checks}
          stage={view.stage}
          onSave={(fact, atMs) => void keep(fact, atMs)}
        />
      )}
      {working && view.working && <Working working={view.working} open onClose={() => setWorking(false)} />}
    </Page>
  );
}
