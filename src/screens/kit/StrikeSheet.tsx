import { useState } from 'react';
import { Button } from '#ui/Button.tsx';
import { Choice } from '#ui/Choice.tsx';
import { SavedMark, type SavedState } from '#ui/SavedMark.tsx';
import { Sheet } from '#ui/Sheet.tsx';
import { TextField } from '#ui/TextField.tsx';
import type { Words } from '#words/en.ts';

type Why = 'broken' | 'gone' | 'mistake' | 'other';

/** Strikes something of the kit, with a reason. It stays in the record. */
export function StrikeSheet({
  name,
  note,
  words,
  saved,
  onStrike,
  onClose,
}: {
  name: string;
  note: string;
  words: Words;
  saved: { state: SavedState; text: string } | null;
  onStrike: (reason: string) => void;
  onClose: () => void;
}) {
  const [why, setWhy] = useState<Why | null>(null);
  const [other, setOther] = useState('');
  const [shown, setShown] = useState(false);
  const say = words.kit.scales;
  const reason = why === 'other' ? other.trim() : why && say.why[why];
  return (
    <Sheet
      open
      onClose={onClose}
      title={name}
      closeLabel={words.app.close}
      acts={
        <Button
          kind="primary"
          disabled={saved?.state === 'saving'}
          onPress={() => {
            setShown(true);
            if (reason) onStrike(reason);
          }}
        >
          {say.strike}
        </Button>
      }
    >
      <p>{note}</p>
      <p>{say.strikeText}</p>
      <Choice
        label={say.reason}
        options={(['broken', 'gone', 'mistake', 'other'] as const).map((value) => ({
          value,
          label: say.why[value],
        }))}
        value={why}
        onValue={setWhy}
        {...(shown && why === null ? { problem: words.fields.choose } : {})}
      />
      {why === 'other' && (
        <TextField
          label={say.why.other}
          text={other}
          onText={setOther}
          maxLength={200}
          {...(shown && !reason ? { problem: say.reasonNeeded } : {})}
        />
      )}
      {saved && <SavedMark state={saved.state} text={saved.text} />}
    </Sheet>
  );
}
