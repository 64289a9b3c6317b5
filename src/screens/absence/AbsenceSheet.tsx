import { useState } from 'react';
import type { BodyOf } from '#record/kinds.ts';
import { Button } from '#ui/Button.tsx';
import { DateTimeField } from '#ui/DateTimeField.tsx';
import { SavedMark, type SavedState } from '#ui/SavedMark.tsx';
import { Sheet } from '#ui/Sheet.tsx';
import { TextField } from '#ui/TextField.tsx';
import { localText } from '#ui/when-input.ts';
import type { Words } from '#words/en.ts';

/** From when to when nobody is there, and who looks in. */
export function AbsenceSheet({
  words,
  nowMs,
  saved,
  onSave,
  onClose,
}: {
  words: Words;
  nowMs: number;
  saved: { state: SavedState; text: string } | null;
  onSave: (body: BodyOf<'absence-planned'>) => void;
  onClose: () => void;
}) {
  const [from, setFrom] = useState('');
  const [to, setTo] = useState('');
  const [helper, setHelper] = useState('');
  const [shown, setShown] = useState(false);
  const say = words.absence;
  const fromMs = new Date(from).getTime();
  const toMs = new Date(to).getTime();
  const ordered = fromMs < toMs && toMs > nowMs;
  return (
    <Sheet
      open
      onClose={onClose}
      title={say.plan}
      closeLabel={words.app.close}
      acts={
        <Button
          kind="primary"
          disabled={saved?.state === 'saving'}
          onPress={() => {
            setShown(true);
            if (ordered) onSave({ fromMs, toMs, helper: helper.trim() });
          }}
        >
          {say.save}
        </Button>
      }
    >
      <DateTimeField
        label={say.from}
        text={from}
        onText={setFrom}
        {...(shown && !Number.isFinite(fromMs) ? { problem: words.fields.needed } : {})}
      />
      <DateTimeField
        label={say.to}
        text={to}
        onText={setTo}
        earliest={localText(nowMs)}
        {...(shown && !ordered ? { problem: Number.isFinite(toMs) ? say.order : words.fields.needed } : {})}
      />
      <TextField label={say.helper} hint={say.helperHint} text={helper} onText={setHelper} maxLength={200} />
      {saved && <SavedMark state={saved.state} text={saved.text} />}
    </Sheet>
  );
}
