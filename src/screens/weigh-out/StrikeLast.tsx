import { useState } from 'react';
import type { EntryId } from '#record/entry.ts';
import { Ask } from '#ui/Ask.tsx';
import { Button } from '#ui/Button.tsx';
import type { Words } from '#words/en.ts';
import type { LastWeighing } from './last-weighing.ts';

/** A slip of the thumb taken back at once; it is asked about first, and stays on the record. */
export function StrikeLast({
  last,
  saving,
  onStrike,
  words,
}: {
  last: LastWeighing;
  saving: boolean;
  onStrike: (id: EntryId, reason: string) => void;
  words: Words;
}) {
  const [asked, setAsked] = useState(false);
  const say = words.weighOut.last;
  return (
    <>
      <Button kind="quiet" disabled={saving} onPress={() => setAsked(true)}>
        {say.strike(last.text)}
      </Button>
      {asked && (
        <Ask
          question={say.ask(last.text)}
          changeLabel={words.app.keep}
          keepLabel={say.act}
          onChange={() => setAsked(false)}
          onKeep={() => {
            setAsked(false);
            onStrike(last.id, say.reason);
          }}
        />
      )}
    </>
  );
}
