import { useState } from 'react';
import type { Fact } from '#store/use-append.ts';
import { Button } from '#ui/Button.tsx';
import { Choice } from '#ui/Choice.tsx';
import { Notice } from '#ui/Notice.tsx';
import { SavedMark, type SavedState } from '#ui/SavedMark.tsx';
import { Sheet } from '#ui/Sheet.tsx';
import { TextField } from '#ui/TextField.tsx';
import type { Words } from '#words/en.ts';

type Body = Extract<Fact, { kind: 'taken-down' }>['body'];

const REASONS = ['at-target', 'test', 'trouble', 'other'] as const;

export function DownSheet({
  words,
  saved,
  onSave,
  onClose,
}: {
  words: Words;
  saved: { state: SavedState; text: string } | null;
  onSave: (body: Body) => void;
  onClose: () => void;
}) {
  const { down } = words.piece;
  const [why, setWhy] = useState<Body['why'] | null>(null);
  const [note, setNote] = useState('');
  const [shown, setShown] = useState(false);
  return (
    <Sheet
      open
      onClose={onClose}
      title={down.title}
      closeLabel={words.app.close}
      acts={
        <Button
          kind="primary"
          disabled={saved?.state === 'saving'}
          onPress={() => {
            setShown(true);
            if (why) onSave({ why, ...(note.trim() ? { note: note.trim() } : {}) });
          }}
        >
          {down.save}
        </Button>
      }
    >
      <Choice
        label={down.why}
        options={REASONS.map((value) => ({ value, label: down.reasons[value] }))}
        value={why}
        onValue={setWhy}
        {...(shown && !why ? { problem: words.fields.choose } : {})}
      />
      <TextField label={down.note} text={note} onText={setNote} maxLength={2000} long />
      <Notice kind="caution">{words.hanging.down.caution}</Notice>
      {saved && <SavedMark state={saved.state} text={saved.text} />}
    </Sheet>
  );
}
