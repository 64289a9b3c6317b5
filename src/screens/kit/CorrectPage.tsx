import type { EntryOf } from '#record/entry.ts';
import type { Place } from '#record/place.ts';
import { useDraft } from '#store/use-draft.ts';
import { Waiting } from '#ui/Waiting.tsx';
import type { Words } from '#words/en.ts';
import { ReceivedFormPage } from './ReceivedFormPage.tsx';
import { formOf, restoreReceived } from './received-form.ts';

/** A new entry that strikes the old one, with a reason; the old values stay visible beside it. */
export function CorrectPage({
  words,
  place,
  entry,
  back,
}: {
  words: Words;
  place: Place;
  entry: EntryOf<'received'>;
  back: string;
}) {
  const draft = useDraft(`kit/received/${entry.id}`, restoreReceived);
  if (draft.value === undefined) return <Waiting label={words.app.waiting} />;
  const form = draft.value ?? formOf(entry, place);
  return (
    <ReceivedFormPage
      words={words}
      place={place}
      form={form}
      onForm={draft.set}
      title={words.received.form.correctTitle}
      back={{ href: back, label: words.app.back }}
      correcting
      factOf={({ body, atMs }) => ({
        kind: 'received',
        subject: entry.subject,
        body,
        ...(atMs === null ? {} : { atMs }),
        strikes: { id: entry.id, reason: form.reason.trim() },
      })}
      onSaved={async () => {
        await draft.drop();
        window.location.hash = back;
      }}
    />
  );
}
