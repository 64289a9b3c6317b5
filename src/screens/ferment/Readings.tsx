import { useState } from 'react';
import { Button } from '#ui/Button.tsx';
import { List, Row } from '#ui/List.tsx';
import { SavedMark, type SavedState } from '#ui/SavedMark.tsx';
import { Sheet } from '#ui/Sheet.tsx';
import { TextField } from '#ui/TextField.tsx';
import type { Words } from '#words/en.ts';
import type { ReadingRow } from './readings-view.ts';

const FIRST_SHOWN = 6;

/** What was read, newest first; a press leads to striking it. */
export function Readings({
  rows,
  words,
  saved,
  onStrike,
}: {
  rows: readonly ReadingRow[];
  words: Words;
  saved: { state: SavedState; text: string } | null;
  onStrike: (row: ReadingRow, reason: string) => Promise<boolean>;
}) {
  const [all, setAll] = useState(false);
  const [row, setRow] = useState<ReadingRow | null>(null);
  const say = words.fermentAhead.readings;
  if (rows.length === 0) return null;
  return (
    <section>
      <h2>{say.title}</h2>
      <List label={say.title}>
        {(all ? rows : rows.slice(0, FIRST_SHOWN)).map((each) => (
          <Row key={each.entry} title={each.title} note={each.note} onPress={() => setRow(each)} />
        ))}
      </List>
      {!all && rows.length > FIRST_SHOWN && (
        <Button kind="quiet" onPress={() => setAll(true)}>
          {say.more(rows.length)}
        </Button>
      )}
      {row && (
        <StrikeSheet
          row={row}
          words={words}
          saved={saved}
          onClose={() => setRow(null)}
          onStrike={async (reason) => {
            if (await onStrike(row, reason)) setRow(null);
          }}
        />
      )}
    </section>
  );
}

/** It stays on the record, with the reason. */
function StrikeSheet({
  row,
  words,
  saved,
  onStrike,
  onClose,
}: {
  row: ReadingRow;
  words: Words;
  saved: { state: SavedState; text: string } | null;
  onStrike: (reason: string) => void;
  onClose: () => void;
}) {
  const [reason, setReason] = useState('');
  const [shown, setShown] = useState(false);
  const say = words.fermentAhead.readings;
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
        {row.title}, {row.note}
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
