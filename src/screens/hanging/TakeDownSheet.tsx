import { useState } from 'react';
import type { Piece } from '#record/piece.ts';
import { Button } from '#ui/Button.tsx';
import { Notice } from '#ui/Notice.tsx';
import { SavedMark, type SavedState } from '#ui/SavedMark.tsx';
import { Sentence } from '#ui/Sentence.tsx';
import { Sheet } from '#ui/Sheet.tsx';
import { TextField } from '#ui/TextField.tsx';
import type { Words } from '#words/en.ts';

/** Pieces at target weight, taken down together; what the fingers found stands in the note. */
export function TakeDownSheet({
  pieces,
  words,
  saved,
  onSave,
  onClose,
}: {
  pieces: readonly Piece[];
  words: Words;
  saved: { state: SavedState; text: string } | null;
  onSave: (note: string) => void;
  onClose: () => void;
}) {
  const [note, setNote] = useState('');
  const { down } = words.hanging;
  return (
    <Sheet
      open
      onClose={onClose}
      title={down.title}
      closeLabel={words.app.close}
      acts={
        <Button kind="primary" onPress={() => onSave(note.trim())} disabled={saved?.state === 'saving'}>
          {down.all(pieces.length)}
        </Button>
      }
    >
      <Sentence tokens={down.sentence(pieces.length)} />
      <TextField label={down.note} text={note} onText={setNote} maxLength={2000} long />
      <Notice kind="caution">{down.caution}</Notice>
      {saved && <SavedMark state={saved.state} text={saved.text} />}
    </Sheet>
  );
}
