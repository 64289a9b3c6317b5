import type { Place } from '#record/place.ts';
import { newSubject } from '#store/append.ts';
import { useDraft } from '#store/use-draft.ts';
import { Waiting } from '#ui/Waiting.tsx';
import type { Words } from '#words/en.ts';
import { ReceivedFormPage } from './ReceivedFormPage.tsx';
import { newForm, restoreReceived, type What } from './received-form.ts';

/** Receives a new lot. */
export function ReceivePage({ words, place, what }: { words: Words; place: Place; what: What | null }) {
  const draft = useDraft(`kit/received/${what ?? ''}`, restoreReceived);
  if (draft.value === undefined) return <Waiting label={words.app.waiting} />;
  return (
    <ReceivedFormPage
      words={words}
      place={place}
      form={draft.value ?? newForm(what, place)}
      onForm={draft.set}
      title={words.received.form.title}
      {...(draft.value === null ? {} : { onEmpty: () => draft.set(newForm(what, place)) })}
      back={{ href: '#/kit/received', label: words.received.title }}
      factOf={({ body, atMs }) => ({
        kind: 'received',
        subject: newSubject('lot'),
        body,
        ...(atMs === null ? {} : { atMs }),
      })}
      onSaved={async () => {
        await draft.drop();
        window.location.hash = '#/kit/received';
      }}
    />
  );
}
