import { useState } from 'react';
import { batch as foldBatch } from '#record/batch.ts';
import type { BenchStep } from '#record/kinds.ts';
import type { Place } from '#record/place.ts';
import type { SubjectId } from '#record/subject.ts';
import { useNowMs } from '#store/clock.ts';
import { useTouching } from '#store/live.ts';
import { useAppend } from '#store/use-append.ts';
import { Button } from '#ui/Button.tsx';
import { List, Row } from '#ui/List.tsx';
import { Page } from '#ui/Page.tsx';
import { SavedMark } from '#ui/SavedMark.tsx';
import { Timer } from '#ui/Timer.tsx';
import { useAwake } from '#ui/use-awake.ts';
import { Waiting } from '#ui/Waiting.tsx';
import type { Words } from '#words/en.ts';
import { type BenchView, benchView } from './bench-view.ts';
import { StepSheet } from './StepSheet.tsx';

const SECOND_MS = 1000;
const MINUTE_MS = 60 * SECOND_MS;

const mixes = (step: BenchStep) => step === 'mixed' || step === 'stuffed';

export function BenchScreen({ words, place, id }: { words: Words; place: Place; id: string }) {
  useAwake();
  const subject: SubjectId = `batch:${id}`;
  const entries = useTouching(subject);
  const nowMs = useNowMs(MINUTE_MS);
  const { saving, save } = useAppend(place.initials);
  const [open, setOpen] = useState<BenchStep | null>(null);
  if (entries === undefined) return <Waiting label={words.app.waiting} />;
  const batch = foldBatch(subject, entries);
  if (batch === null) return <Page title={words.app.notFound.title}>{words.app.notFound.text}</Page>;
  const view = benchView({ batch, place, nowMs, words });
  const { bench } = words;
  const mark = open === null ? words.app.saving(saving) : null;
  return (
    <Page
      title={bench.title}
      line={view.line}
      back={{ href: `#/batches/${id}`, label: words.app.back }}
      sentence={view.sentence}
      acts={
        view.next === null ? (
          <Button kind="primary" href={`#/batches/${id}/stuffing`}>
            {bench.toPieces}
          </Button>
        ) : (
          <>
            {(view.unweighed > 0 || view.miscounted) && (
              <Button href={`#/batches/${id}/weigh-out`}>{bench.toWeighOut}</Button>
            )}
            {!(view.miscounted && mixes(view.next)) && (
              <Button kind="primary" onPress={() => setOpen(view.next)}>
                {bench.act[view.next]}
              </Button>
            )}
          </>
        )
      }
    >
      {mark && <SavedMark {...mark} />}
      {view.timers.length > 0 && <Running timers={view.timers} overWord={words.timers.over} />}
      <List>
        {view.rows.map(({ step, title, note, figure, unit }) => (
          <Row
            key={step}
            title={title}
            note={note}
            {...(view.miscounted && mixes(step) ? {} : { onPress: () => setOpen(step) })}
            {...(figure ? { figure, unit } : {})}
          />
        ))}
      </List>
      <Button href={`#/batches/${id}/ferment`}>{bench.readPh}</Button>
      <Button href={`#/batches/${id}/timers`}>{words.timers.title}</Button>
      {open && (
        <StepSheet
          key={open}
          step={open}
          place={place}
          words={words}
          nowMs={nowMs}
          saved={words.app.unsaved(saving)}
          onClose={() => setOpen(null)}
          onChill={async (minutes) => {
            const result = await save([
              {
                kind: 'timer-set',
                subject,
                body: {
                  name: bench.gate.timerName(bench.step[open]),
                  endMs: Math.round(nowMs + minutes * MINUTE_MS),
                },
              },
            ]);
            if (result.ok) setOpen(null);
          }}
          onSave={async (body, atMs) => {
            const before = batch.steps.filter(({ kind }) => kind === open).at(-1);
            const result = await save([
              {
                kind: open,
                subject,
                body,
                ...(atMs === null ? {} : { atMs }),
                ...(before ? { strikes: { id: before.id, reason: bench.strikeReason } } : {}),
              },
            ]);
            if (result.ok) setOpen(null);
          }}
        />
      )}
    </Page>
  );
}

/** Drawn each second, on its own. */
function Running({ timers, overWord }: { timers: BenchView['timers']; overWord: string }) {
  const nowMs = useNowMs(SECOND_MS);
  return timers.map(({ key, ...timer }) => <Timer key={key} {...timer} nowMs={nowMs} overWord={overWord} />);
}
