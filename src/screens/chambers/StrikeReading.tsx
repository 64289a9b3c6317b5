import { useState } from 'react';
import { Button } from '#ui/Button.tsx';
import { SavedMark, type SavedState } from '#ui/SavedMark.tsx';
import { Sheet } from '#ui/Sheet.tsx';
import { TextField } from '#ui/TextField.tsx';
import type { Words } from '#words/en.ts';
import type { ReadingRow } from './chamber-view.ts';

/** Strikes one reading, with a reason. It stays in the record as struck. */
export function StrikeReading({
  reading,
  words,
  saved,
  onStrike,
  onClose,
}: {
  reading: ReadingRow;
  words: Words;
  saved: { state: SavedState; text: string } | null;
  onStrike: (reason: string) => void;
  onClose: () => void;
}) {
  const [reason, setReason] = useState('');
  const [shown, setShown] = useState(false);
  const say = words.chambers.one;
  return (
    <Sheet
      open
      onClose={onClose}
      title={say.strikeTitle}
      closeLabel={words.app.close}
      acts={
        <Button
          kind="primary"
          disabled={saved?.state === 'saving'}
          onPress={() => {
            setShown(true);
            if (reason.trim()) onStrike(reason.trim());
          }}
        >
          {say.strike}
        </Button>
      }
    >
      <p>
        {reading.title}, {reading.note}
      </p>
      <p>{say.strikeText}</p>
      <TextField
        label={say.reason}
        text={reason}
        onText={setReason}
        maxLength={200}
        {...(shown && reason.trim() === '' ? { problem: say.reasonNeeded } : {})}
      />
      {saved && <SavedMark state={saved.state} text={saved.text} />}
    </Sheet>
  );
}
