import { useState } from 'react';
import { Button } from '#ui/Button.tsx';
import { SavedMark, type SavedState } from '#ui/SavedMark.tsx';
import { Sheet } from '#ui/Sheet.tsx';
import { TextField } from '#ui/TextField.tsx';
import type { Words } from '#words/en.ts';

export function NoteSheet({
  words,
  saved,
  onSave,
  onClose,
}: {
  words: Words;
  saved: { state: SavedState; text: string } | null;
  onSave: (text: string) => void;
  onClose: () => void;
}) {
  const [text, setText] = useState('');
  const [shown, setShown] = useState(false);
  const { note } = words.batch;
  return (
    <Sheet
      open
      onClose={onClose}
      title={note.title}
      closeLabel={words.app.close}
      acts={
        <Button
          kind="primary"
          disabled={saved?.state === 'saving'}
          onPress={() => {
            setShown(true);
            if (text.trim()) onSave(text.trim());
          }}
        >
          {note.save}
        </Button>
      }
    >
      <TextField
        label={note.label}
        text={text}
        onText={setText}
        maxLength={2000}
        long
        {...(shown && !text.trim() ? { problem: note.needed } : {})}
      />
      {saved && <SavedMark state={saved.state} text={saved.text} />}
    </Sheet>
  );
}
