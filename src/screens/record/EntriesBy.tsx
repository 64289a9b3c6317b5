import { Button } from '#ui/Button.tsx';
import { List, Row } from '#ui/List.tsx';
import { ManyChoice } from '#ui/ManyChoice.tsx';
import { Notice } from '#ui/Notice.tsx';
import type { Words } from '#words/en.ts';
import type { ByView } from './by-view.ts';
import styles from './RecordScreen.module.css';

/** Whose entries are shown. On paper stands every entry, whoever is chosen here. */
export function EntriesBy({
  view,
  chosen,
  onChosen,
  words,
}: {
  view: ByView;
  chosen: readonly string[];
  onChosen: (chosen: string[]) => void;
  words: Words;
}) {
  const say = words.record.filter;
  const { filtered } = view;
  if (view.only !== null) return <p className="unprinted">{view.only}</p>;
  return (
    <div className={styles.by}>
      <ManyChoice label={say.label} options={view.people} values={chosen} onValues={onChosen} />
      <div aria-live="polite">
        {filtered && (
          <Notice
            kind="caution"
            title={filtered.title}
            act={
              <Button kind="quiet" onPress={() => onChosen([])}>
                {say.off}
              </Button>
            }
          >
            {filtered.text}
          </Notice>
        )}
      </div>
      {filtered && (
        <List label={filtered.title}>
          {filtered.rows.map(({ key, what, more, struck }) => (
            <Row
              key={key}
              title={struck ? <s>{what}</s> : what}
              note={<span className={styles.lines}>{more}</span>}
            />
          ))}
        </List>
      )}
    </div>
  );
}
