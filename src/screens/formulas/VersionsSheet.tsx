import { useState } from 'react';
import type { EntryOf } from '#record/entry.ts';
import type { Place } from '#record/place.ts';
import { Button } from '#ui/Button.tsx';
import { Choice } from '#ui/Choice.tsx';
import { List, Row } from '#ui/List.tsx';
import { Sentence } from '#ui/Sentence.tsx';
import { Sheet } from '#ui/Sheet.tsx';
import type { Words } from '#words/en.ts';
import { compareView } from './compare-view.ts';
import styles from './VersionsSheet.module.css';
import { compareOptions, versionRows } from './versions-view.ts';

type Version = EntryOf<'formula-saved'>;

/** Every saved version, and two of them side by side. */
export function VersionsSheet({
  open,
  onClose,
  versions,
  saved,
  shown,
  onShow,
  place,
  words,
}: {
  open: boolean;
  onClose: () => void;
  versions: readonly Version[];
  /** All versions of all formulas, to name what one was made from. */
  saved: readonly Version[];
  shown: string;
  onShow: (id: string) => void;
  place: Place;
  words: Words;
}) {
  const [comparing, setComparing] = useState(false);
  const say = words.formulas.history;
  return (
    <Sheet open={open} onClose={onClose} title={say.heading} closeLabel={words.app.close}>
      {compareOptions(versions, saved).length > 1 && (
        <Button kind="quiet" expanded={comparing} onPress={() => setComparing(!comparing)}>
          {comparing ? say.list : say.compare}
        </Button>
      )}
      {comparing ? (
        <Compared versions={versions} saved={saved} place={place} words={words} />
      ) : (
        <List label={say.heading}>
          {versionRows(versions, saved, words).map(({ id, title, note }) => (
            <Row
              key={id}
              title={id === shown ? `${title} · ${say.shown}` : title}
              note={note}
              onPress={() => onShow(id)}
            />
          ))}
        </List>
      )}
    </Sheet>
  );
}

function Compared({
  versions,
  saved,
  place,
  words,
}: {
  versions: readonly Version[];
  saved: readonly Version[];
  place: Place;
  words: Words;
}) {
  const options = compareOptions(versions, saved);
  const [left, setLeft] = useState<string>((versions.at(-2)?.id ?? options.at(-1)?.value) || '');
  const [right, setRight] = useState<string>(versions.at(-1)?.id ?? '');
  const say = words.formulas.history;
  const formulaOf = (id: string) => saved.find((each) => each.id === id)?.body.formula;
  const [one, other] = [formulaOf(left), formulaOf(right)];
  if (!one || !other) return null;
  const view = compareView(one, other, { place, words });
  return (
    <>
      <div className={styles.pick}>
        <Choice label={say.left} options={options} value={left} onValue={setLeft} />
        <Choice label={say.right} options={options} value={right} onValue={setRight} />
      </div>
      <Sentence tokens={view.sentence} small />
      <ul className={styles.rows}>
        {view.rows.map(({ key, title, change, word, left: before, right: after, details }) => (
          <li key={key} className={change === 'same' ? styles.same : styles.differs}>
            <p className={styles.title}>
              {title} <span className={styles.word}>{word}</span>
            </p>
            <p>{before}</p>
            <p>{after}</p>
            {details && <p className={styles.details}>{details}</p>}
          </li>
        ))}
      </ul>
    </>
  );
}
