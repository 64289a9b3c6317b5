import { useState } from 'react';
import type { Place } from '#record/place.ts';
import { useBatches } from '#store/live.ts';
import { useAppend } from '#store/use-append.ts';
import { Button } from '#ui/Button.tsx';
import { List, Row } from '#ui/List.tsx';
import { Notice } from '#ui/Notice.tsx';
import { Page } from '#ui/Page.tsx';
import { SavedMark } from '#ui/SavedMark.tsx';
import { Sentence } from '#ui/Sentence.tsx';
import { Waiting } from '#ui/Waiting.tsx';
import type { Words } from '#words/en.ts';
import { MarksSheet } from './MarksSheet.tsx';
import { tastingView } from './tasting-view.ts';

/** How a batch tastes to whoever tasted it; kept so that the next one can be made better. */
export function TastingScreen({ words, place, id }: { words: Words; place: Place; id: string }) {
  const batches = useBatches();
  const { saving, save } = useAppend(place.initials);
  const [marking, setMarking] = useState(false);
  if (batches === undefined) return <Waiting label={words.app.waiting} />;
  const batch = batches.find((each) => each.id === `batch:${id}`);
  if (!batch) return <Page title={words.app.notFound.title}>{words.app.notFound.text}</Page>;
  const say = words.tasting;
  const view = tastingView({ batch, batches, place, words });
  const saved = words.app.saving(saving);
  return (
    <Page
      title={say.title}
      line={view.line}
      back={{ href: `#/batches/${id}`, label: words.app.back }}
      sentence={view.sentence}
      acts={
        <Button kind="primary" onPress={() => setMarking(true)}>
          {say.act}
        </Button>
      }
    >
      {view.caution && <Notice kind="caution">{view.caution}</Notice>}
      {saved && !marking && <SavedMark state={saved.state} text={saved.text} />}
      {view.rows.length > 0 && (
        <List>
          {view.rows.map(({ key, label, mark, note }) => (
            <Row key={key} title={label} note={note} figure={mark} unit={say.of} />
          ))}
        </List>
      )}
      {view.who && <p>{view.who}</p>}
      <Sentence small tokens={view.plate} />
      <List>
        <Row href="#/tasting" title={say.blind.row} note={say.blind.rowNote} />
      </List>
      {marking && (
        <MarksSheet
          title={say.sheet.title}
          initials={place.initials}
          words={words}
          saved={words.app.unsaved(saving)}
          onClose={() => setMarking(false)}
          onSave={async (body) => {
            const result = await save([{ kind: 'tasted', subject: batch.id, body }]);
            if (result.ok) setMarking(false);
          }}
        />
      )}
    </Page>
  );
}
