import { useState } from 'react';
import type { BodyOf } from '#record/kinds.ts';
import type { Place } from '#record/place.ts';
import { useNowMs } from '#store/clock.ts';
import { useKit } from '#store/live.ts';
import { type Fact, useAppend } from '#store/use-append.ts';
import { Ask } from '#ui/Ask.tsx';
import { Button } from '#ui/Button.tsx';
import { Page } from '#ui/Page.tsx';
import { SavedMark } from '#ui/SavedMark.tsx';
import { TextField } from '#ui/TextField.tsx';
import type { Words } from '#words/en.ts';
import { ReceivedFields } from './ReceivedFields.tsx';
import { readReceived } from './read-received.ts';
import type { ReceivedForm } from './received-form.ts';
import { toFirstProblem } from './to-first-problem.ts';

const MINUTE_MS = 60_000;

type Read = { readonly body: BodyOf<'received'>; readonly atMs: number | null };

/** The form, for a new lot and for a correction. What is unlikely is asked about once, and can be kept. */
export function ReceivedFormPage({
  words,
  place,
  form,
  onForm,
  title,
  back,
  correcting = false,
  onEmpty,
  factOf,
  onSaved,
}: {
  words: Words;
  place: Place;
  form: ReceivedForm;
  onForm: (form: ReceivedForm) => void;
  title: string;
  back: { href: string; label: string };
  correcting?: boolean;
  /** Offered where something half typed was kept. */
  onEmpty?: () => void;
  factOf: (read: Read) => Fact;
  onSaved: () => Promise<void>;
}) {
  const kit = useKit();
  const nowMs = useNowMs(MINUTE_MS);
  const { saving, save } = useAppend(place.initials);
  const [shown, setShown] = useState(false);
  const [asking, setAsking] = useState<readonly { field: string; text: string }[]>([]);
  const say = words.received.form;
  const read = readReceived(form, { place, nowMs, correcting, words });
  const problems = shown && !read.ok ? read.problems : {};
  const mark = words.app.saving(saving);

  const keep = async (kept: readonly string[]) => {
    setAsking([]);
    if (!read.ok) return;
    const body = kept.length === 0 ? read.body : { ...read.body, kept: [...kept] };
    if ((await save([factOf({ body, atMs: read.atMs })])).ok) await onSaved();
  };
  const submit = () => {
    setShown(true);
    if (!read.ok) toFirstProblem();
    else if (read.questions.length > 0) setAsking(read.questions);
    else void keep([]);
  };

  return (
    <Page
      title={title}
      sentence={form.what === 'cure' ? say.cureSentence : say.sentence}
      back={back}
      acts={
        <Button kind="primary" onPress={submit} disabled={saving.state === 'saving'}>
          {say.save}
        </Button>
      }
    >
      <ReceivedFields
        form={form}
        onForm={onForm}
        problems={problems}
        place={place}
        words={words}
        nowMs={nowMs}
        lots={kit?.lots ?? []}
      />
      {correcting && (
        <TextField
          label={say.reason}
          hint={say.reasonHint}
          text={form.reason}
          onText={(reason) => onForm({ ...form, reason })}
          maxLength={400}
          {...(problems.reason ? { problem: problems.reason } : {})}
        />
      )}
      {onEmpty && (
        <div>
          <Button kind="quiet" onPress={onEmpty}>
            {say.empty}
          </Button>
        </div>
      )}
      {mark && <SavedMark state={mark.state} text={mark.text} />}
      {asking.length > 0 && (
        <Ask
          question={asking[0]?.text ?? ''}
          detail={asking.slice(1).map(({ field, text }) => <p key={field}>{text}</p>)}
          changeLabel={words.app.change}
          keepLabel={words.app.keep}
          onChange={() => setAsking([])}
          onKeep={() => void keep(asking.map(({ field }) => field))}
        />
      )}
    </Page>
  );
}
