import { useState } from 'react';
import type { Hung } from '#record/rail.ts';
import type { SubjectId } from '#record/subject.ts';
import { Button } from '#ui/Button.tsx';
import { SavedMark, type SavedState } from '#ui/SavedMark.tsx';
import { Sheet } from '#ui/Sheet.tsx';
import type { Words } from '#words/en.ts';
import styles from './Rails.module.css';
import { type Place, shifted } from './rearrange.ts';

/** Pieces moved by a tap, one place at a time: no dragging with cold hands. */
export function RearrangeSheet({
  hung,
  rails,
  words,
  saved,
  onSave,
  onClose,
}: {
  hung: readonly Hung[];
  rails: number;
  words: Words;
  saved: { state: SavedState; text: string } | null;
  onSave: (order: readonly Place[]) => void;
  onClose: () => void;
}) {
  const [order, setOrder] = useState<readonly Place[]>(
    hung.map(({ piece, rail }) => ({ piece: piece.id, rail })),
  );
  const say = words.rail;
  const numberOf = (piece: SubjectId) => hung.find((each) => each.piece.id === piece)?.piece.number ?? 0;
  return (
    <Sheet
      open
      onClose={onClose}
      title={say.title}
      closeLabel={words.app.close}
      acts={
        <Button kind="primary" disabled={saved?.state === 'saving'} onPress={() => onSave(order)}>
          {say.save}
        </Button>
      }
    >
      <p>{say.how}</p>
      <ol className={styles.order}>
        {order.map(({ piece, rail }, at) => {
          const number = numberOf(piece);
          return (
            <li key={piece}>
              {rails > 1 && order[at - 1]?.rail !== rail && <h3>{say.rail(rail)}</h3>}
              <div className={styles.row}>
                <span className={styles.number}>{say.piece(number)}</span>
                <Button label={say.nearer(number)} onPress={() => setOrder(shifted(order, piece, -1, rails))}>
                  ↑
                </Button>
                <Button label={say.further(number)} onPress={() => setOrder(shifted(order, piece, 1, rails))}>
                  ↓
                </Button>
              </div>
            </li>
          );
        })}
      </ol>
      {saved && <SavedMark state={saved.state} text={saved.text} />}
    </Sheet>
  );
}
