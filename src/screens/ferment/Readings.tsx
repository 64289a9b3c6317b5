import { useState } from 'react';
import { Button } from '#ui/Button.tsx';
import { List, Row } from '#ui/List.tsx';
import type { SavedState } from '#ui/SavedMark.tsx';
import { StrikeSheet } from '#ui/StrikeSheet.tsx';
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
          what={`${row.title}, ${row.note}`}
          words={say}
          closeLabel={words.app.close}
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
