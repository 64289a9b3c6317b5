import { useState } from 'react';
import type { Role } from '#core/formula/formula.ts';
import type { Place } from '#record/place.ts';
import { newSubject } from '#store/append.ts';
import { Button } from '#ui/Button.tsx';
import { List, Row } from '#ui/List.tsx';
import { Sheet } from '#ui/Sheet.tsx';
import type { Words } from '#words/en.ts';
import { addLine, draftBench, moveLine, removeLine, setLine, typeTotalSalt } from './draft-edits.ts';
import type { EditRow } from './edit-view.ts';
import styles from './FormulaEditScreen.module.css';
import type { FormulaDraft } from './formula-draft.ts';
import { LineSheet } from './LineSheet.tsx';
import { newLine, roleOptions } from './line-draft.ts';
import { switchBasis } from './line-switch.ts';

/** Ids of lines are unique wherever a version goes. */
export function newLineId(): string {
  return newSubject('formula').slice('formula:'.length);
}

/** The lines of a draft; a press opens one on a sheet. */
export function DraftLines({
  draft,
  rows,
  onDraft,
  place,
  words,
}: {
  draft: FormulaDraft;
  rows: readonly EditRow[];
  onDraft: (draft: FormulaDraft) => void;
  place: Place;
  words: Words;
}) {
  const [open, setOpen] = useState<string | null>(null);
  const [adding, setAdding] = useState(false);
  const say = words.formulaEdit;
  const line = draft.lines.find((each) => each.id === open);
  const add = (role: Role) => {
    const added = newLine(newLineId(), role, words);
    onDraft(addLine(draft, added));
    setAdding(false);
    setOpen(added.id);
  };
  return (
    <section className={styles.lines}>
      <h2>{say.lines}</h2>
      <p className={styles.hint}>{say.linesHint}</p>
      <List label={say.lines} ordered>
        {rows.map(({ id, title, note }) => (
          <Row key={id} title={title} note={note} onPress={() => setOpen(id)} />
        ))}
      </List>
      <Button onPress={() => setAdding(true)}>{say.add}</Button>
      {line && (
        <LineSheet
          key={line.id}
          {...{ line, place, words }}
          onLine={(changed) => onDraft(setLine(draft, changed))}
          onTotalSalt={(text) => typeTotalSalt(draft, line, text, place, words)}
          onBasis={(basis) => {
            const bench = draftBench(draft, place);
            onDraft(setLine(draft, switchBasis({ line, basis, bench, place, words })));
          }}
          onMove={(by) => onDraft(moveLine(draft, line.id, by))}
          onRemove={() => {
            onDraft(removeLine(draft, line.id));
            setOpen(null);
          }}
          onClose={() => setOpen(null)}
        />
      )}
      <Sheet open={adding} onClose={() => setAdding(false)} title={say.addTitle} closeLabel={words.app.close}>
        <List label={say.addTitle}>
          {roleOptions(words).map(({ value, label }) => (
            <Row key={value} title={label} onPress={() => add(value)} />
          ))}
        </List>
      </Sheet>
    </section>
  );
}
