import { useCallback, useMemo, useState } from 'react';
import { batch as foldBatch } from '#record/batch.ts';
import type { Place } from '#record/place.ts';
import type { SubjectId } from '#record/subject.ts';
import { useNowMs, zoneAt } from '#store/clock.ts';
import { useKit, useTouching } from '#store/live.ts';
import { useAppend } from '#store/use-append.ts';
import { Page } from '#ui/Page.tsx';
import { Waiting } from '#ui/Waiting.tsx';
import type { Words } from '#words/en.ts';
import { LoggerFile } from './LoggerFile.tsx';
import { roomRun } from './room-run.ts';
import type { Found, Picked } from './run-view.ts';

const HOUR_MS = 3_600_000;

/** The room in which a batch ferments, from a logger's file. */
export function RoomFileScreen({ words, place, id }: { words: Words; place: Place; id: string }) {
  const subject: SubjectId = `batch:${id}`;
  const entries = useTouching(subject);
  const kit = useKit();
  const [nowMs] = useState(useNowMs(HOUR_MS));
  const { saving, save } = useAppend(place.initials);
  const batch = useMemo(() => (entries ? foldBatch(subject, entries) : null), [entries, subject]);
  const runOf = useCallback(
    (found: Found, picked: Picked) =>
      batch && roomRun(found, picked, { batch, nowMs, zone: zoneAt(nowMs), place, words }),
    [batch, nowMs, place, words],
  );
  if (entries === undefined || kit === undefined) return <Waiting label={words.app.waiting} />;
  if (batch === null) return <Page title={words.app.notFound.title}>{words.app.notFound.text}</Page>;
  const back = { href: `#/batches/${id}/ferment`, label: words.ferment.title };
  const { formula, lot } = batch.opened.body;
  return (
    <LoggerFile
      title={words.logger.title}
      line={`${formula.name} · ${words.batches.lot(lot)}`}
      back={back}
      none={words.logger.found.none}
      meters={kit.meters.filter(({ what }) => what !== 'ph-meter')}
      runOf={runOf}
      saved={words.app.saving(saving)}
      words={words}
      onSave={async (facts) => {
        if ((await save(facts)).ok) window.location.hash = back.href;
      }}
    />
  );
}
