import { useState } from 'react';
import { smallPhoto } from '#files/small-photo.ts';
import { batch as foldBatch } from '#record/batch.ts';
import type { Place } from '#record/place.ts';
import type { SubjectId } from '#record/subject.ts';
import { useNowMs, zoneAt } from '#store/clock.ts';
import { useTouching } from '#store/live.ts';
import { usePhotographing } from '#store/use-photo.ts';
import { Choice } from '#ui/Choice.tsx';
import { Page } from '#ui/Page.tsx';
import { PhotoButton } from '#ui/PhotoButton.tsx';
import { PhotoPair } from '#ui/PhotoFrame.tsx';
import { SavedMark } from '#ui/SavedMark.tsx';
import { Waiting } from '#ui/Waiting.tsx';
import type { Words } from '#words/en.ts';
import { PhotoOfRow } from './PhotoOfRow.tsx';
import { photoGroups, readingChoices } from './photos-view.ts';

const MINUTE_MS = 60_000;

/** The photos of a batch, each beside the reading that it belongs to; a new one comes after its reading. */
export function PhotosScreen({ words, place, id }: { words: Words; place: Place; id: string }) {
  const subject: SubjectId = `batch:${id}`;
  const entries = useTouching(subject);
  const nowMs = useNowMs(MINUTE_MS);
  const { photographing, photograph } = usePhotographing(place.initials, smallPhoto);
  const [chosen, setChosen] = useState<SubjectId | null>(null);
  if (entries === undefined) return <Waiting label={words.app.waiting} />;
  const batch = foldBatch(subject, entries);
  if (batch === null) return <Page title={words.app.notFound.title}>{words.app.notFound.text}</Page>;
  const seen = { nowMs, zone: zoneAt(nowMs), words };
  const { photos } = words;
  const groups = photoGroups(batch, entries, seen);
  const choices = readingChoices(batch, entries, seen);
  const reading = choices.find(({ value }) => value === chosen) ?? choices[0];
  const mark = photos.mark(photographing);
  return (
    <Page
      title={photos.title}
      line={photos.line(batch.opened.body.formula.name, batch.opened.body.lot)}
      back={{ href: `#/batches/${id}`, label: words.app.back }}
      sentence={photos.sentence(groups.flatMap((group) => group.photos).length)}
      acts={
        reading && (
          <PhotoButton
            kind="primary"
            label={photos.take}
            disabled={mark?.state === 'saving'}
            onPhoto={(file) =>
              void photograph(file, { subject: reading.value, refs: [subject], of: reading.of })
            }
          />
        )
      }
    >
      {mark && <SavedMark {...mark} />}
      {reading ? (
        <>
          <Choice<SubjectId>
            label={photos.of}
            options={choices.map(({ value, label }) => ({ value, label }))}
            value={reading.value}
            onValue={setChosen}
          />
          <p>{photos.belongs(reading.reading)}</p>
        </>
      ) : (
        <p>{photos.ofNone}</p>
      )}
      {groups.map((group) => (
        <section key={group.key}>
          <h2>{group.title}</h2>
          <PhotoPair label={group.title}>
            {group.photos.map((row) => (
              <PhotoOfRow key={row.key} row={row} words={words} />
            ))}
          </PhotoPair>
        </section>
      ))}
    </Page>
  );
}
