import { useState } from 'react';
import { checksOf } from '#record/instruments.ts';
import type { Place } from '#record/place.ts';
import type { SubjectId } from '#record/subject.ts';
import { useNowMs, zoneAt } from '#store/clock.ts';
import { useBatches, useChecks, useKit } from '#store/live.ts';
import { type Fact, useAppend } from '#store/use-append.ts';
import { Button } from '#ui/Button.tsx';
import { Figure, Figures } from '#ui/Figure.tsx';
import { List, Row } from '#ui/List.tsx';
import { Page } from '#ui/Page.tsx';
import { SavedMark } from '#ui/SavedMark.tsx';
import { VerdictMark } from '#ui/VerdictMark.tsx';
import { Waiting } from '#ui/Waiting.tsx';
import { Working } from '#ui/Working.tsx';
import type { Words } from '#words/en.ts';
import { CheckSheet } from './CheckSheet.tsx';
import { instrumentsOf, instrumentView } from './instrument-view.ts';
import { MeterCheckSheet } from './MeterCheckSheet.tsx';

const MINUTE_MS = 60_000;

export function InstrumentScreen({ words, place, id }: { words: Words; place: Place; id: string }) {
  const subject: SubjectId = `instrument:${id}`;
  const kit = useKit();
  const all = useChecks();
  const batches = useBatches();
  const nowMs = useNowMs(MINUTE_MS);
  const { saving, save } = useAppend(place.initials);
  const [open, setOpen] = useState(false);
  const [working, setWorking] = useState(false);
  if (kit === undefined || all === undefined) return <Waiting label={words.app.waiting} />;
  const instrument = instrumentsOf(kit.scales, kit.meters).find((each) => each.id === subject);
  if (!instrument) return <Page title={words.app.notFound.title}>{words.app.notFound.text}</Page>;
  const say = words.instruments;
  const view = instrumentView({
    instrument,
    checks: checksOf(all, subject),
    batches,
    place,
    nowMs,
    zone: zoneAt(nowMs),
    words,
  });
  const keep = async (fact: Pick<Fact, 'kind' | 'body'>) => {
    const result = await save([{ ...fact, subject } as Fact]);
    if (result.ok) setOpen(false);
  };
  const mark = open ? null : words.app.saving(saving);
  const common = { place, words, saved: words.app.unsaved(saving), onClose: () => setOpen(false) };
  return (
    <Page
      title={instrument.name}
      line={instrument.name === say.what[instrument.what] ? say.title : say.what[instrument.what]}
      sentence={view.sentence}
      back={{ href: '#/instruments', label: say.title }}
      acts={
        <Button kind="primary" onPress={() => setOpen(true)}>
          {say.act[instrument.what]}
        </Button>
      }
    >
      {mark && <SavedMark {...mark} />}
      {view.verdict && (
        <VerdictMark
          {...view.verdict}
          {...(view.working ? { working: { label: words.app.working, onOpen: () => setWorking(true) } } : {})}
        />
      )}
      {view.figures.length > 0 && (
        <Figures>
          {view.figures.map(({ key, ...figure }) => (
            <Figure key={key} {...figure} />
          ))}
        </Figures>
      )}
      {view.since.length > 0 && (
        <section>
          <h2>{say.since}</h2>
          <List label={say.since}>
            {view.since.map(({ key, href, title, note }) => (
              <Row key={key} href={href} title={title} note={note} />
            ))}
          </List>
        </section>
      )}
      {view.history.length > 0 && (
        <section>
          <h2>{say.history}</h2>
          <List label={say.history}>
            {view.history.map(({ key, title, note }) => (
              <Row key={key} title={title} note={note} />
            ))}
          </List>
        </section>
      )}
      {open && instrument.what === 'ph-meter' && (
        <MeterCheckSheet {...common} onSave={(body) => void keep({ kind: 'meter-checked', body })} />
      )}
      {open && instrument.what !== 'ph-meter' && (
        <CheckSheet
          {...common}
          what={instrument.what}
          stepG={instrument.stepG}
          onSave={(fact) => void keep(fact)}
        />
      )}
      {view.working && <Working working={view.working} open={working} onClose={() => setWorking(false)} />}
    </Page>
  );
}
