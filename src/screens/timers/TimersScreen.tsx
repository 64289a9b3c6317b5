import { useState } from 'react';
import { BEFORE_STUFFING } from '#core/ferment/back-plan.ts';
import { handOver } from '#files/hand-over.ts';
import { calendar } from '#files/icalendar.ts';
import { batch as foldBatch } from '#record/batch.ts';
import type { Place } from '#record/place.ts';
import type { SubjectId } from '#record/subject.ts';
import { useNowMs, zoneAt } from '#store/clock.ts';
import { useTouching } from '#store/live.ts';
import { type Fact, useAppend } from '#store/use-append.ts';
import { Button } from '#ui/Button.tsx';
import { List, Row } from '#ui/List.tsx';
import { Page } from '#ui/Page.tsx';
import { SavedMark } from '#ui/SavedMark.tsx';
import { Timer } from '#ui/Timer.tsx';
import { useAwake } from '#ui/use-awake.ts';
import { Waiting } from '#ui/Waiting.tsx';
import type { Words } from '#words/en.ts';
import { PlanSheet, TimerSheet } from './TimeSheets.tsx';
import { timersView } from './timers-view.ts';

const SECOND_MS = 1000;

/** Times of a batch: what must begin before stuffing, and timers. They hold through a closed app and a dead battery. */
export function TimersScreen({ words, place, id }: { words: Words; place: Place; id: string }) {
  const subject: SubjectId = `batch:${id}`;
  const entries = useTouching(subject);
  const nowMs = useNowMs(SECOND_MS);
  const { saving, save } = useAppend(place.initials);
  const [open, setOpen] = useState<'plan' | 'timer' | null>(null);
  const [given, setGiven] = useState<string | null>(null);
  useAwake();
  if (entries === undefined) return <Waiting label={words.app.waiting} />;
  const batch = foldBatch(subject, entries);
  if (batch === null) return <Page title={words.app.notFound.title}>{words.app.notFound.text}</Page>;
  const say = words.timers;
  const view = timersView({ batch, nowMs, zone: zoneAt(nowMs), words });
  const mark = open === null ? words.app.saving(saving) : null;
  const keep = async (fact: Fact) => {
    if ((await save([fact])).ok) setOpen(null);
  };
  const common = { words, place, nowMs, saved: words.app.unsaved(saving), onClose: () => setOpen(null) };
  return (
    <Page
      title={say.title}
      line={view.line}
      sentence={view.sentence}
      back={{ href: `#/batches/${id}`, label: words.app.back }}
      acts={
        <>
          <Button kind="primary" onPress={() => setOpen('plan')}>
            {say.plan}
          </Button>
          <Button onPress={() => setOpen('timer')}>{say.set}</Button>
        </>
      }
    >
      {mark && <SavedMark {...mark} />}
      {view.tasks.length > 0 && (
        <section>
          <h2>{say.tasksTitle}</h2>
          <List label={say.tasksTitle} ordered>
            {view.tasks.map(({ key, title, note, figure }) => (
              <Row key={key} title={title} note={`${figure}${note ? `, ${note}` : ''}`} />
            ))}
          </List>
          <p>{say.practice}</p>
        </section>
      )}
      {view.timers.map(({ key, label, endMs, startMs, note }) => (
        <section key={key}>
          <Timer
            label={label}
            endMs={endMs}
            startMs={startMs}
            nowMs={nowMs}
            note={note}
            overWord={say.over}
          />
          <Button
            kind="quiet"
            onPress={() =>
              void keep({ kind: 'struck', subject, body: {}, strikes: { id: key, reason: say.removed } })
            }
          >
            {say.remove}
          </Button>
        </section>
      ))}
      {view.events.length > 0 && (
        <section>
          <Button
            onPress={async () => {
              const done = await handOver({
                name: `${batch.opened.body.lot}.ics`,
                mime: 'text/calendar',
                content: calendar({ events: view.events, madeAtMs: nowMs }),
              });
              setGiven(say.given[done]);
            }}
          >
            {say.calendar}
          </Button>
          <p role="status">{given ?? say.calendarNote}</p>
        </section>
      )}
      {open === 'plan' && (
        <PlanSheet
          {...common}
          onSave={(finishMs) =>
            void keep({
              kind: 'stuffing-planned',
              subject,
              body: {
                finishMs,
                tasks: BEFORE_STUFFING.map(({ id: name, durationMinutes }) => ({
                  name,
                  minutes: durationMinutes,
                })),
              },
            })
          }
        />
      )}
      {open === 'timer' && (
        <TimerSheet
          {...common}
          onSave={(name, minutes) =>
            void keep({
              kind: 'timer-set',
              subject,
              body: { name, endMs: Math.round(nowMs + minutes * 60 * SECOND_MS) },
            })
          }
        />
      )}
    </Page>
  );
}
