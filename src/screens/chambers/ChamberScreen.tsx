import { useMemo, useState } from 'react';
import { chamberAir } from '#record/chamber-air.ts';
import type { Place } from '#record/place.ts';
import type { SubjectId } from '#record/subject.ts';
import { useNowMs, zoneAt } from '#store/clock.ts';
import { useBatches, useChecks, useKit, useTouching } from '#store/live.ts';
import { useAppend } from '#store/use-append.ts';
import { Button } from '#ui/Button.tsx';
import { AirChart } from '#ui/charts/AirChart.tsx';
import { Figure, Figures } from '#ui/Figure.tsx';
import { List, Row } from '#ui/List.tsx';
import { Page } from '#ui/Page.tsx';
import { SavedMark } from '#ui/SavedMark.tsx';
import { Waiting } from '#ui/Waiting.tsx';
import type { Words } from '#words/en.ts';
import { airQuality } from './air-quality.ts';
import { ChamberAhead } from './ChamberAhead.tsx';
import styles from './ChamberScreen.module.css';
import { ChamberSheets, type OpenSheet } from './ChamberSheets.tsx';
import { chamberView } from './chamber-view.ts';
import { hangingIn } from './chambers-view.ts';

const MINUTE_MS = 60_000;
const FIRST_READINGS = 10;

/** One chamber: what its air is, what that means, what hangs in it. */
export function ChamberScreen({ words, place, id }: { words: Words; place: Place; id: string }) {
  const subject: SubjectId = `chamber:${id}`;
  const entries = useTouching(subject);
  const batches = useBatches();
  const kit = useKit();
  const checks = useChecks();
  const nowMs = useNowMs(MINUTE_MS);
  const { saving, save } = useAppend(place.initials);
  const [open, setOpen] = useState<OpenSheet | null>(null);
  const [all, setAll] = useState(false);
  const here = useMemo(() => {
    const air = entries && checks ? chamberAir(subject, entries, checks) : null;
    const everInside = (batches ?? []).filter(({ hung }) => hung?.body.chamber === subject);
    return { air, everInside, inside: hangingIn(subject, batches ?? []) };
  }, [subject, entries, checks, batches]);
  if (entries === undefined || batches === undefined || kit === undefined)
    return <Waiting label={words.app.waiting} />;
  if (checks === undefined || here.air === null) return <Waiting label={words.app.waiting} />;
  const say = words.chambers.one;
  const back = { href: '#/chambers', label: words.chambers.title };
  const view = chamberView({
    id: subject,
    entries,
    batches,
    kit,
    checks,
    place,
    nowMs,
    zone: zoneAt(nowMs),
    words,
  });
  if (view === null)
    return (
      <Page title={words.app.notFound.title} back={back}>
        <p>{words.app.notFound.text}</p>
      </Page>
    );
  const { added, air } = view;
  const week = airQuality({ ...here, air: here.air, place, nowMs, words });
  const saved = words.app.saving(saving);
  const readings = all ? view.readings : view.readings.slice(0, FIRST_READINGS);
  return (
    <Page
      title={added.body.name}
      sentence={view.sentence}
      back={back}
      acts={
        <>
          <Button onPress={() => setOpen('set')}>{say.setAct}</Button>
          <Button kind="primary" onPress={() => setOpen('read')}>
            {say.readAct}
          </Button>
        </>
      }
    >
      {saved?.state === 'saved' && <SavedMark state="saved" text={saved.text} />}
      <ChamberAhead {...here} batches={batches} air={here.air} place={place} nowMs={nowMs} words={words}>
        {view.charts.map((chart) => (
          <AirChart key={chart.title} {...chart} />
        ))}
      </ChamberAhead>
      {view.figures.length > 0 && (
        <Figures>
          {view.figures.map((figure) => (
            <Figure key={figure.label} {...figure} />
          ))}
        </Figures>
      )}
      {week.length > 0 && (
        <section className={styles.section}>
          <h2>{words.chamberAhead.week}</h2>
          <Figures>
            {week.map((figure) => (
              <Figure key={figure.label} {...figure} />
            ))}
          </Figures>
          <p className={styles.caution}>{words.chamberAhead.corrected}</p>
        </section>
      )}
      <section className={styles.section}>
        <h2>{say.hanging}</h2>
        {view.hanging.length === 0 ? (
          <p>{say.hangingNone}</p>
        ) : (
          <List label={say.hanging}>
            {view.hanging.map(({ key, href, title, note }) => (
              <Row key={key} href={href} title={title} note={note} />
            ))}
          </List>
        )}
      </section>
      <section className={styles.section}>
        <h2>{say.readings}</h2>
        {readings.length === 0 ? (
          <p>{say.readingsNone}</p>
        ) : (
          <List label={say.readings}>
            {readings.map((row) => (
              <Row key={row.entry.id} title={row.title} note={row.note} onPress={() => setOpen(row)} />
            ))}
          </List>
        )}
        <Button href={`#/chambers/${id}/air-file`}>{words.logger.airAct}</Button>
        {readings.length < view.readings.length && (
          <Button onPress={() => setAll(true)}>{say.older(view.readings.length - readings.length)}</Button>
        )}
      </section>
      <p className={styles.caution}>{say.caution}</p>
      <div>
        <Button kind="quiet" onPress={() => setOpen('change')}>
          {say.change}
        </Button>
      </div>
      {open !== null && (
        <ChamberSheets
          key={typeof open === 'string' ? open : open.entry.id}
          open={open}
          subject={subject}
          added={added}
          last={air.byHand.at(-1) ?? null}
          meters={kit.meters}
          place={place}
          words={words}
          nowMs={nowMs}
          saved={saved?.state === 'saved' ? null : saved}
          onClose={() => setOpen(null)}
          onFact={async (fact) => {
            if ((await save([fact])).ok) setOpen(null);
          }}
        />
      )}
    </Page>
  );
}
