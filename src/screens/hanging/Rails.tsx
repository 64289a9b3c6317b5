import { useMemo, useState } from 'react';
import type { Batch } from '#record/batch.ts';
import type { Entry } from '#record/entry.ts';
import type { Place } from '#record/place.ts';
import { apart, moves, onRails } from '#record/rail.ts';
import { useKit } from '#store/live.ts';
import { useAppend } from '#store/use-append.ts';
import { Button } from '#ui/Button.tsx';
import { RailDrawing, type RailPiece } from '#ui/drawings/RailDrawing.tsx';
import type { Words } from '#words/en.ts';
import styles from './Rails.module.css';
import { RearrangeSheet } from './RearrangeSheet.tsx';

/** So wide is a place, or the few of a short rail would be drawn larger than those of a long one. */
const PIECE_REM = 3.4;

/** The rails as they hang: each piece at the place that was written down for it. */
export function Rails({
  batch,
  entries,
  pieces,
  label,
  place,
  words,
}: {
  batch: Batch;
  entries: readonly Entry[];
  pieces: readonly RailPiece[];
  label: string;
  place: Place;
  words: Words;
}) {
  const kit = useKit();
  const { saving, save } = useAppend(place.initials);
  const [moving, setMoving] = useState(false);
  const hung = useMemo(() => onRails(batch.pieces, entries), [batch, entries]);
  const odd = useMemo(() => apart(batch.pieces), [batch]);
  const say = words.rail;
  const marked = (piece: RailPiece): RailPiece => {
    const how = batch.pieces.find(({ id }) => id === piece.id);
    const word = how && odd.get(how.id);
    return word
      ? {
          ...piece,
          outlier: true,
          toGo: `${piece.toGo} ${say[word]}`,
          label: `${piece.label}, ${say[`${word}Word`]}`,
        }
      : piece;
  };
  const rails = [...new Set(hung.map(({ rail }) => rail))];
  const chamber = kit?.chambers.find(({ id }) => id === batch.hung?.body.chamber);
  const up = hung.filter(({ piece }) => piece.status !== 'taken-down');
  const drawn = (rail: number) =>
    hung.flatMap((each) => (each.rail === rail ? pieces.filter(({ id }) => id === each.piece.id) : []));
  return (
    <div className={styles.rails}>
      {rails.map((rail) => (
        <div key={rail} style={rails.length > 1 ? { maxWidth: `${drawn(rail).length * PIECE_REM}rem` } : {}}>
          {rails.length > 1 && <p className={styles.label}>{say.rail(rail)}</p>}
          <RailDrawing label={rails.length > 1 ? say.rail(rail) : label} pieces={drawn(rail).map(marked)} />
        </div>
      ))}
      <div className={styles.acts}>
        {up.length > 1 && (
          <Button kind="quiet" onPress={() => setMoving(true)}>
            {say.rearrange}
          </Button>
        )}
        <Button kind="quiet" href={`#/batches/${batch.id.slice('batch:'.length)}/tags`}>
          {say.tags}
        </Button>
        <Button kind="quiet" href={`#/batches/${batch.id.slice('batch:'.length)}/mould`}>
          {words.mould.title}
        </Button>
      </div>
      {moving && (
        <RearrangeSheet
          hung={up}
          rails={Math.max(chamber?.rails ?? 1, ...rails)}
          words={words}
          saved={words.app.unsaved(saving)}
          onSave={async (order) => {
            const facts = moves(up, order).map(({ piece, ...body }) => ({
              kind: 'rail-placed' as const,
              subject: piece,
              refs: [batch.id, ...(chamber ? [chamber.id] : [])],
              body: { ...body, ...(chamber ? { chamber: chamber.id } : {}) },
            }));
            if (facts.length === 0 || (await save(facts)).ok) setMoving(false);
          }}
          onClose={() => setMoving(false)}
        />
      )}
    </div>
  );
}
