import { useState } from 'react';
import { Button } from './Button.tsx';
import { SavedMark, type SavedState } from './SavedMark.tsx';
import { Sheet } from './Sheet.tsx';
import { TextField } from './TextField.tsx';

export type StrikeSheetProps = {
  /** What is struck, in words. */
  what: string;
  words: {
    strikeTitle: string;
    strikeText: string;
    strike: string;
    reason: string;
    reasonNeeded: string;
  };
  closeLabel: string;
  saved: { state: SavedState; text: string } | null;
  onStrike: (reason: string) => void;
  onClose: () => void;
};

/** Strikes one reading, with a reason in the maker's own words. It stays on the record as struck. */
export function StrikeSheet({ what, words, closeLabel, saved, onStrike, onClose }: StrikeSheetProps) {
  const [reason, setReason] = useState('');
  const [shown, setShown] = useState(false);
  return (
    <Sheet
      open
      onClose={onClose}
      title={words.strikeTitle}
      closeLabel={closeLabel}
      acts={
        <Button
          kind="primary"
          disabled={saved?.state === 'saving'}
          onPress={() => {
            setShown(true);
            if (reason.trim()) onStrike(reason.trim());
          }}
        >
          {words.strike}
        </Button>
      }
    >
      <p>{what}</p>
      <p>{words.strikeText}</p>
      <TextField
        label={words.reason}
        text={reason}
        onText={setReason}
        maxLength={200}
        {...(shown && reason.trim() === '' ? { problem: words.reasonNeeded } : {})}
      />
      {saved && <SavedMark state={saved.state} text={saved.text} />}
    </Sheet>
  );
}
