import { useState } from 'react';
import { freezingFigures } from '#record/freezing-figures.ts';
import type { Place } from '#record/place.ts';
import type { SubjectId } from '#record/subject.ts';
import { useNowMs, zoneAt } from '#store/clock.ts';
import { useKit, useTouching } from '#store/live.ts';
import { type Fact, useAppend } from '#store/use-append.ts';
import { Button } from '#ui/Button.tsx';
import { Figure, Figures } from '#ui/Figure.tsx';
import { List, Row } from '#ui/List.tsx';
import { Notice } from '#ui/Notice.tsx';
import { Page } from '#ui/Page.tsx';
import { SavedMark } from '#ui/SavedMark.tsx';
import { VerdictMark } from '#ui/VerdictMark.tsx';
import { Waiting } from '#ui/Waiting.tsx';
import { Working } from '#ui/Working.tsx';
import type { Words } from '#words/en.ts';
import { FreezeSheet } from './FreezeSheet.tsx';
import { freezingView } from './freezing-view.ts';
import { ReadSheet } from './ReadSheet.tsx';

const MINUTE_MS = 60_000;

/** One lot in the freezer, against Trichinella. */
export function FreezingScreen({ words, place, id }: { words: Words; place: Place; id: string }) {
  const subject: SubjectId = `lot:${id}`;
  const kit = useKit();
  const entries = useTouching(subject);
  const nowMs = useNowMs(MINUTE_MS);
  const { saving, save } = useAppend(place.initials);
  const [open, setOpen] = useState<'frozen' | 'freezer-read' | null>(null);
  const [working, setWorking] = useState(false);
  if (kit === undefined || entries === undefined) return <Waiting label={words.app.waiting} />;
  const lot = kit.lots.find((each) => each.id === subject)?.received;
  if (!lot) return <Page title={words.app.notFound.title}>{words.app.notFound.text}</Page>;
  const say = words.freezing;
  const own = entries.filter((entry) => entry.subject === subject);
  const state = freezingFigures({ entries: own, ruleSet: place.ruleSet, species: lot.body.species, nowMs });
  const view = freezingView({ lot, state, place, nowMs, zone: zoneAt(nowMs), words });
  const mark = open === null ? words.app.saving(saving) : null;
  const keep = async (fact: Pick<Fact, 'kind' | 'body'>, atMs: number | null) => {
    const result = await save([{ ...fact, subject, ...(atMs === null ? {} : { atMs }) } as Fact]);
    if (result.ok) setOpen(null);
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
      title={say.title}
      line={view.line}
      sentence={view.sentence}
      back={{ href: '#/kit/received', label: say.back }}
      acts={
        view.isIn ? (
          <>
            <Button kind="primary" onPress={() => setOpen('freezer-read')}>
              {say.act.read}
            </Button>
            <Button onPress={() => setOpen('frozen')}>{say.act.freeze}</Button>
          </>
        ) : (
          <Button kind="primary" onPress={() => setOpen('frozen')}>
            {say.act.freeze}
          </Button>
        )
      }
      actsNote={say.work.caution}
    >
      {mark && <SavedMark {...mark} />}
      {view.verdict && (
        <VerdictMark
          {...view.verdict}
          {...(view.working ? { working: { label: words.app.working, onOpen: () => setWorking(true) } } : {})}
        />
      )}
      {view.isReserved && <Notice kind="caution">{say.reserved}</Notice>}
      {view.figures.length > 0 && (
        <Figures>
          {view.figures.map(({ key, ...figure }) => (
            <Figure key={key} {...figure} />
          ))}
        </Figures>
      )}
      {view.notes.map((note) => (
        <p key={note}>{note}</p>
      ))}
      {view.readings.length > 0 && (
        <section>
          <h2>{say.readings}</h2>
          <List label={say.readings}>
            {view.readings.map(({ key, title, note }) => (
              <Row key={key} title={title} note={note} />
            ))}
          </List>
        </section>
      )}
      {open === 'frozen' && (
        <FreezeSheet {...common} onSave={(body, atMs) => void keep({ kind: 'frozen', body }, atMs)} />
      )}
      {open === 'freezer-read' && (
        <ReadSheet {...common} onSave={(body, atMs) => void keep({ kind: 'freezer-read', body }, atMs)} />
      )}
      {view.working && <Working working={view.working} open={working} onClose={() => setWorking(false)} />}
    </Page>
  );
}
