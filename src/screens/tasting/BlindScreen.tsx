import { useState } from 'react';
import type { Place } from '#record/place.ts';
import { useBatches } from '#store/live.ts';
import { useAppend } from '#store/use-append.ts';
import { List, Row } from '#ui/List.tsx';
import { Page } from '#ui/Page.tsx';
import { SavedMark } from '#ui/SavedMark.tsx';
import { Waiting } from '#ui/Waiting.tsx';
import type { Words } from '#words/en.ts';
import { MarksSheet } from './MarksSheet.tsx';
import { type Plate, plates } from './tasting-view.ts';

/** Marks by the number on the plate: whoever tastes does not know the batch. */
export function BlindScreen({ words, place }: { words: Words; place: Place }) {
  const batches = useBatches();
  const { saving, save } = useAppend(place.initials);
  const [marking, setMarking] = useState<Plate | null>(null);
  if (batches === undefined) return <Waiting label={words.app.waiting} />;
  const { blind, sheet } = words.tasting;
  const offered = plates(batches, words);
  const saved = words.app.saving(saving);
  return (
    <Page
      title={blind.title}
      back={{ href: '#/batches', label: words.batches.title }}
      sentence={offered.length > 0 ? blind.sentence : blind.none}
    >
      {saved && !marking && <SavedMark state={saved.state} text={saved.text} />}
      <List label={blind.plates}>
        {offered.map((plate) => (
          <Row key={plate.id} title={plate.code} note={plate.note} onPress={() => setMarking(plate)} />
        ))}
      </List>
      {marking && (
        <MarksSheet
          title={sheet.blindTitle(marking.code)}
          initials=""
          words={words}
          saved={words.app.unsaved(saving)}
          onClose={() => setMarking(null)}
          onSave={async (body) => {
            const result = await save([
              { kind: 'tasted', subject: marking.id, body: { ...body, blind: true } },
            ]);
            if (result.ok) setMarking(null);
          }}
        />
      )}
    </Page>
  );
}
