import { useState } from 'react';
import type { Place } from '#record/place.ts';
import { newSubject } from '#store/append.ts';
import { useNowMs } from '#store/clock.ts';
import { useBatches, useChecks, useKit, useSubjects } from '#store/live.ts';
import { useAppend } from '#store/use-append.ts';
import { Button } from '#ui/Button.tsx';
import { List, Row } from '#ui/List.tsx';
import { Page } from '#ui/Page.tsx';
import { Waiting } from '#ui/Waiting.tsx';
import type { Words } from '#words/en.ts';
import { ChamberSheet } from './ChamberSheet.tsx';
import { chamberHref, chambersView } from './chambers-view.ts';

const MINUTE_MS = 60_000;

export function ChambersScreen({ words, place }: { words: Words; place: Place }) {
  const kit = useKit();
  const entries = useSubjects((kit?.chambers ?? []).map(({ id }) => id));
  const batches = useBatches();
  const checks = useChecks();
  const nowMs = useNowMs(MINUTE_MS);
  const { saving, save } = useAppend(place.initials);
  const [adding, setAdding] = useState(false);
  if (kit === undefined || entries === undefined || batches === undefined || checks === undefined)
    return <Waiting label={words.app.waiting} />;
  const say = words.chambers;
  const view = chambersView({ chambers: kit.chambers, entries, batches, checks, place, nowMs, words });
  const saved = words.app.saving(saving);
  return (
    <Page
      title={say.title}
      sentence={view.sentence}
      acts={
        <Button kind={view.rows.length === 0 ? 'primary' : 'second'} onPress={() => setAdding(true)}>
          {say.add}
        </Button>
      }
    >
      {view.rows.length > 0 && (
        <List label={say.title}>
          {view.rows.map(({ key, href, title, note, figure }) => (
            <Row key={key} href={href} title={title} note={note} {...figure} />
          ))}
        </List>
      )}
      {adding && (
        <ChamberSheet
          chamber={null}
          words={words}
          saved={saved?.state === 'saved' ? null : saved}
          onClose={() => setAdding(false)}
          onSave={async (body) => {
            const subject = newSubject('chamber');
            if ((await save([{ kind: 'chamber-added', subject, body }])).ok)
              window.location.hash = chamberHref(subject);
          }}
        />
      )}
    </Page>
  );
}
