import { PieceDrawing, type PieceLook } from './PieceDrawing.tsx';
import { pieceBoxes, SLOT } from './piece-shape.ts';
import styles from './RailDrawing.module.css';

export type RailPiece = PieceLook & {
  id: string;
  /** Shown below the piece. */
  number: string;
  /** Shown below the number: how much it still has to lose. */
  toGo: string;
  /** Number, state and grams to go in words. */
  label: string;
  href?: string;
};

export type RailDrawingProps = {
  /** Says what hangs here, aloud. */
  label: string;
  pieces: readonly RailPiece[];
};

/** The rail with what hangs on it. More than fit side by side hang on further rails below. */
export function RailDrawing({ label, pieces }: RailDrawingProps) {
  const boxes = pieceBoxes(pieces);
  const depth = SLOT.string + Math.max(0, ...boxes.map((box) => box.height)) + SLOT.tail;
  return (
    <ol className={styles.rail} aria-label={label}>
      {pieces.map(({ id, number, toGo, label: words, href, ...look }, at) => {
        const box = boxes[at];
        const inside = (
          <>
            <PieceDrawing {...look} depth={depth} {...(box ? { box } : {})} />
            <span className={styles.number} aria-hidden="true">
              {number}
            </span>
            <span className={styles.toGo} aria-hidden="true">
              {toGo}
            </span>
            <span className="heard">{words}</span>
          </>
        );
        return (
          <li key={id} className={styles.place}>
            {href === undefined ? (
              <div className={styles.piece}>{inside}</div>
            ) : (
              <a className={styles.piece} href={href}>
                {inside}
              </a>
            )}
          </li>
        );
      })}
    </ol>
  );
}
