import { useState } from 'react';
import type { Fact } from '#store/use-append.ts';
import { Button } from '#ui/Button.tsx';
import { Choice } from '#ui/Choice.tsx';
import { Notice } from '#ui/Notice.tsx';
import { SavedMark } from '#ui/SavedMark.tsx';
import { Sheet } from '#ui/Sheet.tsx';
import { TextField } from '#ui/TextField.tsx';
import { WhenField } from '#ui/WhenField.tsx';
import { readWhen } from '#ui/when-input.ts';
import type { SheetProps } from './sheet.ts';

type Body = Extract<Fact, { kind: 'ferment-ended' }>['body'];

const REASONS = ['ph-reached', 'time-reached', 'no-warm-stage', 'held', 'other'] as const;

/** The decision to end the ferment, with its reason; without a believed pH it says what stays open. */
export function EndSheet({
  words,
  nowMs,
  saved,
  stopped,
  onSave,
  onClose,
}: SheetProps<Body> & { stopped: boolean }) {
  const { end } = words.ferment;
  const [reason, setReason] = useState<Body['reason'] | null>(stopped ? 'ph-reached' : null);
  const [note, setNote] = useState('');
  const [when, setWhen] = useState<string | null>(null);
  const [shown, setShown] = useState(false);
  const at = readWhen(when, nowMs);
  return (
    <Sheet
      open
      onClose={onClose}
      title={end.title}
      closeLabel={words.app.close}
      acts={
        <Button
          kind="primary"
          disabled={saved?.state === 'saving'}
          onPress={() => {
            setShown(true);
            if (reason && at.ok) onSave({ reason, ...(note.trim() ? { note: note.trim() } : {}) }, at.atMs);
          }}
        >
          {end.save}
        </Button>
      }
    >
      {!stopped && <Notice kind="caution">{end.unread}</Notice>}
      <Choice
        label={end.why}
        options={REASONS.map((value) => ({ value, label: end.reasons[value] }))}
        value={reason}
        onValue={setReason}
        {...(shown && !reason ? { problem: words.fields.choose } : {})}
      />
      <TextField label={end.note} text={note} onText={setNote} maxLength={2000} long />
      <WhenField
        text={when}
        onText={setWhen}
        nowMs={nowMs}
        words={words.fields.when}
        {...(shown && !at.ok ? { problem: words.fields.whenProblem[at.problem] } : {})}
      />
      {saved && <SavedMark state={saved.state} text={saved.text} />}
    </Sheet>
  );
}
