import { useCallback, useMemo, useState } from 'react';
import { chamberAir } from '#record/chamber-air.ts';
import type { Place } from '#record/place.ts';
import type { SubjectId } from '#record/subject.ts';
import { useNowMs, zoneAt } from '#store/clock.ts';
import { useKit, useTouching } from '#store/live.ts';
import { useAppend } from '#store/use-append.ts';
import { Page } from '#ui/Page.tsx';
import { Waiting } from '#ui/Waiting.tsx';
import type { Words } from '#words/en.ts';
import { airRun } from './air-run.ts';
import { LoggerFile } from './LoggerFile.tsx';
import type { Found, Picked } from './run-view.ts';

const HOUR_MS = 3_600_000;

/** The air of a chamber, from a logger's file. */
export function AirFileScreen({ words, place, id }: { words: Words; place: Place; id: string }) {
  const subject: SubjectId = `chamber:${id}`;
  const entries = useTouching(subject);
  const kit = useKit();
  const [nowMs] = useState(useNowMs(HOUR_MS));
  const { saving, save } = useAppend(place.initials);
  const air = useMemo(() => (entries ? chamberAir(subject, entries) : null), [subject, entries]);
  const runOf = useCallback(
    (found: Found, picked: Picked) =>
      air && airRun(found, picked, { chamber: subject, air, nowMs, zone: zoneAt(nowMs), place, words }),
    [air, subject, nowMs, place, words],
  );
  if (air === null || kit === undefined) return <Waiting label={words.app.waiting} />;
  const chamber = kit.chambers.find((each) => each.id === subject);
  if (!chamber) return <Page title={words.app.notFound.title}>{words.app.notFound.text}</Page>;
  const back = { href: `#/chambers/${id}`, label: chamber.name };
  return (
    <LoggerFile
      title={words.logger.airTitle}
      line={chamber.name}
      back={back}
      none={words.logger.found.noneAir}
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
