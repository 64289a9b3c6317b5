import { useMemo, useState } from 'react';
import { handOver } from '#files/hand-over.ts';
import { calendar as calendarFile, type DueEvent } from '#files/icalendar.ts';
import { batchGiven } from '#record/drying-batch.ts';
import { dueAhead } from '#record/due-ahead.ts';
import { knownAirs } from '#record/known-airs.ts';
import type { Place } from '#record/place.ts';
import { PLACE } from '#record/subject.ts';
import { useNowMs, zoneAt } from '#store/clock.ts';
import { useBatches, useChecks, useKit, useSubjects, useWorkshop } from '#store/live.ts';
import { useBatchesAhead } from '#store/use-batch-ahead.ts';
import { Button } from '#ui/Button.tsx';
import { Page } from '#ui/Page.tsx';
import { Waiting } from '#ui/Waiting.tsx';
import { type CalendarDay, calendarDay } from '#words/days.ts';
import type { Words } from '#words/en.ts';
import { BackSchedule } from './BackSchedule.tsx';
import { Bars } from './Bars.tsx';
import styles from './CalendarScreen.module.css';
import { calendarEvents, planEvents } from './calendar-events.ts';
import { calendarView, comes } from './calendar-view.ts';
import { Rails } from './Rails.tsx';

const HOUR_MS = 3_600_000;
/** An hour of a day on this phone's clock. */
function momentOf(day: CalendarDay, hour: number): number {
  return new Date(`${day}T${String(hour).padStart(2, '0')}:00`).getTime();
}

/** What hangs until when, and from a wished date back to the day to begin. */
export function CalendarScreen({ words, place }: { words: Words; place: Place }) {
  const batches = useBatches();
  const kit = useKit();
  const entries = useSubjects([
    PLACE,
    ...(kit?.chambers ?? []).map(({ id }) => id),
    ...(kit?.lots ?? []).map(({ id }) => id),
  ]);
  const workshop = useWorkshop();
  const checks = useChecks();
  const nowMs = useNowMs(HOUR_MS);
  const [handed, setHanded] = useState<string | null>(null);
  const hour = Math.ceil(nowMs / HOUR_MS) * HOUR_MS;
  const airs = useMemo(
    () => knownAirs(kit?.chambers ?? [], workshop ?? [], checks ?? []),
    [kit, workshop, checks],
  );
  const given = useMemo(
    () =>
      kit && workshop && checks && batches
        ? batches.filter(comes).map((batch) => {
            const chamber = batch.hung?.body.chamber;
            const air = (chamber && airs.get(chamber)) ?? null;
            return batchGiven(batch, { batches, air, nowMs: hour });
          })
        : [],
    [batches, kit, workshop, checks, airs, hour],
  );
  const told = useBatchesAhead(given);
  const ahead = useMemo(() => given.map(({ batch }) => ({ batch, ahead: told.of(batch.id) })), [given, told]);
  if (batches === undefined || kit === undefined || entries === undefined || checks === undefined)
    return <Waiting label={words.app.waiting} />;
  const { calendar } = words;
  const zone = zoneAt(nowMs);
  const view = calendarView({ ahead, chambers: kit.chambers, nowMs, zone, words });
  const pass = async (events: readonly DueEvent[]) => {
    const content = calendarFile({ events, madeAtMs: nowMs });
    const result = await handOver({ name: 'greenweight.ics', mime: 'text/calendar', content });
    setHanded(result === 'shared' || result === 'download-begun' ? calendar.exported : calendar.notExported);
  };
  const passAll = () => {
    const { chambers, lots } = kit;
    const due = dueAhead({ batches, chambers, entries, checks, lots, ruleSet: place.ruleSet, nowMs });
    return pass(calendarEvents({ ahead, due, nowMs, zone, words }));
  };
  return (
    <Page
      title={calendar.title}
      back={{ href: '#/', label: words.today.title }}
      sentence={view.sentence}
      acts={
        batches.length > 0 && (
          <Button onPress={passAll} disabled={told.waiting}>
            {calendar.export}
          </Button>
        )
      }
    >
      {handed && <p role="status">{handed}</p>}
      {told.failed && <p role="status">{calendar.failed}</p>}
      {view.rows.length > 0 && (
        <section className={styles.back}>
          <h2>{calendar.rows}</h2>
          <Bars view={view} words={words} />
          <p className={styles.small}>{calendar.legend}</p>
        </section>
      )}
      {view.rails.length > 0 && (
        <section className={styles.back}>
          <h2>{calendar.rails.title}</h2>
          <Rails rows={view.rails} today={view.today} />
          <p className={styles.small}>{calendar.rails.legend}</p>
        </section>
      )}
      <BackSchedule
        key={batches[0]?.id ?? 'none'}
        today={calendarDay(nowMs, zone)}
        batches={batches}
        ahead={ahead}
        chambers={kit.chambers}
        nowMs={hour}
        place={place}
        words={words}
        onPass={(schedule, date) => pass(planEvents(schedule, { date, momentOf, nowMs, words }))}
      />
    </Page>
  );
}
