import { useMemo, useRef } from 'react';
import { batch as foldBatch } from '#record/batch.ts';
import { chamberAir } from '#record/chamber-air.ts';
import { knownAir } from '#record/drying-air.ts';
import type { Place } from '#record/place.ts';
import type { SubjectId } from '#record/subject.ts';
import { useNowMs } from '#store/clock.ts';
import { useChecks, useTouching, useWorkshop } from '#store/live.ts';
import { Page } from '#ui/Page.tsx';
import { Waiting } from '#ui/Waiting.tsx';
import type { Words } from '#words/en.ts';
import { NEW_START, startOf } from './start.ts';
import { Trial } from './Trial.tsx';

const HOUR_MS = 3_600_000;
/** No chamber has this id: what is asked for while the batch hangs nowhere. */
const NOWHERE: SubjectId = 'chamber:0';

/** A batch that hangs, in air that nobody has set yet. */
export function WhatIfScreen({ words, place, id }: { words: Words; place: Place; id: string }) {
  const subject: SubjectId = `batch:${id}`;
  const entries = useTouching(subject);
  const batch = useMemo(() => (entries ? foldBatch(subject, entries) : null), [entries, subject]);
  const chamber = batch?.hung?.body.chamber ?? NOWHERE;
  const workshop = useWorkshop();
  const checks = useChecks();
  const openedMs = useRef(useNowMs(HOUR_MS));
  const start = useMemo(() => {
    if (!batch || !workshop || !checks) return null;
    return startOf(batch, knownAir(chamberAir(chamber, workshop, checks)), openedMs.current);
  }, [batch, workshop, checks, chamber]);
  if (!entries || !workshop || !checks) return <Waiting label={words.app.waiting} />;
  if (!batch || start === null)
    return <Page title={words.app.notFound.title}>{words.app.notFound.text}</Page>;
  const { body } = batch.opened;
  return (
    <Trial
      start={start}
      title={words.whatIf.title}
      line={words.whatIf.line(body.formula.name, body.lot)}
      back={{ href: `#/batches/${id}/hanging`, label: words.hanging.title }}
      place={place}
      words={words}
    />
  );
}

/** A batch that does not exist yet. */
export function RehearsalScreen({ words, place }: { words: Words; place: Place }) {
  return (
    <Trial
      start={NEW_START}
      title={words.whatIf.newTitle}
      line={words.whatIf.newLine}
      back={{ href: '#/batches', label: words.batches.title }}
      place={place}
      words={words}
    />
  );
}
