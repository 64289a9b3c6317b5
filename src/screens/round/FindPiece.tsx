import type { Piece } from '#record/piece.ts';
import type { SubjectId } from '#record/subject.ts';
import { Sheet } from '#ui/Sheet.tsx';
import type { Words } from '#words/en.ts';
import styles from './RoundScreen.module.css';

/** Every piece by the number on its tag, as large as a cold thumb needs. */
export function FindPiece({
  pieces,
  weighed,
  words,
  onPiece,
  onClose,
}: {
  pieces: readonly Piece[];
  weighed: readonly Piece[];
  words: Words;
  onPiece: (piece: SubjectId) => void;
  onClose: () => void;
}) {
  const { round } = words;
  return (
    <Sheet open onClose={onClose} title={round.findTitle} closeLabel={words.app.close}>
      <p>{round.findText}</p>
      <ol className={styles.pieces}>
        {pieces.map((piece) => {
          const done = weighed.includes(piece);
          return (
            <li key={piece.id}>
              <button
                type="button"
                className={styles.place}
                aria-label={round.toWeigh(piece.number, done)}
                onClick={() => onPiece(piece.id)}
              >
                {piece.number}
                {done && <span className={styles.weighed}>{round.weighedNow}</span>}
              </button>
            </li>
          );
        })}
      </ol>
    </Sheet>
  );
}
